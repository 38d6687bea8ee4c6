import { JobError, type JobIssue, parseJob } from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { doubleKeys } from '../../packages/core/src/document/double-keys.js';
import { runs } from '../tools/runs.js';

/*
 * RFC 8259, section 4: names within an object should be unique; what a reader makes of others is unpredictable. RFC 6901
 * for the places. Which names look alike: Unicode Technical Standard 39.
 */

function issuesOf(text: unknown): readonly JobIssue[] {
  try {
    parseJob(text);
  } catch (error) {
    if (error instanceof JobError) return error.issues;
    throw error;
  }
  return [];
}

describe('a key that is given twice', () => {
  it('is refused with both places', () => {
    const text = `{
  "edgebite": 1, "units": "mm",
  "cuts": [{ "id": "a", "kind": "bore", "center": [5, 5], "diameter": 30 }],
  "part": { "outline": { "rectangle": [40, 20] }, "thickness": 5 },
  "cuts": []
}`;
    expect(issuesOf(text)).toEqual([
      {
        path: '/cuts',
        message: 'is given twice, at line 3, column 3 and at line 5, column 3; keep one of them',
      },
    ]);
  });

  it('is seen through escapes, at any depth, after a byte order mark, as often as it comes', () => {
    expect(doubleKeys('{"a":1,"\\u0061":2,"a":3}')).toHaveLength(2);
    expect(doubleKeys('[{"x":[0,{"a/b":1,"c~":{},"a/b":2}]}]').map(({ path }) => path)).toEqual([
      '/0/x/1/a~1b',
    ]);
    expect(issuesOf('\ufeff{"edgebite":1,"edgebite":1}').map(({ path }) => path)).toEqual(['/edgebite']);
    expect(doubleKeys('{"constructor":1,"__proto__":2,"__proto__":3}')).toHaveLength(1);
  });

  it('is none in two objects, nor a text that is as long as a key', () => {
    expect(doubleKeys('[{"a":1},{"a":1},{"b":{"a":1},"a":"a","c":["a","a"]}]')).toEqual([]);
  });

  it('is found wherever it is put, and nowhere else', () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 4 }), fc.string(), (json, key) => {
        // JSON.parse keeps the last of two, so what it writes has none.
        const single = JSON.stringify(JSON.parse(json));
        expect(doubleKeys(single)).toEqual([]);
        const name = JSON.stringify(key);
        expect(doubleKeys(`{${name}:${single},"other ${name.slice(1)}:[${single}],${name}:0}`)).toHaveLength(
          1,
        );
      }),
      { numRuns: runs(300) },
    );
  });
});

const withIds = (...ids: readonly string[]) => ({
  edgebite: 1,
  units: 'mm',
  part: { outline: { rectangle: [90, 20] }, thickness: 5 },
  cuts: ids.map((id, k) => ({ id, kind: 'bore', center: [8 + 12 * k, 10], diameter: 4 })),
});

describe('an id', () => {
  it.each([
    ['a zero-width space', 'se\u200bat'],
    ['a soft hyphen', 'se\u00adat'],
    ['a mark that turns the direction', 'se\u202eat'],
    ['a filler without a shape', 'se\u3164at'],
    ['half of a sign', 'se\ud800at'],
    ['a control character of the second set', 'se\u009bat'],
  ])('with %s is refused', (_, id) => {
    expect(issuesOf(withIds(id))).toMatchObject([
      { path: '/cuts/0/id', message: expect.stringContaining('signs that nobody sees') },
    ]);
  });

  it.each([
    ['a Cyrillic letter', 'seat', 'sеat'],
    ['a Greek letter', 'KAPPA', 'KΑPPA'],
    ['a wide form', 'pin1', 'ｐｉｎ１'],
    ['an accent of its own', 'caf\u00e9', 'cafe\u0301'],
    ['another space', 'left seat', 'left\u00a0seat'],
    ['another dash', 'a-b', 'a\u2013b'],
    ['a digit', 'BOO', 'B0O'],
    ['a stroke', 'l1', 'Il'],
  ])('that looks like another but for %s is refused, and names it', (_, one, other) => {
    const [issue, ...more] = issuesOf(withIds('first', one, other));
    expect(more).toEqual([]);
    expect(issue?.path).toBe('/cuts/2/id');
    expect(issue?.message).toContain('which looks like');
    expect(issue?.message).toContain('of cut 1');
  });

  it('in any script, and beside others that differ for the eye, is taken', () => {
    const ids = ['seat', 'Seat', 'seat-2', 'седло', 'έδρα', '織機', '🧵', 'left seat', 'a', 'b'];
    expect(issuesOf(withIds(...ids.slice(0, 7)))).toEqual([]);
    expect(issuesOf(withIds(...ids.slice(7)))).toEqual([]);
  });
});

describe('an allowance', () => {
  const along = (side: string, allowance: number, rectangle = [100, 60], diameter = 4) => ({
    ...withIds(),
    part: { outline: { rectangle }, thickness: 5 },
    cuts: [{ id: 'g', kind: 'swept', diameter, depth: 2, path: { along: { side, allowance } } }],
  });

  it('may be 0, and is told so where it is less', () => {
    expect(issuesOf(along('inside', 0))).toEqual([]);
    expect(issuesOf(along('inside', -1))).toEqual([
      { path: '/cuts/0/path/along/allowance', message: 'must be 0 or more; it is -1' },
    ]);
  });

  it('that leaves no room for the tool is told how much may be left', () => {
    const [issue] = issuesOf(along('inside', 40));
    expect(issue?.path).toBe('/cuts/0/path/along/allowance');
    // Half of 60 less the radius is 28, of which a hair is left to go in.
    const most = Number(/may be ([\d.]+) at most/.exec(issue?.message ?? '')?.[1]);
    expect(most).toBeGreaterThan(27.9);
    expect(most).toBeLessThan(28);
    expect(issuesOf(along('inside', most))).toEqual([]);
  });

  it('is not to blame where the tool alone does not fit', () => {
    const [issue] = issuesOf(along('inside', 1, [100, 60], 80));
    expect(issue?.message).toMatch(/no tool of more than 59\.9\d* across does/);
  });
});
