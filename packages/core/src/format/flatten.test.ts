import Flatten from '@flatten-js/core';
import { describe, expect, it } from 'vitest';
import { circle, rectangle, slot } from '../outline/shapes.js';
import { outlineRegion } from '../outline/validate.js';
import { area, loopsOf, perimeter } from '../region/measure.js';
import { disc, ring } from '../region/region.js';
import { fromFlatten, toFlatten } from './flatten.js';

const PLATE = outlineRegion(rectangle(80, 30, { corner: 4 }), [
  circle(8, { at: { x: 20, y: 15 } }),
  slot(20, 6, { at: { x: 50, y: 15 }, angle: 1 }),
]);

describe('toFlatten', () => {
  // Area and perimeter are the other library's own.
  it('makes a face of each loop and a shape of each edge', () => {
    const polygon = toFlatten(PLATE);
    expect(polygon.faces.size).toBe(3);
    expect(polygon.edges.size).toBe(8 + 2 + 4);
    expect(polygon.area()).toBeCloseTo(area(PLATE), 9);
    const lengths = [...polygon.faces].map((face: Flatten.Face) => face.perimeter);
    expect(lengths.reduce((sum, length) => sum + length, 0)).toBeCloseTo(perimeter(PLATE), 9);
    expect(polygon.contains(new Flatten.Point(20, 15))).toBe(false);
    expect(polygon.contains(new Flatten.Point(30, 15))).toBe(true);
  });

  it('makes an empty polygon of nothing', () => {
    expect(toFlatten([]).faces.size).toBe(0);
    expect(fromFlatten(toFlatten([]))).toEqual([]);
  });
});

describe('fromFlatten', () => {
  it.each([
    ['a plate', PLATE],
    ['a disc', disc({ x: 3, y: -2 }, 1.7)],
    ['a ring', ring({ x: 3, y: -2 }, 1.7, 0.3)],
    ['two parts', [...disc({ x: 0, y: 0 }, 1), ...ring({ x: 5, y: 0 }, 2, 1)]],
  ])('gives back %s', (_, region) => {
    const back = fromFlatten(toFlatten(region));
    expect(back).toHaveLength(region.length);
    expect(loopsOf(back)).toHaveLength(loopsOf(region).length);
    expect(loopsOf(back).flat()).toHaveLength(loopsOf(region).flat().length);
    expect(area(back)).toBeCloseTo(area(region), 10);
    expect(perimeter(back)).toBeCloseTo(perimeter(region), 10);
  });

  it('reads circles, boxes and faces of any direction', () => {
    const polygon = new Flatten.Polygon();
    polygon.addFace(new Flatten.Box(0, 0, 10, 10));
    polygon.addFace(new Flatten.Circle(new Flatten.Point(5, 5), 2));
    polygon.addFace([new Flatten.Point(20, 0), new Flatten.Point(20, 5), new Flatten.Point(25, 0)]);
    const region = fromFlatten(polygon);
    expect(region).toHaveLength(2);
    expect(area(region)).toBeCloseTo(100 - 4 * Math.PI + 12.5, 10);
  });

  it('refuses an open face', () => {
    const polygon = new Flatten.Polygon();
    polygon.addFace([
      Flatten.segment(0, 0, 10, 0),
      Flatten.segment(10, 0, 10, 10),
      Flatten.segment(10, 10, 0, 1),
    ]);
    expect(() => fromFlatten(polygon)).toThrow('fromFlatten: face 0 is open by 1 after its edge 2');
  });
});
