import { type Box, boxOf, edgesOf, extentOf } from '@edgebite/core/testing';
import type { ArcEdge, Edge, Point, Region } from '../region/kernel.js';

/*
 * A reference for booleans that shares nothing with the arrangement: the plane, turned by an odd angle, is cut
 * into slabs at every height where something can happen (ends of edges, highest and lowest points of arcs,
 * places where two curves meet). Within a slab the curves keep their order, so membership is decided by counting
 * windings along one horizontal line, areas are closed integrals, and pieces hang together through the heights
 * that slabs share. No topology is computed, so none can be torn.
 */

/** What the slab method finds of one piece. */
export interface SlabPiece {
  readonly area: number;
  /**
   * Groups of closed complement enclosed by the piece; holes that touch each other or the outside at points
   * count with what they touch.
   */
  readonly enclosed: number;
}

/** Total area and pieces, largest first. */
export interface SlabResult {
  readonly area: number;
  readonly pieces: readonly SlabPiece[];
}

/** A line or an arc that runs up or down only: x as a function of y. */
interface Strand {
  readonly operand: number;
  /** 1 if it was run upwards, -1 if downwards. */
  readonly winds: 1 | -1;
  readonly low: number;
  readonly high: number;
  readonly xAt: (y: number) => number;
  /** Integral of x over y from the one height to the other. */
  readonly integral: (from: number, to: number) => number;
}

interface Interval {
  readonly left: Strand | null;
  readonly right: Strand | null;
  readonly metal: boolean;
  readonly slab: number;
}

/**
 * Odd enough that no edge or tangent of a drawing is level. Several: where curves touch at a tangent that happens to
 * be level in one of them, a gap of rounding is wide along the level, and seen as a passage.
 */
export const TILTS = [0.7391, 1.2817, 2.3143] as const;

/** Widths under this share of the extent are rounding: a passage so narrow is none. */
const NOTHING = 2e-10;

/** Operands and a rule that says from the memberships in them whether a place is metal. */
export function slabs(
  operands: readonly Region[],
  rule: (inside: readonly boolean[]) => boolean,
  tilt: number = TILTS[0],
): SlabResult {
  const extent = extentOf(...operands) || 1;
  const origin = edgesOf(operands.flat())[0]?.a ?? { x: 0, y: 0 };
  const edges = operands.map((region) => edgesOf(region).map((edge) => tilted(edge, origin, tilt)));
  const strands = edges.flatMap((list, operand) => list.flatMap((edge) => strandsOf(edge, operand)));
  const nothing = NOTHING * extent;
  const heights = eventHeights(edges.flat(), strands, 1e-6 * extent, nothing);
  const slabRows = heights
    .slice(1)
    .map((high, k) => rowOf(strands, heights[k] as number, high, k, rule, operands.length, nothing));
  return assemble(slabRows, heights, nothing);
}

/** `from` less all cuts. */
export function slabsSubtract(from: Region, cuts: readonly Region[], tilt?: number): SlabResult {
  return slabs([from, ...cuts], (inside) => inside[0] === true && !inside.slice(1).includes(true), tilt);
}

function tilted(edge: Edge, origin: Point, tilt: number): Edge {
  const turn = (p: Point): Point => {
    const x = p.x - origin.x;
    const y = p.y - origin.y;
    return { x: x * Math.cos(tilt) - y * Math.sin(tilt), y: x * Math.sin(tilt) + y * Math.cos(tilt) };
  };
  const ends = { a: turn(edge.a), b: turn(edge.b) };
  return edge.kind === 'line' ? { ...edge, ...ends } : { ...edge, ...ends, center: turn(edge.center) };
}

function strandsOf(edge: Edge, operand: number): Strand[] {
  if (edge.kind === 'line') return edge.a.y === edge.b.y ? [] : [lineStrand(edge.a, edge.b, operand)];
  return arcStrands(edge, operand);
}

