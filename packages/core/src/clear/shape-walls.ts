import { areNear, BoxTree } from '../geometry/box-tree.js';
import { ROW } from '../geometry/curves.js';
import type { ArcEdge, Edge } from '../geometry/edge.js';
import { arcLike, lineLike, reversed } from '../geometry/parts.js';
import type { Point } from '../geometry/point.js';
import { isInBox } from '../noding/meetings.js';
import { circleOf } from '../region/circle.js';
import { Joints } from '../region/joints.js';
import { circleLoop, type Loop } from '../region/region.js';
import type { BareWalls, Fate } from './bare-walls.js';
import { ENTERS, LEAVES, type ShapeMeetings, shapeMeetings } from './shape-meetings.js';
import { hasSeam, type ShapeRows, shapeRows, unite, windingOf, withRows } from './shape-rows.js';

/** The number of the region that is cut; cuts come after it. */
const REGION = 0;

/** Up to so many loops boxes are compared one by one. */
const FEW_LOOPS = 24;

/**
 * Finds the stretches of loops of a region that lie in no cut, and those of the cuts that lie in the region and in no other
 * cut, and joins them where they cross. As `bareWalls` does with discs, for cuts of any lines and arcs.
 * @param loops those of the region that may come near a cut
 * @param cuts the loops of each
 * @param read the loops of all cuts
 * @param isInside whether a loop that comes near none of the region lies in it
 * @returns null where something is not clear, see `shapeMeetings`; where an edge of a cut goes on in the next one under the same
 *   name; where loops of a cut touch; and where stretches do not fit together, which rounding makes possible in principle
 */
export function shapeWalls(
  loops: readonly Loop[],
  cuts: readonly (readonly Loop[])[],
  read: ShapeRows,
  margin: number,
  isInside: (loop: Loop) => boolean,
): BareWalls | null {
  for (let l = 0; l < read.loops.length; l++) if (hasSeam(read, l)) return null;
  for (const cut of cuts) if (doTouch(cut)) return null;
  const shapes = withRows(shapeRows(loops), read);
  const operandOf = new Int32Array(shapes.loops.length);
  let at = loops.length;
  for (let c = 0; c < cuts.length; c++) {
    for (let k = 0; k < (cuts[c] as readonly Loop[]).length; k++) operandOf[at++] = c + 1;
  }
  return new Walls(shapes, loops.length, operandOf, margin, isInside).find();
}

function doTouch(loops: readonly Loop[]): boolean {
  if (loops.length === 1) return false;
  const joints = new Joints();
  for (const loop of loops) {
    if (joints.touch(loop)) return true;
    joints.add(loop);
  }
  return false;
}

/** A stretch of a loop from one place on it to another. */
interface Stretch {
  readonly loop: number;
  readonly from: number;
  readonly fromEdge: number;
  readonly to: number;
  readonly toEdge: number;
  /** Whether it goes on past the end of the edge that it begins on. */
  readonly goesOn: boolean;
}

class Walls {
  private readonly loops: readonly Loop[];
  private readonly edges: readonly Edge[];
  private readonly first: Int32Array;
  private readonly made: Loop[] = [];
  private readonly points: (Point | undefined)[] = [];
  /** The stretch that leads away from each place, where what is left lies to the left of it. */
  private readonly leaving: (Stretch | undefined)[] = [];

  constructor(
    private readonly shapes: ShapeRows,
    private readonly regionLoops: number,
    private readonly operandOf: Int32Array,
    private readonly margin: number,
    private readonly isInside: (loop: Loop) => boolean,
  ) {
    this.loops = shapes.loops;
    this.edges = shapes.edges;
    this.first = shapes.first;
  }

