import type { CenterPass, CenterPath, Edge, Unreached } from '@edgebite/core';
import { boxRegion } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PathCase, pathCases } from '../tools/path-cases.js';
import { answerTo, checkPath } from '../tools/path-check.js';
import { checkReach } from '../tools/reach-check.js';
import { runs } from '../tools/runs.js';

describe('generated outlines', () => {
  it('are followed at the distance of the tool, and what is left is the outline and the unreached places', () => {
    let passes = 0;
    let places = 0;
    const holds = fc.property(pathCases, (one) => {
      const measures = checkPath(one);
      passes += measures?.passes ?? 0;
      places += measures?.places ?? 0;
    });
    fc.assert(holds, { numRuns: runs(250) });
    expect(passes).toBeGreaterThan(runs(250) / 2);
    expect(places).toBeGreaterThan(runs(250) * 10);
  });

  it('have unreached places with the limits that bisection finds', () => {
    let limits = 0;
    let smooth = 0;
    const holds = fc.property(pathCases, (one) => {
      const found = checkReach(one);
      limits += found.limits;
      smooth += found.limits - found.corners;
    });
    fc.assert(holds, { numRuns: runs(200) });
    expect(limits).toBeGreaterThan(runs(200));
    expect(smooth).toBeGreaterThan(runs(200) / 4);
  });
});

/** The check above is worth something only if it fails. */
describe('the check of paths', () => {
  const one: PathCase = {
    region: boxRegion(0, 0, 60, 40),
    side: 'inside',
    radius: 5,
    allowance: 0.5,
    milling: 'climb',
  };
  const right = answerTo(one);
  const withCut = (
    path: CenterPath | null,
    change: (cut: readonly Edge[]) => readonly Edge[],
  ): CenterPath | null =>
    path === null
      ? null
      : { ...path, passes: path.passes.map((pass): CenterPass => ({ ...pass, cut: change(pass.cut) })) };

  it('passes what is right', () => {
    expect(checkPath(one, right)).toMatchObject({ passes: 1, unreached: 4 });
  });

  it('sees a path a millionth off', () => {
    const other = answerTo({ ...one, radius: 5 + 1e-6 });
    expect(() => checkPath(one, other)).toThrow('off by');
  });

  it('sees a path that runs the other way, has a gap, or lacks an edge', () => {
    const other = answerTo({ ...one, milling: 'conventional' });
    expect(() => checkPath(one, other)).toThrow('runs the wrong way');
    const gap = withCut(right.path, ([first, ...rest]) => [first as Edge, ...rest.slice(1)]);
    expect(() => checkPath(one, { ...right, path: gap })).toThrow('a gap after edge');
    const short = withCut(right.bare, (cut) => cut.slice(0, -1));
    expect(() => checkPath(one, { ...right, bare: short })).toThrow('closed is wrong');
  });

  it('sees a missing pass, an unreached place that is missing, and one that is none', () => {
    const hollow: PathCase = {
      ...one,
      region: [
        {
          outer: one.region[0]?.outer ?? [],
          holes: [boxRegion(25, 15, 35, 25)[0]?.outer.map(turned).reverse() ?? []],
        },
      ],
      radius: 2,
    };
    const answer = answerTo(hollow);
    expect(checkPath(hollow, answer)).toMatchObject({ passes: 2 });
    const bare: CenterPath = { missed: [], passes: (answer.bare?.passes ?? []).slice(1) };
    expect(() => checkPath(hollow, { ...answer, bare })).toThrow(/left over|from being touched/);
    expect(() => checkPath(one, { ...right, left: right.left.slice(1) })).toThrow('left over');
    const extra = { ...(right.left[0] as Unreached), region: boxRegion(20, 3, 22, 4) };
    expect(() => checkPath(one, { ...right, left: [...right.left, extra] })).toThrow('left over');
  });

  it('sees a path that is denied', () => {
    expect(() => checkPath(one, { ...right, path: null })).toThrow('there is no path, and yet');
  });

  function turned({ a, b }: Edge): Edge {
    return { kind: 'line', a: b, b: a };
  }
});
