import { families } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { obeysAllLaws } from '../tools/law-run.js';
import { longRun, runs } from '../tools/runs.js';

/** Cases a family; the long run (`npm run prove`) takes as many as it is told. */
const CASES = runs(60);

describe('the laws hold in the family', () => {
  it.each(families.map((family) => [family.name, family] as const))('%s', (_, family) => {
    let seen = 0;
    const law = fc.property(family.cases, (cutCase) => {
      seen += 1;
      obeysAllLaws(cutCase, family);
    });
    fc.assert(law, { ...seedOf(family.name), numRuns: CASES });
    expect(seen).toBe(CASES);
  });
});

/** Each family draws its own numbers: the same ones in every fast run, new ones in a long run. */
function seedOf(name: string): { seed?: number } {
  if (longRun()) return {};
  return { seed: [...name].reduce((hash, letter) => (hash * 31 + letter.charCodeAt(0)) | 0, 7) };
}
