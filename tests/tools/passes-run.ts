import { parseArgs } from 'node:util';
import {
  area,
  biteAlong,
  disc,
  intersect,
  openOut,
  type PassOptions,
  type PassPlan,
  type Point,
  type Region,
  stepIn,
  subtract,
  xor,
} from '@edgebite/core';
import { outlines } from '@edgebite/core/testing';
import fc from 'fast-check';

/*
 * node tests/tools/run.mjs tests/tools/passes-run.ts --cases 2000 --seed 1
 * Passes through generated parts, roughed out or not: how far their union is off the final cut, and how deep they bite at
 * most, as said and as sampled. Exit code 1 if any bites over its limit or does not end on the true centre.
 */

const { values } = parseArgs({
  options: { cases: { type: 'string', default: '2000' }, seed: { type: 'string', default: '1' } },
});

/** Coordinates on a fine grid, so that edges meet or stay well apart. */
const coordinate = (min: number, max: number) =>
  fc.integer({ min: min * 997, max: max * 997 }).map((n) => n / 997);

const share = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const cases = fc
  .record({
    outline: outlines,
    x: coordinate(-30, 130),
    y: coordinate(-30, 110),
    radius: share(3, 30),
    bite: share(0.15, 0.6),
    turn: share(0, 2 * Math.PI),
    rough: fc.option(share(0.5, 0.97), { nil: null }),
  })
  // A cut that meets next to no metal has next to no passes.
  .filter(({ outline, x, y, radius, rough }) => {
    const taken = intersect([roughed(outline, { x, y }, radius, rough), disc({ x, y }, radius)]);
    return area(taken) >= 0.01 * radius * radius;
  });

/** Directions in which bites are sampled. */
const SAMPLES = 180;

const sums = { cases: 0, openedOut: 0, steppedIn: 0, refused: 0, passes: 0, failed: 0 };
/** Shares of the square of the radius, and of the limit. */
const worst = { unionOff: 0, bite: 0, sampledBite: 0 };

for (const { outline, x, y, radius, bite, turn, rough } of fc.sample(cases, {
  numRuns: Number(values.cases),
  seed: Number(values.seed),
})) {
  const center = { x, y };
  const metal = roughed(outline, center, radius, rough);
  const asked = { metal, center, radius, bite: bite * radius, finish: 0.05 * radius };
  sums.cases++;
  measure(asked, openOut(asked));
  sums.openedOut++;
  try {
    measure(asked, stepIn({ ...asked, approach: { dx: Math.cos(turn), dy: Math.sin(turn) } }));
    sums.steppedIn++;
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    sums.refused++;
  }
}
console.log(`passes: seed ${values.seed}`, sums, worst);
if (sums.failed > 0) process.exitCode = 1;

function roughed(outline: Region, center: Point, radius: number, rough: number | null): Region {
  return rough === null ? outline : subtract(outline, [disc(center, radius * rough)]);
}

function measure(asked: PassOptions, { passes }: PassPlan): void {
  const { metal, center, radius, bite } = asked;
  const covered = passes.map((pass) => disc(pass.center, pass.radius));
  const off = area(xor([subtract(metal, [disc(center, radius)]), subtract(metal, covered)]));
  worst.unionOff = Math.max(worst.unionOff, off / (radius * radius));
  let left = metal;
  for (const [k, pass] of passes.entries()) {
    sums.passes++;
    worst.bite = Math.max(worst.bite, (pass.bite?.size ?? 0) / bite);
    for (let s = 0; s < SAMPLES; s++) {
      const sampled = biteAlong(left, pass.center, pass.radius, (s / SAMPLES) * 2 * Math.PI + 0.0123);
      worst.sampledBite = Math.max(worst.sampledBite, sampled / bite);
    }
    left = subtract(left, [covered[k] as (typeof covered)[number]]);
  }
  const last = passes.at(-1);
  const isExact = last !== undefined && last.center === center && last.radius === radius;
  if (!isExact || worst.bite > 1 + 1e-8 || worst.sampledBite > 1 + 1e-7) sums.failed++;
}