function lineStrand(a: Point, b: Point, operand: number): Strand {
  const slope = (b.x - a.x) / (b.y - a.y);
  const xAt = (y: number): number => a.x + slope * (y - a.y);
  return {
    operand,
    winds: b.y > a.y ? 1 : -1,
    low: Math.min(a.y, b.y),
    high: Math.max(a.y, b.y),
    xAt,
    integral: (from, to) => ((xAt(from) + xAt(to)) / 2) * (to - from),
  };
}

/** An arc cut at its highest and lowest point, so that each strand is a left or a right half of the circle. */
function arcStrands(arc: ArcEdge, operand: number): Strand[] {
  const { center, radius } = arc;
  const start = Math.atan2(arc.a.y - center.y, arc.a.x - center.x);
  const end = Math.atan2(arc.b.y - center.y, arc.b.x - center.x);
  const sign = arc.ccw ? 1 : -1;
  let turn = (end - start) * sign;
  if (turn < 0) turn += 2 * Math.PI;
  const stops = [-1.5, -0.5, 0.5, 1.5, 2.5].map(
    (q) => ((q * Math.PI - start) * sign + 4 * Math.PI) % (2 * Math.PI),
  );
  const cuts = [0, ...[...new Set(stops)].filter((t) => t > 0 && t < turn).sort((s, t) => s - t), turn];
  const pieces: Strand[] = [];
  for (let k = 0; k + 1 < cuts.length; k += 1) {
    const from = start + sign * (cuts[k] as number);
    const to = start + sign * (cuts[k + 1] as number);
    const y1 = k === 0 ? arc.a.y : center.y + radius * Math.sin(from);
    const y2 = k + 2 === cuts.length ? arc.b.y : center.y + radius * Math.sin(to);
    if (y1 === y2) continue;
    const side = Math.cos((from + to) / 2) > 0 ? 1 : -1;
    pieces.push(halfCircleStrand(center, radius, side, y1, y2, operand));
  }
  return pieces;
}

function halfCircleStrand(
  center: Point,
  radius: number,
  side: number,
  y1: number,
  y2: number,
  operand: number,
): Strand {
  const root = (u: number): number => Math.sqrt(Math.max(0, (radius - u) * (radius + u)));
  // The angle from the same root as the product: an arc sine would lose half the digits at the extremes.
  const primitive = (u: number): number => (u * root(u) + radius * radius * Math.atan2(u, root(u))) / 2;
  return {
    operand,
    winds: y2 > y1 ? 1 : -1,
    low: Math.min(y1, y2),
    high: Math.max(y1, y2),
    xAt: (y) => center.x + side * root(y - center.y),
    integral: (from, to) =>
      center.x * (to - from) + side * (primitive(to - center.y) - primitive(from - center.y)),
  };
}

function eventHeights(
  edges: readonly Edge[],
  strands: readonly Strand[],
  slack: number,
  nothing: number,
): number[] {
  const heights = new Set(strands.flatMap((s) => [s.low, s.high]));
  const boxes = edges.map((edge) => boxOf([edge]));
  for (let i = 0; i < edges.length; i += 1) {
    for (let j = i + 1; j < edges.length; j += 1) {
      if (!boxesMeet(boxes[i] as Box, boxes[j] as Box, slack)) continue;
      for (const y of meetingHeights(edges[i] as Edge, edges[j] as Edge, nothing)) heights.add(y);
    }
  }
  return [...heights].sort((a, b) => a - b);
}

function boxesMeet(s: Box, t: Box, slack: number): boolean {
  return (
    s.minX <= t.maxX + slack &&
    t.minX <= s.maxX + slack &&
    s.minY <= t.maxY + slack &&
    t.minY <= s.maxY + slack
  );
}

