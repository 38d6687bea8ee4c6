import { describe, expect, it } from 'vitest';
import { arcEdge } from '../geometry/edge.js';
import { rectangle } from '../outline/shapes.js';
import { outlineRegion } from '../outline/validate.js';
import { area, perimeter } from '../region/measure.js';
import { disc, ring } from '../region/region.js';
import { TextError } from './text-error.js';
import { parseWkt, regionFromWkt } from './wkt.js';
import { toWkt } from './wkt-write.js';

function regionOf(text: string) {
  const shape = parseWkt(text);
  if (shape.kind === 'polygons') throw new Error('several polygons');
  const [outer, ...holes] = (shape.kind === 'curve' ? [shape.chain] : shape.rings).map(({ edges }) => edges);
  return outlineRegion(outer ?? [], holes);
}

describe('parseWkt', () => {
  // PostGIS regression test sql-mm-curvepoly: 3 pi - 1/2, whole boundary 17.630865717 (by elementary geometry).
  it('reads a curve polygon with a circular outer ring', () => {
    const region = regionOf(
      'CURVEPOLYGON(CIRCULARSTRING(-2 0,-1 -1,0 0,1 -1,2 0,0 2,-2 0),(-1 0,0 0.5,1 0,0 1,-1 0))',
    );
    expect(area(region)).toBeCloseTo(3 * Math.PI - 0.5, 12);
    expect(perimeter(region)).toBeCloseTo(17.630865717, 9);
    expect(region[0]?.holes).toHaveLength(1);
  });

  // ISO/IEC 13249-3 by way of the PostGIS manual: the circle with centre (2,2) and radius 2 sqrt 2.
  it('reads a circle in four arcs', () => {
    expect(area(regionOf('CIRCULARSTRING(0 0,4 0,4 4,0 4,0 0)'))).toBeCloseTo(8 * Math.PI, 12);
  });

  // PostGIS manual: with the same start and end the middle point is the opposite one.
  it('reads a circle given by two opposite points', () => {
    const region = regionOf('CurvePolygon (CircularString (0 0, 4 0, 0 0))');
    expect(area(region)).toBeCloseTo(4 * Math.PI, 12);
    expect(region[0]?.outer.map((edge) => edge.kind === 'arc' && edge.center)).toEqual([
      { x: 2, y: 0 },
      { x: 2, y: 0 },
    ]);
  });

  // GEOS tests, TestOverlayCurvesAA.xml, inputs of cases 1 to 3; areas and lengths by elementary geometry.
  it.each([
    [
      'CURVEPOLYGON(COMPOUNDCURVE(CIRCULARSTRING(10 100,100 10,100 60),(100 60,10 100)))',
      13852.543277,
      426.668495,
    ],
    [
      'CURVEPOLYGON(COMPOUNDCURVE((50 50,200 50,200 200,50 200),CIRCULARSTRING(50 200,-9 100,50 50)))',
      29646.244224,
      663.194738,
    ],
    [
      'CURVEPOLYGON((20 20,160 20,160 160,20 160,20 20),COMPOUNDCURVE(CIRCULARSTRING(140 40,115 115,40 140),(40 140,40 40,140 40)))',
      11105.506109,
      923.924184,
    ],
    ['POLYGON((80 100,220 100,220 240,80 240,80 100))', 19600, 560],
    [
      'CURVEPOLYGON(COMPOUNDCURVE((20 340,330 380,50 40),CIRCULARSTRING(50 40,70 220,20 340)))',
      39171.758041,
      1067.751403,
    ],
    ['POLYGON((210 320,140 270,0 270,140 220,210 320))', 5250, 496.749496],
  ])('reads %s', (text, size, length) => {
    expect(area(regionOf(text))).toBeCloseTo(size, 6);
    expect(perimeter(regionOf(text))).toBeCloseTo(length, 6);
  });

  it('reads lower case, odd spaces, signs and exponents', () => {
    expect(area(regionOf(' polygon\n((0 0, +4 0 ,4e0 .5E1, 0 5.0,0 0 ) )  '))).toBe(20);
  });

  it('reads open curves', () => {
    const shape = parseWkt(
      'COMPOUNDCURVE((0 0, 10 0), CIRCULARSTRING(10 0, 15 5, 10 10), LINESTRING(10 10, 0 10))',
    );
    if (shape.kind !== 'curve') throw new Error('no curve');
    expect(shape.chain.closed).toBe(false);
    expect(shape.chain.edges.map(({ kind }) => kind)).toEqual(['line', 'arc', 'line']);
    expect(shape.chain.edges[1]).toMatchObject({ center: { x: 10, y: 5 }, radius: 5, ccw: true });
  });

  it('makes a line of three points in line, and takes points given twice once', () => {
    expect(parseWkt('CIRCULARSTRING(0 0, 1 1, 3 3)')).toMatchObject({ chain: { edges: [{ kind: 'line' }] } });
    expect(parseWkt('LINESTRING(0 0, 0 0, 1 1, 1 1)')).toMatchObject({
      chain: { edges: [{ kind: 'line' }] },
    });
  });

  it('turns with the middle point', () => {
    const arc = (text: string) => {
      const shape = parseWkt(text);
      return shape.kind === 'curve' ? shape.chain.edges[0] : undefined;
    };
    expect(arc('CIRCULARSTRING(5 0, 0 5, -5 0)')).toMatchObject({ ccw: true, radius: 5 });
    expect(arc('CIRCULARSTRING(5 0, 0 -5, -5 0)')).toMatchObject({ ccw: false, radius: 5 });
    expect(arc('CIRCULARSTRING(5 0, -5 0, 0 -5)')).toMatchObject({ ccw: true, radius: 5 });
  });

  it.each([
    ['', 0, 'no shape is named here'],
    ['MULTIPOINT((0 0))', 0, '"MULTIPOINT" is named here; these are read'],
    ['MULTIPOLYGON((0 0,1 0,0 1,0 0))', 14, '"(" is expected; "0" is here'],
    ['MULTIPOLYGON(CURVEPOLYGON((0 0,1 0,0 1,0 0)))', 13, '"CURVEPOLYGON" is not read'],
    ['MULTISURFACE(POINT(0 0))', 13, '"POINT" cannot be one of several surfaces'],
    ['MULTISURFACE Z EMPTY', 13, '"Z" is not read'],
    ['POINT(1 2)', 0, '"POINT"'],
    ['POLYGON', 7, '"(" is expected; the text ends here'],
    ['LINESTRING EMPTY', 0, 'the shape is empty'],
    ['POLYGON Z ((0 0 1,1 0 1,0 1 1,0 0 1))', 8, '"Z" is not read'],
    ['POLYGON((0 0 5,1 0 5,0 1 5,0 0 5))', 13, 'more than two numbers'],
    ['POLYGON((0 0,1 0,0 1))', 8, 'the ring does not close'],
    ['POLYGON((0 0,1 0,0 1,0 0)', 25, '"(" is expected'.replace('(', ')')],
    ['POLYGON((0 0,1 0,0 1,0 0))x', 26, 'the end of the text is expected; "x" is here'],
    ['POLYGON((0 0,1 zero,0 1,0 0))', 15, 'y is expected; "zero" is here'],
    ['POLYGON((0 0,1 0;0 1,0 0))', 16, '")" is expected; ";" is here'],
    ['POLYGON((0 0,1e999 0,0 1,0 0))', 13, 'too large a number'],
    ['POLYGON(CIRCULARSTRING(0 0,4 0,0 0))', 8, 'is not read'],
    ['LINESTRING(0 0)', 11, 'at least two points'],
    ['LINESTRING(1 1, 1 1)', 11, 'at least two points'],
    ['CIRCULARSTRING(0 0, 1 1)', 15, 'an odd number of points, at least three; this one has 2'],
    ['CIRCULARSTRING(0 0, 1 1, 2 0, 3 1)', 15, 'this one has 4'],
    ['CIRCULARSTRING(0 0, 0 0, 2 0)', 20, 'the middle point lies on an end'],
    ['CIRCULARSTRING(0 0, 0 0, 0 0)', 20, 'both ends'],
    ['CIRCULARSTRING(0 0, 5 5, 2 2)', 20, 'in line with the ends but not between'],
    ['CURVEPOLYGON(POINT(0 0))', 13, '"POINT" cannot be a ring'],
    ['COMPOUNDCURVE((0 0,1 0),(1 1,2 2))', 24, 'starts at (1, 1); the one before ends at (1, 0)'],
    ['COMPOUNDCURVE(COMPOUNDCURVE((0 0,1 0)))', 14, 'cannot be part of a compound curve'],
    ['SRID=4326;POLYGON((0 0,1 0,0 1,0 0))', 0, '"SRID"'],
  ])('refuses %s at position %d', (text, position, what) => {
    const run = () => parseWkt(text);
    expect(run).toThrow(TextError);
    expect(run).toThrow(what);
    expect(run).toThrow(`at position ${position}: `);
  });
});

