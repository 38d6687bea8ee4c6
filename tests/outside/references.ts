import {
  area,
  biteAlong,
  disc,
  engagementOf,
  examine,
  intersect,
  lineEdge,
  loopsOf,
  massOf,
  offset,
  outlineRegion,
  parseJob,
  parseSvgPath,
  parseWkt,
  perimeter,
  placeThrough,
  type Region,
  rectangle,
  ring,
  segmentOfDepth,
  segmentOfOpeningAndDepth,
  sideLoadOf,
  subtract,
  sweptRegion,
} from '@edgebite/core';
import { boxRegion } from '@edgebite/core/testing';
import { feedPerTurnOf, feedRate, spindleSpeed } from '../../packages/core/src/cutting/speed.js';
import { generalTolerance } from '../../packages/core/src/datum/general-tolerance.js';
import { libraryReferences } from './libraries.js';
import { exact, printed, type Reference } from './reference.js';

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
  const rings = shape.kind === 'curve' ? [shape.chain] : shape.rings;
  const [outer, ...holes] = rings.map(({ edges }) => edges);
  return outlineRegion(outer ?? [], holes);
}

/** The thinnest web of a round of radius R with a bore of radius r, off its middle by e. */
function eccentricWeb(R: number, r: number, e: number): number {
  const outline = { circle: 2 * R };
  const cuts = [{ id: 'bore', kind: 'bore', center: [e, 0], diameter: 2 * r }];
  const limits = { web: R - r };
  const job = { edgebite: 1, units: 'mm', part: { outline, thickness: 1 }, limits, cuts };
  return examine(parseJob(job)).webs[0]?.thickness ?? Number.NaN;
}

