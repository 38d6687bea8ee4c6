import {
  checksIn,
  disc,
  examine,
  type MeasureWay,
  measurableIn,
  parseJob,
  readingOf,
  rectangle,
  type Seat,
  subtract,
  type Trial,
  trialOf,
} from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evenly } from '../tools/evenly.js';
import { runs } from '../tools/runs.js';
import { rail } from './rail.js';

const DIALS = [
  { step: 0.02, on: 'diameter' },
  { step: 0.01, on: 'radius' },
] as const;

/** A block of 120 by 60 with a seat in its back edge. */
function seatIn(radius: number, over: number) {
  const named = rectangle(120, 60).map((edge, k) => ({ ...edge, source: `outline:${k}` }));
  const bore = disc({ x: 60, y: 60 + over }, radius).map(({ outer, holes }) => ({
    outer: outer.map((edge) => ({ ...edge, source: 'cut:seat' })),
    holes,
  }));
  const region = subtract([{ outer: named, holes: [] }], [bore]);
  const gauges = { pins: [6, 10, 16], balls: [], feet: [], shortest: 10 };
  const [check] = checksIn([{ from: 0, to: 10, region }], gauges);
  if (check === undefined || measurableIn(region).seats.length !== 1) throw new Error('there is no seat');
  return check;
}

/** The line that a reading falls on: the first that is no smaller a bore; undefined past the last. */
function lineOf({ rows }: Trial, reading: number) {
  const [first, last] = [rows[0], rows.at(-1)];
  const rises = (last?.reading ?? 0) > (first?.reading ?? 0);
  return rows.find((row) => (rises ? row.reading >= reading : row.reading <= reading));
}

const places = { leaves: 0.5, good: 0.02, place: 0.03 };

describe('a trial cut', () => {
  it('is as deep as said, and its table begins at twice of that and ends at size', () => {
    const { seat, ways } = seatIn(15, 4);
    const trial = trialOf(seat, ways, { dial: DIALS[0], ...places }) as Trial;
    expect(trial.radius).toBeCloseTo(14.5, 12);
    const way = ways[trial.way]?.way as MeasureWay;
    expect(trial.reading).toBe(readingOf(way, { center: seat.center, radius: 14.5 }));
    const radii = trial.rows.map(({ radius }) => radius);
    expect(Math.min(...radii)).toBeGreaterThanOrEqual(14 - 1e-9);
    expect(Math.max(...radii)).toBeLessThanOrEqual(15 + 1e-9);
    expect(radii).toEqual([...radii].sort((a, b) => a - b));
    expect(trial.rows.length).toBeGreaterThanOrEqual(7);
    expect(trial.rows.length).toBeLessThanOrEqual(22);
  });

  it('leaves less where the arc is flat, and has no table where nothing tells it', () => {
    // A bite of 1 in radius 15: a quarter of 1 is left.
    const flat = seatIn(15, 14);
    const trial = trialOf(flat.seat, flat.ways, { dial: DIALS[0], ...places, place: 0 });
    expect(trial?.leaves).toBeCloseTo(0.25, 9);
    expect(trialOf(flat.seat, flat.ways, { dial: DIALS[0], ...places, good: 2 })).toBeNull();
    expect(trialOf(flat.seat, [], { dial: DIALS[0], ...places })).toBeNull();
  });

  it.each([
    [{ good: 0 }, 'what a reading is good to is a finite number over 0, not 0'],
    [{ leaves: Number.NaN }, 'trialOf: plan.leaves is NaN; it must be a finite number'],
    [{ place: -1 }, 'how far the centre may be off is a finite number from 0 on, not -1'],
    [
      { dial: { step: 0, on: 'radius' as const } },
      'trialOf: plan.dial.step is 0; it must be a finite number over 0',
    ],
  ])('is refused with %o', (over, says) => {
    const { seat, ways } = seatIn(15, 4);
    expect(() => trialOf(seat, ways, { dial: DIALS[0], ...places, ...over })).toThrow(says);
  });

  it('measured and set by its table never goes past size, and comes near to it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 8, max: 25, noNaN: true }),
        evenly(-0.6, 0.8),
        fc.constantFrom(...DIALS),
        evenly(-0.45, 0.45),
        fc.array(evenly(-1, 1), { minLength: 3, maxLength: 3 }),
        (radius, over, dial, off, [x = 0, y = 0, read = 0]) => {
          const { seat, ways }: { seat: Seat; ways: ReturnType<typeof seatIn>['ways'] } = seatIn(
            radius,
            over * radius,
          );
          const trial = trialOf(seat, ways, { dial, ...places });
          if (trial === null) return;
          const way = ways[trial.way]?.way as MeasureWay;
          // The head cuts more or less than it is set to, about a centre that is off.
          const made = {
            center: {
              x: seat.center.x + (x * places.place) / Math.SQRT2,
              y: seat.center.y + (y * places.place) / Math.SQRT2,
            },
            radius: trial.radius + off * trial.leaves,
          };
          const line = lineOf(trial, readingOf(way, made) + read * places.good);
          const each = dial.on === 'diameter' ? dial.step / 2 : dial.step;
          const set = made.radius + (line?.graduations ?? 0) * each;
          expect(set).toBeLessThanOrEqual(seat.radius + 1e-9);
          // Short by the graduation, twice what is not known, and the step from line to line.
          const step = Math.max(
            ...trial.rows.slice(1).map((row, k) => row.radius - (trial.rows[k]?.radius ?? 0)),
          );
          expect(seat.radius - set).toBeLessThan(each + 2.5 * trial.uncertain + step);
        },
      ),
      { numRuns: runs(150) },
    );
  });
});

