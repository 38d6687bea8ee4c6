import { examine, parseJob, type Report, reportSchema } from '@edgebite/core';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { textReport } from '../../packages/previewer/src/text/report.js';
import { unknownNames } from '../jobs/names-in.js';
import { evenly } from '../tools/evenly.js';
import { runs } from '../tools/runs.js';

const unit = fc.constantFrom('mm' as const, 'inch' as const);
const coordinate = evenly(-5, 85);
const length = fc.oneof(fc.constantFrom(5, 10, 25), fc.double({ min: 0.01, max: 50, noNaN: true }));
const tolerance = fc.oneof(fc.constant(0), fc.double({ min: 0, max: 0.5, noNaN: true }));

const maybe = <T>(one: fc.Arbitrary<T>) => fc.option(one, { nil: undefined });

const touch = (what: string) =>
  fc
    .record({
      size: length,
      isTool: fc.boolean(),
      reads: maybe(coordinate),
      then: maybe(fc.constant('move half the tip and set 0')),
      tolerance: maybe(tolerance),
      units: unit,
    })
    .map(({ size, isTool, ...rest }) => ({ touch: what, [isTool ? 'tool' : 'tip']: size, ...rest }));

const between = fc.oneof(
  fc.record({ block: length, tolerance: maybe(tolerance), units: maybe(unit) }),
  fc.record({ measured: length, tolerance: maybe(tolerance), units: maybe(unit) }),
  length,
);

/** Moves and sets that may follow anything. */
const shifted = fc
  .array(fc.record({ move: coordinate, tolerance: maybe(tolerance) }), { maxLength: 2 })
  .chain((moves) => coordinate.map((to) => (moves.length === 0 ? [] : [...moves, { set: to }])));

/** Ways to a zero on the sides of an axis, in the order in which they are done. */
const actions = (ends: readonly [string, string]) =>
  fc
    .record({
      end: fc.constantFrom(...ends),
      way: fc.constantFrom('touch', 'bears', 'dial in'),
      block: maybe(fc.oneof(length, fc.array(between, { minLength: 1, maxLength: 3 }))),
      mark: fc.tuple(coordinate, coordinate),
      across: fc.boolean(),
      measure: fc.record({ measured: length, tolerance: maybe(tolerance), units: unit }),
      bearing: fc.record({ tolerance: maybe(tolerance), units: unit }),
      shift: shifted,
      reads: coordinate,
    })
    .chain(({ end, way, block, mark, across, measure, bearing, shift, reads }): fc.Arbitrary<object[]> => {
      const other = ends[0] === end ? ends[1] : ends[0];
      const far = across ? [{ ...measure, from: end, to: other }] : [];
      if (way === 'dial in') return fc.constant([{ 'dial in': mark, reads }, ...shift]);
      if (way === 'touch') return touch(end).map((first) => [first, ...shift, ...far]);
      const stop = `stop ${end}`;
      return touch(stop).map((first) => [
        { ...first, name: `touch of ${end}` },
        { bears: end, on: stop, block, ...bearing },
        ...shift,
        ...far,
      ]);
    });

const SIDES = ['left', 'right', 'front', 'back'] as const;

const CUTS = ['a', 'b', 'c', 'd'];

const setups = fc
  .array(
    fc.record({
      turn: fc.oneof(fc.constantFrom(0, 90, 180, 270), evenly(-360, 360)),
      flip: fc.constantFrom(undefined, 'x', 'y'),
      readout: fc.record({ units: unit, resolution: fc.constantFrom(0.005, 0.001, 0.0005, 0.1) }),
      zero: fc.record({ x: actions(['left', 'right']), y: actions(['front', 'back']) }),
      cuts: fc.subarray(CUTS, { minLength: 1 }),
    }),
    { minLength: 1, maxLength: 3 },
  )
  .map(inOrder);

/** Setups that first use cuts in the order of the job. */
function inOrder<T extends { readonly cuts: readonly string[] }>(list: readonly T[]): T[] {
  const seen: string[] = [];
  return list.map((one) => {
    const last = seen.at(-1) ?? '';
    const own = one.cuts.filter((id) => seen.includes(id) || id > last);
    const cuts = own.length > 0 ? own : [last];
    seen.push(...[...cuts].sort().filter((id) => !seen.includes(id)));
    seen.sort();
    return { ...one, cuts };
  });
}

const hole = fc.record({
  center: fc.tuple(coordinate, coordinate),
  diameter: fc.double({ min: 2, max: 30, noNaN: true }),
});

const jobs = fc
  .record({
    units: unit,
    tolerances: fc.constantFrom(undefined, 'f', 'm', 'c', 'v'),
    holes: fc.array(hole, { minLength: 2, maxLength: 2 }),
    ring: hole,
    path: fc.tuple(coordinate, coordinate, coordinate, coordinate),
    setups,
    jaw: fc.tuple(coordinate, coordinate),
  })
  .map(({ units, tolerances, holes, ring, path: [x, y, dx, dy], setups: list, jaw }) => ({
    edgebite: 1,
    units,
    part: { outline: { rectangle: [80, 60], corner: 5 }, thickness: 10, tolerances },
    limits: { web: 3, knifeEdge: 45 },
    setups: list.map((setup, k) => ({
      ...setup,
      id: `s${k}`,
      // Each touches its stops anew.
      zero: JSON.parse(JSON.stringify(setup.zero).replaceAll('"touch of ', `"touch ${k} of `)),
      stops: SIDES.map((face) => ({ id: `stop ${face}`, face })),
    })),
    keepOut: [
      { id: 'jaw', kind: 'jaw', shape: { rectangle: [20, 20], at: jaw }, from: -20, to: 5 },
      { id: 'strap', kind: 'clamp', shape: { circle: 20, at: [40, 30] }, from: 10, to: 20 },
    ],
    cuts: [
      ...holes.map((one, k) => ({ id: CUTS[k], kind: 'bore', ...one })),
      { id: 'c', kind: 'annular', ...ring, wall: ring.diameter / 5 },
      { id: 'd', kind: 'swept', diameter: 5, depth: 4, path: { svgPath: `M${x} ${y}L${x + dx + 6} ${dy}` } },
    ],
  }));

