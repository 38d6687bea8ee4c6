import { examine, parseJob, type Report } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/* Slugs that stand on each other, and bodies that lie in a core in part. A plate 100 by 60, 12 thick. */

function report(cuts: readonly object[], keep?: readonly [number, number]): Report {
  const part = { outline: { rectangle: [100, 60] }, thickness: 12 };
  return examine(parseJob({ edgebite: 1, units: 'mm', part, cuts, ...(keep && { keep }) }));
}

/** Two cores, of 10 from above and of 9 from below, 10 apart, and nothing else left: half of each lies on the other. */
const upper = { id: 'upper', kind: 'annular', center: [45, 30], diameter: 160, wall: 70, depth: 6 };
const lower = {
  id: 'lower',
  kind: 'annular',
  center: [55, 30],
  diameter: 160,
  wall: 71,
  from: 'bottom',
  depth: 6,
};

const close = (value: number) => expect.closeTo(value, 7);
const [large, small] = [100 * Math.PI * 6, 81 * Math.PI * 6];

describe('of slugs that stand on each other and are all that is left', () => {
  it.each([
    ['the largest one', undefined, large, small, 'lower'],
    ['the one at the place that is held', [62, 30], small, large, 'upper'],
    ['the larger one of two at the place that is held', [50, 30], large, small, 'lower'],
    ['the one at the place that is held, where that is the largest', [36, 30], large, small, 'lower'],
  ] as const)('%s is kept', (_, keep, kept, held, freedBy) => {
    for (const cuts of [
      [upper, lower],
      [lower, upper],
    ]) {
      const { pieces } = report(cuts, keep);
      expect(pieces.map(({ role, volume, freedBy: by }) => [role, volume, by])).toEqual([
        ['kept', close(kept), null],
        ['held slug', close(held), freedBy],
      ]);
    }
  });
});

describe('a body that lies in a core in part', () => {
  const ring = { id: 'ring', kind: 'annular', center: [50, 30], diameter: 30, wall: 5, depth: 4 };
  const around = { id: 'round', kind: 'swept', path: { svgPath: 'M50 30 H80 V50 H50 Z' }, diameter: 2 };
  /** Inside of the path 28 by 18; the ring takes a quarter of itself there, shifted by 1 from its centre. */
  const quarter = (r: number) => {
    // Area where x > 1, y > 1 of a disc about the origin: the integral of sqrt(r² - x²) - 1 from 1 to sqrt(r² - 1).
    const integral = (x: number) => (x * Math.sqrt(r * r - x * x) + r * r * Math.asin(x / r)) / 2;
    const end = Math.sqrt(r * r - 1);
    return integral(end) - integral(1) - (end - 1);
  };
  const volume = 28 * 18 * 12 - (quarter(15) - quarter(10)) * 4;

  it('is an offcut and no slug', () => {
    for (const cuts of [
      [ring, around],
      [around, ring],
    ]) {
      // The rest of the core is a slug on the floor of the ring.
      const { pieces } = report(cuts);
      expect(pieces.map(({ role, freedBy }) => [role, freedBy])).toEqual([
        ['kept', null],
        ['offcut', 'round'],
        ['held slug', 'ring'],
      ]);
      expect(pieces[1]?.volume).toBeCloseTo(volume, 6);
    }
  });

  it('comes loose as no slug where it is cut away later', () => {
    const away = { id: 'away', kind: 'swept', path: { svgPath: 'M50 40 H80' }, diameter: 30 };
    const { bodies, steps } = report([ring, around, away]);
    expect(bodies.map(({ role, step }) => [role, steps[step]?.cut])).toEqual([
      ['held slug', 'ring'],
      ['offcut', 'round'],
    ]);
    expect(bodies[1]).toMatchObject({ volume: close(volume), pieces: [] });
  });
});
