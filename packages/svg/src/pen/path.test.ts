import type { ReportRegion } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { BODY_AREA, block, SLUG_AREA } from '../../fixtures/block.js';
import { commands, pathArea } from '../../fixtures/path-area.js';
import { arc, circle, line, region } from '../../fixtures/shapes.js';
import type { View } from '../view/view.js';
import { pathNumber, regionPath } from './path.js';

const view: View = { middle: [40, 15], at: [100, 100], factor: 2 };

/** Area of a region's drawing, in units of the part. The outer loop runs the other way on the sheet: y flips. */
function drawnArea(shape: ReportRegion, { factor }: View = view): number {
  return -pathArea(regionPath(shape, { ...view, factor })) / factor ** 2;
}

describe('path data', () => {
  // Machinery's Handbook, circle segments; the rest are right triangles and full circles.
  it('gives back the area of the pieces', () => {
    const [body, slug] = block.pieces;
    expect(drawnArea(body?.view ?? [])).toBeCloseTo(BODY_AREA, 3);
    expect(drawnArea(slug?.view ?? [])).toBeCloseTo(SLUG_AREA, 3);
  });

  it('draws arcs as arcs, one for each of less than a third of a turn', () => {
    const sixth = arc([10, 0], [5, 5 * Math.sqrt(3)], [0, 0], 10, true, 'outline:0');
    const slice = region([
      line([0, 0], [10, 0], 'outline:1'),
      sixth,
      line([5, 5 * Math.sqrt(3)], [0, 0], ''),
    ]);
    expect(commands(regionPath(slice, view)).map(({ letter }) => letter)).toEqual([...'MLALZ']);
    expect(drawnArea(slice)).toBeCloseTo((Math.PI * 100) / 6, 3);
  });

  it.each([181, 270, 359, 359.9999])('draws an arc of %f degrees in full', (degrees) => {
    const angle = (degrees * Math.PI) / 180;
    const end = [10 * Math.cos(angle), 10 * Math.sin(angle)] as const;
    const shape = region([arc([10, 0], end, [0, 0], 10, true, 'cut:a'), line(end, [10, 0], 'cut:a')]);
    // Circle segment: r²/2 (angle - sin angle), Machinery's Handbook. The sheet is rounded to a ten-thousandth.
    expect(drawnArea(shape)).toBeCloseTo(50 * (angle - Math.sin(angle)), 2);
  });

  it('draws a half turn without the jump of the centre that rounded ends give', () => {
    const third = 1 / 3;
    const drawn = regionPath(region(circle([third, third], 70 + third, true, 'cut:a')), view);
    expect(pathArea(drawn) / -4).toBeCloseTo(Math.PI * (70 + third) ** 2, 1);
    for (const { letter, numbers } of commands(drawn)) {
      if (letter === 'A') expect(numbers.slice(2, 5)).toEqual([0, 0, 0]);
    }
  });

  it('keeps a huge circle through the part where it is', () => {
    const radius = 1e5;
    const rise = radius - Math.sqrt(radius ** 2 - 40 ** 2);
    const shape = region([
      line([80, 0], [0, 0], 'outline:0'),
      arc([0, 0], [80, 0], [40, -Math.sqrt(radius ** 2 - 40 ** 2)], radius, false, 'cut:a'),
    ]);
    // A segment so flat has two thirds of its box (Archimedes, quadrature of the parabola).
    expect(Math.abs(drawnArea(shape))).toBeCloseTo((2 / 3) * 80 * rise, 2);
    expect(regionPath(shape, view)).toContain('A');
  });

  it('writes plain numbers only', () => {
    expect([1e-9, -1e-9, 1234567.123456, 0.1 + 0.2].map((value) => pathNumber(value))).toEqual([
      '0',
      '0',
      '1234567.1235',
      '0.3',
    ]);
    expect(regionPath(region(circle([1e6, -1e6], 3e5, true, 'cut:a')), view)).not.toMatch(/e|NaN|Infinity/);
  });

  it('is empty for an empty region', () => {
    expect(regionPath([], view)).toBe('');
  });
});