/** Every outside reference whose values are compared here by number. */
export const references: readonly Reference[] = [
  {
    letters: 'MH',
    source: "Machinery's Handbook, 31st ed., pp. 50, 79",
    kind: 'handbook',
    checks: 'circular segments: chord, angle, arc, area, radius; area of a ring',
    pairs: () => {
      const cut = segmentOfDepth(12, 2);
      return [
        printed(cut.opening, 13.27, 2),
        printed(cut.includedAngle * DEGREES, 67.13, 1),
        printed(cut.arcLength, 14.06, 2),
        printed(bite(12, 2), 18.01, 2),
        printed(segmentOfDepth(60, 8).opening, 59.86, 1),
        exact(segmentOfOpeningAndDepth(16, 6).radius, 25 / 3),
        printed(area(ring(at(0, 0), 6, 4)), 62.83, 2),
      ];
    },
  },
  {
    letters: 'CRC',
    source: 'CRC Concise Encyclopedia of Mathematics, "Segment"',
    kind: 'handbook',
    checks: 'area of a segment as r^2 (t - sin t) / 2 against what a half plane leaves of a disc',
    pairs: () =>
      [0.01, 0.1, 0.5, 1, 1.5, 1.99].map((h) => {
        const t = 2 * Math.acos(1 - h);
        return { got: bite(1, h), wanted: (t - Math.sin(t)) / 2, within: 1e-12 };
      }),
  },
  {
    letters: 'JB',
    source: 'J. Burkardt, output of the circle_segment test programs',
    kind: 'published values',
    checks: 'area of segments down to a height of 1/1024 of the radius',
    pairs: () =>
      [
        [1 / 2, 0.614185, 6],
        [1 / 4, 0.226656, 6],
        [1 / 8, 0.081753, 6],
        [1 / 16, 0.029185, 6],
        [1 / 64, 0.0036742, 7],
        [1 / 1024, 5.75361e-5, 10],
      ].map(([h = 0, wanted = 0, digits = 0]) => printed(bite(1, h), wanted, digits)),
  },
  {
    letters: 'AS',
    source: 'D. Assencio and MathWorld on two circles; Codeforces 600D, ZJGSU 2241, Silvertests 55146',
    kind: 'worked example',
    checks: 'area common to two discs, crossing, behind a centre, contained',
    pairs: () => [
      exact(lens(4, 4, 6), 7.252988063641756),
      printed(lens(15, 30, 20), 608.366, 3),
      printed(lens(50, 10, Math.SQRT2), 314.159, 3),
    ],
  },
  {
    letters: 'ML',
    source: 'MathWorld, "Circle-Line Intersection"',
    kind: 'published values',
    checks: 'half chord sqrt((r - d)(r + d)) against the opening of a bite of that depth',
    pairs: () =>
      [0.001, 0.3, 0.9, 0.999].map((d) =>
        exact(segmentOfDepth(1, 1 - d).opening / 2, Math.sqrt((1 - d) * (1 + d))),
      ),
  },
  {
    source: 'Code Golf 2289, circle through three points',
    kind: 'worked example',
    checks: 'centre and radius through (7, -5), (-1, 1), (0, -6)',
    pairs: () => {
      const { center, radius } = placeThrough(at(7, -5), at(-1, 1), at(0, -6));
      return [exact(center.x, 3), exact(center.y, -2), exact(radius, 5)];
    },
  },
  {
    letters: 'MS',
    source: 'Minkowski-Steiner formula; Ask Dr. Math 62289',
    kind: 'published values',
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
    letters: 'SP',
    source: 'spatstat manual, "opening", after Serra (1982)',
    kind: 'published values',
    checks: 'what a tool cannot reach of a square corner: r^2 (1 - pi / 4) at each',
    pairs: () => [exact(area(offset(offset(square(100), -7), 7)), 10_000 - 4 * 49 * (1 - Math.PI / 4))],
  },
  {
    letters: 'DM',
    source: 'Ask Dr. Math 62899, eccentric tube',
    kind: 'worked example',
    checks: 'thinnest web of a bore off the middle of a round: R - r - e',
    pairs: () => [
      exact(eccentricWeb(20, 12, 3), 5),
      exact(eccentricWeb(50, 49, 0.25), 0.75),
      exact(eccentricWeb(10, 4.5, 5), 0.5),
    ],
  },
  {
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
  {
    source: 'Fundamentals of Machining Processes, p. 174',
    kind: 'handbook',
    checks:
      'engagement of a cutter of 10 with a width of cut of 1: 36.8699 degrees; side load of half a turn, 2 / pi',
    pairs: () => {
      const metal = boxRegion(-100, -100, -4, 100);
      return [
        printed((engagementOf(metal, at(0, 0), 5).angle / 2) * DEGREES, 36.8699, 4),
        exact(sideLoadOf([{ start: 0, sweep: Math.PI }]).size, 2 / Math.PI),
        exact(biteAlong(metal, at(0, 0), 5, Math.PI), 1),
      ];
    },
  },
  {
    source: 'Euclid, Elements I.47 and III.20',
    kind: 'published values',
    checks: 'knife edges of a bite with its centre 8 inside, radius 10: acos(8 / 10)',
    pairs: () => {
      const { knifeEdges } = examine(
        parseJob({
          edgebite: 1,
          units: 'mm',
          part: { outline: { rectangle: [80, 30] }, thickness: 12 },
          limits: { web: 0.1, knifeEdge: 45 },
          cuts: [{ id: 'bite', kind: 'bore', center: [40, 22], diameter: 20 }],
        }),
      );
      return knifeEdges.map(({ angle }) => exact(angle, Math.acos(0.8) * DEGREES));
    },
  },
  {
    source: 'pound of 0.45359237 kg and inch of 25.4 mm (1959 agreement, from memory)',
    kind: 'standard',
    checks: 'mass of a volume in both units: 25.4^3 mm3 in a cubic inch',
    pairs: () => [
      exact(massOf(1e6, 7.85, 'mm'), 7850),
      exact((massOf(1, 7.85, 'inch') * 453.59237) / massOf(25.4 ** 3, 7.85, 'mm'), 1),
    ],
  },
  {
    source: 'pi r^2 and 2 pi r, closed forms',
    kind: 'published values',
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
    source: 'ISO 2768-1:1989, table 1, as printed at fabriqax.com',
    kind: 'standard',
    checks: 'general tolerances of lengths, the classes fine, medium and coarse',
    pairs: () => [
      exact(generalTolerance(40, 'm') ?? Number.NaN, 0.3),
      exact(generalTolerance(120, 'f') ?? Number.NaN, 0.15),
      exact(generalTolerance(3, 'c') ?? Number.NaN, 0.2),
      exact(generalTolerance(2000, 'm') ?? Number.NaN, 1.2),
    ],
  },
  {
    source: 'F. D. Jones, Turning and Boring (1914); pages of a tool maker on speeds and feeds',
    kind: 'worked example',
    checks: 'turns a minute of 60 ft/min on 5 in, 25 m/min with 12 mm; feed of 2 and 4 teeth',
    pairs: () => [
      printed(spindleSpeed([60, 60], 5, 'inch')[0], 46, 0),
      printed(spindleSpeed([25, 25], 12, 'mm')[0], 663, 0),
      printed(feedRate([663, 663], feedPerTurnOf([0.065, 0.065], 2))[0], 86, 0),
      printed(feedRate([663, 663], feedPerTurnOf([0.06, 0.06], 4))[0], 159, 0),
    ],
  },
  ...libraryReferences,
];