  find(): BareWalls | null {
    const { edges, first, loops, operandOf } = this;
    const operand = new Int32Array(edges.length);
    const after = new Int32Array(edges.length);
    for (let l = 0; l < loops.length; l++) {
      const end = first[l + 1] as number;
      for (let e = first[l] as number; e < end; e++) {
        operand[e] = operandOf[l] as number;
        after[e] = e + 1 < end ? e + 1 : (first[l] as number);
      }
    }
    const meetings = shapeMeetings(this.shapes, operand, after, this.margin);
    if (meetings === null) return null;
    const covers = this.coversOf();
    const fates: Fate[] = [];
    for (let l = 0; l < loops.length; l++) {
      const fate = this.along(l, covers[l] as number, meetings);
      if (fate === null) return null;
      if (l < this.regionLoops) fates.push(fate);
    }
    return this.join(meetings) ? { fates, made: this.made } : null;
  }

  /** How many cuts, besides its own, the start of each loop lies in. */
  private coversOf(): Int32Array {
    const { shapes, loops, operandOf, first, regionLoops } = this;
    const { rows } = shapes;
    const covers = new Int32Array(loops.length);
    const boxes = new Float64Array(4 * loops.length);
    for (let l = 0; l < loops.length; l++)
      unite(shapes.boxes, first[l] as number, first[l + 1] as number, boxes, 4 * l);
    const add = (l: number, m: number) => {
      if (m < regionLoops) return;
      const x = rows[(first[l] as number) * ROW] as number;
      const y = rows[(first[l] as number) * ROW + 1] as number;
      if (isInBox(boxes, m, x, y, 0)) covers[l] = (covers[l] as number) + windingOf(shapes, m, x, y);
    };
    const visit = (l: number, m: number) => {
      if (operandOf[l] === operandOf[m]) return;
      add(l, m);
      add(m, l);
    };
    if (loops.length > FEW_LOOPS) new BoxTree(boxes, loops.length).eachPair(0, visit);
    else {
      for (let l = 0; l < loops.length; l++) {
        for (let m = 0; m < l; m++) if (areNear(boxes, l, m, 0)) visit(l, m);
      }
    }
    return covers;
  }

  /** Finds the stretches of a loop that stay. Null if it does not end as it began. */
  private along(l: number, covers: number, { start, place, event, other }: ShapeMeetings): Fate | null {
    const { first } = this;
    const lo = start[first[l] as number] as number;
    const hi = start[first[l + 1] as number] as number;
    const isCut = l >= this.regionLoops;
    const loop = this.loops[l] as Loop;
    if (lo === hi) {
      if (covers > 0) return 'gone';
      if (isCut && this.isInside(loop)) this.made.push(backwards(loop));
      return 'whole';
    }
    const begins = !isCut || this.beginsInside(loop, lo, hi, event, other);
    let inside = begins;
    let count = covers;
    let k = lo;
    let before = -1;
    let beforeEdge = -1;
    let firstEdge = -1;
    const end = first[l + 1] as number;
    for (let e = first[l] as number; e < end; e++) {
      for (; k < (start[e + 1] as number); k++) {
        const at = place[k] as number;
        if (before < 0) firstEdge = e;
        else if (inside && count === 0) this.keep(l, isCut, before, beforeEdge, at, e, e !== beforeEdge);
        const what = event[k] as number;
        if (isCut && other[k] === REGION) {
          if (inside === (what === ENTERS)) return null;
          inside = !inside;
        } else count += what;
        if (count < 0) return null;
        before = at;
        beforeEdge = e;
      }
    }
    if (inside !== begins || count !== covers) return null;
    if (inside && count === 0) this.keep(l, isCut, before, beforeEdge, place[lo] as number, firstEdge, true);
    return 'cut';
  }

  /** Whether a loop of a cut starts in the region: as its first crossing with that tells, if there is one. */
  private beginsInside(loop: Loop, lo: number, hi: number, event: Int8Array, other: Int32Array): boolean {
    for (let k = lo; k < hi; k++) if (other[k] === REGION) return event[k] === LEAVES;
    return this.isInside(loop);
  }

