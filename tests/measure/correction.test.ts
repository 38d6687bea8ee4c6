import { type Circle, correctionOf, fitCircle, type MeasureWay, readingOf } from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evenly } from '../tools/evenly.js';
import { runs } from '../tools/runs.js';
import { closings } from './counting.js';

const top = { source: 'outline:2', at: { x: 0, y: 0 }, into: { dx: 0, dy: -1 } };
const side = { source: 'outline:3', at: { x: -90, y: 0 }, into: { dx: 1, dy: 0 } };
const LOWER_HALF = [{ from: -Math.PI, to: 0 }];

const WAYS: readonly MeasureWay[] = [
  { kind: 'depth', face: top },
  { kind: 'opening', face: top, under: 1 },
  { kind: 'left', face: side },
  { kind: 'height', chord: 8 },
];

function measured(drawn: Circle, made: Circle, tolerance: number) {
  return fitCircle(
    drawn,
    WAYS.map((way) => ({ way, value: readingOf(way, made), tolerance })),
  );
}

describe('the correction', () => {
  const drawn = { center: { x: 0, y: 3 }, radius: 12 };

  it('goes on by whole graduations and stops short of what the widest bore leaves', () => {
    // 0.487 short in radius, 0.974 in diameter: 48 graduations of 0.02, less what the readings leave open.
    const fit = measured(drawn, { center: { x: 0, y: 3 }, radius: 11.513 }, 1e-9);
    const onDiameter = correctionOf(drawn, LOWER_HALF, fit, { step: 0.02, on: 'diameter' });
    expect(onDiameter.graduations).toBe(48);
    expect(onDiameter.turn).toBeCloseTo(0.96, 12);
    const onRadius = correctionOf(drawn, LOWER_HALF, fit, { step: 0.02, on: 'radius' });
    expect(onRadius.graduations).toBe(24);
    expect(onRadius.short?.[0]).toBeCloseTo(0.007, 6);
  });

  it('moves against where the centre is off', () => {
    const fit = measured(drawn, { center: { x: 0.1, y: 2.8 }, radius: 11.9 }, 1e-6);
    const { move } = correctionOf(drawn, LOWER_HALF, fit, { step: 0.01, on: 'diameter' });
    expect(move.dx).toBeCloseTo(-0.1, 5);
    expect(move.dy).toBeCloseTo(0.2, 5);
  });

  it('says where the arc already goes past the drawn one', () => {
    // 0.5 too far into the part, and 0.1 small: 0.4 too deep at the lowest place.
    const fit = measured(drawn, { center: { x: 0, y: 2.5 }, radius: 11.9 }, 1e-6);
    const { past } = correctionOf(drawn, LOWER_HALF, fit, { step: 0.01, on: 'diameter' });
    expect(past?.by).toBeCloseTo(0.4, 4);
    expect(past?.at.y).toBeCloseTo(-9.4, 4);
    const fine = measured(drawn, { center: { x: 0, y: 3.05 }, radius: 11.9 }, 1e-6);
    expect(correctionOf(drawn, LOWER_HALF, fine, { step: 0.01, on: 'diameter' }).past).toBeNull();
  });

  it('says so only as far as it is certain: by what is left with the arc at the best end of all that is told', () => {
    // 0.5 too far into the part, told to 0.1 along y, 0.02 along x and 0.05 in radius. At its best the middle is at
    // 2.6 and the radius 11.95: lowest at -9.35, against -9 as drawn. A tilt by 0.02 along x is taken off in full.
    const told = (value: number, off: number) => ({
      value,
      worst: [value - off, value + off] as const,
      rss: off,
    });
    const fit = {
      center: { x: 0, y: 2.5 },
      radius: told(12, 0.05),
      x: told(0, 0.02),
      y: told(2.5, 0.1),
      residuals: [],
      contradicted: [],
    };
    const pastOf = (spans: typeof LOWER_HALF) =>
      correctionOf(drawn, spans, fit, { step: 0.01, on: 'diameter' }).past;
    expect(pastOf(LOWER_HALF)?.by).toBeCloseTo(0.5 - 0.05 - 0.02 - 0.1, 12);
    expect(pastOf(LOWER_HALF)?.at).toEqual({ x: expect.closeTo(0, 9), y: expect.closeTo(-9.5, 9) });
    // Each alone can take it away.
    for (const key of ['x', 'y', 'radius'] as const) {
      const unsure = { ...fit, [key]: told(key === 'radius' ? 12 : fit.center[key], 0.5) };
      expect(correctionOf(drawn, LOWER_HALF, unsure, { step: 0.01, on: 'diameter' }).past).toBeNull();
    }
  });

  it('knows a bore that is too large, and one of which the radius was not told', () => {
    const large = measured(drawn, { center: { x: 0, y: 3 }, radius: 12.05 }, 1e-4);
    expect(correctionOf(drawn, LOWER_HALF, large, { step: 0.01, on: 'diameter' })).toMatchObject({
      state: 'over size',
      graduations: 0,
    });
    const [depth] = WAYS as [MeasureWay];
    const fit = fitCircle(drawn, [{ way: depth, value: 8.9, tolerance: 0.01 }]);
    expect(correctionOf(drawn, LOWER_HALF, fit, { step: 0.01, on: 'diameter' })).toMatchObject({
      state: 'radius not known',
      graduations: null,
    });
  });

  it('refuses a dial without graduations', () => {
    const fit = measured(drawn, drawn, 0.01);
    expect(() => correctionOf(drawn, LOWER_HALF, fit, { step: 0, on: 'radius' })).toThrow(RangeError);
  });

  it('brings a head to size within its graduation after two measurings, and never past it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 0.5, noNaN: true }),
        evenly(-0.3, 0.3),
        evenly(-0.3, 0.3),
        fc.constantFrom({ step: 0.01, on: 'diameter' } as const, { step: 0.02, on: 'radius' } as const),
        fc.array(evenly(-1, 1), { minLength: 8, maxLength: 8 }),
        (short, dx, dy, dial, noise) => {
          const tolerance = 0.001;
          const each = dial.on === 'diameter' ? dial.step / 2 : dial.step;
          // The head as it stands, and how far the readout's zero is off: neither is known to the one who measures.
          let radius = drawn.radius - short;
          const off = { dx, dy };
          const moved = { dx: 0, dy: 0 };
          let open = Number.POSITIVE_INFINITY;
          for (const round of [0, 1]) {
            const made = {
              center: {
                x: drawn.center.x + off.dx + moved.dx,
                y: drawn.center.y + off.dy + moved.dy,
              },
              radius,
            };
            const fit = fitCircle(
              drawn,
              WAYS.map((way, k) => ({
                way,
                value: readingOf(way, made) + tolerance * (noise[4 * round + k] as number),
                tolerance,
              })),
            );
            const { turn, move } = correctionOf(drawn, LOWER_HALF, fit, dial);
            radius += dial.on === 'diameter' ? (turn ?? 0) / 2 : (turn ?? 0);
            moved.dx += move.dx;
            moved.dy += move.dy;
            open = (fit.radius?.worst[1] ?? 0) - (fit.radius?.worst[0] ?? 0);
            expect(radius).toBeLessThanOrEqual(drawn.radius + 1e-9);
          }
          // What the readings leave open comes on top of the graduation.
          expect(drawn.radius - radius).toBeLessThan(each + open);
          expect(Math.hypot(off.dx + moved.dx, off.dy + moved.dy)).toBeLessThan(0.02);
        },
      ),
      { numRuns: runs(200) },
    );
  });
});

describe('a simulated head', () => {
  it('is on size after two measurings of generated bites, moved by dial and readout as told', () => {
    const { cases, onSize, past, short } = closings(runs(25), 21, 1e-4);
    expect(past).toBe(0);
    expect(onSize).toBe(cases);
    // With readings so good, all but the graduation is taken.
    expect(short).toBeLessThan(1.1);
    const rough = closings(runs(25), 22, 0.02);
    expect([rough.onSize, rough.past]).toEqual([rough.cases, 0]);
  });
});
