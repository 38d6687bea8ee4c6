import { readFileSync } from 'node:fs';
import { type Cut, cutRegion, type Encoding } from '@edgebite/core/testing';
import { arcEdge, circleLoop, type Edge, type Loop, lineEdge, type Region } from '../region/kernel.js';

type Pair = readonly [number, number];

interface Segment {
  readonly type: 'line' | 'arc';
  readonly a: Pair;
  readonly b: Pair;
  readonly c?: Pair;
  readonly ccw?: boolean;
}

/** A piece as exact arithmetic finds it. */
export interface ExactPiece {
  readonly area: number;
  readonly perimeter: number;
  readonly holes: number;
  readonly bbox: readonly [number, number, number, number];
  /** Interior angles in degrees, smooth vertices left out. */
  readonly angles: readonly number[];
  /** Places where the boundary of the piece touches itself. */
  readonly pinches?: readonly Pair[];
}

/** One case of tests/cases/boolean-exact.jsonl. */
export interface ExactCase {
  readonly id: string;
  readonly family: string;
  /** Facts about how the case was made; `gap` is a planted distance. */
  readonly meta: { readonly gap?: number };
  readonly outline: { readonly outer: readonly Segment[]; readonly holes: readonly (readonly Segment[])[] };
  readonly cuts: readonly (
    | { readonly type: 'disc'; readonly c: Pair; readonly r: number }
    | { readonly type: 'ring'; readonly c: Pair; readonly outer: number; readonly inner: number }
  )[];
  readonly expect: {
    readonly pieces: readonly ExactPiece[];
    readonly removedArea: number;
    readonly remainingArea: number;
    readonly outlineArea: number;
    readonly steps?: readonly (readonly [area: number, pieces: number])[];
    readonly topologyStableTo: number;
    /** How far rounding of the case's own coordinates can turn an angle. */
    readonly angleTolDeg: number;
  };
}

/** The cases, computed with CGAL's Boolean set operations on circle and line segments. */
export function exactCases(): ExactCase[] {
  const text = readFileSync(new URL('../cases/boolean-exact.jsonl', import.meta.url), 'utf8');
  return text
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as ExactCase);
}

/** The outline of a case. */
export function outlineOf({ outline }: ExactCase): Region {
  return [{ outer: loopOf(outline.outer), holes: outline.holes.map(loopOf) }];
}

/** The cuts of a case, their circles in the given encoding. */
export function cutsOf({ cuts }: ExactCase, encoding?: Encoding): Region[] {
  return cuts.map((cut) => {
    const center = { x: cut.c[0], y: cut.c[1] };
    const plain: Cut =
      cut.type === 'disc'
        ? { kind: 'disc', center, radius: cut.r }
        : { kind: 'ring', center, outer: cut.outer, inner: cut.inner };
    return cutRegion(plain, encoding);
  });
}

function loopOf(segments: readonly Segment[]): Loop {
  const [first] = segments;
  // One arc from a point to itself stands for a full circle.
  if (segments.length === 1 && first?.c) {
    const center = { x: first.c[0], y: first.c[1] };
    return circleLoop(center, Math.hypot(first.a[0] - center.x, first.a[1] - center.y), first.ccw ?? true);
  }
  return segments.map(edgeOf);
}

function edgeOf({ a, b, c, ccw }: Segment): Edge {
  const from = { x: a[0], y: a[1] };
  const to = { x: b[0], y: b[1] };
  return c === undefined ? lineEdge(from, to) : arcEdge(from, to, { x: c[0], y: c[1] }, ccw ?? true);
}
