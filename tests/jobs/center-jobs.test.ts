import { examine, JobError, parseJob, reportSchema } from '@edgebite/core';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { runs } from '../tools/runs.js';

// Round numbers, so that circles touch faces, corners and each other.
const OUTLINES = [
  { rectangle: [60, 40] },
  { rectangle: [60, 40], corner: 5, holes: [{ circle: 12, at: [30, 20] }] },
  { svgPath: 'M0 0 H60 V10 H20 V40 H0 Z' },
  { svgPath: 'M0 0 H60 V40 H45 A15 15 0 0 0 15 40 H0 Z', holes: [{ rectangle: [6, 6], at: [5, 5] }] },
  { slot: [60, 30], at: [30, 20], angle: 30 },
];

const length = fc.constantFrom(0.5, 1, 2, 3, 5, 8, 10, 15, 20, 30);
const place = fc.tuple(fc.integer({ min: -10, max: 70 }), fc.integer({ min: -10, max: 50 }));
const edge = fc.oneof(
  fc.integer({ min: 0, max: 7 }).map((k) => `outline:${k}`),
  fc.constantFrom('hole:0:0', 'hole:0:1', 'hole:1:0'),
);
const end = fc.constantFrom('start', 'end');
const side = fc.constantFrom('inside', 'outside');
const choice = fc.oneof(
  { weight: 1, arbitrary: fc.record({ near: place }) },
  {
    weight: 4,
    arbitrary: fc.record({
      pick: fc.constantFrom('inside', 'outside', 'left', 'right', 'inside inside', 'outside outside'),
    }),
  },
  fc.record({ pick: fc.constantFrom('inside', 'left', 'right', 'inside inside') }),
  fc.constant({}),
);
const dimension = fc.oneof(
  fc.record({ edge, distance: length, side }),
  fc.record({ along: edge, end, distance: length }),
  fc.record({
    from: fc.oneof(edge, fc.constantFrom('left', 'right', 'front', 'back')),
    off: fc.constantFrom(-25, -12, -6, -1, 2, 5),
  }),
  fc.record({ corner: edge, end, distance: length }),
);
const center = fc.oneof(
  place,
  fc.record({ on: edge, along: length, from: end, depth: length }),
  fc.tuple(fc.record({ on: edge, along: length, opening: length }), choice).map(([a, b]) => ({ ...a, ...b })),
  fc.record({ through: fc.tuple(place, place, place) }),
  fc.tuple(fc.record({ tangent: fc.tuple(edge, edge) }), choice).map(([a, b]) => ({ ...a, ...b })),
  fc
    .tuple(fc.record({ distances: fc.tuple(dimension, dimension) }), choice)
    .map(([a, b]) => ({ ...a, ...b })),
);
const passes = fc.oneof(
  fc.record({
    kind: fc.constant('step in'),
    bite: fc.constantFrom(2, 4),
    approach: fc.constantFrom(0, 37, 90, 180),
  }),
  fc.record({
    kind: fc.constant('open out'),
    bite: fc.constantFrom(2, 4),
    finish: fc.constant(0.5),
    spring: fc.boolean(),
  }),
);
const depth = fc.constantFrom<number | string>(4, 8, 12, 'through');
const from = fc.constantFrom('top', 'bottom');
const outlinePlace = fc.oneof(place, fc.record({ edge, end, distance: length }));
const along = fc.oneof(
  fc.record({ side, allowance: fc.constantFrom(0, 1), loop: fc.constantFrom('outline', 'all', 'hole:0') }),
  fc.record({
    side,
    milling: fc.constantFrom('climb', 'conventional'),
    from: outlinePlace,
    to: outlinePlace,
  }),
);
const cut = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.record(
      { kind: fc.constant('bore'), center, diameter: length, depth, from, passes },
      { requiredKeys: ['kind', 'center', 'diameter'] },
    ),
  },
  fc.record({
    kind: fc.constant('annular'),
    center,
    diameter: fc.constantFrom(10, 16, 24),
    wall: fc.constantFrom(2, 4),
    depth,
    from,
  }),
  fc.record({
    kind: fc.constant('swept'),
    diameter: fc.constantFrom(2, 4, 6),
    path: fc.record({ along }),
    depth,
    from,
  }),
);

it('jobs of placements, passes and paths are refused with their faults, or have sound reports', () => {
  const seen = { refused: 0, placed: 0, passes: 0, paths: 0 };
  fc.assert(
    fc.property(
      fc.constantFrom(...OUTLINES),
      fc.array(cut, { minLength: 1, maxLength: 3 }),
      (outline, cuts) => {
        // Cuts that are refused are left out, one by one, so that most jobs have some that are not.
        const sound = cuts.filter((one, k) => {
          const alone = jobOf(outline, [{ id: `c${k}`, ...one }]);
          try {
            return parseJob(alone) !== null;
          } catch (error) {
            if (!(error instanceof JobError)) throw error;
            for (const { path, message } of error.issues) {
              expect(path).toMatch(/^\/cuts\/0/);
              expect(message).not.toMatch(/NaN|undefined|Infinity/);
            }
            seen.refused++;
            return false;
          }
        });
        const report = examine(
          parseJob(
            jobOf(
              outline,
              sound.map((one, k) => ({ id: `c${k}`, ...one })),
            ),
          ),
        );
        expect(reportSchema.parse(report)).toEqual(report);
        for (const row of report.cuts) {
          if (row.placement !== null) seen.placed++;
          if (row.toolPath !== null) seen.paths++;
          const asked = sound[report.cuts.indexOf(row)];
          if (asked?.kind !== 'bore' || row.passes === null) continue;
          seen.passes++;
          const last = row.passes.list.findLast(({ role }) => role !== 'spring');
          if (last === undefined) continue;
          expect([last.center, last.diameter]).toEqual([row.center, row.diameter]);
          for (const { bite } of row.passes.list) expect(bite?.size ?? 0).toBeLessThanOrEqual(4 * (1 + 1e-9));
          const volume = row.passes.list.reduce((sum, pass) => sum + pass.volume, 0);
          expect(volume).toBeLessThanOrEqual(row.removedVolume + 1e-6);
        }
      },
    ),
    { numRuns: runs(100) },
  );
  for (const count of Object.values(seen)) expect(count).toBeGreaterThan(5);
});

function jobOf(outline: unknown, cuts: readonly unknown[]): unknown {
  return { edgebite: 1, units: 'mm', part: { outline, thickness: 12 }, cuts };
}
