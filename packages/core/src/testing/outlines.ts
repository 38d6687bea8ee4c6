import fc from 'fast-check';
import { arcEdge, type Edge, lineEdge } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import { circleLoop, type Loop, type Region } from '../region/region.js';

/*
 * Outlines of about 100 units near the origin, drawn from small whole numbers so that a failure shrinks to a
 * plain part. Placement (turned, mirrored, in inches, far away) is done afterwards, to outline and cuts alike.
 */

/** A rectangle. */
export const rectangles: fc.Arbitrary<Region> = fc
  .record({ width: fc.integer({ min: 20, max: 120 }), height: fc.integer({ min: 20, max: 120 }) })
  .map(({ width, height }) => plain(filleted(box(0, 0, width, height), 0)));

/** A rectangle with all corners rounded. */
export const roundedRectangles: fc.Arbitrary<Region> = fc
  .record({
    width: fc.integer({ min: 30, max: 120 }),
    height: fc.integer({ min: 30, max: 120 }),
    radius: fc.integer({ min: 1, max: 14 }),
  })
  .map(({ width, height, radius }) => plain(filleted(box(0, 0, width, height), radius)));

/** A slot: two half circles joined by straight sides. */
export const slots: fc.Arbitrary<Region> = fc
  .record({ length: fc.integer({ min: 5, max: 90 }), radius: fc.integer({ min: 5, max: 30 }) })
  .map(({ length, radius }) => capsule({ x: 0, y: 0 }, { x: length, y: 0 }, radius));

/** An L, its corners sharp or rounded. */
export const ells: fc.Arbitrary<Region> = fc
  .record({
    width: fc.integer({ min: 60, max: 120 }),
    height: fc.integer({ min: 60, max: 120 }),
    leg: fc.integer({ min: 16, max: 40 }),
    foot: fc.integer({ min: 16, max: 40 }),
    radius: fc.integer({ min: 0, max: 7 }),
  })
  .map(({ width, height, leg, foot, radius }) => {
    const corners = [
      [0, 0],
      [width, 0],
      [width, foot],
      [leg, foot],
      [leg, height],
      [0, height],
    ] as const;
    return plain(
      filleted(
        corners.map(([x, y]) => ({ x, y })),
        radius,
      ),
    );
  });

const bows = fc.array(
  fc.record({ reach: fc.integer({ min: 20, max: 60 }), bow: fc.integer({ min: -2, max: 2 }) }),
  { minLength: 3, maxLength: 8 },
);

/** A polygon round the origin whose edges are straight or bowed out or in. */
export const bowedPolygons: fc.Arbitrary<Region> = bows.map((corners) => plain(bowedLoop(corners)));

/** A plate with one to three holes: round, rounded or square, none near another. */
export const plates: fc.Arbitrary<Region> = plateArbitrary(0);

/** Any outline; a failure shrinks to a rectangle if that shows it too. */
export const outlines: fc.Arbitrary<Region> = fc.oneof(
  { withCrossShrink: true },
  rectangles,
  roundedRectangles,
  slots,
  ells,
  bowedPolygons,
  plates,
);

/** Outlines that have arcs in them. */
export const arcOutlines: fc.Arbitrary<Region> = fc.oneof(
  roundedRectangles,
  slots,
  bows.map((corners) =>
    plain(bowedLoop(corners.map((c, k) => (k === 0 ? { ...c, bow: c.bow < 0 ? -1 : 1 } : c)))),
  ),
  plateArbitrary(1),
);

/** The round-ended region within `radius` of the straight line from `a` to `b`. */
export function capsule(a: Point, b: Point, radius: number): Region {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const nx = ((a.y - b.y) / length) * radius;
  const ny = ((b.x - a.x) / length) * radius;
  const [a1, a2] = [
    { x: a.x - nx, y: a.y - ny },
    { x: a.x + nx, y: a.y + ny },
  ];
  const [b1, b2] = [
    { x: b.x - nx, y: b.y - ny },
    { x: b.x + nx, y: b.y + ny },
  ];
  return plain([lineEdge(a1, b1), arcEdge(b1, b2, b, true), lineEdge(b2, a2), arcEdge(a2, a1, a, true)]);
}

/** A rectangle between two corners as a region. */
export function boxRegion(minX: number, minY: number, maxX: number, maxY: number): Region {
  return plain(filleted(box(minX, minY, maxX, maxY), 0));
}

