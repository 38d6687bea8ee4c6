import { ROW } from '../geometry/curves.js';
import { sineExcess } from '../geometry/measure.js';
import type { Curves } from '../noding/gather.js';
import type { Subdivision } from './label.js';

/** So many tolerances at most may welding have moved an end of an edge off the curve that the edge is of. */
export const OFF_CURVE = 4;

/** What is known of a piece: nothing is drawn of it, it is drawn as it was given, in parts, or in some other way. */
const ABSENT = 0;
const AS_GIVEN = 1;
const IN_PARTS = 2;
const ODD = 3;

/**
 * What is wrong with the edges of a subdivision, in words, or null: an end that is not on the curve that the edge is said to be
 * a stretch of, an operand that goes round less, or more, than it did, by more than welding moves it, or winding numbers that
 * do not agree across an edge. Each edge is looked at once for all of that.
 */
export function edgeFault(subdivision: Subdivision, given: Curves): string | null {
  return new Edges(subdivision, given).fault();
}

class Edges {
  private readonly curves: Curves;
  /** By piece: how it is drawn, and the sum of what stands for the ends of its parts. */
  private readonly state: Int32Array;
  private readonly sum: Int32Array;
  /** By edge: by how much the winding numbers of all operands change across it, each counted with a weight of its own. */
  private readonly change: Int32Array;

  constructor(
    private readonly subdivision: Subdivision,
    private readonly given: Curves,
  ) {
    const { graph } = subdivision;
    this.curves = graph.curves;
    const lists = new Int32Array(2 * this.curves.count + graph.count);
    this.state = lists.subarray(0, this.curves.count);
    this.sum = lists.subarray(this.curves.count, 2 * this.curves.count);
    this.change = lists.subarray(2 * this.curves.count);
  }

  fault(): string | null {
    return this.look() ?? this.areaFault() ?? this.windingFault();
  }

  /** Looks at each edge, and at each piece that runs along it. */
  private look(): string | null {
    const { curves, state, sum, change } = this;
    const { graph } = this.subdivision;
    const { start, member, sign } = graph;
    const { from, to, operand } = curves;
    for (let e = 0; e < graph.count; e++) {
      const a = graph.from[e] as number;
      const b = graph.to[e] as number;
      const end = start[e + 1] as number;
      let total = 0;
      for (let m = start[e] as number; m < end; m++) {
        const piece = member[m] as number;
        const s = sign[m] as number;
        total = (total + Math.imul(s, chanceOf(operand[piece] as number))) | 0;
        const p = s > 0 ? a : b;
        const q = s > 0 ? b : a;
        if (p === from[piece] && q === to[piece]) {
          state[piece] = state[piece] === ABSENT ? AS_GIVEN : ODD;
          continue;
        }
        // Where parts go on from each other, the start of each is the end of another; other starts are looked at below.
        const what = this.endFault(piece, q);
        if (what !== null) return what;
        const isPart = (state[piece] === ABSENT || state[piece] === IN_PARTS) && this.isPart(piece, p, q);
        state[piece] = isPart ? IN_PARTS : ODD;
        sum[piece] = ((sum[piece] as number) + chanceOf(q) - chanceOf(p)) | 0;
      }
      change[e] = total;
    }
    return null;
  }

  /** An end of a stretch of a piece that is not on its curve; the ends of a piece that were given are where they were. */
  private endFault(piece: number, v: number): string | null {
    const { curves } = this;
    if (v === curves.from[piece] || v === curves.to[piece]) return null;
    const { points, tolerance } = curves;
    const edge = (curves.input[piece] as number) * ROW;
    const off = offEdge(curves, edge, points.x[v] as number, points.y[v] as number);
    const most = OFF_CURVE * tolerance;
    if (off <= most || off <= most + ownError(curves.shapes, edge)) return null;
    return `an end ${off / tolerance} tolerances off its curve`;
  }

  /** Whether a stretch goes up if its piece does, or down, and lies on the same side of the centre. */
  private isPart(piece: number, p: number, q: number): boolean {
    const { rows, from, to, points } = this.curves;
    const isUp = this.isBefore(from[piece] as number, to[piece] as number);
    if (this.isBefore(p, q) !== isUp) return false;
    const o = piece * ROW;
    const turn = rows[o + 7] as number;
    if (turn === 0) return true;
    const cx = rows[o + 4] as number;
    const side = turn > 0 === isUp ? 1 : -1;
    return (
      (p === from[piece] || side * ((points.x[p] as number) - cx) >= 0) &&
      (q === to[piece] || side * ((points.x[q] as number) - cx) >= 0)
    );
  }

  private isBefore(v: number, w: number): boolean {
    const { x, y } = this.curves.points;
    const rise = (y[w] as number) - (y[v] as number);
    return rise !== 0 ? rise > 0 : (x[v] as number) < (x[w] as number);
  }

  /**
   * Whether all of a piece is drawn: as it was given, or in parts that go on from one end to the other. Parts that all go up, and
   * whose ends cancel each other but for those of the piece, are a chain.
   */
  private isWhole(piece: number): boolean {
    if (this.state[piece] === AS_GIVEN) return true;
    if (this.state[piece] !== IN_PARTS) return false;
    const { from, to } = this.given;
    return ((chanceOf(to[piece] as number) - chanceOf(from[piece] as number)) | 0) === this.sum[piece];
  }

