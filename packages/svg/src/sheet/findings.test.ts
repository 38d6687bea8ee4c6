import { describe, expect, it } from 'vitest';
import { block } from '../../fixtures/block.js';
import { gravestFirst } from '../index.js';
import { textWidth } from '../pen/text.js';
import { type FindingEntry, findingLines } from './findings.js';

const [WIDTH, SIZE] = [52, 2.8];
const SPACING = { line: 3.6, gap: 1.4 };

const listed = (height: number): readonly FindingEntry[] => findingLines(block, height, SPACING, WIDTH, SIZE);

/** How much height entries take: a gap over each, and their lines. */
function heightOf(entries: readonly FindingEntry[]): number {
  return entries.reduce((sum, { lines }) => sum + SPACING.gap + lines.length * SPACING.line, 0);
}

const all = listed(999);

describe('the findings beside the drawing', () => {
  it('are all there, whole, numbered from 1 in their order, if there is room', () => {
    expect(all.map(({ number }) => number)).toEqual([1, 2, 3]);
    gravestFirst(block).forEach(({ level, message }, i) => {
      expect(all[i]?.lines.join(' ')).toBe(`${level.toUpperCase()}: ${message}`);
      expect(block.findings[all[i]?.index ?? -1]?.message).toBe(message);
    });
    expect(listed(heightOf(all))).toEqual(all);
  });

  it('take no more height than there is, and say how many are left out', () => {
    for (let height = 0; height < heightOf(all); height += 0.7) {
      const entries = listed(height);
      expect(heightOf(entries)).toBeLessThanOrEqual(height + 1e-9);
      for (const line of entries.flatMap(({ lines }) => lines)) {
        expect(textWidth(line, SIZE)).toBeLessThanOrEqual(WIDTH);
      }
      const begun = entries.filter(({ number }) => number !== null).length;
      const left = block.findings.length - begun;
      const last = entries.at(-1)?.lines.at(-1);
      if (begun > 0 && left > 0) expect(last).toBe(`and ${left} more on sheet 2`);
      if (begun > 0 && left === 0) expect(last).toMatch(/…$/);
    }
  });

  it('begin with the gravest even where it does not fit whole', () => {
    expect(listed(2 * SPACING.gap + 3 * SPACING.line).map(({ lines }) => lines)).toEqual([
      [expect.stringMatching(/^DANGER: /), expect.stringMatching(/…$/)],
      ['and 2 more on sheet 2'],
    ]);
  });

  it('are none for a report without any', () => {
    expect(findingLines({ ...block, findings: [] }, 99, SPACING, WIDTH, SIZE)).toEqual([]);
  });
});