  /** Notes a stretch; one of a cut is run backwards, since what is left lies outside of it. */
  private keep(
    loop: number,
    isCut: boolean,
    from: number,
    fromEdge: number,
    to: number,
    toEdge: number,
    goesOn: boolean,
  ): void {
    this.leaving[isCut ? to : from] = { loop, from, fromEdge, to, toEdge, goesOn };
  }

  /** Goes from stretch to stretch until all are in loops. False if one does not lead back. */
  private join(meetings: ShapeMeetings): boolean {
    const { leaving } = this;
    const isDone = new Uint8Array(leaving.length);
    for (let first = 0; first < leaving.length; first++) {
      if (leaving[first] === undefined || isDone[first] === 1) continue;
      const loop: Edge[] = [];
      let at = first;
      do {
        const stretch = leaving[at];
        if (stretch === undefined || isDone[at] === 1) return false;
        isDone[at] = 1;
        at = this.follow(stretch, loop, meetings);
      } while (at !== first);
      this.made.push(loop);
    }
    return true;
  }

  /** Adds the edges of a stretch to a loop, and tells where it ends. */
  private follow(stretch: Stretch, loop: Edge[], meetings: ShapeMeetings): number {
    const { edges, first } = this;
    const { loop: l, from, fromEdge, to, toEdge, goesOn } = stretch;
    const lo = first[l] as number;
    const n = (first[l + 1] as number) - lo;
    const p = this.point(from, meetings);
    const q = this.point(to, meetings);
    const one = edges[fromEdge] as Edge;
    const last = edges[toEdge] as Edge;
    if (l < this.regionLoops) {
      if (!goesOn) loop.push(partOf(one, p, q, false));
      else {
        // Joints stay, since another loop may touch there.
        loop.push(partOf(one, p, one.b, false));
        for (let e = next(fromEdge, lo, n); e !== toEdge; e = next(e, lo, n)) loop.push(edges[e] as Edge);
        loop.push(partOf(last, last.a, q, false));
      }
      return to;
    }
    if (!goesOn) loop.push(partOf(one, q, p, true));
    else {
      const begin = loop.length;
      loop.push(partOf(last, q, last.a, true));
      for (let e = previous(toEdge, lo, n); e !== fromEdge; e = previous(e, lo, n))
        add(loop, begin, reversed(edges[e] as Edge));
      add(loop, begin, partOf(one, one.b, p, true));
    }
    return from;
  }

  private point(place: number, { x, y }: ShapeMeetings): Point {
    const known = this.points[place];
    if (known !== undefined) return known;
    const point = { x: x[place] as number, y: y[place] as number };
    this.points[place] = point;
    return point;
  }
}

function next(e: number, lo: number, n: number): number {
  return e + 1 < lo + n ? e + 1 : lo;
}

function previous(e: number, lo: number, n: number): number {
  return e > lo ? e - 1 : lo + n - 1;
}

function partOf(edge: Edge, a: Point, b: Point, isBack: boolean): Edge {
  return edge.kind === 'line' ? lineLike(edge, a, b) : arcLike(edge, a, b, edge.ccw !== isBack);
}

/** Adds an edge of a cut's stretch; where it goes on round the same circle, the two become one: loops of a cut do not touch. */
function add(loop: Edge[], begin: number, edge: Edge): void {
  const before = loop[loop.length - 1];
  const isOne =
    loop.length > begin &&
    edge.kind === 'arc' &&
    before?.kind === 'arc' &&
    before.center === edge.center &&
    before.radius === edge.radius &&
    before.ccw === edge.ccw &&
    before.source === edge.source;
  if (isOne) loop[loop.length - 1] = arcLike(before as ArcEdge, (before as ArcEdge).a, edge.b, edge.ccw);
  else loop.push(edge);
}

/** A loop run the other way. */
function backwards(loop: Loop): Loop {
  const circle = circleOf(loop);
  if (circle !== null && circle.source === loop[1]?.source)
    return circleLoop(circle.center, circle.radius, !circle.ccw, circle.source);
  return loop.map(reversed).reverse();
}
