import { apartness, circleCrossings, turnKey, withinness } from '../geometry/circles.js';
import type { ArcEdge, Edge } from '../geometry/edge.js';
import { onArcSide } from '../geometry/measure.js';
import { distance, type Point } from '../geometry/point.js';
import { sortByKeys } from '../region/shell-sort.js';
import { nearPairs } from './near-circles.js';

/** What happens to a curve, as one goes along it, where it meets another. */
export const GOES_IN = 1;
export const COMES_OUT = -1;
/** The same for a circle and the region that it is cut out of. */
export const ENTERS_REGION = 2;
export const LEAVES_REGION = -2;

/**
 * Where edges and circles meet. Curves are numbered: the edges first, then the circles, which run counter-clockwise from
 * their rightmost point.
 */
export interface ClearMeetings {
  /** Places where two curves cross. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly count: number;
  /** Those on curve c, in order along it, are from `start[c]` up to `start[c + 1]` of `place`, with what happens there. */
  readonly start: Int32Array;
  readonly place: Int32Array;
  readonly event: Int8Array;
  /** How many discs the start of each curve lies in. */
  readonly covers: Int32Array;
  /** Discs that lie in another one. */
  readonly isSwallowed: Uint8Array;
}

/**
 * Finds where circles cross each other and the edges of a region.
 * @returns null unless all is clear: no two curves come within `margin` of touching, no circle that near to an end
 *   of an edge, no two places on one curve that near to each other, and no circle is near an arc that is almost a line
 */
export function clearMeetings(
  edges: readonly Edge[],
  circles: readonly ArcEdge[],
  margin: number,
): ClearMeetings | null {
  const pairs = nearPairs(edges, circles, margin);
  const finder = new Finder(edges, circles, margin, pairs);
  return finder.findSwallowed() && finder.findPlaces() ? finder.inOrder() : null;
}

/** Of an arc with more margins of radius than this the rounding of its far centre may move a crossing too far. */
const FAR = 1e8;

class Finder {
  private readonly isSwallowed: Uint8Array;
  private readonly covers: Int32Array;
  private readonly x: Float64Array;
  private readonly y: Float64Array;
  private count = 0;
  /** What happens where, for each place on each of its two curves. */
  private readonly onCurve: Int32Array;
  private readonly keys: Float64Array;
  private readonly events: Int8Array;

  constructor(
    private readonly edges: readonly Edge[],
    private readonly circles: readonly ArcEdge[],
    private readonly margin: number,
    private readonly pairs: readonly number[],
  ) {
    // Two curves cross in two places at most.
    const most = pairs.length;
    this.isSwallowed = new Uint8Array(circles.length);
    this.covers = new Int32Array(edges.length + circles.length);
    this.x = new Float64Array(most);
    this.y = new Float64Array(most);
    this.onCurve = new Int32Array(2 * most);
    this.keys = new Float64Array(2 * most);
    this.events = new Int8Array(2 * most);
  }

  /** Finds the discs that lie in others. False if two come near to touching. */
  findSwallowed(): boolean {
    const { pairs, circles, margin } = this;
    const base = this.edges.length;
    for (let k = 0; k < pairs.length; k += 2) {
      const i = (pairs[k] as number) - base;
      if (i < 0) continue;
      const j = (pairs[k + 1] as number) - base;
      const one = circles[i] as ArcEdge;
      const other = circles[j] as ArcEdge;
      const apart = apartness(one, other);
      if (Math.abs(apart) <= margin) return false;
      if (apart > 0) continue;
      const within = withinness(one, other);
      if (Math.abs(within) <= margin) return false;
      if (within > 0) this.isSwallowed[one.radius < other.radius ? i : j] = 1;
    }
    return true;
  }

  /** Finds where the others cross. False if something is not clear. */
  findPlaces(): boolean {
    const { pairs, edges, circles, isSwallowed } = this;
    const base = edges.length;
    for (let k = 0; k < pairs.length; k += 2) {
      const i = pairs[k] as number;
      const j = (pairs[k + 1] as number) - base;
      if (isSwallowed[j] === 1) continue;
      const circle = circles[j] as ArcEdge;
      if (i >= base) {
        if (isSwallowed[i - base] === 0) this.crossCircles(i - base, j);
        continue;
      }
      const edge = edges[i] as Edge;
      const inside = circle.radius - distance(edge.a, circle.center);
      if (Math.abs(inside) <= this.margin) return false;
      if (inside > 0) this.covers[i] = (this.covers[i] as number) + 1;
      if (!(edge.kind === 'line' ? this.crossLine(edge, i, circle, j) : this.crossArc(edge, i, circle, j)))
        return false;
    }
    return true;
  }

  private crossCircles(i: number, j: number): void {
    const one = this.circles[i] as ArcEdge;
    const other = this.circles[j] as ArcEdge;
    if (apartness(one, other) > 0) return;
    const crossings = circleCrossings(one, other);
    const base = this.edges.length;
    // Counter-clockwise round the one, the other disc begins to the right of the line of centres and ends to its left.
    const right = this.place(crossings.right);
    const left = this.place(crossings.left);
    this.cover(base + i, one, right, left);
    this.cover(base + j, other, left, right);
  }

