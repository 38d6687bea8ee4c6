import { regionFaults, validateRegion } from '@edgebite/core/testing';
import { describe, expect, it } from 'vitest';
import {
  arcEdge,
  area,
  type Edge,
  intersect,
  type Loop,
  lineEdge,
  normalize,
  type Point,
  perimeter,
  type Region,
  subtract,
  union,
  xor,
} from './kernel.js';

/*
 * Inputs and crossings: GEOS, tests/xmltester/tests/general/TestOverlayCurvesAA.xml, and for the last ones PostGIS,
 * regress/core/sql-mm-curvepoly.sql. The areas and lengths were derived from these inputs outside this library.
 */

const at = (x: number, y: number): Point => ({ x, y });

/** The arc through three points, as CIRCULARSTRING gives it (ISO/IEC 13249-3). */
function through(a: Point, on: Point, b: Point): Edge {
  const [px, py, qx, qy] = [on.x - a.x, on.y - a.y, b.x - a.x, b.y - a.y];
  const cross = px * qy - py * qx;
  const p2 = px * px + py * py;
  const q2 = qx * qx + qy * qy;
  const center = at(a.x + (qy * p2 - py * q2) / (2 * cross), a.y + (px * q2 - qx * p2) / (2 * cross));
  return arcEdge(a, b, center, cross > 0);
}

const lines = (...points: readonly Point[]): Edge[] =>
  points.slice(1).map((b, k) => lineEdge(points[k] as Point, b));

const areaAndLength = (region: Region): [number, number] => {
  validateRegion(region, { extent: 400 });
  return [area(region), perimeter(region)];
};

const box = (x: number, y: number, side: number): Edge[] =>
  lines(at(x, y), at(x + side, y), at(x + side, y + side), at(x, y + side), at(x, y));

const cases: readonly {
  name: string;
  a: readonly Loop[];
  b: readonly Loop[];
  expected: Record<'a' | 'b' | 'and' | 'or' | 'minus', readonly [area: number, length: number]>;
  crossings: readonly Point[];
}[] = [
  {
    name: 'simple polygons',
    a: [[through(at(10, 100), at(100, 10), at(100, 60)), ...lines(at(100, 60), at(10, 100))]],
    b: [
      [
        ...lines(at(50, 50), at(200, 50), at(200, 200), at(50, 200)),
        through(at(50, 200), at(-9, 100), at(50, 50)),
      ],
    ],
    expected: {
      a: [13852.543277, 426.668495],
      b: [29646.244224, 663.194738],
      and: [2670.074594, 251.689006],
      or: [40828.712907, 838.174227],
      minus: [11182.468683, 425.121191],
    },
    crossings: [at(-5.521402634079415, 91.63934964816265), at(103.00735254367723, 50)],
  },
  {
    name: 'a plate with a curved hole, and a square',
    a: [
      box(20, 20, 140),
      [through(at(140, 40), at(115, 115), at(40, 140)), ...lines(at(40, 140), at(40, 40), at(140, 40))],
    ],
    b: [box(80, 100, 140)],
    expected: {
      a: [11105.506109, 923.924184],
      b: [19600, 560],
      and: [3735.252858, 257.186819],
      or: [26970.253252, 1226.737366],
      minus: [7370.253252, 779.653874],
    },
    crossings: [at(80, 136.50148808205722), at(127.04025757937788, 100)],
  },
  {
    name: 'simple polygons, second pair',
    a: [[...lines(at(20, 340), at(330, 380), at(50, 40)), through(at(50, 40), at(70, 220), at(20, 340))]],
    b: [lines(at(210, 320), at(140, 270), at(0, 270), at(140, 220), at(210, 320))],
    expected: {
      a: [39171.758041, 1067.751403],
      b: [5250, 496.749496],
      and: [4606.89241, 396.795024],
      or: [39814.86563, 1167.705875],
      minus: [34564.86563, 1416.767041],
    },
    crossings: [at(56.278836074826415, 270), at(63.6291020022965, 247.27532071346553)],
  },
];

describe.each(cases)('GEOS curve overlay: $name', ({ a, b, expected, crossings }) => {
  const [A, B] = [normalize(a, 'evenodd'), normalize(b, 'evenodd')];

  it.each([
    ['A', A, expected.a],
    ['B', B, expected.b],
    ['A and B', intersect([A, B]), expected.and],
    ['A or B', union([A, B]), expected.or],
    ['A minus B', subtract(A, [B]), expected.minus],
  ] as const)('%s has the derived area and length', (_, region, [wantedArea, wantedLength]) => {
    const [gotArea, gotLength] = areaAndLength(region);
    expect(Math.abs(gotArea - wantedArea)).toBeLessThanOrEqual(6e-7);
    expect(Math.abs(gotLength - wantedLength)).toBeLessThanOrEqual(6e-7);
  });

  it('the symmetric difference is both differences', () => {
    const [exclusive] = areaAndLength(xor([A, B]));
    expect(Math.abs(exclusive - expected.or[0] + expected.and[0])).toBeLessThanOrEqual(2e-6);
  });

  it('has joints at the crossings that the suite prints', () => {
    const joints = intersect([A, B]).flatMap((part) =>
      [...part.outer, ...part.holes.flat()].map((edge) => edge.a),
    );
    for (const crossing of crossings) {
      const gaps = joints.map((joint) => Math.hypot(joint.x - crossing.x, joint.y - crossing.y));
      expect(Math.min(...gaps)).toBeLessThanOrEqual(1e-11);
    }
  });
});

describe('PostGIS curve polygons', () => {
  it('the ring of arcs with a hole of lines that touches it: 3 pi - 1/2', () => {
    const outer = [
      through(at(-2, 0), at(-1, -1), at(0, 0)),
      through(at(0, 0), at(1, -1), at(2, 0)),
      through(at(2, 0), at(0, 2), at(-2, 0)),
    ];
    const hole = lines(at(-1, 0), at(0, 0.5), at(1, 0), at(0, 1), at(-1, 0));
    const region = normalize([outer, hole], 'evenodd');
    expect(regionFaults(region)).toEqual([]);
    expect(area(region)).toBeCloseTo(8.924777961, 9);
    expect(area(region)).toBeCloseTo(3 * Math.PI - 0.5, 13);
    expect(perimeter(region)).toBeCloseTo(17.630865717, 9);
  });

  it('the circle of two arcs through (4, 0) and (0, 4): 8 pi', () => {
    const circle = [through(at(0, 0), at(4, 0), at(4, 4)), through(at(4, 4), at(0, 4), at(0, 0))];
    expect(area(normalize([circle], 'nonzero'))).toBeCloseTo(8 * Math.PI, 12);
  });
});