/** Heights at which the carriers of two edges meet, or pass each other at nothing; one too many does no harm. */
function meetingHeights(e: Edge, f: Edge, nothing: number): number[] {
  if (e.kind === 'arc') return f.kind === 'arc' ? circleCircle(e, f, nothing) : lineCircle(f, e, nothing);
  return f.kind === 'arc' ? lineCircle(e, f, nothing) : lineLine(e, f);
}

function lineLine(e: Edge, f: Edge): number[] {
  const [ex, ey, fx, fy] = [e.b.x - e.a.x, e.b.y - e.a.y, f.b.x - f.a.x, f.b.y - f.a.y];
  const cross = ex * fy - ey * fx;
  const t = ((f.a.x - e.a.x) * fy - (f.a.y - e.a.y) * fx) / cross;
  return t >= -0.01 && t <= 1.01 ? [e.a.y + ey * t] : [];
}

function lineCircle(line: Edge, arc: ArcEdge, nothing: number): number[] {
  const length = Math.hypot(line.b.x - line.a.x, line.b.y - line.a.y);
  const [ux, uy] = [(line.b.x - line.a.x) / length, (line.b.y - line.a.y) / length];
  const [cx, cy] = [arc.center.x - line.a.x, arc.center.y - line.a.y];
  const off = ux * cy - uy * cx;
  const half = (arc.radius - off) * (arc.radius + off);
  const along = ux * cx + uy * cy;
  const root = Math.sqrt(Math.max(0, half));
  return half < -missed(arc.radius, nothing)
    ? []
    : [line.a.y + uy * (along - root), line.a.y + uy * (along + root)];
}

/** The squared half chord, below 0, of a circle that something passes at nothing. */
function missed(radius: number, nothing: number): number {
  return radius * Math.max(2 * nothing, 1e-9 * radius);
}

function circleCircle(e: ArcEdge, f: ArcEdge, nothing: number): number[] {
  const d = Math.hypot(f.center.x - e.center.x, f.center.y - e.center.y);
  if (d === 0) return [];
  const [ux, uy] = [(f.center.x - e.center.x) / d, (f.center.y - e.center.y) / d];
  const along = (d + ((e.radius - f.radius) * (e.radius + f.radius)) / d) / 2;
  const half = (e.radius - along) * (e.radius + along);
  if (half < -missed(Math.max(e.radius, f.radius), nothing)) return [];
  const root = Math.sqrt(Math.max(0, half));
  return [e.center.y + uy * along + ux * root, e.center.y + uy * along - ux * root];
}

/** The intervals of one slab from left to right, metal and void taking turns. */
function rowOf(
  strands: readonly Strand[],
  low: number,
  high: number,
  slab: number,
  rule: (inside: readonly boolean[]) => boolean,
  operands: number,
  nothing: number,
): Interval[] {
  const middle = low + (high - low) / 2;
  const across = strands
    .filter((s) => s.low <= low && s.high >= high)
    .map((strand) => ({ strand, x: strand.xAt(middle) }))
    .sort((s, t) => s.x - t.x);
  const winding = new Array<number>(operands).fill(0);
  const isMetal = (): boolean => rule(winding.map((w) => w !== 0));
  const borders: { strand: Strand; x: number; metalAfter: boolean }[] = [];
  for (const { strand, x } of across) {
    winding[strand.operand] = (winding[strand.operand] as number) - strand.winds;
    borders.push({ strand, x, metalAfter: isMetal() });
  }
  return intervalsOf(borders, slab, nothing);
}

function intervalsOf(
  borders: readonly { strand: Strand; x: number; metalAfter: boolean }[],
  slab: number,
  nothing: number,
): Interval[] {
  // Strands closer than nothing act together: only the state after the last of them counts.
  const steps = borders.filter((b, k) => {
    const next = borders[k + 1];
    return next === undefined || next.x - b.x > nothing;
  });
  const row: Interval[] = [];
  let left: Strand | null = null;
  let metal = false;
  for (const { strand, metalAfter } of steps) {
    if (metalAfter === metal) continue;
    row.push({ left, right: strand, metal, slab });
    left = strand;
    metal = metalAfter;
  }
  row.push({ left, right: null, metal, slab });
  return row;
}

