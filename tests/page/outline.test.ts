import { area, parseJob, parseSvgPath } from '@edgebite/core';
import paper from 'paper';
import { describe, expect, it } from 'vitest';
import { type Matrix, outlineOf } from '../../packages/previewer/page/src/worker/outline.js';

const SAME: Matrix = [1, 0, 0, 1, 0, 0];

const of = (path: string, matrix: Matrix = SAME) => {
  const { drawn, fault } = outlineOf({ shapes: [{ path, matrix }] });
  if (drawn === null) throw new Error(fault);
  return drawn;
};

const fault = (path: string, matrix: Matrix = SAME) => outlineOf({ shapes: [{ path, matrix }] }).fault;

const regionOf = (outline: unknown) =>
  parseJob({ edgebite: 1, units: 'mm', part: { outline, thickness: 1 }, cuts: [] }).outline;

/** A plate with a bite of radius 10 in its upper edge as a screen has it, y down, and a hole of diameter 8. */
const BITTEN = 'M20 30 h30 a10 10 0 0 0 20 0 h30 v40 H20 Z M44 60 a4 4 0 0 1 8 0 a4 4 0 0 1 -8 0 Z';

describe('the outline of a picture', () => {
  it('stands as it is seen, its lower left corner at zero', () => {
    const { outline, box, holes } = of(BITTEN);
    expect(box).toEqual([0, 0, 80, 40]);
    expect(holes).toBe(1);
    // By hand: 80 by 40 without a half disc of radius 10 and a disc of radius 4.
    expect(area(regionOf(outline))).toBeCloseTo(3200 - 50 * Math.PI - 16 * Math.PI, 9);
    // The bite is in the upper edge still: y goes up now, from the middle of the bite at (40, 40).
    const arcs = regionOf(outline)[0]?.outer.flatMap((edge) => (edge.kind === 'arc' ? [edge] : []));
    expect(arcs).toMatchObject([{ center: { x: 40, y: 40 }, radius: 10, ccw: false }]);
  });

  // Against paper.js, which puts a matrix to path data by itself; a turn, a mirror, a size and a shift.
  it.each<[string, Matrix]>([
    ['a turn by a quarter', [0, 1, -1, 0, 7, 9]],
    ['a mirror', [-1, 0, 0, 1, 200, 0]],
    ['a turn, a size and a mirror', [1.2, 1.6, 1.6, -1.2, -5, 3]],
    ['a size of its own', [25.4 / 96, 0, 0, 25.4 / 96, 0, 0]],
  ])('goes through %s as in another library', (_, matrix) => {
    paper.setup([1, 1]);
    const item = new paper.CompoundPath(BITTEN);
    item.transform(new paper.Matrix([...matrix]));
    const { outline, box } = of(BITTEN, matrix);
    expect(box[2]).toBeCloseTo(item.bounds.width, 6);
    expect(box[3]).toBeCloseTo(item.bounds.height, 6);
    // That library draws arcs as cubics, which are off by up to 3 parts in 10,000 of the radius.
    const size = Math.hypot(matrix[0], matrix[1]);
    expect(Math.abs(area(regionOf(outline)) / (size * size * (3200 - 66 * Math.PI)) - 1)).toBeLessThan(1e-9);
    for (const [k, corner] of [...(parseSvgPath(BITTEN)[0]?.edges ?? [])].entries()) {
      const seen = new paper.Point(corner.a.x, corner.a.y).transform(new paper.Matrix([...matrix]));
      const own = { x: seen.x - item.bounds.left, y: item.bounds.bottom - seen.y };
      const edges = parseSvgPath(String(outline.svgPath))[0]?.edges ?? [];
      expect(edges[k]?.a.x).toBeCloseTo(own.x, 6);
      expect(edges[k]?.a.y).toBeCloseTo(own.y, 6);
    }
  });

  it('may come in several shapes', () => {
    const { drawn } = outlineOf({
      shapes: [
        { path: 'M2 2h4v4h-4z', matrix: [1, 0, 0, 1, 10, 0] },
        { path: 'M0 0h30v20h-30z', matrix: SAME },
      ],
    });
    expect(drawn).toMatchObject({ box: [0, 0, 30, 20], holes: 1 });
  });

  it('is refused with its reason where it is none', () => {
    expect(fault('M0 0 C1 2 3 4 5 6 Z')).toBe(
      'is no outline that can be read: at position 5: "C" draws a Bézier curve; only lines and circular arcs (M L H V A Z) are read',
    );
    expect(fault('M0 0 A5 4 0 0 1 9 0 Z')).toMatch(/at position 6: the arc has two radii, 5 and 4/);
    expect(fault('M0 0 H9 V9')).toMatch(/open|close/);
    expect(fault('M0 0 H9 V9 Z M20 0 h3 v3 z')).not.toBeNull();
    expect(fault('M0 0')).toBe('draws nothing');
    for (const matrix of [
      [2, 0, 0, 1, 0, 0],
      [1, 0, 0.5, 1, 0, 0],
      [0, 0, 0, 0, 0, 0],
    ] as const) {
      expect(fault(BITTEN, matrix)).toMatch(/stretched or slanted/);
    }
  });
});

describe('the outline of a text', () => {
  it('is path data where it begins with a command, with its numbers as they stand', () => {
    const text = 'M10 5 H90 V45 H60 A10 10 0 0 0 40 45 H10 Z';
    const { drawn } = outlineOf({ text });
    expect(drawn).toEqual({ outline: { svgPath: text }, box: [10, 5, 90, 45], holes: 0 });
  });

  it('is well-known text where it begins with a word', () => {
    const text =
      'CURVEPOLYGON(COMPOUNDCURVE((0 0,80 0,80 40),(80 40,0 40,0 0)),CIRCULARSTRING(16 20,24 20,16 20))';
    expect(outlineOf({ text }).drawn).toEqual({ outline: { wkt: text }, box: [0, 0, 80, 40], holes: 1 });
  });

  it('is refused with its reason where it is neither', () => {
    expect(outlineOf({ text: 'hello there' }).fault).toMatch(
      /^is no outline that can be read: at position 0: "HELLO"/,
    );
    expect(outlineOf({ text: 'Q1 2 3 4' }).fault).toMatch(/Bézier/);
    expect(outlineOf({ text: 'POLYGON((0 0,9 0,9 9))' }).fault).toMatch(/does not close/);
  });
});
