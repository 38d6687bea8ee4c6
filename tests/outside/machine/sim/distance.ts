import { drawn, type Lie, laid } from './lie.js';
import type { Edge, Place } from './shapes.js';

/** Length of a vector; quicker than Math.hypot, which also minds numbers too large to square. */
const length = (dx: number, dy: number): number => Math.sqrt(dx * dx + dy * dy);

/*
 * Signed distances, below 0 outside of metal. Each is off by no more than the way that one goes, so a value at a
 * place says something of all places round it.
 */

/** Distance of a place from a line or an arc. */
export function toEdge(edge: Edge, x: number, y: number): number {
  const [ax, ay] = edge.a;
  const [bx, by] = edge.b;
  if (edge.kind === 'line') {
    const [dx, dy] = [bx - ax, by - ay];
    const square = dx * dx + dy * dy;
    const share = square === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / square));
    return length(x - ax - share * dx, y - ay - share * dy);
  }
  const [cx, cy] = edge.center;
  const ends = Math.min(length(x - ax, y - ay), length(x - bx, y - by));
  const from = length(x - cx, y - cy);
  const radius = length(ax - cx, ay - cy);
  return isBeside(edge, x, y) ? Math.min(ends, Math.abs(from - radius)) : ends;
}

/** Greatest distance of a place from the places of a line or an arc. */
export function furthest(edge: Edge, x: number, y: number): number {
  const ends = Math.max(length(x - edge.a[0], y - edge.a[1]), length(x - edge.b[0], y - edge.b[1]));
  if (edge.kind === 'line') return ends;
  const [cx, cy] = edge.center;
  const radius = length(edge.a[0] - cx, edge.a[1] - cy);
  const opposite = isBeside(edge, 2 * cx - x, 2 * cy - y);
  return opposite ? Math.max(ends, length(x - cx, y - cy) + radius) : ends;
}

/** Whether a place lies within the angle of an arc, seen from its centre. */
function isBeside(edge: Extract<Edge, { kind: 'arc' }>, x: number, y: number): boolean {
  const [cx, cy] = edge.center;
  const [from, to] = edge.ccw ? [edge.a, edge.b] : [edge.b, edge.a];
  const start = Math.atan2(from[1] - cy, from[0] - cx);
  return turned(start, Math.atan2(y - cy, x - cx)) <= turned(start, Math.atan2(to[1] - cy, to[0] - cx));
}

/** Counter-clockwise angle from one direction to another, from 0 up to a full turn. */
function turned(from: number, to: number): number {
  const by = (to - from) % (2 * Math.PI);
  return by < 0 ? by + 2 * Math.PI : by;
}

/** How often loops go round a place, in all: by the angles that their edges are seen under. */
function windings(loops: readonly (readonly Edge[])[], x: number, y: number): number {
  let sum = 0;
  for (const loop of loops) for (const edge of loop) sum += seenUnder(edge, x, y);
  return Math.round(sum / (2 * Math.PI));
}

function seenUnder(edge: Edge, x: number, y: number): number {
  const [ax, ay] = [edge.a[0] - x, edge.a[1] - y];
  const [bx, by] = [edge.b[0] - x, edge.b[1] - y];
  const chord = Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
  if (edge.kind === 'line') return chord;
  const radius = length(edge.a[0] - edge.center[0], edge.a[1] - edge.center[1]);
  if (length(x - edge.center[0], y - edge.center[1]) >= radius) return chord;
  // On the chord half of the turn is seen, to whichever side one goes off it.
  if (Math.abs(chord) === Math.PI) return edge.ccw ? Math.PI : -Math.PI;
  // Between the chord and a counter-clockwise arc, which lies to the right of it, one is gone round once more.
  const side = (bx - ax) * -ay - (by - ay) * -ax;
  if (edge.ccw) return side < 0 ? chord + 2 * Math.PI : chord;
  return side > 0 ? chord - 2 * Math.PI : chord;
}

/** Signed distance of a place from a shape, over 0 inside; holes are loops that run any way. */
export function inShape(loops: readonly (readonly Edge[])[], x: number, y: number): number {
  let nearest = Number.POSITIVE_INFINITY;
  for (const loop of loops) for (const edge of loop) nearest = Math.min(nearest, toEdge(edge, x, y));
  const isIn =
    windings(loops.slice(0, 1), x, y) !== 0 && loops.slice(1).every((hole) => windings([hole], x, y) === 0);
  return isIn ? nearest : -nearest;
}

/** Distance of a place from a path. */
export function toPath(path: readonly Edge[], x: number, y: number): number {
  let nearest = Number.POSITIVE_INFINITY;
  for (const edge of path) nearest = Math.min(nearest, toEdge(edge, x, y));
  return nearest;
}

/** The box round loops as they lie: an arc reaches furthest at an end, or where it stands across. */
export function boxOf(loops: readonly (readonly Edge[])[], lie: Lie): readonly [Place, Place] {
  const places = loops.flat().flatMap((edge): Place[] => {
    if (edge.kind === 'line') return [edge.a, edge.b];
    const [cx, cy] = edge.center;
    const radius = length(edge.a[0] - cx, edge.a[1] - cy);
    const outer = WAYS.map((way): Place => {
      const [dx, dy] = drawn(lie, way);
      return [cx + radius * dx, cy + radius * dy];
    });
    return [edge.a, edge.b, ...outer.filter(([x, y]) => isBeside(edge, x, y))];
  });
  const placed = places.map((place) => laid(lie, place));
  const xs = placed.map(([x]) => x);
  const ys = placed.map(([, y]) => y);
  return [
    [Math.min(...xs), Math.min(...ys)],
    [Math.max(...xs), Math.max(...ys)],
  ];
}

const WAYS: readonly Place[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
];
