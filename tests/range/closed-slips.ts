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

/** All such values of a query at which a rim is no farther from that end than the web limit. */
export function slipRoots(
  { still, own, moved, pace, slack }: ClosedScene,
  limit: number,
  steps: Steps,
): Slip[] {
  const slips = (corners: readonly Corner[], rims: readonly Rim[], at: typeof moved, to: typeof moved) =>
    corners.flatMap((corner) =>
      corner.of.flatMap((shape) =>
        rims.flatMap(({ center, radius }): Slip[] => {
          const places = (v: number) =>
            [at(shape, v), placeAt(at, corner.at, v), placeAt(to, center, v)] as const;
          const off = (v: number) => offSquare(...places(v));
          const apart = (v: number) => {
            const [, end, other] = places(v);
            return far(end, other);
          };
          return rootsOf(off, steps, slack, pace)
            .filter((root) => Math.abs(apart(root) - radius) <= limit + slack)
            .map((root) => ({ at: root, angleAt: (v) => Math.abs(off(v)) / apart(v) }));
        }),
      ),
    );
  const keep = (shape: Shape) => shape;
  const points = still.corners.map(({ at }): Rim => ({ center: at, radius: 0 }));
  return [
    ...slips(still.corners, rimsOf(own.shapes), keep, moved),
    ...slips(own.corners, [...rimsOf(still.shapes), ...points], moved, keep),
  ];
}

/** A circle, or a corner as one of radius 0. */
interface Rim {
  readonly center: Point;
  readonly radius: number;
}

function rimsOf(shapes: readonly Shape[]): Rim[] {
  return shapes.flatMap((shape) => (shape.kind === 'circle' ? [shape] : []));
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