const zero = {
  x: [{ touch: 'left', tip: 10, reads: 0, tolerance: 0.01 }],
  y: [{ touch: 'front', tip: 10, reads: 0, tolerance: 0.03 }],
};

describe('the trial cut of a report', () => {
  const trialsOf = (over: Record<string, unknown>) =>
    examine(parseJob(rail(over))).checks.map((c) => c.trial);

  it('is there with a head that has a dial, and with no other tool', () => {
    expect(trialsOf({})[0]).toMatchObject({ tool: 'head', diameter: 29, leaves: 0.5, place: 0, good: 0.02 });
    const tool = { id: 'head', kind: 'boring head', toolMaterial: 'HSS', cuts: ['seat'] };
    expect(trialsOf({ tools: [tool] })).toEqual([null]);
    expect(trialsOf({ tools: undefined })).toEqual([null]);
  });

  it.each([{}, { turn: 180 }, { flip: 'x' }, { flip: 'y', turn: 90 }])(
    'counts how far the centre may be off, with the part lying as %o',
    (lie) => {
      const from = 'flip' in lie ? { from: 'bottom' } : {};
      const [trial] = trialsOf({
        setups: [{ id: 'a', ...lie, zero, cuts: ['seat'] }],
        cuts: [{ id: 'seat', kind: 'bore', center: [40, 44], diameter: 30, ...from }],
      });
      // Half a step of a readout of 0.005 beside each tolerance.
      expect(trial?.place).toBeCloseTo(Math.hypot(0.0125, 0.0325), 12);
      expect(trial?.rows.at(-1)?.graduations).toBe(0);
    },
  );

  it('leaves what the passes leave for the last one', () => {
    const passes = { kind: 'open out', bite: 1, finish: 0.3 };
    const [trial] = trialsOf({
      cuts: [{ id: 'seat', kind: 'bore', center: [40, 44], diameter: 30, passes }],
    });
    expect(trial?.diameter).toBeCloseTo(29.4, 12);
  });

  it('is there for the arc of each height', () => {
    // The upper half of the seat is opened to 34 by a cut of its own.
    const cuts = [
      { id: 'seat', kind: 'bore', center: [40, 44], diameter: 30 },
      { id: 'upper', kind: 'bore', center: [40, 44], diameter: 34, depth: 8 },
    ];
    const tools = [{ ...(rail().tools[0] as object), cuts: ['seat', 'upper'] }];
    const { checks } = examine(parseJob(rail({ cuts, tools })));
    expect(checks.map(({ cut, from, to, trial }) => [cut, from, to, trial?.diameter])).toEqual([
      ['seat', 0, 12, 29],
      ['upper', 12, 20, 33],
    ]);
  });
});