function oddNumbers(value: unknown): boolean {
  if (typeof value === 'number') return !Number.isFinite(value);
  return typeof value === 'object' && value !== null && Object.values(value).some(oddNumbers);
}

/** Of a chain's end and of a target these are how far it may be off, to either side; else between what a figure lies. */
const isEitherWay = (row: object): boolean => 'roundingError' in row || 'readout' in row || 'links' in row;

/** Errors that add up as squares stay within those that add up, wherever a report tells of both. Returns how often. */
function checkSquares(value: unknown): number {
  if (typeof value !== 'object' || value === null) return 0;
  const row = value as { readonly worst?: number | number[]; readonly rss?: number | number[] };
  const below = Object.values(value).reduce((sum: number, inner) => sum + checkSquares(inner), 0);
  if (row.worst === undefined || row.rss === undefined) return below;
  const [worst, rss] = [row.worst, row.rss].map((one) => (typeof one === 'number' ? [one] : one));
  const least =
    isEitherWay(value) || typeof row.worst === 'number' ? rss?.map(() => 0) : rss?.map(() => worst?.[0]);
  const most = isEitherWay(value) || typeof row.worst === 'number' ? worst : rss?.map(() => worst?.[1]);
  rss?.forEach((one, k) => {
    expect(one, JSON.stringify(value)).toBeGreaterThanOrEqual(least?.[k] as number);
    expect(one, JSON.stringify(value)).toBeLessThanOrEqual(most?.[k] as number);
  });
  return below + 1;
}

/** What each interval and target must satisfy, whatever the job. */
function check(report: Report): void {
  for (const { thickness, interval } of report.webs) {
    if (interval === null) continue;
    expect(interval.worst[0]).toBeLessThanOrEqual(thickness + 1e-9);
    expect(interval.worst[1]).toBeGreaterThanOrEqual(thickness - 1e-9);
  }
  for (const { angle, interval } of report.knifeEdges) {
    if (interval === null) continue;
    // Beside a tangent the rounding of a distance shows as its square root in the angle.
    expect(interval.worst[0]).toBeLessThanOrEqual(angle + 0.01);
    expect(interval.worst[1]).toBeGreaterThanOrEqual(angle - 0.01);
  }
  for (const { readout, targets } of report.setups) {
    for (const { exact, readout: shown, roundingError } of targets) {
      for (const k of [0, 1] as const) {
        expect(Math.abs(roundingError[k])).toBeLessThanOrEqual((readout.resolution / 2) * (1 + 1e-6));
        expect(shown[k] - exact[k]).toBeCloseTo(roundingError[k], 12);
      }
    }
  }
}

it('root of squares lies within the worst case, of a hole that is off at a slant to its web too', () => {
  // One error along x alone shortens a web at 45 degrees by less than its share along it.
  const chainTo = (to: string, tolerance: number) => [
    { touch: to, tip: 10, units: 'mm', reads: 0, tolerance },
  ];
  const setup = (id: string, cut: string) => ({
    id,
    zero: { x: chainTo('left', 1), y: chainTo('front', 0) },
    readout: { units: 'mm', resolution: 1e-6 },
    cuts: [cut],
  });
  const report = examine(
    parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline: { rectangle: [80, 60] }, thickness: 10 },
      limits: { web: 3 },
      setups: [setup('s', 'a'), setup('t', 'b')],
      cuts: [
        { id: 'a', kind: 'bore', center: [30, 25], diameter: 2 },
        { id: 'b', kind: 'bore', center: [32, 27], diameter: 2 },
      ],
    }),
  );
  const interval = report.webs[0]?.interval;
  // The places lie 2 + 1 + 1 to 2 - 1 - 1 apart along x, by 2 along y.
  expect(interval?.worst[0]).toBeCloseTo(2 - 2, 5);
  expect(interval?.worst[1]).toBeCloseTo(Math.hypot(4, 2) - 2, 5);
  expect(checkSquares(report)).toBeGreaterThan(4);
});

it('generated setups give reports that are whole, hold together, and come out the same again', () => {
  fc.assert(
    fc.property(jobs, (document) => {
      const json = JSON.parse(JSON.stringify(document));
      const report = examine(parseJob(json));
      expect(reportSchema.parse(report)).toEqual(report);
      expect(oddNumbers(report)).toBe(false);
      expect(JSON.parse(JSON.stringify(report))).toStrictEqual(report);
      expect(examine(parseJob(json))).toEqual(report);
      check(report);
      expect(unknownNames(report)).toEqual([]);
      expect(checkSquares(report)).toBeGreaterThan(0);
      expect(textReport(report)).not.toMatch(/NaN|Infinity|undefined/);
    }),
    { numRuns: runs(20) },
  );
});
