import {
  type Circle,
  examine,
  FitError,
  fitCircle,
  type MeasureWay,
  parseJob,
  type Reading,
  readingOf,
} from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evenly } from '../tools/evenly.js';
import { runs } from '../tools/runs.js';
import { coverage, roundTrips } from './counting.js';
import { deepest, heightOver, pinsBelow, sampledArc, widthAt } from './sampled.js';

const top = { source: 'outline:2', at: { x: 0, y: 0 }, into: { dx: 0, dy: -1 } };
const side = { source: 'outline:3', at: { x: -90, y: 0 }, into: { dx: 1, dy: 0 } };

const taken = (way: MeasureWay, circle: Circle, off = 0, tolerance = 0.01): Reading => ({
  way,
  value: readingOf(way, circle) + off,
  tolerance,
});

describe('from readings to the arc', () => {
  it('depth and opening give back radius and place, within the sampling that they were made with', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 60, noNaN: true }),
        fc.double({ min: 0.15, max: 0.6, noNaN: true }),
        evenly(-0.02, 0.02),
        evenly(-0.02, 0.02),
        (radius, share, dr, dy) => {
          const depth = 2 * radius * share;
          const drawn = { center: { x: 3, y: radius - depth }, radius };
          // What was made is off in radius and in place.
          const made = { center: { x: 3, y: drawn.center.y + dy * radius }, radius: radius * (1 + dr) };
          const half = Math.acos(made.center.y / made.radius);
          const count = 4000;
          const arc = sampledArc(made.center, made.radius, -Math.PI / 2 - half, -Math.PI / 2 + half, count);
          const pin = 2 * radius * 0.2;
          const chord = 1.5 * radius * Math.sin(Math.min(half, 1.2));
          const readings: Reading[] = [
            { way: { kind: 'depth', face: top }, value: deepest(arc, 0), tolerance: 0.01 },
            {
              way: { kind: 'opening', face: top, under: depth / 4 },
              value: widthAt(arc, 0, depth / 4),
              tolerance: 0.01,
            },
            { way: { kind: 'height', chord }, value: heightOver(arc, chord), tolerance: 0.01 },
            {
              way: { kind: 'to pins', face: top, pin, pins: 1 },
              value: pinsBelow(arc, 0, made.center, pin, 1),
              tolerance: 0.01,
            },
          ];
          const fit = fitCircle(drawn, readings);
          const slack = 100 * radius * ((2 * half) / count) ** 2 + 1e-9;
          expect(Math.abs((fit.radius?.value ?? 0) - made.radius)).toBeLessThanOrEqual(slack);
          expect(Math.abs((fit.y?.value ?? 0) - made.center.y)).toBeLessThanOrEqual(slack);
          // Nothing was read along the face: the place along it stays as drawn, and is not told.
          expect(fit.x).toBeNull();
          expect(fit.center.x).toBe(3);
          expect(fit.contradicted).toEqual([]);
        },
      ),
      { numRuns: runs(100) },
    );
  });

  it('a depth alone tells neither radius nor place', () => {
    const drawn = { center: { x: 0, y: 4 }, radius: 12 };
    const fit = fitCircle(drawn, [taken({ kind: 'depth', face: top }, drawn, 0.1)]);
    expect(fit.radius).toBeNull();
    expect(fit.y).toBeNull();
  });

  it('a height over a chord alone tells the radius', () => {
    // r = (c² + 4 h²) / (8 h): Machinery's Handbook, 31st ed., p. 83. Chord 16 and height 6.1: 8.29590...
    const fit = fitCircle({ center: { x: 0, y: 0 }, radius: 25 / 3 }, [
      { way: { kind: 'height', chord: 16 }, value: 6.1, tolerance: 0.01 },
    ]);
    expect(fit.radius?.value).toBeCloseTo((16 ** 2 + 4 * 6.1 ** 2) / (8 * 6.1), 10);
    const at = (h: number) => (16 ** 2 + 4 * h * h) / (8 * h);
    expect(fit.radius?.worst[0]).toBeCloseTo(at(6.11), 10);
    expect(fit.radius?.worst[1]).toBeCloseTo(at(6.09), 10);
  });

  it('depths from two faces and an opening tell all three', () => {
    const drawn = { center: { x: 0, y: 5 }, radius: 20 };
    const made = { center: { x: 0.12, y: 4.9 }, radius: 19.93 };
    const ways: MeasureWay[] = [
      { kind: 'depth', face: top },
      { kind: 'opening', face: top, under: 3 },
      { kind: 'left', face: side },
    ];
    const fit = fitCircle(
      drawn,
      ways.map((way) => taken(way, made)),
    );
    expect(fit.center.x).toBeCloseTo(0.12, 9);
    expect(fit.center.y).toBeCloseTo(4.9, 9);
    expect(fit.radius?.value).toBeCloseTo(19.93, 9);
  });

  it('by root of squares lie in the interval of evenly spread readings', () => {
    // Depth alone moves the place by all of itself once another way tells the radius: chord height h, r = (c² + 4 h²) / (8 h).
    const drawn = { center: { x: 0, y: 4 }, radius: 15 };
    const fit = fitCircle(drawn, [taken({ kind: 'height', chord: 18 }, drawn, 0, 0.01)]);
    const at = (h: number) => (18 ** 2 + 4 * h * h) / (8 * h);
    const h = 15 - Math.sqrt(15 ** 2 - 81);
    // One reading: 95 of 100 of its width, and the slope of the formula.
    expect(fit.radius?.rss).toBeCloseTo((0.95 * 0.01 * (at(h - 1e-6) - at(h + 1e-6))) / 2e-6, 7);
  });
});

