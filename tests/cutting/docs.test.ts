import { readFileSync } from 'node:fs';
import { METALS, type Metal, speedEntry, strengthOf, TOOL_KINDS } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

const text = readFileSync(new URL('../../docs/cutting-numbers.md', import.meta.url), 'utf8');

/** The cells of the row of a metal in the table under a heading. */
function cellsOf(heading: string, metal: Metal): string[] {
  const section = text.split(`\n## ${heading}`)[1]?.split('\n## ')[0] ?? '';
  const row = section.split('\n').find((line) => line.startsWith(`| ${metal}`)) ?? '';
  return row
    .split('|')
    .slice(1, -1)
    .map((cell) => cell.trim());
}

/** The columns of the table of speeds. */
const COLUMNS = ['drill', 'end mill', 'boring head', 'annular cutter'] as const;

describe('docs/cutting-numbers.md says what the tables hold', () => {
  it.each(METALS)('speeds in %s', (metal) => {
    expect([...COLUMNS].sort()).toEqual([...TOOL_KINDS].sort());
    const cells = cellsOf('Surface speeds, HSS', metal);
    COLUMNS.forEach((kind, k) => {
      const cell = cells[k + 1] as string;
      const { range, unit, source } = speedEntry(kind, 'HSS', metal);
      if (cell === 'as drill') {
        expect(speedEntry(kind, 'HSS', metal)).toEqual(speedEntry('drill', 'HSS', metal));
        return;
      }
      expect(cell).toMatch(new RegExp(`^${range[0]}-${range[1]} ${unit.replace('/', '\\/')} \\(`));
      const letters = (words: string) => [...new Set(words.match(/\b[A-Z]\b/g))].sort();
      expect(letters(cell.slice(cell.indexOf('(')))).toEqual(letters(source));
      expect(cell.includes('from memory')).toBe(source.includes('from memory'));
    });
  });

  it.each(METALS)('strengths of %s', (metal) => {
    const { shear, yield: bends, tensile } = strengthOf(metal);
    const whole = (range: readonly number[]) => range.map(Math.round).join('-');
    expect(cellsOf('Strengths, MPa', metal).slice(1, 4)).toEqual([
      whole(shear),
      bends === null ? 'breaks' : String(Math.round(bends)),
      whole(tensile),
    ]);
  });
});
