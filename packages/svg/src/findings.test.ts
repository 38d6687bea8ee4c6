import { describe, expect, it } from 'vitest';
import { block } from '../fixtures/block.js';
import { findingLines } from './findings.js';
import { textWidth } from './text.js';

const [WIDTH, SIZE] = [52, 2.8];
const all = findingLines(block, 99, WIDTH, SIZE);

describe('the findings beside the drawing', () => {
  it('are all there, whole, if there is room', () => {
    const text = all.join(' ');
    for (const { level, message } of block.findings) {
      expect(text).toContain(`${level.toUpperCase()}: ${message}`);
    }
    expect(findingLines(block, all.length, WIDTH, SIZE)).toEqual(all);
  });

  it('fill no more lines than there are, and say how many are left out', () => {
    for (let count = 0; count < all.length; count++) {
      const lines = findingLines(block, count, WIDTH, SIZE);
      expect(lines.length).toBeLessThanOrEqual(count);
      for (const line of lines) expect(textWidth(line, SIZE)).toBeLessThanOrEqual(WIDTH);
      const begun = lines.filter((line) => /^(DANGER|CHECK|NOTE): /.test(line)).length;
      const left = block.findings.length - begun;
      if (count > 0 && left > 0) expect(lines.at(-1)).toBe(`and ${left} more, which the report lists`);
      if (count > 0 && left === 0) expect(lines.at(-1)).toMatch(/…$/);
    }
  });

  it('begin with the gravest even where it does not fit whole', () => {
    expect(findingLines(block, 3, WIDTH, SIZE)).toEqual([
      expect.stringMatching(/^DANGER: /),
      expect.stringMatching(/…$/),
      'and 2 more, which the report lists',
    ]);
  });

  it('are none for a report without any', () => {
    expect(findingLines({ ...block, findings: [] }, 9, WIDTH, SIZE)).toEqual([]);
  });
});
