import { axesOf, type Lie, type Link, laid, placeUnder, readoutAt, type Setup } from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evenly } from '../tools/evenly.js';
import { runs } from '../tools/runs.js';

type Matrix = readonly [readonly [number, number], readonly [number, number]];

const times = (a: Matrix, b: Matrix): Matrix =>
  [0, 1].map((i) => [0, 1].map((j) => a[i]![0] * b[0][j]! + a[i]![1] * b[1][j]!)) as unknown as Matrix;

/** Mirror about an axis, then turn: plain matrix algebra. */
function matrixOf({ flip, turn }: Lie): Matrix {
  const t = (turn * Math.PI) / 180;
  const rotation: Matrix = [
    [Math.cos(t), -Math.sin(t)],
    [Math.sin(t), Math.cos(t)],
  ];
  if (flip === null) return rotation;
  return times(
    rotation,
    flip === 'x'
      ? [
          [1, 0],
          [0, -1],
        ]
      : [
          [-1, 0],
          [0, 1],
        ],
  );
}

const lies = fc.record({
  flip: fc.constantFrom(null, 'x' as const, 'y' as const),
  turn: fc.oneof(fc.constantFrom(0, 90, 180, 270, -90, 360, -360, 45), evenly(-360, 360)),
});
const coordinate = evenly(-200, 200);
const place = fc.record({ x: coordinate, y: coordinate });

const setups = fc
  .record({
    lie: lies,
    readout: fc.constantFrom('mm' as const, 'inch' as const),
    at: place,
    x: fc.array(evenly(-50, 50), { minLength: 1, maxLength: 5 }),
    y: fc.array(evenly(-50, 50), { minLength: 1, maxLength: 5 }),
  })
  .map(({ lie, readout, at, x, y }) => {
    const links = (lengths: readonly number[]): Link[] =>
      lengths.map((length) => ({
        kind: 'measured',
        action: 0,
        name: null,
        of: null,
        side: null,
        length: Math.abs(length),
        by: length,
        units: readout,
        way: length < 0 ? -1 : 1,
        tolerance: null,
      }));
    const contact = { middle: 0, half: 0, lever: 0 };
    const setup: Setup = {
      id: 'a',
      name: null,
      lie,
      angleTolerance: 0,
      stops: [],
      readout: { units: readout, resolution: 0.001 },
      heights: { units: readout, resolution: 0.001, on: 'readout', sense: 1 },
      zero: {
        x: { place: '', at: at.x, links: links(x), contact },
        y: { place: '', at: at.y, links: links(y), contact },
        z: null,
      },
      cuts: [],
    };
    return { setup, sums: [x, y].map((list) => list.reduce((a, b) => a + b, 0)) };
  });

describe('how a part lies', () => {
  it('has the machine axes of the matrix', () => {
    fc.assert(
      fc.property(lies, (lie) => {
        const { x, y } = axesOf(lie);
        const m = matrixOf(lie);
        expect(x.dx).toBeCloseTo(m[0][0], 12);
        expect(x.dy).toBeCloseTo(m[0][1], 12);
        expect(y.dx).toBeCloseTo(m[1][0], 12);
        expect(y.dy).toBeCloseTo(m[1][1], 12);
      }),
      { numRuns: runs(300) },
    );
  });

  it('is exact in quarter turns', () => {
    expect(axesOf({ flip: null, turn: 90 })).toEqual({ x: { dx: 0, dy: -1 }, y: { dx: 1, dy: 0 } });
    expect(axesOf({ flip: 'x', turn: 180 })).toEqual({ x: { dx: -1, dy: 0 }, y: { dx: 0, dy: 1 } });
    expect(axesOf({ flip: null, turn: -270 })).toEqual(axesOf({ flip: null, turn: 90 }));
  });

  it('gives readouts as the matrix does', () => {
    fc.assert(
      fc.property(setups, place, ({ setup, sums }, p) => {
        const lay = laid(setup, { units: 'mm', tolerances: null, sizeTolerance: null });
        const m = matrixOf(setup.lie);
        const scale = setup.readout.units === 'mm' ? 1 : 25.4;
        const shown = readoutAt(lay, p);
        for (const k of [0, 1] as const) {
          const along = m[k][0] * p.x + m[k][1] * p.y;
          const at = setup.zero[k === 0 ? 'x' : 'y'].at;
          expect(Math.abs(shown[k] - ((along - at) / scale + sums[k]!))).toBeLessThan(1e-11);
        }
      }),
      { numRuns: runs(300) },
    );
  });

  it('leads from part to readout and back within 1e-12 of the size of the numbers', () => {
    fc.assert(
      fc.property(setups, place, ({ setup }, p) => {
        const lay = laid(setup, { units: 'mm', tolerances: null, sizeTolerance: null });
        const back = placeUnder(lay, readoutAt(lay, p));
        const size = Math.max(
          1,
          Math.abs(p.x),
          Math.abs(p.y),
          Math.abs(setup.zero.x.at),
          Math.abs(setup.zero.y.at),
        );
        expect(Math.hypot(back.x - p.x, back.y - p.y)).toBeLessThan(1e-12 * size);
      }),
      { numRuns: runs(500) },
    );
  });
});
