import { type AimDocument, area, examine, fromReport, parseAim, parseJob, propose } from '@edgebite/core';
import { expect, test } from 'vitest';

/** A pocket of 40 by 24 with rounded corners, 4 deep, in which a boss of diameter 8 stays up. */
const AIM: AimDocument = {
  edgebite: 1,
  units: 'mm',
  blank: { rectangle: [60, 40] },
  finished: { rectangle: [60, 40] },
  pockets: [
    { rectangle: [40, 24], corner: 5, at: [10, 8], depth: 4, islands: [{ circle: 8, at: [30, 20] }] },
  ],
  keep: [5, 20],
  thickness: 10,
  material: 'mild steel',
  arcs: true,
  drawer: [
    {
      id: 'mill',
      kind: 'end mill',
      toolMaterial: 'HSS',
      diameter: 8,
      reach: 20,
      teeth: 4,
      centerCutting: true,
    },
  ],
};

test('an island in a pocket stays up, whole', () => {
  const { ways, refusals } = propose(parseAim(AIM));
  expect(refusals).toEqual([]);
  expect(ways.length).toBeGreaterThan(0);
  for (const { job } of ways) {
    const [kept] = fromReport(examine(parseJob(job))).pieces;
    const [below, above] = (kept?.sections ?? []).map(({ region }) => area(region));
    // By hand: the pocket is its rectangle less what the four rounded corners lack, and less the boss.
    const pocket = 40 * 24 - (4 - Math.PI) * 25 - 16 * Math.PI;
    expect(below).toBeCloseTo(60 * 40, 6);
    expect(above).toBeCloseTo(60 * 40 - pocket, 6);
  }
});

test('an island that no tool of the drawer gets round is refused, not cut away', () => {
  // Between the boss of 20 and the walls there are 24 / 2 - 10 = 2, less than the mill is across.
  const narrow = { ...AIM, pockets: [{ ...AIM.pockets?.[0], islands: [{ circle: 20, at: [30, 20] }] }] };
  const { ways, refusals } = propose(parseAim(narrow));
  expect(ways).toEqual([]);
  expect(refusals.length).toBeGreaterThan(0);
});