function assemble(rows: readonly Interval[][], heights: readonly number[], nothing: number): SlabResult {
  const groups = new Groups();
  rows.forEach((row, k) => {
    const below = rows[k - 1] ?? [];
    for (const upper of row) {
      for (const lower of below) {
        if (upper.metal && lower.metal && overlap(upper, lower, heights[k] as number) > nothing) {
          groups.join(upper, lower);
        }
      }
    }
  });
  const areas = new Map<Interval, number>();
  for (const row of rows) {
    for (const interval of row.filter((i) => i.metal)) {
      const root = groups.root(interval);
      areas.set(root, (areas.get(root) ?? 0) + areaOfInterval(interval, heights));
    }
  }
  const pieces = [...areas].map(([root, area]) => ({
    area,
    enclosed: enclosedBy((i) => i.metal && groups.root(i) === root, rows, heights, nothing),
  }));
  pieces.sort((p, q) => q.area - p.area);
  return { area: pieces.reduce((sum, p) => sum + p.area, 0), pieces };
}

/** Groups of what is not in a piece, touching ones taken together, less the group that reaches outside. */
function enclosedBy(
  inPiece: (interval: Interval) => boolean,
  rows: readonly Interval[][],
  heights: readonly number[],
  nothing: number,
): number {
  const groups = new Groups();
  const outside: Interval = { left: null, right: null, metal: false, slab: -1 };
  const voidRows = rows.map((row) => mergedVoids(row, inPiece));
  voidRows.forEach((row, k) => {
    for (const upper of row) {
      if (upper.left === null || upper.right === null || k === 0 || k === rows.length - 1)
        groups.join(upper, outside);
      for (const lower of voidRows[k - 1] ?? []) {
        if (overlap(upper, lower, heights[k] as number) > -nothing) groups.join(upper, lower);
      }
    }
  });
  const roots = new Set(voidRows.flat().map((i) => groups.root(i)));
  roots.delete(groups.root(outside));
  return roots.size;
}

function mergedVoids(row: readonly Interval[], inPiece: (interval: Interval) => boolean): Interval[] {
  const voids: Interval[] = [];
  let joins = false;
  for (const interval of row) {
    const isVoid = !inPiece(interval);
    const last = voids.at(-1);
    if (isVoid && joins && last !== undefined) voids[voids.length - 1] = { ...last, right: interval.right };
    else if (isVoid) voids.push({ ...interval, metal: false });
    joins = isVoid;
  }
  return voids;
}

/** Length that two intervals share at a height; negative if they lie apart. */
function overlap(upper: Interval, lower: Interval, y: number): number {
  const left = (i: Interval): number => (i.left === null ? -Infinity : i.left.xAt(y));
  const right = (i: Interval): number => (i.right === null ? Infinity : i.right.xAt(y));
  return Math.min(right(upper), right(lower)) - Math.max(left(upper), left(lower));
}

function areaOfInterval({ left, right, slab }: Interval, heights: readonly number[]): number {
  const [from, to] = [heights[slab] as number, heights[slab + 1] as number];
  return (right?.integral(from, to) ?? 0) - (left?.integral(from, to) ?? 0);
}

/** Union and find on intervals. */
class Groups {
  private readonly parent = new Map<Interval, Interval>();

  root(interval: Interval): Interval {
    let at = interval;
    for (let up = this.parent.get(at); up !== undefined; up = this.parent.get(at)) at = up;
    if (at !== interval) this.parent.set(interval, at);
    return at;
  }

  join(a: Interval, b: Interval): void {
    const [rootA, rootB] = [this.root(a), this.root(b)];
    if (rootA !== rootB) this.parent.set(rootA, rootB);
  }
}
