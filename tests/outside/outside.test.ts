import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { references } from './references.js';
import { lettersInMaths, page, rows } from './table.js';

const PAGE = new URL('../../docs/outside-checks.md', import.meta.url);

const all = await rows();

describe('outside references', () => {
  it('are met, each to what it prints or to rounding', () => {
    for (const { reference, values, ofAllowed } of all) {
      expect(values, reference.source).toBeGreaterThan(0);
      expect(ofAllowed, reference.source).toBeLessThanOrEqual(1);
    }
  });

  it('are listed in docs/outside-checks.md as they come out now (npm run outside writes it)', () => {
    const text = readFileSync(PAGE, 'utf8');
    expect(page(text, all)).toBe(text);
  });

  it('are there for every source that the mathematics names', () => {
    const known = references.map(({ letters }) => letters);
    expect(lettersInMaths().filter((letters) => !known.includes(letters))).toEqual([]);
  });
});
