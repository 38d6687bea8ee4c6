import type { ArcEdge, Edge } from '../geometry/edge.js';
import { sweep } from '../geometry/measure.js';
import { distance, type Point } from '../geometry/point.js';
import { roundedTo } from '../geometry/shown.js';
import { loopsOf } from '../region/measure.js';
import type { Loop, Region } from '../region/region.js';
import { inPieces } from './split-arc.js';

/** How path data is arcsToWrite. */
export interface SvgPathOptions {
  /** Digits after the point, 0 to 20; all that a double needs unless given. */
  readonly digits?: number | undefined;
}

/**
 * A centre nearer to the chord than this share of the radius, or a chord shorter than that, loses digits when
 * it is worked out again from radius and ends: such an arc is arcsToWrite
 * in pieces.
 */
const ILL_SHARE = 0.01;

/** A centre this close to the middle of the chord, as a share of the radius, is there: a half circle. */
const HALF_CIRCLE_SHARE = 1e-12;

/**
 * Path data of a region, or of one closed chain, with y up as in the part; draw it under `scale(1,-1)`. Outer
 * loops run counter-clockwise and holes clockwise, so that both fill rules fill it alike. Arcs that SVG's form
 * of an arc cannot give back well are arcsToWrite in pieces.
 * Source: W3C SVG 2, chapter 9.
 * @throws RangeError if `digits` is not a whole number from 0 to 20.
 */
export function toSvgPath(shape: Region | Loop, options: SvgPathOptions = {}): string {
  const write = writer(options.digits);
  const loops = isRegion(shape) ? loopsOf(shape) : [shape];
  return loops.map((loop) => chainPath(loop, write, true)).join(' ');
}

/**
 * Path data of an open chain, such as the path of a tool's centre.
 * @throws RangeError if `digits` is not a whole number from 0 to 20.
 */
export function openSvgPath(edges: readonly Edge[], options: SvgPathOptions = {}): string {
  return chainPath(edges, writer(options.digits), false);
}

function isRegion(shape: Region | Loop): shape is Region {
  return shape.every((item) => 'outer' in item);
}

function chainPath(edges: readonly Edge[], write: (n: number) => string, closed: boolean): string {
  const first = edges[0];
  if (first === undefined) return '';
  const point = (p: Point) => `${write(p.x)} ${write(p.y)}`;
  const drawn = closed && edges.at(-1)?.kind === 'line' ? edges.slice(0, -1) : edges;
  const commands = drawn.flatMap((edge) => {
    if (edge.kind === 'line') return [`L${point(edge.b)}`];
    return arcsToWrite(edge).map((arc) => {
      const r = write(arc.radius);
      return `A${r} ${r} 0 ${sweep(arc) > Math.PI ? 1 : 0} ${arc.ccw ? 1 : 0} ${point(arc.b)}`;
    });
  });
  return [`M${point(first.a)}`, ...commands, ...(closed ? ['Z'] : [])].join(' ');
}

function arcsToWrite(arc: ArcEdge): readonly ArcEdge[] {
  const half = distance(arc.a, arc.b) / 2;
  const off = arc.radius * Math.abs(Math.cos(sweep(arc) / 2));
  const shortChord = half < ILL_SHARE * arc.radius && sweep(arc) > Math.PI;
  const nearHalf = off < ILL_SHARE * arc.radius && off > HALF_CIRCLE_SHARE * arc.radius;
  if (shortChord) return inPieces(arc, 3);
  return nearHalf ? inPieces(arc, 2) : [arc];
}

function writer(digits: number | undefined): (n: number) => string {
  if (digits === undefined) return (n) => String(n + 0);
  if (!Number.isInteger(digits) || digits < 0 || digits > 20) {
    throw new RangeError(`toSvgPath: digits is ${digits}; it must be a whole number from 0 to 20`);
  }
  return (n) => String(roundedTo(n, digits));
}
