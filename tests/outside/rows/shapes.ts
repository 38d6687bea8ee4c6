import {
  area,
  disc,
  intersect,
  lineEdge,
  loopsOf,
  offset,
  outlineRegion,
  parseSvgPath,
  parseWkt,
  perimeter,
  placeThrough,
  type Region,
  rectangle,
  ring,
  segmentOfDepth,
  segmentOfOpeningAndDepth,
  subtract,
  sweptRegion,
} from '@edgebite/core';
import { boxRegion } from '@edgebite/core/testing';
import { exact, loosely, printed, type Reference } from '../reference.js';

const DEGREES = 180 / Math.PI;
const at = (x: number, y: number) => ({ x, y });
const bite = (r: number, h: number): number =>
  area(intersect([disc(at(0, 0), r), boxRegion(-3 * r, r - h, 3 * r, 3 * r)]));
const lens = (r: number, s: number, d: number): number =>
  area(intersect([disc(at(0, 0), r), disc(at(d, 0), s)]));
const square = (side: number): Region => boxRegion(0, 0, side, side);
const triangle = outlineRegion([
  lineEdge(at(0, 0), at(4, 0)),
  lineEdge(at(4, 0), at(0, 3)),
  lineEdge(at(0, 3), at(0, 0)),
]);

function ofPath(text: string): Region {
  const [chain] = parseSvgPath(text);
  return outlineRegion(chain?.edges ?? []);
}

function ofWkt(text: string): Region {
  const shape = parseWkt(text);
  if (shape.kind === 'polygons') throw new Error('several polygons');
  const rings = shape.kind === 'curve' ? [shape.chain] : shape.rings;
  const [outer, ...holes] = rings.map(({ edges }) => edges);
  return outlineRegion(outer ?? [], holes);
}

