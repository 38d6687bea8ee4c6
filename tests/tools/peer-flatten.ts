import { extentOf } from '@edgebite/core/testing';
import Flatten from '@flatten-js/core';
import type { Edge, Loop, Region } from '../region/kernel.js';
import { countLoops, nearOrigin, type Peer } from './peer.js';

/** Its tolerance is 1e-6, in operands of an extent of 100. */
const TOLERANCE = 1e-8;

/** @flatten-js/core: cuts in turn. It is sound only away from tangency and for discs of three or more arcs. */
export const flattenPeer: Peer = {
  name: '@flatten-js/core',
  thin: 4 * TOLERANCE,
  areaSlack: (operands) => 1e-7 * extentOf(...operands) ** 2,
  subtract: (from, cuts) => {
    const { moved, areaFactor } = nearOrigin([from, ...cuts]);
    const [first, ...others] = moved.map(polygonOf) as [Flatten.Polygon, ...Flatten.Polygon[]];
    const left = others.reduce((rest, cut) => Flatten.BooleanOperations.subtract(rest, cut), first);
    const loops = facesOf(left);
    const area = loops.reduce((sum, loop) => sum + loop.signedArea, 0) * areaFactor;
    return { area, ...countLoops(loops, 4 * TOLERANCE) };
  },
};

/** A region as a polygon of the library: outer faces counter-clockwise, holes clockwise. */
export function polygonOf(region: Region): Flatten.Polygon {
  const polygon = new Flatten.Polygon();
  for (const loop of region.flatMap((part): Loop[] => [part.outer, ...part.holes])) {
    polygon.addFace(loop.map(shapeOf));
  }
  return polygon;
}

/** Faces with areas that are positive counter-clockwise. */
export function facesOf(polygon: Flatten.Polygon): { signedArea: number; perimeter: number }[] {
  return [...polygon.faces].map((face: Flatten.Face) => ({
    // The library counts a counter-clockwise face as negative.
    signedArea: -face.signedArea(),
    perimeter: face.perimeter,
  }));
}

function shapeOf(edge: Edge): Flatten.Segment | Flatten.Arc {
  const point = (p: { x: number; y: number }): Flatten.Point => new Flatten.Point(p.x, p.y);
  if (edge.kind === 'line') return new Flatten.Segment(point(edge.a), point(edge.b));
  const angle = (p: { x: number; y: number }): number => Math.atan2(p.y - edge.center.y, p.x - edge.center.x);
  return new Flatten.Arc(point(edge.center), edge.radius, angle(edge.a), angle(edge.b), edge.ccw);
}
