import { examine, JobError, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/* A plate 80 by 30 with round corners of 4. Off a face is over 0 in the air beyond it, under 0 within the part. */

const job = (center: object, outline: object = { rectangle: [80, 30], corner: 4 }) => ({
  edgebite: 1,
  units: 'mm',
  part: { outline, thickness: 12 },
  cuts: [{ id: 'a', kind: 'bore', center, diameter: 20 }],
});
const centerOf = (center: object, outline?: object) =>
  examine(parseJob(job(center, outline))).cuts[0]?.center;
const off = (from: string, by: number) => ({ from, off: by });
const both = (x: object, y: object) => ({ distances: [x, y] });
const issues = (center: object, outline?: object) => {
  try {
    parseJob(job(center, outline));
    return [];
  } catch (error) {
    if (!(error instanceof JobError)) throw error;
    return error.issues.map(({ path, message }) => `${path} ${message}`);
  }
};

describe('a centre off two faces', () => {
  it.each<[string, object, readonly [number, number]]>([
    // 80 + 6 is 6 beyond the right end; 30 - 15 within the back.
    ['right and back', both(off('right', 6), off('back', -15)), [86, 15]],
    // 0 - 6 beyond the left end; 0 + 12 within the front.
    ['left and front', both(off('left', -(-6)), off('front', -12)), [-6, 12]],
    ['within the left and beyond the front', both(off('left', -20), off('front', 5)), [20, -5]],
    ['beyond the back', both(off('back', 2.5), off('right', -40)), [40, 32.5]],
    ['on the face itself', both(off('right', 0), off('front', -15)), [80, 15]],
    ['beside a distance inside', both(off('right', 6), { edge: 'front', distance: 15 }), [86, 15]],
  ])('%s', (_, center, at) => {
    const [x, y] = centerOf(center) ?? [0, 0];
    expect(x).toBeCloseTo(at[0], 12);
    expect(y).toBeCloseTo(at[1], 12);
  });

  it('is measured from a face that has a name, or from each piece of a side alike', () => {
    const edges = [
      [0, 0],
      [80, 0],
      [80, 30],
      [50, 30],
      [50, 20],
      [30, 20],
      [30, 30],
      [0, 30],
    ].map((a, k, all) => ({
      kind: 'line',
      a,
      b: all[(k + 1) % all.length],
      ...(k === 4 ? { name: 'step' } : {}),
    }));
    // The step looks back, at 20: 3 beyond it is 23.
    expect(centerOf(both(off('step', 3), off('left', -40)), { edges })).toEqual([40, 23]);
    expect(centerOf(both(off('back', 3), off('left', -40)), { edges })).toEqual([40, 33]);
    // An opening needs one edge: the back is in two pieces.
    expect(issues({ on: 'back', along: 5, depth: 3 }, { edges })[0]).toContain('/cuts/0/center/on');
    expect(centerOf({ on: 'step', along: 5, depth: 3 }, { edges })?.[1]).toBeCloseTo(27, 12);
  });

  it('is refused off a side that is no straight face, or of another name', () => {
    expect(issues(both(off('left', 3), off('front', 3)), { circle: 60 })).not.toEqual([]);
    expect(issues(both(off('rigth', 3), off('front', 3)))[0]).toMatch(
      /^\/cuts\/0\/center\/distances\/0\/from /,
    );
    expect(issues(both({ from: 'right' }, off('front', 3)))[0]).toContain('/distances/0/off is missing');
    expect(issues(both(off('right', 3), off('left', 3)))[0]).toContain('/cuts/0/center/distances');
  });
});