describe('regionFromWkt', () => {
  // OGC 06-103r4, 6.2 (example 7.2.6): MULTIPOLYGON(((10 10,...)),((60 60,...))); areas by elementary geometry.
  it('reads several polygons', () => {
    const text =
      'MULTIPOLYGON (((10 10, 10 20, 20 20, 20 15, 10 10)), ((60 60, 70 70, 80 60, 60 60)), EMPTY)';
    const region = regionFromWkt(text);
    expect(region).toHaveLength(2);
    expect(area(region)).toBeCloseTo(75 + 100, 12);
  });

  it('reads nothing, in every way to say it', () => {
    for (const kind of ['POLYGON', 'CURVEPOLYGON', 'MULTIPOLYGON', 'MULTISURFACE'])
      expect(regionFromWkt(`${kind} EMPTY`)).toEqual([]);
    expect(regionFromWkt('MULTISURFACE (EMPTY, POLYGON EMPTY)')).toEqual([]);
    expect(regionFromWkt(toWkt([]))).toEqual([]);
  });

  it('makes one part of polygons that overlap, and refuses a curve that does not close', () => {
    const region = regionFromWkt(
      'MULTISURFACE (((0 0, 4 0, 4 4, 0 4, 0 0)), CURVEPOLYGON ((2 2, 2 6, 6 6, 6 2, 2 2)))',
    );
    expect(region).toHaveLength(1);
    expect(area(region)).toBeCloseTo(28, 12);
    expect(area(regionFromWkt('CIRCULARSTRING (0 0, 4 0, 0 0)'))).toBeCloseTo(4 * Math.PI, 12);
    expect(() => regionFromWkt('LINESTRING (0 0, 4 0, 4 4)')).toThrow('does not close');
  });

  it('brings back what was written, parts in holes and all', () => {
    const whole = [
      ...ring({ x: 0, y: 0 }, 9, 5),
      ...disc({ x: 0.3, y: -0.1 }, 2),
      ...outlineRegion(rectangle(7, 3, { at: { x: 20, y: 1 / 3 }, corner: 1 })),
    ];
    const back = regionFromWkt(toWkt(whole));
    expect(back.map(({ holes }) => holes.length)).toEqual([1, 0, 0]);
    expect(area(back)).toBeCloseTo(area(whole), 11);
    expect(perimeter(back)).toBeCloseTo(perimeter(whole), 11);
  });
});