  /** An operand that goes round less, or more, than it did. A piece that is whole, on its curve, has lost nothing; most are. */
  private areaFault(): string | null {
    const { curves, given, state } = this;
    const { graph } = this.subdivision;
    // Other pieces than were given, where they have been cut until they rest.
    const areOthers = curves.rows !== given.rows;
    let broken = 0;
    let operands = 0;
    for (let piece = 0; piece < given.count; piece++) {
      operands = Math.max(operands, (given.operand[piece] as number) + 1);
      if (areOthers || !this.isWhole(piece)) {
        broken++;
        if (!areOthers) state[piece] = ODD;
      }
    }
    if (broken === 0) return null;
    /** By operand: the area that is missing, and no less than the length of what has been cut. */
    const lost = new Float64Array(operands);
    const most = new Float64Array(operands);
    const add = (of: Curves, piece: number, sign: number, p: number, q: number) => {
      const operand = of.operand[piece] as number;
      lost[operand] = (lost[operand] as number) + sign * areaUnder(of, piece, p, q);
      most[operand] = (most[operand] as number) + lengthOf(of, p, q);
    };
    for (let e = 0; e < graph.count; e++) {
      const a = graph.from[e] as number;
      const b = graph.to[e] as number;
      for (let m = graph.start[e] as number; m < (graph.start[e + 1] as number); m++) {
        const piece = graph.member[m] as number;
        if (!areOthers && state[piece] !== ODD) continue;
        const isAlong = (graph.sign[m] as number) > 0;
        const what = this.endFault(piece, isAlong ? a : b);
        if (what !== null) return what;
        add(curves, piece, -1, isAlong ? a : b, isAlong ? b : a);
      }
    }
    for (let piece = 0; piece < given.count; piece++) {
      if (!areOthers && state[piece] !== ODD) continue;
      add(given, piece, 1, given.from[piece] as number, given.to[piece] as number);
    }
    for (let operand = 0; operand < operands; operand++) {
      const area = lost[operand] as number;
      // Steiner: what lies within r of a curve has an area of its length times 2 r, and of the disc besides.
      const off = OFF_CURVE * curves.tolerance;
      const bound = off * (most[operand] as number) + Math.PI * off * off;
      if (!(Math.abs(area) <= bound)) return `operand ${operand} has lost an area of ${area}`;
    }
    return null;
  }

  /** An edge across which the winding numbers of some operand do not differ by how often its boundary runs along it. */
  private windingFault(): string | null {
    const { change } = this;
    const { order, via, faceOf, faceCount } = this.subdivision;
    const winding = new Int32Array(faceCount);
    for (let k = 0; k < order.length; k++) {
      const half = via[k] as number;
      const step = change[half >> 1] as number;
      winding[order[k] as number] =
        (winding[faceOf[half ^ 1] as number] as number) + (half & 1 ? -step : step);
    }
    for (let e = 0; e < change.length; e++) {
      const left = winding[faceOf[2 * e] as number] as number;
      const right = winding[faceOf[2 * e + 1] as number] as number;
      if ((left - right - (change[e] as number)) | 0)
        return 'winding numbers that do not agree across an edge';
    }
    return null;
  }
}

/**
 * A number of 32 bits that looks like chance; sums of such numbers do not come out right by chance. Source: the finalizer of
 * MurmurHash3 by Appleby, in the public domain.
 */
function chanceOf(number: number): number {
  let h = number + 1;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return h ^ (h >>> 16);
}

/** How far the ends of an arc are off its circle as it was given. */
function ownError(shapes: Float64Array, o: number): number {
  if (shapes[o + 7] === 0) return 0;
  return Math.max(
    offCircle(shapes, o, shapes[o] as number, shapes[o + 1] as number),
    offCircle(shapes, o, shapes[o + 2] as number, shapes[o + 3] as number),
  );
}

/** How far a place is from the line or circle of an edge. */
function offEdge({ originX, originY, shapes }: Curves, o: number, x: number, y: number): number {
  const px = x + originX;
  const py = y + originY;
  if (shapes[o + 7] !== 0) return offCircle(shapes, o, px, py);
  const ax = shapes[o] as number;
  const ay = shapes[o + 1] as number;
  const dx = (shapes[o + 2] as number) - ax;
  const dy = (shapes[o + 3] as number) - ay;
  return Math.abs(dx * (py - ay) - dy * (px - ax)) / Math.sqrt(dx * dx + dy * dy);
}

function offCircle(shapes: Float64Array, o: number, x: number, y: number): number {
  const dx = x - (shapes[o + 4] as number);
  const dy = y - (shapes[o + 5] as number);
  return Math.abs(Math.sqrt(dx * dx + dy * dy) - (shapes[o + 6] as number));
}

/**
 * The share of a piece between two places in the area of a chain that closes: the triangle from the origin to the chord, and
 * the segment of the circle; the piece runs from the one to the other.
 */
export function areaUnder({ rows, points }: Curves, piece: number, from: number, to: number): number {
  const ax = points.x[from] as number;
  const ay = points.y[from] as number;
  const bx = points.x[to] as number;
  const by = points.y[to] as number;
  const triangle = (ax * by - ay * bx) / 2;
  const o = piece * ROW;
  const turn = rows[o + 7] as number;
  if (turn === 0) return triangle;
  const r = rows[o + 6] as number;
  const px = ax - (rows[o + 4] as number);
  const py = ay - (rows[o + 5] as number);
  const qx = bx - (rows[o + 4] as number);
  const qy = by - (rows[o + 5] as number);
  const swept = Math.abs(Math.atan2(px * qy - py * qx, px * qx + py * qy));
  if (swept === 0 || (ax === bx && ay === by)) return triangle;
  return triangle + (turn * r * r * sineExcess(swept)) / 2;
}

/** No shorter than a piece between two places, and longer by a little, for what rounding adds. */
function lengthOf({ points }: Curves, from: number, to: number): number {
  const dx = (points.x[to] as number) - (points.x[from] as number);
  const dy = (points.y[to] as number) - (points.y[from] as number);
  return (Math.abs(dx) + Math.abs(dy)) * Math.PI;
}
