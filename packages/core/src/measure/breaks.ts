import { nearestOnEdge } from '../geometry/distance.js';
import type { Edge } from '../geometry/edge.js';
import { directionAtEnd, directionAtStart, pointAlong, sweep } from '../geometry/measure.js';
import { partOfEdge } from '../geometry/parts.js';
import { distance, type Point, type Vector } from '../geometry/point.js';
import { turnBetween } from '../left/interior-angle.js';
import type { Wedge } from '../left/wedges.js';

type Both<T> = readonly [leaving: T, arriving: T];

/** A flat across a sharp corner. */
export interface Chamfer {
  /** How wide it is: there the metal is as thick as a web has to be. */
  readonly flat: number;
  /** How much of each edge it takes, measured straight from the tip; both take as much. */
  readonly leg: number;
  readonly ends: Both<Point>;
  /** Angles of the two corners that it leaves, through the metal, radians. */
  readonly angles: Both<number>;
}

/** A round over a sharp corner: the disc that touches both edges. */
export interface Rounding {
  readonly radius: number;
  readonly center: Point;
  /** Where it runs into the edges. */
  readonly ends: Both<Point>;
  /** How far each of those is from the tip. */
  readonly legs: Both<number>;
  /** How far back from the tip the metal then begins. */
  readonly back: number;
}

/** Lengths on an edge are tried in so many steps, and the step that is met is halved so often. */
const STEPS = 64;
const HALVINGS = 60;

/**
 * The chamfer that breaks a sharp corner where its metal is as thick as wanted, with legs of one length. Its corners have more than a
 * right angle between straight edges. null where the metal is not that thick as far as the two edges go.
 *
 * Source: definition; between two lines the leg is w / (2 sin(angle / 2)).
 * @param width wanted, over 0, in the unit of the edges
 */
export function chamferOf({ leaving, arriving, at }: Wedge, width: number): Chamfer | null {
  const most = Math.min(chordOf(leaving), chordOf(arriving));
  const places = (leg: number): Both<Point> => [onEdge(leaving, leg), onEdge(arriving, leg, true)];
  const isThick = (leg: number) => {
    const [p, q] = places(leg);
    return distance(p, q) >= width;
  };
  const step = Array.from({ length: STEPS }, (_, k) => ((k + 1) / STEPS) * most).find(isThick);
  if (step === undefined) return null;
  let [low, leg] = [step - most / STEPS, step];
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (low + leg) / 2;
    if (isThick(middle)) leg = middle;
    else low = middle;
  }
  const ends = places(leg);
  const [p, q] = ends;
  const along = { dx: p.x - q.x, dy: p.y - q.y };
  return {
    flat: distance(p, q),
    leg: distance(p, at),
    ends,
    // The metal lies to the left of the way that arrives along the one edge, over the flat, and leaves along the other.
    angles: [
      Math.PI - turnBetween(along, directionOn(leaving, leg)),
      Math.PI - turnBetween(directionOn(arriving, leg, true), along),
    ],
  };
}

/**
 * The round that breaks a sharp corner: the disc that touches both its edges. null where it touches something else first.
 * @param center of the disc that is as wide as wanted; null where there is none
 * @param tolerance by which the disc may miss an edge, for rounding
 */
export function roundingOf(
  { leaving, arriving, at }: Wedge,
  center: Point | null,
  width: number,
  tolerance: number,
): Rounding | null {
  if (center === null) return null;
  const radius = width / 2;
  const feet = [nearestOnEdge(leaving, center), nearestOnEdge(arriving, center)] as const;
  if (feet.some((foot) => Math.abs(foot.distance - radius) > tolerance)) return null;
  const [p, q] = [feet[0].at, feet[1].at];
  return {
    radius,
    center,
    ends: [p, q],
    legs: [distance(p, at), distance(q, at)],
    back: distance(center, at) - radius,
  };
}

/** The longest chord from the end of an edge to a place on it. */
function chordOf(edge: Edge): number {
  if (edge.kind === 'line') return distance(edge.a, edge.b);
  return 2 * edge.radius * Math.sin(Math.min(sweep(edge), Math.PI) / 2);
}

/** Which share of an edge lies within a chord from its start. */
function shareOf(edge: Edge, chord: number): number {
  if (edge.kind === 'line') return chord / distance(edge.a, edge.b);
  return (2 * Math.asin(Math.min(1, chord / (2 * edge.radius)))) / sweep(edge);
}

function onEdge(edge: Edge, chord: number, fromEnd = false): Point {
  const share = Math.min(1, shareOf(edge, chord));
  return pointAlong(edge, fromEnd ? 1 - share : share);
}

/** Direction of travel at that place. */
function directionOn(edge: Edge, chord: number, fromEnd = false): Vector {
  if (edge.kind === 'line') return directionAtStart(edge);
  const at = onEdge(edge, chord, fromEnd);
  return fromEnd
    ? directionAtEnd(partOfEdge(edge, edge.a, at))
    : directionAtStart(partOfEdge(edge, at, edge.b));
}