describe('an opening near the widest place of an arc', () => {
  // There the same chord lies above and below: two centres read the same, and the wrong one was told.
  it.each([7.4, 15, 30])('of radius %f is read well below it', (radius) => {
    for (const inside of [0.2, 0.33, 0.5]) {
      const report = examine(
        parseJob({
          edgebite: 1,
          units: 'mm',
          part: { outline: { rectangle: [200, 100] }, thickness: 10 },
          cuts: [{ id: 'seat', kind: 'bore', center: [100, 100 - inside * radius], diameter: 2 * radius }],
        }),
      );
      const way = report.checks[0]?.ways.find(({ kind, horn }) => kind === 'opening' && horn === null);
      const off = Math.abs(inside * radius - (way?.under ?? 0)) / radius;
      expect(off).toBeGreaterThan(0.2);
      expect(way?.byPlace).toBeGreaterThan(0.4);
    }
  });
});

describe('generated bites', () => {
  it('measured by their points give radius and centre back, within the sampling', () => {
    const { cases, off, radius, bothAxes } = roundTrips(runs(100), 11);
    expect(off).toBe(0);
    expect(radius / cases).toBeGreaterThan(0.9);
    expect(bothAxes).toBeGreaterThan(0);
  });

  it('lie within the worst case always, and by root of squares in 95 of 100 draws', () => {
    const { byRoot, byWorst, told, contradicted } = coverage(runs(1500), 12);
    expect(byWorst).toBe(told);
    expect(contradicted).toBe(0);
    // Three standard deviations of so many draws, and no less than 1 of 100.
    const slack = Math.max(0.01, 3 * Math.sqrt((0.95 * 0.05) / told));
    expect(Math.abs(byRoot / told - 0.95)).toBeLessThan(slack);
  });
});

describe('readings of which nothing can be made', () => {
  const drawn = { center: { x: 0, y: 4 }, radius: 12 };
  const depth = { kind: 'depth', face: top } as const;

  it.each([
    { why: 'there are none', readings: [], says: /no reading/ },
    {
      why: 'one is no number',
      readings: [{ way: depth, value: Number.NaN, tolerance: 0.1 }],
      says: /finite/,
    },
    { why: 'one is exact', readings: [{ way: depth, value: 8, tolerance: 0 }], says: /tolerance over 0/ },
    {
      why: 'one is far off, as in the other unit',
      readings: [{ way: depth, value: 0.31, tolerance: 0.1 }],
      says: /reading 1 is 0\.31, far from the 8 /,
    },
    {
      why: 'a pin is wider than the seat',
      readings: [
        { way: { kind: 'to pins', face: top, pin: 25, pins: 1 } as const, value: 8, tolerance: 0.1 },
      ],
      says: /cannot be taken/,
    },
  ])('are refused where $why', ({ readings, says }) => {
    expect(() => fitCircle(drawn, readings)).toThrow(FitError);
    expect(() => fitCircle(drawn, readings)).toThrow(says);
  });

  it('are named where they contradict each other', () => {
    const made = { center: { x: 0, y: 3.95 }, radius: 11.9 };
    const good = [
      taken(depth, made),
      taken({ kind: 'opening', face: top, under: 2 }, made),
      taken({ kind: 'height', chord: 15 }, made),
    ];
    expect(fitCircle(drawn, good).contradicted).toEqual([]);
    const [one, two, three] = good as [Reading, Reading, Reading];
    expect(
      fitCircle(drawn, [one, { ...two, value: two.value + 0.3 }, three]).contradicted.length,
    ).toBeGreaterThan(0);
  });
});
