import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patched, patchOf } from '../../packages/previewer/page/src/worker/patch.js';
import { runs } from '../tools/runs.js';

/* What is told of a change comes to the same as the whole would, and no more than it is told. */

const json = fc.jsonValue({ maxDepth: 4 });
const job = {
  part: { thickness: 5 },
  cuts: [
    { id: 'a', at: [1, 2] },
    { id: 'b', at: [3, 4] },
  ],
};

it('leads from any value to any other', () => {
  fc.assert(
    fc.property(json, json, (before, after) => {
      // As it comes over from another thread.
      const patch = structuredClone(patchOf(before, after));
      expect(patched(before, patch)).toEqual(after);
    }),
    { numRuns: runs(300) },
  );
});

it('is none between values that are alike', () => {
  fc.assert(
    fc.property(json, (value) => {
      expect(patchOf(value, structuredClone(value))).toBeNull();
    }),
    { numRuns: runs(200) },
  );
  expect(patched(job, null)).toBe(job);
});

describe('what is as before', () => {
  it('is not told, and is the same object afterwards', () => {
    const moved = {
      ...job,
      cuts: [
        { id: 'a', at: [1, 2] },
        { id: 'b', at: [3, 5] },
      ],
    };
    const patch = patchOf(job, moved);
    expect(JSON.stringify(patch)).not.toContain('"a"');
    const next = patched(job, patch) as typeof job;
    expect(next).toEqual(moved);
    expect(next.part).toBe(job.part);
    expect(next.cuts[0]).toBe(job.cuts[0]);
    // And the old value stands.
    expect(job.cuts[1]?.at).toEqual([3, 4]);
  });
});

describe('lists and keys', () => {
  it('may come and go', () => {
    for (const [before, after] of [
      [[1, 2, 3], [1]],
      [[1], [1, 2, 3]],
      [{ a: 1, b: 2 }, { b: 2 }],
      [{ b: 2 }, { a: undefined, b: 2 }],
      [[], {}],
      [{}, null],
    ])
      expect(patched(before, patchOf(before, after))).toStrictEqual(after);
  });
});
