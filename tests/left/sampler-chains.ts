import type { Edge, Loop, Point } from '@edgebite/core';
import { along, angleOf, gap, sweepOf, turnTo } from './sampler-edges.js';

/** An edge, or a reflex corner as the fan of normals of the discs that rest on it. */
export type Piece =
  | { readonly kind: 'edge'; readonly edge: Edge; readonly number: number; readonly length: number }
  | { readonly kind: 'fan'; readonly at: Point; readonly from: number; readonly turn: number };

/** A stretch of boundary without convex corners or touching loops; a closed one has none at all. */
export interface Chain {
  readonly pieces: readonly Piece[];
  readonly closed: boolean;
}

/** Turns smaller than this (radians) are taken for rounding at a smooth joint. */
const SMOOTH = 2e-7;

/** Turns larger than this (radians) come back on themselves. */
const CUSP = Math.PI - 1e-4;

/** Whether a place is past the tip in which an open chain ends, or in the very tip. */
export function isPastEnd({ closed, pieces }: Chain, t: number): boolean {
  return !closed && (t <= 1e-9 || t >= pieces.length - 1e-9);
}

/** A joint by its numbers, which are shared to the last bit. */
export function nameOf({ x, y }: Point): string {
  return `${x},${y}`;
}

/** The chains of a loop. */
export function chainsOf(
  loop: Loop,
  numberOf: ReadonlyMap<Edge, number>,
  isShared: (p: Point) => boolean,
): Chain[] {
  const pieces: (Piece | null)[] = [];
  loop.forEach((edge, k) => {
    pieces.push({ kind: 'edge', edge, number: numberOf.get(edge) as number, length: lengthOf(edge) });
    const next = loop[(k + 1) % loop.length] as Edge;
    const before = headingAt(edge, edge.b);
    const turn = wrapped(headingAt(next, next.a) - before);
    // Metal ends in a tip where loops touch, whatever the turn of one of them.
    if (isShared(edge.b) || (Math.abs(turn) > CUSP && isTip(edge, next))) pieces.push(null);
    else if (turn < -SMOOTH) pieces.push({ kind: 'fan', at: edge.b, from: before + Math.PI / 2, turn });
    else if (turn > SMOOTH) pieces.push(null);
  });
  const first = pieces.indexOf(null);
  if (first < 0) return [{ pieces: pieces as Piece[], closed: true }];
  const chains: Chain[] = [];
  let current: Piece[] = [];
  for (const piece of [...pieces.slice(first + 1), ...pieces.slice(0, first + 1)]) {
    if (piece !== null) current.push(piece);
    else {
      chains.push({ pieces: current, closed: false });
      current = [];
    }
  }
  return chains;
}

/** Whether two edges that come back on each other close in on metal: it lies between them a little way on. */
function isTip(arriving: Edge, leaving: Edge): boolean {
  const bend = (edge: Edge) => (edge.kind === 'line' ? 0 : (edge.ccw ? 1 : -1) / edge.radius);
  // Metal is to the left of the edge that leaves: on that side the other has to bend away.
  return bend(leaving) < -bend(arriving);
}

/** The tips of metal in which an open chain starts and ends. */
export function tipsOf({ pieces, closed }: Chain): Point[] {
  const [first, last] = [pieces[0], pieces[pieces.length - 1]];
  if (closed || first?.kind !== 'edge' || last?.kind !== 'edge') return [];
  return [first.edge.a, last.edge.b];
}

/** Shares along a piece at which it is sampled. */
export function sharesOf(piece: Piece, step: number): number[] {
  const n =
    piece.kind === 'edge'
      ? Math.min(400, Math.max(12, Math.ceil(piece.length / step)))
      : Math.max(6, Math.ceil(Math.abs(piece.turn) * 12));
  return Array.from({ length: n }, (_, k) => (k + 0.5) / n);
}

/** The place on a chain, the normal into metal there, and the number of its edge (-1 on a corner). */
export function placeOn(chain: Chain, t: number): { foot: Point; normal: Point; own: number } {
  const k = Math.floor(t);
  const share = t - k;
  const piece = chain.pieces[mod(k, chain.pieces.length)] as Piece;
  if (piece.kind === 'fan') {
    const angle = piece.from + piece.turn * share;
    return { foot: piece.at, normal: { x: Math.cos(angle), y: Math.sin(angle) }, own: -1 };
  }
  const { edge, number } = piece;
  if (edge.kind === 'line') {
    const foot = { x: edge.a.x + (edge.b.x - edge.a.x) * share, y: edge.a.y + (edge.b.y - edge.a.y) * share };
    const length = gap(edge.a, edge.b);
    return {
      foot,
      normal: { x: (edge.a.y - edge.b.y) / length, y: (edge.b.x - edge.a.x) / length },
      own: number,
    };
  }
  const angle = angleOf(edge.center, edge.a) + sweepOf(edge) * share;
  const out = { x: Math.cos(angle), y: Math.sin(angle) };
  const side = edge.ccw ? -1 : 1;
  return {
    foot: along(edge.center, out, edge.radius),
    normal: { x: out.x * side, y: out.y * side },
    own: number,
  };
}

/** Where on a piece a point is, seen with a normal; null if a corner does not face that way. */
export function shareAt(piece: Piece, p: Point, normal: Point): number | null {
  if (piece.kind === 'fan') {
    const turned = wrapped(Math.atan2(normal.y, normal.x) - piece.from);
    const share = turned / piece.turn;
    return share >= -1e-6 && share <= 1 + 1e-6 ? Math.min(1 - 1e-9, Math.max(1e-9, share)) : null;
  }
  const { edge } = piece;
  const share =
    edge.kind === 'line'
      ? ((p.x - edge.a.x) * (edge.b.x - edge.a.x) + (p.y - edge.a.y) * (edge.b.y - edge.a.y)) /
        gap(edge.a, edge.b) ** 2
      : turnTo({ ...edge, start: angleOf(edge.center, edge.a) }, p) / Math.abs(sweepOf(edge));
  return Math.min(1 - 1e-9, Math.max(1e-9, share));
}

function headingAt(edge: Edge, p: Point): number {
  if (edge.kind === 'line') return Math.atan2(edge.b.y - edge.a.y, edge.b.x - edge.a.x);
  const out = Math.atan2(p.y - edge.center.y, p.x - edge.center.x);
  return out + (edge.ccw ? Math.PI / 2 : -Math.PI / 2);
}

function lengthOf(edge: Edge): number {
  return edge.kind === 'line' ? gap(edge.a, edge.b) : edge.radius * Math.abs(sweepOf(edge));
}

function wrapped(angle: number): number {
  return Math.atan2(Math.sin(angle), Math.cos(angle));
}

/** Remainder, 0 or more. */
export function mod(k: number, n: number): number {
  return ((k % n) + n) % n;
}
