import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { gaps } from './gaps.js';
import { KINDS } from './reference.js';
import { references } from './references.js';
import { lettersInMaths, page, rows } from './table.js';

const PAGE = new URL('../../docs/outside-checks.md', import.meta.url);

const all = await rows();

describe('outside references', () => {
  it('are met, each to what it prints or to rounding', () => {
    for (const { reference, values, ofAllowed } of all) {
      const name = `${reference.quantity}: ${reference.source}`;
      expect(values, name).toBeGreaterThan(0);
      expect(ofAllowed, name).toBeLessThanOrEqual(1);
    }
  });

  it('are of kinds that the page explains, and of each there is one', () => {
    expect(new Set(references.map(({ kind }) => kind))).toEqual(new Set(Object.keys(KINDS)));
  });

  it('say why, where a quantity has none', () => {
    for (const { quantity, why } of gaps) expect(why, quantity).toMatch(/\w{3,} \w/);
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