  /** Notes that a disc covers a circle from one place to another. */
  private cover(curve: number, circle: ArcEdge, from: number, to: number): void {
    const first = this.round(circle, from);
    const last = this.round(circle, to);
    this.meet(from, 0, curve, first, GOES_IN);
    this.meet(to, 1, curve, last, COMES_OUT);
    if (first > last) this.covers[curve] = (this.covers[curve] as number) + 1;
  }

  private crossLine(edge: Edge, e: number, { center, radius }: ArcEdge, j: number): boolean {
    const { a, b } = edge;
    const length = distance(a, b);
    const ux = (b.x - a.x) / length;
    const uy = (b.y - a.y) / length;
    const mx = center.x - a.x;
    const my = center.y - a.y;
    const away = Math.abs(mx * uy - my * ux);
    const gap = away - radius;
    if (Math.abs(gap) <= this.margin) return false;
    if (gap > 0) return true;
    const foot = mx * ux + my * uy;
    const half = Math.sqrt(-gap * (radius + away));
    for (let sign = -1; sign <= 1; sign += 2) {
      const along = foot + sign * half;
      if (along > 0 && along < length)
        this.crossEdge(e, j, { x: a.x + along * ux, y: a.y + along * uy }, along, sign < 0);
    }
    return true;
  }

  private crossArc(edge: ArcEdge, e: number, circle: ArcEdge, j: number): boolean {
    if (edge.radius > FAR * this.margin) return false;
    const apart = apartness(edge, circle);
    const within = withinness(edge, circle);
    if (Math.abs(apart) <= this.margin || Math.abs(within) <= this.margin) return false;
    if (apart > 0 || within > 0) return true;
    const { left, right } = circleCrossings(edge, circle);
    this.crossArcAt(edge, e, j, right, edge.ccw);
    this.crossArcAt(edge, e, j, left, !edge.ccw);
    return true;
  }

  private crossArcAt(edge: ArcEdge, e: number, j: number, at: Point, goesIn: boolean): void {
    const { a, center, ccw } = edge;
    if (!onArcSide(edge, at)) return;
    const from = turnKey(a.x - center.x, a.y - center.y);
    const to = turnKey(at.x - center.x, at.y - center.y);
    const turned = ccw ? to - from : from - to;
    this.crossEdge(e, j, at, turned < 0 ? turned + 4 : turned, goesIn);
  }

  /** Notes that an edge goes into a disc or comes out of it. */
  private crossEdge(e: number, j: number, at: Point, key: number, goesIn: boolean): void {
    const place = this.place(at);
    this.meet(place, 0, e, key, goesIn ? GOES_IN : COMES_OUT);
    const around = this.round(this.circles[j] as ArcEdge, place);
    // The region is to the left of its edges, and so behind a circle that an edge goes into.
    this.meet(place, 1, this.edges.length + j, around, goesIn ? LEAVES_REGION : ENTERS_REGION);
  }

  private place({ x, y }: Point): number {
    this.x[this.count] = x;
    this.y[this.count] = y;
    return this.count++;
  }

  private meet(place: number, side: 0 | 1, curve: number, key: number, event: number): void {
    const slot = 2 * place + side;
    this.onCurve[slot] = curve;
    this.keys[slot] = key;
    this.events[slot] = event;
  }

  /** How far round a circle a place is, from its rightmost point. */
  private round({ center }: ArcEdge, place: number): number {
    return turnKey((this.x[place] as number) - center.x, (this.y[place] as number) - center.y);
  }

  /** All of it by curve; null if two places on one curve are too near to each other. */
  inOrder(): ClearMeetings | null {
    const { x, y, count, onCurve, keys, events, covers, isSwallowed } = this;
    const start = new Int32Array(covers.length + 1);
    const slots = 2 * count;
    for (let k = 0; k < slots; k++) {
      const c = (onCurve[k] as number) + 1;
      start[c] = (start[c] as number) + 1;
    }
    let longest = 0;
    for (let c = 0; c < covers.length; c++) {
      const n = start[c + 1] as number;
      if (n > longest) longest = n;
      start[c + 1] = n + (start[c] as number);
    }
    const order = new Int32Array(slots);
    // Filled from behind, `start` ends up where it began.
    const fill = start.slice(1);
    for (let k = slots - 1; k >= 0; k--) {
      const c = onCurve[k] as number;
      const at = (fill[c] as number) - 1;
      fill[c] = at;
      order[at] = k;
    }
    const own = new Float64Array(longest);
    const place = new Int32Array(slots);
    const event = new Int8Array(slots);
    for (let c = 0; c < covers.length; c++) {
      const lo = start[c] as number;
      const n = (start[c + 1] as number) - lo;
      if (n === 0) continue;
      for (let k = 0; k < n; k++) own[k] = keys[order[lo + k] as number] as number;
      sortByKeys(own, order, lo, n);
      for (let k = lo; k < lo + n; k++) {
        const slot = order[k] as number;
        place[k] = slot >> 1;
        event[k] = events[slot] as number;
        if (k > lo && this.areNear(place[k - 1] as number, place[k] as number)) return null;
      }
      // A circle closes: its last place is next to its first.
      if (n > 2 && this.areNear(place[lo] as number, place[lo + n - 1] as number)) return null;
    }
    return { x, y, count, start, place, event, covers, isSwallowed };
  }

  private areNear(p: number, q: number): boolean {
    const { x, y, margin } = this;
    return (
      Math.abs((x[p] as number) - (x[q] as number)) <= margin &&
      Math.abs((y[p] as number) - (y[q] as number)) <= margin
    );
  }
}
