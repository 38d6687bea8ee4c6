import type { Circle } from '../geometry/circles.js';
import type { ArcEdge, Edge } from '../geometry/edge.js';
import { arcLike, lineLike } from '../geometry/parts.js';
import type { Point } from '../geometry/point.js';
import { circleLoop, type Loop } from '../region/region.js';
import { type ClearMeetings, ENTERS_REGION, LEAVES_REGION } from './clear-meetings.js';

/** What becomes of a loop when discs are taken out; `gone` if it lies in these. */
export type Fate = 'whole' | 'gone' | 'cut';

export interface BareWalls {
  /** One for each loop. */
  readonly fates: readonly Fate[];
  /** Loops in place of those that are cut, and circles that cut none; what is left lies to the left of them. */
  readonly made: readonly Loop[];
}

/**
 * Finds the stretches of loops and circles that lie in no disc, those of circles within the region only, and joins them.
 * @param edges those of the loops, one loop after the other
 * @param isInside whether a circle that does not come near any loop lies in the region
 * @returns null where stretches do not fit together, which rounding makes possible in principle
 */
export function bareWalls(
  loops: readonly Loop[],
  edges: readonly Edge[],
  circles: readonly ArcEdge[],
  meetings: ClearMeetings,
  isInside: (circle: Circle) => boolean,
): BareWalls | null {
  return new Walls(loops, edges, circles, meetings, isInside).find();
}

/** What stands for the end of a stretch: the end of its edge. */
const EDGE_END = -1;

/** What stands for a stretch from the start of an edge where there is none. */
const NONE = -2;

class Walls {
  /** The edge after each. */
  private readonly after: Int32Array;
  /** Where the stretch from the start of an edge ends: a place, `EDGE_END` or `NONE`. */
  private readonly fromStart: Int32Array;
  /** The curve of the stretch that begins at a place, and where it ends; -1 where none does. */
  private readonly curve: Int32Array;
  private readonly end: Int32Array;
  private readonly points: (Point | undefined)[] = [];
  private readonly made: Loop[] = [];

  constructor(
    private readonly loops: readonly Loop[],
    private readonly edges: readonly Edge[],
    private readonly circles: readonly ArcEdge[],
    private readonly meetings: ClearMeetings,
    private readonly isInside: (circle: Circle) => boolean,
  ) {
    const n = edges.length;
    this.after = new Int32Array(n);
    for (let e = 0; e < n; e++) this.after[e] = e + 1;
    let first = 0;
    for (const loop of loops) {
      this.after[first + loop.length - 1] = first;
      first += loop.length;
    }
    this.fromStart = new Int32Array(n);
    this.curve = new Int32Array(meetings.count).fill(-1);
    this.end = new Int32Array(meetings.count);
  }

  find(): BareWalls | null {
    for (let e = 0; e < this.edges.length; e++) if (!this.alongEdge(e)) return null;
    for (let c = 0; c < this.circles.length; c++) {
      if (this.meetings.isSwallowed[c] === 0 && !this.roundCircle(c)) return null;
    }
    return this.join() ? { fates: this.fates(), made: this.made } : null;
  }

  /** Finds the bare stretches of an edge. False if it does not end as the next begins. */
  private alongEdge(e: number): boolean {
    const { start, place, event, covers } = this.meetings;
    let count = covers[e] as number;
    let from = EDGE_END;
    this.fromStart[e] = count === 0 ? EDGE_END : NONE;
    for (let k = start[e] as number; k < (start[e + 1] as number); k++) {
      const at = place[k] as number;
      const wasBare = count === 0;
      count += event[k] as number;
      if (count === 0) from = at;
      else if (!wasBare) continue;
      else if (from === EDGE_END) this.fromStart[e] = at;
      else this.stretch(from, e, at);
    }
    if (count === 0 && from !== EDGE_END) this.stretch(from, e, EDGE_END);
    return count === covers[this.after[e] as number];
  }

