import { arcEdge, type Edge, lineEdge } from '../geometry/edge.js';
import { reversed } from '../geometry/parts.js';
import { type Point, samePoint } from '../geometry/point.js';
import type { Loop, Region } from '../region/region.js';
import { extentOf, placeAt } from './probe.js';

/** A similarity: mirrored in the x axis if asked, turned, scaled, then shifted. */
export interface Similarity {
  readonly mirror: boolean;
  /** Cosine and sine of the turn, counter-clockwise; a unit vector. */
  readonly turn: readonly [number, number];
  readonly scale: number;
  readonly shift: readonly [number, number];
}

/** The similarity that changes nothing. */
export const UNMOVED: Similarity = { mirror: false, turn: [1, 0], scale: 1, shift: [0, 0] };

/** A point put through a similarity. */
export function placed(p: Point, by: Similarity): Point {
  const y = by.mirror ? -p.y : p.y;
  const [cos, sin] = by.turn;
  return {
    x: (p.x * cos - y * sin) * by.scale + by.shift[0],
    y: (p.x * sin + y * cos) * by.scale + by.shift[1],
  };
}

/**
 * A region put through a similarity; the loops of a mirrored one are turned round again, so that outer
 * loops stay counter-clockwise.
 * @throws RangeError if an edge is so short that its ends meet after the shift.
 */
export function transformed(region: Region, by: Similarity): Region {
  const loop = (edges: Loop): Loop => {
    const moved = edges.map((edge) => transformedEdge(edge, by));
    return by.mirror ? moved.map(reversed).reverse() : moved;
  };
  return region.map((part) => ({ outer: loop(part.outer), holes: part.holes.map(loop) }));
}

/** The same region with every loop started `by` edges later. */
export function restarted(region: Region, by: number): Region {
  const loop = (edges: Loop): Loop => {
    const at = by % edges.length;
    return [...edges.slice(at), ...edges.slice(0, at)];
  };
  return region.map((part) => ({ outer: loop(part.outer), holes: part.holes.map(loop) }));
}

/** The same region with every edge split in two at its middle: another encoding of the same points. */
export function halved(region: Region): Region {
  const loop = (edges: Loop): Loop => edges.flatMap(splitEdge);
  return region.map((part) => ({ outer: loop(part.outer), holes: part.holes.map(loop) }));
}

/** One way of writing the same case down, or of putting it somewhere else. */
export interface Way {
  readonly name: string;
  readonly change: (region: Region) => Region;
  /** Areas grow by the square of this. */
  readonly scale: number;
}

const SCALES = [1e-9, 1e-6, 1e-3, 1 / 25.4, 1e3, 1e6, 1e9];

/**
 * The ways in which a case must give the same answer: begun at every start point of its longest loop, edges
 * halved, turned, mirrored, far from the origin, and at scales of 1e-9 to 1e9.
 */
export function everyWay(...regions: readonly Region[]): Way[] {
  const loops = regions.flat().flatMap((part) => [part.outer, ...part.holes]);
  const starts = Math.max(1, ...loops.map((loop) => loop.length)) - 1;
  const far = 1e4 * (extentOf(...regions) || 1);
  const moved = (name: string, by: Partial<Similarity>): Way => {
    const move = { ...UNMOVED, ...by };
    return { name, change: (region) => transformed(region, move), scale: move.scale };
  };
  return [
    ...Array.from({ length: starts }, (_, k): Way => {
      const by = k + 1;
      return { name: `begun ${by} edges later`, change: (region) => restarted(region, by), scale: 1 };
    }),
    { name: 'edges halved', change: halved, scale: 1 },
    moved('mirrored', { mirror: true }),
    moved('turned by a 3-4-5 triangle', { turn: [0.6, 0.8] }),
    moved('turned by one radian', { turn: [Math.cos(1), Math.sin(1)] }),
    moved('far from the origin', { shift: [far, -far] }),
    ...SCALES.map((scale) => moved(`scaled by ${scale}`, { scale })),
  ];
}

function transformedEdge(edge: Edge, by: Similarity): Edge {
  const ends = { a: placed(edge.a, by), b: placed(edge.b, by) };
  if (samePoint(ends.a, ends.b)) {
    throw new RangeError(`transformed: the ends of an edge meet at (${ends.a.x}, ${ends.a.y})`);
  }
  if (edge.kind === 'line') return { ...edge, ...ends };
  // The radius is scaled, not measured anew: where the ends of a long arc nearly meet, they say little about it.
  const center = placed(edge.center, by);
  return { ...edge, ...ends, center, radius: edge.radius * by.scale, ccw: edge.ccw !== by.mirror };
}

function splitEdge(edge: Edge): Edge[] {
  const middle = placeAt(edge, 0.5);
  const { a, b, source } = edge;
  if (edge.kind === 'line') return [lineEdge(a, middle, source), lineEdge(middle, b, source)];
  const { center, ccw } = edge;
  return [arcEdge(a, middle, center, ccw, source), arcEdge(middle, b, center, ccw, source)];
}