/** Areas of plane regions, and the sizes of a bite. */
export const shapeReferences: readonly Reference[] = [
  {
    quantity: 'sizes of a bite',
    letters: 'MH',
    source: "Machinery's Handbook, 31st ed., pp. 50, 79",
    kind: 'printed value',
    checks: 'circular segments: chord, arc, area, radius; area of a ring',
    pairs: () => {
      const cut = segmentOfDepth(12, 2);
      return [
        printed(cut.opening, 13.27, 2),
        printed(cut.arcLength, 14.06, 2),
        printed(bite(12, 2), 18.01, 2),
        exact(segmentOfOpeningAndDepth(16, 6).radius, 25 / 3),
        printed(area(ring(at(0, 0), 6, 4)), 62.83, 2),
      ];
    },
  },
  {
    quantity: 'sizes of a bite',
    source: "Machinery's Handbook, 31st ed., pp. 50, 79, rounded there on the way",
    kind: 'printed value',
    checks:
      '67.13 degrees of a segment that has 67.115, and a chord of 59.86 that is 59.8665: not met to half the last digit',
    pairs: () => [
      loosely(segmentOfDepth(12, 2).includedAngle * DEGREES, 67.13, 0.02),
      loosely(segmentOfDepth(60, 8).opening, 59.86, 0.007),
    ],
  },
  {
    quantity: 'sizes of a bite',
    source: 'a teaching program for mathematics, help page "Circular Sections"',
    kind: 'printed value',
    checks: 'arc 1 at 45 degrees: chord, height, area; chord 21, height 6: radius, angle, arc, area',
    pairs: () => {
      const r = 4 / Math.PI;
      const h = r * (1 - Math.cos(Math.PI / 8));
      const small = segmentOfDepth(r, h);
      const large = segmentOfOpeningAndDepth(21, 6);
      return [
        printed(small.opening, 0.97449536, 8),
        printed(small.depth, 0.096919589, 9),
        printed(bite(r, h), 0.063460604, 9),
        printed(large.radius, 12.1875, 4),
        printed(large.includedAngle * DEGREES, 118.97953, 5),
        printed(large.arcLength, 25.308373, 6),
        printed(bite(12.1875, 6), 89.254148, 6),
      ];
    },
  },
  {
    quantity: 'area',
    letters: 'CRC',
    source: 'CRC Concise Encyclopedia of Mathematics, "Segment"',
    kind: 'closed form of our own',
    checks: 'area of a segment as r^2 (t - sin t) / 2 against what a half plane leaves of a disc',
    pairs: () =>
      [0.01, 0.1, 0.5, 1, 1.5, 1.99].map((h) => {
        const t = 2 * Math.acos(1 - h);
        return { got: bite(1, h), wanted: (t - Math.sin(t)) / 2, within: 1e-12 };
      }),
  },
  {
    quantity: 'area',
    letters: 'JB',
    source: 'J. Burkardt, output of the circle_segment test programs',
    kind: 'printed value',
    checks: 'area of segments down to a height of 1/1024 of the radius, and of one over half a disc',
    pairs: () => [
      printed(bite(4.14755, 4.65932), 31.2554, 3),
      ...[
        [1 / 2, 0.614185, 6],
        [1 / 4, 0.226656, 6],
        [1 / 8, 0.081753, 6],
        [1 / 16, 0.029185, 6],
        [1 / 64, 0.0036742, 7],
        [1 / 1024, 5.75361e-5, 10],
      ].map(([h = 0, wanted = 0, digits = 0]) => printed(bite(1, h), wanted, digits)),
    ],
  },
  {
    quantity: 'area',
    letters: 'AS',
    source: 'D. Assencio and MathWorld on two circles; Codeforces 600D, ZJGSU 2241, Silvertests 55146',
    kind: 'printed value',
    checks: 'area common to two discs, crossing, behind a centre, contained',
    pairs: () => [
      exact(lens(4, 4, 6), 7.252988063641756),
      printed(lens(15, 30, 20), 608.366, 3),
      printed(lens(50, 10, Math.SQRT2), 314.159, 3),
    ],
  },
  {
    quantity: 'area',
    source: 'problems of the goat on its rope and of Mrs Miniver',
    kind: 'printed value',
    checks:
      'rope of 1.15872847302 on the rim of a unit field: half of it; discs 0.52986417 apart: lens as large as both crescents',
    pairs: () => [
      loosely(lens(1, 1.15872847302, 1), Math.PI / 2, 1e-11),
      loosely(lens(1, 1, 0.52986417), (2 * Math.PI) / 3, 1e-8),
    ],
  },
  {
    quantity: 'area',
    source: 'pages on the Reuleaux triangle',
    kind: 'printed value',
    checks: 'what three discs have in common, of width 6 and 9',
    pairs: () =>
      [
        [6, 25.3717],
        [9, 57.0864],
      ].map(([s = 0, wanted = 0]) => {
        const corners = [at(0, 0), at(s, 0), at(s / 2, (s * Math.sqrt(3)) / 2)];
        // Cut off and not rounded there: 25.37175.
        return loosely(area(intersect(corners.map((p) => disc(p, s)))), wanted, 1e-4);
      }),
  },
  {
    quantity: 'area',
    source: 'pi r^2 and 2 pi r',
    kind: 'closed form of our own',
    checks: 'a plate less a grid of discs, all at once',
    pairs: () => {
      const discs = Array.from({ length: 100 }, (_, k) =>
        disc(at(5 + 10 * (k % 10), 5 + 10 * Math.floor(k / 10)), 3),
      );
      const left = subtract(outlineRegion(rectangle(100, 100)), discs);
      return [
        exact(area(left), 10_000 - 900 * Math.PI),
        exact(perimeter(left), 400 + 600 * Math.PI),
        exact(loopsOf(left).length, 101),
      ];
    },
  },
  {
    quantity: 'area',
    letters: 'MS',
    source: 'Minkowski-Steiner formula; Ask Dr. Math 62289',
    kind: 'closed form of our own',
    checks: 'area and perimeter of grown convex regions and of straight swept cuts',
    pairs: () => [
      exact(area(offset(square(100), 10)), 10_000 + 4000 + 100 * Math.PI),
      exact(perimeter(offset(square(100), 10)), 400 + 20 * Math.PI),
      exact(area(offset(triangle, 1)), 6 + 12 + Math.PI),
      exact(area(offset(disc(at(0, 0), 20), 5)), 625 * Math.PI),
      exact(area(sweptRegion([lineEdge(at(0, 0), at(30, 40))], 3)), 300 + 9 * Math.PI),
    ],
  },
  {
    quantity: 'what a tool does not reach',
    letters: 'SP',
    source: 'spatstat manual, "opening", after Serra (1982)',
    kind: 'closed form of our own',
    checks: 'what a tool cannot reach of a square corner: r^2 (1 - pi / 4) at each',
    pairs: () => [exact(area(offset(offset(square(100), -7), 7)), 10_000 - 4 * 49 * (1 - Math.PI / 4))],
  },
  {
    quantity: 'sizes of a bite',
    letters: 'ML',
    source: 'MathWorld, "Circle-Line Intersection"',
    kind: 'closed form of our own',
    checks: 'half chord sqrt((r - d)(r + d)) against the opening of a bite of that depth',
    pairs: () =>
      [0.001, 0.3, 0.9, 0.999].map((d) =>
        exact(segmentOfDepth(1, 1 - d).opening / 2, Math.sqrt((1 - d) * (1 + d))),
      ),
  },
  {
    quantity: 'place of a partial hole',
    source: 'Code Golf 2289, circle through three points',
    kind: 'worked example',
    checks: 'centre and radius through (7, -5), (-1, 1), (0, -6), and through (1, 7), (8, 6), (7, -2)',
    pairs: () => {
      const one = placeThrough(at(7, -5), at(-1, 1), at(0, -6));
      const other = placeThrough(at(1, 7), at(8, 6), at(7, -2));
      return [
        exact(one.center.x, 3),
        exact(one.center.y, -2),
        exact(one.radius, 5),
        printed(other.center.x, 3.921, 3),
        printed(other.center.y, 2.447, 3),
        printed(other.radius, 5.409, 3),
      ];
    },
  },
  {
    quantity: 'outline read from text',
    letters: 'SVG',
    source: 'W3C SVG 2, paths and "Elliptical arc implementation notes"',
    kind: 'standard',
    checks: 'three quarters of a disc in path data; a radius too small grows; a radius of 0 is a line',
    pairs: () => [
      exact(area(ofPath('M300,200 h-150 a150,150 0 1,0 150,-150 z')), 0.75 * Math.PI * 150 ** 2),
      exact(area(ofPath('M0 0 H10 A1 1 0 0 1 0 0 Z')), (Math.PI * 25) / 2),
      exact(area(ofPath('M0 0 H10 A0 5 0 0 1 10 10 H0 Z')), 100),
    ],
  },
  {
    quantity: 'outline read from text',
    letters: 'WKT',
    source: 'ISO/IEC 13249-3 and OGC 06-103r4',
    kind: 'standard',
    checks: 'curve polygon of circular strings with a hole, area 3 pi - 1/2 (derived)',
    pairs: () => [
      exact(
        area(
          ofWkt(
            'CURVEPOLYGON (CIRCULARSTRING (-2 0, -1 -1, 0 0, 1 -1, 2 0, 0 2, -2 0), (-1 0, 0 0.5, 1 0, 0 1, -1 0))',
          ),
        ),
        3 * Math.PI - 0.5,
      ),
    ],
  },
];