  /** Finds the bare stretches of a circle; clockwise, since what is left lies outside of it. */
  private roundCircle(c: number): boolean {
    const { start, place, event, covers } = this.meetings;
    const curve = this.edges.length + c;
    const lo = start[curve] as number;
    const hi = start[curve + 1] as number;
    let count = covers[curve] as number;
    const first = this.startsInside(c, lo, hi);
    let inside = first;
    let isBare = inside && count === 0;
    const wasBare = isBare;
    /** Where the stretch at hand began, and where the one ends that goes on past the start of the circle. */
    let from = -1;
    let over = -1;
    for (let k = lo; k < hi; k++) {
      const what = event[k] as number;
      if (what === ENTERS_REGION || what === LEAVES_REGION) {
        if (inside === (what === ENTERS_REGION)) return false;
        inside = !inside;
      } else count += what;
      if ((inside && count === 0) === isBare) continue;
      isBare = !isBare;
      if (isBare) from = place[k] as number;
      else if (from < 0) over = place[k] as number;
      else this.stretch(place[k] as number, curve, from);
    }
    if (inside !== first || count !== covers[curve]) return false;
    if (over >= 0) this.stretch(over, curve, from);
    else if (wasBare) {
      const { center, radius, source } = this.circles[c] as ArcEdge;
      this.made.push(circleLoop(center, radius, false, source));
    }
    return true;
  }

  /** Whether the start of a circle lies in the region; of no matter where all of the circle is covered. */
  private startsInside(c: number, lo: number, hi: number): boolean {
    const { event, covers } = this.meetings;
    let count = covers[this.edges.length + c] as number;
    let isBare = count === 0;
    for (let k = lo; k < hi; k++) {
      const what = event[k] as number;
      if (what === ENTERS_REGION) return false;
      if (what === LEAVES_REGION) return true;
      count += what;
      if (count === 0) isBare = true;
    }
    return isBare && this.isInside(this.circles[c] as ArcEdge);
  }

  private stretch(from: number, curve: number, to: number): void {
    this.curve[from] = curve;
    this.end[from] = to;
  }

  /** Goes from stretch to stretch until all are in loops. False if one does not lead back. */
  private join(): boolean {
    const { curve } = this;
    const isDone = new Uint8Array(curve.length);
    for (let first = 0; first < curve.length; first++) {
      if (curve[first] === -1 || isDone[first] === 1) continue;
      const loop: Edge[] = [];
      let at = first;
      do {
        if (at < 0 || curve[at] === -1 || isDone[at] === 1) return false;
        isDone[at] = 1;
        at = this.follow(at, loop);
      } while (at !== first);
      this.made.push(loop);
    }
    return true;
  }

  /** Adds the stretch that begins at a place, and edges after it, up to the next place; -1 if there is none. */
  private follow(from: number, loop: Edge[]): number {
    const { edges, after, fromStart } = this;
    const curve = this.curve[from] as number;
    const to = this.end[from] as number;
    if (curve >= edges.length) {
      loop.push(
        arcLike(this.circles[curve - edges.length] as ArcEdge, this.point(from), this.point(to), false),
      );
      return to;
    }
    const edge = edges[curve] as Edge;
    if (to !== EDGE_END) {
      loop.push(partOf(edge, this.point(from), this.point(to)));
      return to;
    }
    loop.push(partOf(edge, this.point(from), edge.b));
    let e = after[curve] as number;
    // Round the whole loop at most: the edge that it began with has a place on it.
    for (; fromStart[e] === EDGE_END; e = after[e] as number) loop.push(edges[e] as Edge);
    const end = fromStart[e] as number;
    if (end === NONE) return -1;
    const next = edges[e] as Edge;
    loop.push(partOf(next, next.a, this.point(end)));
    return end;
  }

  private point(place: number): Point {
    const known = this.points[place];
    if (known !== undefined) return known;
    const { x, y } = this.meetings;
    const point = { x: x[place] as number, y: y[place] as number };
    this.points[place] = point;
    return point;
  }

  private fates(): Fate[] {
    const { loops, fromStart } = this;
    const { start } = this.meetings;
    let first = 0;
    return loops.map((loop) => {
      const end = first + loop.length;
      const isMet = start[first] !== start[end];
      const fate = isMet ? 'cut' : fromStart[first] === NONE ? 'gone' : 'whole';
      first = end;
      return fate;
    });
  }
}

function partOf(edge: Edge, a: Point, b: Point): Edge {
  return edge.kind === 'line' ? lineLike(edge, a, b) : arcLike(edge, a, b, edge.ccw);
}
