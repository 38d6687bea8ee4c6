/*
 * Room: ready shapes, and whether given edges make a sound outline.
 * In: edges or sizes.
 * Out: a region, or faults with their places.
 */

import { extentOf, joined } from '../geometry/bounds.js';
import type { Edge } from '../geometry/edge.js';
import { reversed } from '../geometry/parts.js';
import { shownNumber, shownPoint } from '../geometry/shown.js';
import { weldTolerance } from '../geometry/tolerance.js';
import { loopArea, loopBounds } from '../region/measure.js';
import type { Loop, Region } from '../region/region.js';
import { crossingMessage, crossings, type PlacedEdge } from './crossings.js';
import { edgeFault } from './edge-faults.js';
import { loopName, OutlineError, type OutlineFault } from './fault.js';
import { GAP_SHARE, type Gap, joinEdges } from './join.js';
import { nestingFaults } from './nesting.js';

/** What an outline reversedLoop out to be. */
export type CheckedOutline =
  | { readonly kind: 'sound'; readonly region: Region }
  | { readonly kind: 'faulty'; readonly faults: readonly OutlineFault[] };

/**
 * Checks an outline and its holes, given as edges in order and in any direction. Each loop must have two edges
 * at least, close, have no edge without length and not meet itself; holes must lie inside the outer loop, and
 * no two loops may meet. A gap of under a millionth of the loop's extent is closed by moving an end.
 *
 * The region has the edges as given, the outer loop reversedLoop counter-clockwise and the holes clockwise. Edges
 * without a source are named `outline:0..n` and `hole:H:0..n` in the order given.
 */
export function checkOutline(
  outer: readonly Edge[],
  holes: readonly (readonly Edge[])[] = [],
): CheckedOutline {
  const checked = [outer, ...holes].map((edges, loop) => closedLoop(edges, loop === 0 ? null : loop - 1));
  const loops = checked.map(({ loop }) => loop);
  const faults = [...checked.flatMap((one) => one.faults), ...meetingFaults(loops)];
  if (faults.length > 0) return { kind: 'faulty', faults };
  const forward = (loops as Loop[]).map((loop) => (loopArea(loop) < 0 ? reversedLoop(loop) : loop));
  const misplaced = nestingFaults(forward);
  if (misplaced.length > 0) return { kind: 'faulty', faults: misplaced };
  const [outerLoop, ...holeLoops] = forward;
  return { kind: 'sound', region: [{ outer: outerLoop as Loop, holes: holeLoops.map(reversedLoop) }] };
}

/**
 * The region of an outline and its holes; see `checkOutline`.
 * @throws OutlineError with everything that is wrong.
 */
export function outlineRegion(outer: readonly Edge[], holes: readonly (readonly Edge[])[] = []): Region {
  const checked = checkOutline(outer, holes);
  if (checked.kind === 'faulty') throw new OutlineError(checked.faults);
  return checked.region;
}

/** A loop, or what keeps its edges from being one. */
interface ClosedLoop {
  readonly loop: Loop | null;
  readonly faults: readonly OutlineFault[];
}

function closedLoop(edges: readonly Edge[], hole: number | null): ClosedLoop {
  const name = loopName(hole);
  if (edges.length < 2) {
    const message = `${name} has ${edges.length === 1 ? 'one edge' : 'no edges'}; it needs two or more`;
    return { loop: null, faults: [{ hole, edge: null, at: edges[0]?.a ?? null, message }] };
  }
  const tolerance = toleranceOf([edges]);
  const bad = edges.flatMap((edge, index): OutlineFault[] => {
    const what = edgeFault(edge, tolerance);
    return what === null
      ? []
      : [{ hole, edge: index, at: edge.a, message: `edge ${index} of ${name} ${what}` }];
  });
  const { edges: joined, gaps } = joinEdges(edges, true);
  const open = gaps.map((gap) => gapFault(edges, gap, hole));
  const faults = [...bad, ...open];
  return faults.length > 0 ? { loop: null, faults } : { loop: named(joined, hole), faults };
}

function gapFault(edges: readonly Edge[], { edge, next, size }: Gap, hole: number | null): OutlineFault {
  const end = (edges[edge] as Edge).b;
  const start = (edges[next] as Edge).a;
  const message =
    `${loopName(hole)} is open: edge ${edge} ends at ${shownPoint(end)}, edge ${next} starts at ` +
    `${shownPoint(start)}, a gap of ${shownNumber(size)}`;
  return { hole, edge, at: end, message };
}

/** Places where the loops that closed meet themselves or each other. */
function meetingFaults(loops: readonly (Loop | null)[]): OutlineFault[] {
  const sound = loops.filter((loop) => loop !== null);
  if (sound.length === 0) return [];
  const placed = loops.flatMap((edges, loop) =>
    (edges ?? []).map((edge, index): PlacedEdge => ({ edge, loop, index, count: edges?.length ?? 0 })),
  );
  const holeOf = (loop: number) => (loop === 0 ? null : loop - 1);
  const joint = GAP_SHARE * extentOf(sound.map(loopBounds).reduce(joined));
  const { found, tangled } = crossings(placed, toleranceOf(sound), joint);
  const faults = found.map((crossing) => ({
    hole: holeOf(crossing.second.loop),
    edge: crossing.second.index,
    at: crossing.at,
    message: crossingMessage(crossing, (loop) => loopName(holeOf(loop))),
  }));
  return tangled ? [...faults, TANGLE] : faults;
}

const TANGLE: OutlineFault = {
  hole: null,
  edge: null,
  at: null,
  message:
    'the outline has too many edges that lie across each other to be checked; draw it with fewer edges',
};

function toleranceOf(loops: readonly (readonly Edge[])[]): number {
  const { minX, minY, maxX, maxY } = loops.map(loopBounds).reduce(joined);
  const magnitude = Math.max(Math.abs(minX), Math.abs(minY), Math.abs(maxX), Math.abs(maxY));
  return weldTolerance(Math.max(maxX - minX, maxY - minY), magnitude);
}

function named(edges: readonly Edge[], hole: number | null): Loop {
  const owner = hole === null ? 'outline' : `hole:${hole}`;
  return edges.map((edge, i) => (edge.source === undefined ? { ...edge, source: `${owner}:${i}` } : edge));
}

function reversedLoop(loop: Loop): Loop {
  return loop.map(reversed).reverse();
}
