import type { Point } from '@edgebite/core';
import { rootsOf, type Steps } from './closed-roots.js';
import type { ClosedScene } from './closed-scene.js';
import { along, type Corner, cross, dot, far, minus, place, type Shape } from './closed-shapes.js';

/** A value at which the centre of a circle lies square to an edge in its end: a web between them slips off there. */
export interface Slip {
  readonly at: number;
  /** How far from square it is at another value, in radians. */
  readonly angleAt: (v: number) => number;
}

/** All such values of a query; of webs, and of what is as far apart as no web. */
export function slipRoots({ still, own, moved, pace, slack }: ClosedScene, steps: Steps): Slip[] {
  const slips = (corners: readonly Corner[], centers: readonly Point[], at: typeof moved, to: typeof moved) =>
    corners.flatMap((corner) =>
      corner.of.flatMap((shape) =>
        centers.flatMap((center): Slip[] => {
          const places = (v: number) =>
            [at(shape, v), placeAt(at, corner.at, v), placeAt(to, center, v)] as const;
          const off = (v: number) => offSquare(...places(v));
          const angleAt = (v: number) => {
            const [, end, other] = places(v);
            return Math.abs(off(v)) / far(end, other);
          };
          return rootsOf(off, steps, slack, pace).map((root) => ({ at: root, angleAt }));
        }),
      ),
    );
  const keep = (shape: Shape) => shape;
  return [
    ...slips(still.corners, centersOf(own.shapes), keep, moved),
    ...slips(own.corners, [...centersOf(still.shapes), ...still.corners.map(({ at }) => at)], moved, keep),
  ];
}

function centersOf(shapes: readonly Shape[]): Point[] {
  const centers = shapes.flatMap((shape) => (shape.kind === 'circle' ? [shape.center] : []));
  return centers.filter((p, k) => centers.findIndex((q) => far(p, q) === 0) === k);
}

function placeAt(moved: (shape: Shape, v: number) => Shape, p: Point, v: number): Point {
  const there = moved(place(p), v);
  return there.kind === 'place' ? there.at : p;
}

/** How far a place is from the line that is square to an edge in its end. */
function offSquare(edge: Shape, end: Point, other: Point): number {
  if (edge.kind === 'line') return dot(minus(other, end), along(edge));
  if (edge.kind === 'place') return far(end, other);
  return cross(minus(other, edge.center), minus(end, edge.center)) / edge.radius;
}
