import { drawn, type Lie, laid } from './lie.js';
import type { Edge, Place } from './shapes.js';

/*
 * Signed distances, below 0 outside of metal. Each is off by no more than the way that one goes, so a value at a
 * place says something of all places round it. They are asked for millions of times: what does not hang on the place
 * is worked out before.
 */

/** A distance, by place. */
export type Distance = (x: number, y: number) => number;

/** Length of a vector; quicker than Math.hypot, which also minds numbers too large to square. */
const length = (dx: number, dy: number): number => Math.sqrt(dx * dx + dy * dy);

/** An edge with what is asked of it again and again. */
interface Known {
  readonly away: Distance;
  /** Whether going over it to the right changes whether one is inside, once or not at all. */
  readonly isCrossed: (x: number, y: number) => boolean;
  readonly furthest: Distance;
}

/** Places are looked at this far off, so that none is in line with a corner or on a chord. */
const OFF_X = 1.3e-11;
const OFF_Y = 0.7e-11;

function known(edge: Edge): Known {
  const [ax, ay] = edge.a;
  const [bx, by] = edge.b;
  const [dx, dy] = [bx - ax, by - ay];
  const chordCrossed = (x: number, y: number) => ay > y !== by > y && x < ax + ((y - ay) * dx) / dy;
  const toEnds = (x: number, y: number, pick: (p: number, q: number) => number) =>
    pick(length(x - ax, y - ay), length(x - bx, y - by));
  if (edge.kind === 'line') {
    const square = dx * dx + dy * dy;
    return {
      away: (x, y) => {
        const share = square === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / square));
        return length(x - ax - share * dx, y - ay - share * dy);
      },
      isCrossed: chordCrossed,
      furthest: (x, y) => toEnds(x, y, Math.max),
    };
  }
  const [cx, cy] = edge.center;
  const radius = length(ax - cx, ay - cy);
  const hand = edge.ccw ? 1 : -1;
  const start = Math.atan2(ay - cy, ax - cx);
  const sweep = turned(hand * start, hand * Math.atan2(by - cy, bx - cx));
  const middle = start + (hand * sweep) / 2;
  const [mx, my, least] = [Math.cos(middle), Math.sin(middle), Math.cos(sweep / 2)];
  const isBeside = (x: number, y: number) => (x - cx) * mx + (y - cy) * my >= least * length(x - cx, y - cy);
  return {
    away: (x, y) => (isBeside(x, y) ? Math.abs(length(x - cx, y - cy) - radius) : toEnds(x, y, Math.min)),
    // Between chord and arc one is on the other side of the one and not yet of the other.
    isCrossed: (x, y) => {
      const isRight = dx * (y - ay) - dy * (x - ax) < 0;
      const isBetween = isRight === edge.ccw && length(x - cx, y - cy) < radius;
      return chordCrossed(x, y) !== isBetween;
    },
    furthest: (x, y) =>
      isBeside(2 * cx - x, 2 * cy - y)
        ? Math.max(toEnds(x, y, Math.max), length(x - cx, y - cy) + radius)
        : toEnds(x, y, Math.max),
  };
}

/** Counter-clockwise angle from one direction to another, over 0 up to a full turn. */
function turned(from: number, to: number): number {
  const by = (to - from) % (2 * Math.PI);
  return by <= 0 ? by + 2 * Math.PI : by;
}

/** Signed distance within a shape, over 0 inside: an outer loop and holes in it, which run any way. */
export function inShape(loops: readonly (readonly Edge[])[]): Distance {
  const edges = loops.flat().map(known);
  return (x, y) => {
    let nearest = Number.POSITIVE_INFINITY;
    let isIn = false;
    for (const { away, isCrossed } of edges) {
      nearest = Math.min(nearest, away(x, y));
      if (isCrossed(x + OFF_X, y + OFF_Y)) isIn = !isIn;
    }
    return isIn ? nearest : -nearest;
  };
}

/** Distance from a path. */
export function toPath(path: readonly Edge[]): Distance {
  const edges = path.map(known);
  return (x, y) => edges.reduce((least, { away }) => Math.min(least, away(x, y)), Number.POSITIVE_INFINITY);
}

/** Greatest distance from the places of a path. */
export function furthestOf(path: readonly Edge[]): Distance {
  const edges = path.map(known);
  return (x, y) => edges.reduce((most, { furthest }) => Math.max(most, furthest(x, y)), 0);
}

/** The box round loops as they lie: an arc reaches furthest at an end, or where it stands across. */
export function boxOf(loops: readonly (readonly Edge[])[], lie: Lie): readonly [Place, Place] {
  const places = loops.flat().flatMap((edge): Place[] => {
    if (edge.kind === 'line') return [edge.a, edge.b];
    const [cx, cy] = edge.center;
    const radius = length(edge.a[0] - cx, edge.a[1] - cy);
    const { away } = known(edge);
    const outer = WAYS.map((way): Place => {
      const [dx, dy] = drawn(lie, way);
      return [cx + radius * dx, cy + radius * dy];
    });
    return [edge.a, edge.b, ...outer.filter(([x, y]) => away(x, y) < 1e-9 * radius)];
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
