import type { Edge } from '../geometry/edge.js';
import { type Meeting, meet } from '../geometry/meet.js';
import { distance, type Point } from '../geometry/point.js';
import { shownPoint } from '../geometry/shown.js';
import { surelyApart } from './apart.js';
import { eachNearPair } from './near-pairs.js';

/** An edge, and its place among the loops of an outline. */
export interface PlacedEdge {
  readonly edge: Edge;
  /** Which loop: 0 is the outer one. */
  readonly loop: number;
  /** Which edge of that loop, and of how many. */
  readonly index: number;
  readonly count: number;
}

/** Two edges that meet where they should not. */
export interface Crossing {
  readonly first: PlacedEdge;
  readonly second: PlacedEdge;
  readonly how: 'crosses' | 'touches' | 'runs along';
  readonly at: Point;
}

/** Enough to mend a drawing by; a scribble of thousands of crossings is the same fault over and over. */
const MOST_CROSSINGS = 20;

/** Where edges meet that should not: as far as was looked. */
export interface Crossings {
  readonly found: readonly Crossing[];
  /** Whether too many edges lie across each other to look at them all. */
  readonly tangled: boolean;
}

/**
 * Places where edges of closed loops meet other than as neighbours at their joint: at most twenty, the worst
 * first. Neighbours may do as they like within `joint` of their joint, where moving an end to close a gap can
 * make them cross.
 * @param tolerance a length under which edges touch
 */
export function crossings(edges: readonly PlacedEdge[], tolerance: number, joint: number): Crossings {
  const found: Crossing[] = [];
  const bare = edges.map(({ edge }) => edge);
  const through = eachNearPair(bare, tolerance, (i, j) => {
    if (surelyApart(bare[i] as Edge, bare[j] as Edge, tolerance)) return true;
    const crossing = crossingOf(edges[i] as PlacedEdge, edges[j] as PlacedEdge, tolerance, joint);
    if (crossing !== null) addFault(found, crossing, joint);
    return found.length < MOST_CROSSINGS;
  });
  return { found: found.sort((p, q) => severity(p) - severity(q)), tangled: !through };
}

function crossingOf(
  first: PlacedEdge,
  second: PlacedEdge,
  tolerance: number,
  joint: number,
): Crossing | null {
  const place = strayMeeting(meet(first.edge, second.edge, tolerance), sharedEnds(first, second), joint);
  return place && { first, second, ...place };
}

/** The ends that two edges share as neighbours of one loop. */
function sharedEnds(first: PlacedEdge, second: PlacedEdge): Point[] {
  if (first.loop !== second.loop) return [];
  const follows = (p: PlacedEdge, q: PlacedEdge) => (p.index + 1) % p.count === q.index;
  const joints: Point[] = [];
  if (follows(first, second)) joints.push(first.edge.b);
  if (follows(second, first)) joints.push(second.edge.b);
  return joints;
}

function strayMeeting(
  meeting: Meeting,
  joints: readonly Point[],
  joint: number,
): Pick<Crossing, 'how' | 'at'> | null {
  const isStray = (p: Point) => joints.every((end) => distance(end, p) > joint);
  if (meeting.kind === 'apart') return null;
  if (meeting.kind === 'overlap') {
    const stretch = meeting.ends.find(([a, b]) => isStray(a) || isStray(b) || distance(a, b) > joint);
    return stretch === undefined ? null : { how: 'runs along', at: stretch[0] };
  }
  const stray = meeting.points.filter(({ at }) => isStray(at));
  const worst = stray.find(({ touch }) => !touch) ?? stray[0];
  return worst === undefined ? null : { how: worst.touch ? 'touches' : 'crosses', at: worst.at };
}

function severity({ how }: Crossing): number {
  return ['runs along', 'crosses', 'touches'].indexOf(how);
}

/** A crossing at a corner is found from both edges that make the corner, but is one fault: the worst of them. */
function addFault(found: Crossing[], crossing: Crossing, joint: number): void {
  const same = found.findIndex(
    (known) =>
      known.first.loop === crossing.first.loop &&
      known.second.loop === crossing.second.loop &&
      distance(known.at, crossing.at) <= joint,
  );
  const known = found[same];
  if (known === undefined) found.push(crossing);
  else if (severity(crossing) < severity(known)) found[same] = crossing;
}

/** A sentence about a crossing. */
export function crossingMessage(
  { first, second, how, at }: Crossing,
  nameOf: (loop: number) => string,
): string {
  const edge = (placed: PlacedEdge) => `edge ${placed.index} of ${nameOf(placed.loop)}`;
  const start = how === 'runs along' ? 'from' : 'at';
  const rule =
    first.loop === second.loop ? `${nameOf(first.loop)} must not meet itself` : 'the two must keep apart';
  return `${edge(first)} ${how} ${edge(second)} ${start} ${shownPoint(at)}; ${rule}`;
}
