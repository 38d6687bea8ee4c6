import { type Bounds, joined } from '../geometry/bounds.js';
import type { Edge } from '../geometry/edge.js';
import { edgeBounds, edgeLength, segmentArea, sweep } from '../geometry/measure.js';
import type { Point } from '../geometry/point.js';
import { circleOf } from './circle.js';
import type { Loop, Region, RegionPart } from './region.js';

/**
 * Area enclosed by a loop, over 0 if it runs counter-clockwise: that of the polygon of its chords (the shoelace
 * formula, taken from its own first point so that nothing is lost far from the origin) and the circular segments.
 */
export function loopArea(loop: Loop): number {
  const circle = circleOf(loop);
  if (circle !== null) return (circle.ccw ? 1 : -1) * Math.PI * circle.radius * circle.radius;
  const origin = (loop[0] as Edge).a;
  let twice = 0;
  let segments = 0;
  for (const edge of loop) {
    const ax = edge.a.x - origin.x;
    const ay = edge.a.y - origin.y;
    const bx = edge.b.x - origin.x;
    const by = edge.b.y - origin.y;
    twice += ax * by - ay * bx;
    if (edge.kind === 'arc') segments += segmentArea(edge);
  }
  return twice / 2 + segments;
}

/** Length of a loop. */
export function loopLength(loop: Loop): number {
  let sum = 0;
  for (const edge of loop) sum += edgeLength(edge);
  return sum;
}

/** All loops of a region: each outer loop, followed by its holes. */
export function loopsOf(region: Region): Loop[] {
  const loops: Loop[] = [];
  for (const { outer, holes } of region) {
    loops.push(outer);
    for (const hole of holes) loops.push(hole);
  }
  return loops;
}

/** Area of one part of a region, in square units. */
export function partArea(part: RegionPart): number {
  return [part.outer, ...part.holes].reduce((sum, loop) => sum + loopArea(loop), 0);
}

/** Area of a region, in square units. */
export function area(region: Region): number {
  return region.reduce((sum, part) => sum + partArea(part), 0);
}

/** Length of all boundaries of a region, holes included. */
export function perimeter(region: Region): number {
  return loopsOf(region).reduce((sum, loop) => sum + loopLength(loop), 0);
}

/** The smallest box round a loop. */
export function loopBounds(loop: Loop): Bounds {
  return loop.map(edgeBounds).reduce(joined);
}

/** The smallest box round a region; null for an empty one. */
export function boundsOf(region: Region): Bounds | null {
  if (region.length === 0) return null;
  return region.map((part) => loopBounds(part.outer)).reduce(joined);
}

/**
 * Centre of area of a region; null for an empty one. Triangles from a point of the region to each chord, and each
 * circular segment at 4 r sin³(t/2) / (3 (t - sin t)) from its centre.
 * Source: Machinery's Handbook, 31st ed., centres of gravity of a triangle and of a circle segment.
 */
export function centroid(region: Region): Point | null {
  if (region.length === 0) return null;
  const origin = ((region[0] as RegionPart).outer[0] as Edge).a;
  let mass = 0;
  let mx = 0;
  let my = 0;
  for (const loop of loopsOf(region)) {
    for (const edge of loop) {
      const ax = edge.a.x - origin.x;
      const ay = edge.a.y - origin.y;
      const bx = edge.b.x - origin.x;
      const by = edge.b.y - origin.y;
      const triangle = (ax * by - ay * bx) / 2;
      mass += triangle;
      mx += (triangle * (ax + bx)) / 3;
      my += (triangle * (ay + by)) / 3;
      if (edge.kind !== 'arc') continue;
      const size = segmentArea(edge);
      // Moment of the segment about its centre, along the outward normal of the chord.
      const turn = sweep(edge);
      const moment = (2 / 3) * (edge.radius * Math.sin(turn / 2)) ** 3 * (edge.ccw ? 1 : -1);
      const chord = Math.hypot(bx - ax, by - ay);
      const nx = ((by - ay) / chord) * (edge.ccw ? 1 : -1);
      const ny = (-(bx - ax) / chord) * (edge.ccw ? 1 : -1);
      mass += size;
      mx += size * (edge.center.x - origin.x) + moment * nx;
      my += size * (edge.center.y - origin.y) + moment * ny;
    }
  }
  return { x: origin.x + mx / mass, y: origin.y + my / mass };
}
