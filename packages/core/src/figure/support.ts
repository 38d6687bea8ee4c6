import { TURN, withinTurn } from '../geometry/angle.js';
import type { Edge, Source } from '../geometry/edge.js';
import { sweep } from '../geometry/measure.js';
import type { Point } from '../geometry/point.js';
import type { Region } from '../region/region.js';

/** What may be farthest in some direction: a corner, or an arc that bulges outward, in the directions of its normals. */
export interface Bulge {
  readonly center: Point;
  /** 0 for a corner. */
  readonly radius: number;
  /** The directions, counter-clockwise from one to the other, radians; a whole turn for a corner. */
  readonly from: number;
  readonly turn: number;
  readonly source: Source | null;
}

/** Between two directions, what is farthest there. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly bulge: Bulge;
}

/** How far something reaches in a direction. */
export function reachOf({ center, radius }: Bulge, angle: number): number {
  return center.x * Math.cos(angle) + center.y * Math.sin(angle) + radius;
}

/**
 * What of a region is farthest in each direction, as stretches of directions from 0 to a whole turn: its support function.
 * Source: Preparata and Shamos, "Computational Geometry", on hulls; the envelope by divide and conquer.
 */
export function supportOf(region: Region): Stretch[] {
  const bulges = region.flatMap(({ outer }) => outer.flatMap(bulgesOf));
  return envelope(bulges, 0, bulges.length);
}

function bulgesOf(edge: Edge): Bulge[] {
  const corner: Bulge = { center: edge.a, radius: 0, from: 0, turn: TURN, source: null };
  // An arc that turns clockwise bulges inward: its ends tell all.
  if (edge.kind === 'line' || !edge.ccw) return [corner];
  const { center, radius, a, source = null } = edge;
  const from = withinTurn(Math.atan2(a.y - center.y, a.x - center.x));
  return [corner, { center, radius, from, turn: sweep(edge), source }];
}

function envelope(bulges: readonly Bulge[], low: number, high: number): Stretch[] {
  if (high - low === 1) return ownStretches(bulges[low] as Bulge);
  if (high <= low) return [];
  const middle = (low + high) >> 1;
  return upper(envelope(bulges, low, middle), envelope(bulges, middle, high));
}

function ownStretches(bulge: Bulge): Stretch[] {
  const to = bulge.from + bulge.turn;
  if (to <= TURN) return [{ from: bulge.from, to, bulge }];
  return [
    { from: 0, to: to - TURN, bulge },
    { from: bulge.from, to: TURN, bulge },
  ];
}

/** The farther of two lists of stretches in each direction; either may have gaps. */
function upper(one: readonly Stretch[], other: readonly Stretch[]): Stretch[] {
  const stops = [...one, ...other].flatMap(({ from, to }) => [from, to]).sort((a, b) => a - b);
  const result: Stretch[] = [];
  let [i, j] = [0, 0];
  for (let k = 0; k + 1 < stops.length; k++) {
    const [from, to] = [stops[k] as number, stops[k + 1] as number];
    if (!(to > from)) continue;
    while (i < one.length && (one[i] as Stretch).to <= from) i++;
    while (j < other.length && (other[j] as Stretch).to <= from) j++;
    const f = within(one[i], from, to);
    const g = within(other[j], from, to);
    if (f !== null && g !== null) between(f, g, from, to, result);
    else if (f !== null || g !== null) add(result, from, to, (f ?? g) as Bulge);
  }
  return result;
}

function within(stretch: Stretch | undefined, from: number, to: number): Bulge | null {
  return stretch !== undefined && stretch.from <= from && stretch.to >= to ? stretch.bulge : null;
}

/** Two that both reach from one direction to another: cut where one overtakes the other. */
function between(f: Bulge, g: Bulge, from: number, to: number, result: Stretch[]): void {
  const stops = [from, ...crossings(f, g, from, to), to];
  for (let k = 0; k + 1 < stops.length; k++) {
    const [a, b] = [stops[k] as number, stops[k + 1] as number];
    if (!(b > a)) continue;
    const middle = (a + b) / 2;
    add(result, a, b, reachOf(f, middle) >= reachOf(g, middle) ? f : g);
  }
}

/** Directions between two others in which two things reach equally far. */
function crossings(f: Bulge, g: Bulge, from: number, to: number): number[] {
  const dx = f.center.x - g.center.x;
  const dy = f.center.y - g.center.y;
  const away = Math.hypot(dx, dy);
  const share = (g.radius - f.radius) / away;
  if (!(Math.abs(share) <= 1)) return [];
  const middle = Math.atan2(dy, dx);
  const half = Math.acos(share);
  return [withinTurn(middle - half), withinTurn(middle + half)]
    .filter((angle) => angle > from && angle < to)
    .sort((a, b) => a - b);
}

function add(result: Stretch[], from: number, to: number, bulge: Bulge): void {
  const last = result.at(-1);
  if (last !== undefined && last.bulge === bulge && last.to === from)
    result[result.length - 1] = { ...last, to };
  else result.push({ from, to, bulge });
}