/** The polygon through the corners, each corner replaced by a tangent arc if the radius is over 0. */
export function filleted(corners: readonly Point[], radius: number): Loop {
  const around = (k: number): Point => corners[(k + corners.length) % corners.length] as Point;
  if (radius === 0) return corners.map((corner, k) => lineEdge(corner, around(k + 1)));
  const fillets = corners.map((corner, k) => fillet(around(k - 1), corner, around(k + 1), radius));
  return fillets.flatMap((arc, k): Edge[] => {
    const next = fillets[(k + 1) % fillets.length] as Edge;
    return [arc, lineEdge(arc.b, next.a)];
  });
}

function fillet(before: Point, corner: Point, after: Point, radius: number): Edge {
  const [ux, uy] = unit(before, corner);
  const [vx, vy] = unit(corner, after);
  const turn = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
  const cut = radius * Math.tan(Math.abs(turn) / 2);
  const side = turn > 0 ? 1 : -1;
  const a = { x: corner.x - ux * cut, y: corner.y - uy * cut };
  const b = { x: corner.x + vx * cut, y: corner.y + vy * cut };
  return arcEdge(a, b, { x: a.x - uy * radius * side, y: a.y + ux * radius * side }, turn > 0);
}

function plateArbitrary(leastRadius: number): fc.Arbitrary<Region> {
  const hole = fc.record({
    size: fc.integer({ min: 3, max: 12 }),
    corner: fc.integer({ min: -1, max: 2 }),
  });
  return fc
    .record({
      width: fc.integer({ min: 90, max: 120 }),
      height: fc.integer({ min: 40, max: 80 }),
      radius: fc.integer({ min: leastRadius, max: 6 }),
      holes: fc.array(hole, { minLength: 1, maxLength: 3 }),
    })
    .map(({ width, height, radius, holes }) => {
      const cell = width / holes.length;
      const loops = holes.map(({ size, corner }, k) => holeLoop((k + 0.5) * cell, height / 2, size, corner));
      return [{ outer: filleted(box(0, 0, width, height), radius), holes: loops }];
    });
}

function bowedLoop(corners: readonly { readonly reach: number; readonly bow: number }[]): Loop {
  const points = corners.map(({ reach }, k): Point => {
    const angle = (k * 2 * Math.PI) / corners.length;
    return { x: reach * Math.cos(angle), y: reach * Math.sin(angle) };
  });
  return corners.map(({ bow }, k) =>
    bowed(points[k] as Point, points[(k + 1) % points.length] as Point, bow),
  );
}

/** An edge of any bow that stays in the cone in which it is seen from the origin, so that edges cannot cross. */
function bowed(a: Point, b: Point, bow: number): Edge {
  if (bow === 0) return lineEdge(a, b);
  const chord = Math.hypot(b.x - a.x, b.y - a.y);
  const [ux, uy] = unit(a, b);
  const baseAngle = (p: Point, x: number, y: number): number =>
    Math.acos((-p.x * x - p.y * y) / Math.hypot(p.x, p.y));
  const bases = [baseAngle(a, ux, uy), baseAngle(b, -ux, -uy)];
  const half = 0.4 * Math.abs(bow) * (bow < 0 ? Math.min(...bases) : Math.PI - Math.max(...bases));
  const toCenter = chord / 2 / Math.tan(half);
  const side = bow > 0 ? 1 : -1;
  const center = {
    x: (a.x + b.x) / 2 - uy * toCenter * side,
    y: (a.y + b.y) / 2 + ux * toCenter * side,
  };
  return arcEdge(a, b, center, bow > 0);
}

/** A hole, clockwise: round if `corner` is negative, else square with that corner radius. */
function holeLoop(x: number, y: number, size: number, corner: number): Loop {
  if (corner < 0) return circleLoop({ x, y }, size, false);
  return filleted([...box(x - size, y - size, x + size, y + size)].reverse(), corner);
}

function box(minX: number, minY: number, maxX: number, maxY: number): Point[] {
  return [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
}

function unit(a: Point, b: Point): [number, number] {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  return [(b.x - a.x) / length, (b.y - a.y) / length];
}

function plain(outer: Loop): Region {
  return [{ outer, holes: [] }];
}
