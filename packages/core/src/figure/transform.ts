/*
 * Room: whole regions moved, turned, split and compared.
 * In: regions.
 * Out: regions, hulls, widths, moments, gaps, chords, GeoJSON.
 */

import { checkOverZero } from '../geometry/checks.js';
import type { Edge } from '../geometry/edge.js';
import { reversed } from '../geometry/parts.js';
import { type Point, samePoint, type Vector } from '../geometry/point.js';
import type { Loop, Region } from '../region/region.js';

const ORIGIN: Point = { x: 0, y: 0 };

/** Sine and cosine of a right angle in radians come out as this little, not as 0. */
const RIGHT_ANGLE_ROUNDING = 1e-15;

/** The region moved by a vector. Edges keep their names, and neighbours share their ends to the last bit. */
export function movedRegion(region: Region, by: Vector): Region {
  return mapped(region, (p) => ({ x: p.x + by.dx, y: p.y + by.dy }), 1, false);
}

/**
 * The region turned counter-clockwise about a place. Edges keep their names; quarter turns are exact.
 * @param angle radians
 * @param about the origin unless given
 */
export function turnedRegion(region: Region, angle: number, about: Point = ORIGIN): Region {
  const cos = withoutRounding(Math.cos(angle));
  const sin = withoutRounding(Math.sin(angle));
  const turn = ({ x, y }: Point): Point => ({
    x: about.x + cos * (x - about.x) - sin * (y - about.y),
    y: about.y + sin * (x - about.x) + cos * (y - about.y),
  });
  return mapped(region, turn, 1, false);
}

/**
 * The region mirrored in the line through two places. Edges keep their names; loops are run the other way, so that outer
 * ones stay counter-clockwise.
 * @throws RangeError if the places coincide.
 */
export function mirroredRegion(region: Region, a: Point, b: Point): Region {
  if (samePoint(a, b))
    throw new RangeError(`mirroredRegion: both places are (${a.x}, ${a.y}); a line needs two`);
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const ux = (b.x - a.x) / length;
  const uy = (b.y - a.y) / length;
  const mirror = ({ x, y }: Point): Point => {
    const off = ux * (y - a.y) - uy * (x - a.x);
    return { x: x + 2 * off * uy, y: y - 2 * off * ux };
  };
  return mapped(region, mirror, 1, true);
}

/**
 * The region scaled from a place. Edges keep their names.
 * @param about the origin unless given
 * @throws RangeError if the factor is not a finite number over 0.
 */
export function scaledRegion(region: Region, factor: number, about: Point = ORIGIN): Region {
  checkOverZero('scaledRegion', 'factor', factor);
  const scale = ({ x, y }: Point): Point => ({
    x: about.x + factor * (x - about.x),
    y: about.y + factor * (y - about.y),
  });
  return mapped(region, scale, factor, false);
}

function withoutRounding(value: number): number {
  return Math.abs(value) < RIGHT_ANGLE_ROUNDING ? 0 : value;
}

/** Each place once: joints stay shared, and the arcs of a circle its centre. */
function mapped(region: Region, map: (p: Point) => Point, factor: number, flips: boolean): Region {
  const known = new Map<Point, Point>();
  const at = (p: Point): Point => {
    const before = known.get(p);
    if (before !== undefined) return before;
    const after = map(p);
    known.set(p, after);
    return after;
  };
  const edge = (one: Edge): Edge => {
    const ends = { a: at(one.a), b: at(one.b) };
    if (one.kind === 'line') return { ...one, ...ends };
    const ccw = one.ccw !== flips;
    return { ...one, ...ends, center: at(one.center), radius: one.radius * factor, ccw };
  };
  const loop = (one: Loop): Loop => {
    const edges = one.map(edge);
    // Mirrored edges run clockwise; each is as it should be, and turned with its arc.
    return flips ? edges.map(reversed).reverse() : edges;
  };
  return region.map(({ outer, holes }) => ({ outer: loop(outer), holes: holes.map(loop) }));
}