describe('toWkt', () => {
  it('writes polygons, curve polygons and several of them', () => {
    expect(toWkt(outlineRegion(rectangle(4, 3)))).toBe('POLYGON ((0 0, 4 0, 4 3, 0 3, 0 0))');
    expect(toWkt(disc({ x: 0, y: 0 }, 1))).toMatch(/^CURVEPOLYGON \(CIRCULARSTRING \(0 -1, 1 [^,]*, 0 1, /);
    expect(toWkt([])).toBe('CURVEPOLYGON EMPTY');
    const two = [
      ...outlineRegion(rectangle(1, 1)),
      ...outlineRegion(rectangle(1, 1, { at: { x: 5, y: 5 } })),
    ];
    expect(toWkt(two)).toBe(
      'MULTISURFACE (POLYGON ((0 0, 1 0, 1 1, 0 1, 0 0)), POLYGON ((5 5, 6 5, 6 6, 5 6, 5 5)))',
    );
  });

  it('comes back with the same area and boundary', () => {
    for (const region of [
      outlineRegion(rectangle(80, 30, { corner: 4 })),
      ring({ x: 0.1, y: -7 }, 3, 0.7),
      outlineRegion([
        arcEdge({ x: 5, y: 0 }, { x: 4.999, y: -0.09999499987499375 }, { x: 0, y: 0 }, true),
        { kind: 'line', a: { x: 4.999, y: -0.09999499987499375 }, b: { x: 5, y: 0 } },
      ]),
    ]) {
      const back = regionOf(toWkt(region));
      expect(area(back)).toBeCloseTo(area(region), 10);
      expect(perimeter(back)).toBeCloseTo(perimeter(region), 10);
    }
  });
});
