import {
  area,
  disc,
  edgesToJson,
  examine,
  loopsOf,
  normalize,
  parseJob,
  perimeter,
  regionFromJson,
  regionToJson,
  ring,
} from '@edgebite/core';
import { outlines } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../tools/runs.js';

describe('a region as JSON', () => {
  it('comes back from its text the same, edge for edge', () => {
    fc.assert(
      fc.property(outlines, (region) => {
        const text = JSON.stringify(regionToJson(region));
        const back = regionFromJson(JSON.parse(text));
        const count = (list: typeof region): number => loopsOf(list).flat().length;
        expect(count(back)).toBe(count(normalize(loopsOf(region), 'evenodd')));
        expect(area(back)).toBeCloseTo(area(region), 9);
        expect(perimeter(back)).toBeCloseTo(perimeter(region), 9);
      }),
      { numRuns: runs(60) },
    );
  });

  it('keeps holes, parts and the names of edges', () => {
    const region = [...ring({ x: 0, y: 0 }, 5, 2, 'cut:ring'), ...disc({ x: 20, y: 0 }, 3, 'outline:0')];
    const back = regionFromJson(regionToJson(region));
    expect(back.map(({ holes }) => holes.length)).toEqual([1, 0]);
    expect(new Set(loopsOf(back).flatMap((loop) => loop.map(({ source }) => source)))).toEqual(
      new Set(['cut:ring', 'outline:0']),
    );
    expect(edgesToJson([{ kind: 'line', a: { x: -0, y: 1 }, b: { x: 1, y: -0 } }])).toEqual([
      { kind: 'line', a: [0, 1], b: [1, 0] },
    ]);
  });

  it('reads the regions of a report', () => {
    const report = examine(
      parseJob({
        edgebite: 1,
        units: 'mm',
        part: { outline: { rectangle: [80, 30], corner: 4 }, thickness: 12 },
        cuts: [{ id: 'seat', kind: 'annular', center: [70, 14], diameter: 26, wall: 4.5 }],
      }),
    );
    for (const piece of report.pieces) {
      expect(area(regionFromJson(piece.view))).toBeCloseTo(piece.area, 9);
    }
  });

  it.each([
    [null, 'the region must be a list'],
    [[5], '/0 must be an object'],
    [[{ outer: [], holes: {} }], '/0/holes must be a list'],
    [[{ outer: [{ kind: 'spline' }], holes: [] }], '/0/outer/0/kind must be "line" or "arc"'],
    [[{ outer: [{ kind: 'line', a: [0], b: [1, 1] }], holes: [] }], '/0/outer/0/a must be two numbers'],
    [[{ outer: [{ kind: 'line', a: [0, 0], b: [1, null] }], holes: [] }], '/0/outer/0/b must be two numbers'],
    [[{ outer: [{ kind: 'line', a: [0, 0], b: [0, 0] }], holes: [] }], '/0/outer/0 lineEdge: both ends'],
    [[{ outer: [{ kind: 'line', a: [0, 0], b: [1, 0] }], holes: [] }], '/0/outer/0 ends 1 short'],
    [
      [{ outer: [{ kind: 'arc', a: [0, 0], b: [1, 0], center: [5, 5] }], holes: [] }],
      'ccw must be true or false',
    ],
    [
      [{ outer: [{ kind: 'arc', a: [0, 0], b: [1, 0], center: [5, 'x'], ccw: true }], holes: [] }],
      '/0/outer/0/center must be two numbers',
    ],
  ])('refuses %j, with the place', (json, message) => {
    expect(() => regionFromJson(json)).toThrow(message);
    expect(() => regionFromJson(json)).toThrow(RangeError);
  });
});
