import type { Cut, Edge, Job, Point } from '@edgebite/core';
import {
  type Circle,
  type Corner,
  crossings,
  far,
  isOn,
  type Line,
  minus,
  plus,
  type Shape,
} from './closed-shapes.js';

/** The boundary of a cut or of the part: its shapes, their corners, and places whose metal matters. */
export interface Boundary {
  readonly shapes: readonly Shape[];
  readonly corners: readonly Corner[];
  readonly places: readonly Point[];
}

/** The outline of a job with its holes, and where it is held. */
export function boundaryOfPart({ outline, keep }: Job): Boundary {
  const loops = outline.flatMap(({ outer, holes }) => [outer, ...holes]);
  const all = loops.map((loop) => loop.map(shapeOf));
  return {
    shapes: all.flat(),
    corners: loops.flatMap((loop, k) => {
      const shapes = all[k] as Shape[];
      return loop.map(({ b }, n) => ({
        at: b,
        of: [shapes[n] as Shape, shapes[(n + 1) % shapes.length] as Shape],
      }));
    }),
    places: keep === null ? [] : [keep],
  };
}

/** The rims of a cut, all of them moved into the metal by an amount; those of a path run on under each other. */
export function boundaryOfCut(cut: Cut, slack: number, by = 0): Boundary {
  const radius = cut.diameter / 2 + by;
  if (cut.kind === 'bore') return { shapes: [circle(cut.center, radius)], corners: [], places: [] };
  if (cut.kind === 'annular') {
    const inner = cut.diameter / 2 - cut.wall - by;
    const rims = [radius, inner].filter((r) => r > 0).map((r) => circle(cut.center, r));
    return { shapes: rims, corners: [], places: [cut.center] };
  }
  const [first] = cut.path as readonly [Edge, ...Edge[]];
  const shapes = [
    ...[first.a, ...cut.path.map(({ b }) => b)].map((at) => circle(at, radius)),
    ...cut.path.flatMap((edge) => beside(edge, radius)),
  ];
  const path = cut.path.map(shapeOf);
  const isOpen = (p: Point) => path.every((edge) => clearOf(edge, p) >= radius - slack);
  return { shapes, corners: crossingsAmong(shapes, slack).filter(({ at }) => isOpen(at)), places: [] };
}

/** Where shapes cross that are of different boundaries. */
export function crossingsBetween(boundaries: readonly Boundary[], slack: number): Corner[] {
  return boundaries.flatMap(({ shapes }, k) =>
    boundaries.slice(k + 1).flatMap((other) => shapes.flatMap((one) => cornersOf(one, other.shapes, slack))),
  );
}

function crossingsAmong(shapes: readonly Shape[], slack: number): Corner[] {
  return shapes.flatMap((one, k) => cornersOf(one, shapes.slice(k + 1), slack));
}

function cornersOf(one: Shape, others: readonly Shape[], slack: number): Corner[] {
  return others.flatMap((other) => crossings(one, other, slack).map((at) => ({ at, of: [one, other] })));
}

function circle(center: Point, radius: number): Circle {
  return { kind: 'circle', center, radius, arc: null };
}

function shapeOf(edge: Edge): Line | Circle {
  const { a, b } = edge;
  if (edge.kind === 'line') return { kind: 'line', a, b };
  const { center, radius, ccw } = edge;
  return { kind: 'circle', center, radius, arc: ccw ? { a, b } : { a: b, b: a } };
}

/** The two sides of what a round tool sweeps along an edge. */
function beside(edge: Edge, radius: number): Shape[] {
  const shape = shapeOf(edge);
  if (shape.kind === 'line') {
    const length = far(shape.a, shape.b);
    const normal = { x: (shape.a.y - shape.b.y) / length, y: (shape.b.x - shape.a.x) / length };
    return [radius, -radius].map((off) => ({
      kind: 'line',
      a: plus(shape.a, normal, off),
      b: plus(shape.b, normal, off),
    }));
  }
  const { center, arc } = shape;
  return [shape.radius + radius, shape.radius - radius].flatMap((r): Shape[] => {
    if (arc === null || r === 0) return [];
    // Inside a path that turns more sharply than the tool is wide, the side lies across the centre.
    const end = (p: Point) => plus(center, minus(p, center), r / shape.radius);
    return [{ kind: 'circle', center, radius: Math.abs(r), arc: { a: end(arc.a), b: end(arc.b) } }];
  });
}

/** Distance of a place from an edge. */
function clearOf(edge: Line | Circle, p: Point): number {
  const nearest = edge.kind === 'line' ? nearestOnLine(edge, p) : nearestOnCircle(edge, p);
  const ends = edge.kind === 'line' ? [edge.a, edge.b] : edge.arc === null ? [] : [edge.arc.a, edge.arc.b];
  const places = isOn(edge, nearest, 0) ? [nearest, ...ends] : ends;
  return Math.min(...places.map((at) => far(at, p)));
}

function nearestOnLine({ a, b }: Line, p: Point): Point {
  const d = minus(b, a);
  const t = ((p.x - a.x) * d.x + (p.y - a.y) * d.y) / (d.x * d.x + d.y * d.y);
  return plus(a, d, t);
}

function nearestOnCircle({ center, radius }: Circle, p: Point): Point {
  const d = far(center, p);
  return d === 0 ? plus(center, { x: radius, y: 0 }) : plus(center, minus(p, center), radius / d);
}
