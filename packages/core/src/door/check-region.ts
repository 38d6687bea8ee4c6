import { extentOf } from '../geometry/bounds.js';
import { boxTreeOf } from '../geometry/box-tree.js';
import { nearestOnEdge } from '../geometry/distance.js';
import type { Edge } from '../geometry/edge.js';
import { edgeBounds, pointAlong } from '../geometry/measure.js';
import { type Meeting, meet } from '../geometry/meet.js';
import { distance, midpoint, type Point, samePoint } from '../geometry/point.js';
import { shownPoint } from '../geometry/shown.js';
import { weldTolerance } from '../geometry/tolerance.js';
import { regionFault, vouchFor } from '../kinds/region-kind.js';
import { contains } from '../region/contains.js';
import { boundsOf } from '../region/measure.js';
import type { Loop, Region } from '../region/region.js';

/** What is wrong with a region. */
export interface RegionFault {
  /** As in code: `[0].holes[2][5]` is edge 5 of hole 2 of part 0; empty for the whole. */
  readonly place: string;
  /** What is there, and what should be: the rest of a sentence that begins with the place. */
  readonly message: string;
  readonly remedy: string;
}

/** More faults than these say nothing more. */
const MOST_FAULTS = 20;

/**
 * What keeps a value from being a region: numbers that are not finite, edges without length, ends off their circles, open
 * loops, loops that run the wrong way round; then loops that cross themselves or each other, or run along each other; then
 * holes outside their outer loop or in another hole, and parts in the metal of others. Loops may touch in single points.
 * The first kind of fault is told alone, since the others follow from it.
 *
 * Every function looks at the first kind, and takes the rest as given: what crosses itself has no inside that everybody
 * would agree on.
 * @returns none for a sound region; 20 at most
 */
export function checkRegion(value: unknown): RegionFault[] {
  const fault = regionFault(value);
  if (fault !== null) return [{ place: fault.at, message: fault.what, remedy: fault.remedy }];
  const region = value as Region;
  const box = boundsOf(region);
  if (box === null) return [];
  const magnitude = Math.max(...Object.values(box).map(Math.abs));
  const extent = extentOf(box);
  const tolerance = weldTolerance(extent, magnitude);
  const crossed = crossingFaults(placed(region), extent, tolerance);
  const faults = crossed.length > 0 ? crossed : nestingFaults(region);
  if (faults.length === 0) vouchFor(region);
  return faults;
}

interface Placed {
  readonly edge: Edge;
  readonly name: string;
}

function placed(region: Region): Placed[] {
  const named = (loop: Loop, name: string) => loop.map((edge, k) => ({ edge, name: `${name}[${k}]` }));
  return region.flatMap(({ outer, holes }, p) => [
    ...named(outer, `[${p}].outer`),
    ...holes.flatMap((hole, h) => named(hole, `[${p}].holes[${h}]`)),
  ]);
}

function crossingFaults(all: readonly Placed[], extent: number, tolerance: number): RegionFault[] {
  const faults: RegionFault[] = [];
  boxTreeOf(all.map(({ edge }) => edgeBounds(edge))).eachPair(tolerance, (one, other) => {
    if (faults.length >= MOST_FAULTS) return;
    const [first, second] = [all[Math.min(one, other)], all[Math.max(one, other)]] as [Placed, Placed];
    const how = badMeeting(
      first.edge,
      second.edge,
      meet(first.edge, second.edge, tolerance),
      extent,
      tolerance,
    );
    if (how === null) return;
    const message = `${how.how} ${second.name} at ${shownPoint(how.at)}; edges meet at their ends only`;
    faults.push({ place: first.name, message, remedy: 'redraw the loops, or let repairRegion part them' });
  });
  return faults;
}

/** Curves that touch smoothly run within a tolerance of each other for up to about this share of the extent. */
const CONTACT_SHARE = 1e-3;

function badMeeting(
  e: Edge,
  f: Edge,
  met: Meeting,
  extent: number,
  tolerance: number,
): { how: string; at: Point } | null {
  if (met.kind === 'apart') return null;
  if (met.kind === 'overlap') {
    const long = met.ends.find(([a, b]) => distance(a, b) > CONTACT_SHARE * extent || isWhole(e, f, a, b));
    return long === undefined ? null : { how: 'runs along', at: long[0] };
  }
  const isStray = (p: Point) => !(isEnd(e, p) && isEnd(f, p));
  const isShallow = (p: Point) =>
    met.points.some(({ at }) => at !== p && gapMidway(e, f, p, at) <= SLACK_IN_WELDS * tolerance);
  const deep = met.points.find(({ at, touch }) => !touch && isStray(at) && !isShallow(at));
  return deep === undefined ? null : { how: 'crosses', at: deep.at };
}

/** Welding moves joints by up to so many tolerances; what crosses by less, twice, is contact. */
const SLACK_IN_WELDS = 4;

/** How far two edges are apart halfway between two places where they meet. */
function gapMidway(e: Edge, f: Edge, p: Point, q: Point): number {
  const { at } = nearestOnEdge(e, midpoint(p, q));
  return nearestOnEdge(f, at).distance;
}

function isEnd({ a, b }: Edge, p: Point): boolean {
  return samePoint(a, p) || samePoint(b, p);
}

/** Whether two edges between the same ends are one and the same. */
function isWhole(e: Edge, f: Edge, a: Point, b: Point): boolean {
  return [e, f].every((edge) => isEnd(edge, a) && isEnd(edge, b));
}

/** No loop crosses another: the middle of an edge that lies on no other tells for a whole loop. */
function nestingFaults(region: Region): RegionFault[] {
  const faults: RegionFault[] = [];
  region.forEach(({ outer, holes }, p) => {
    holes.forEach((hole, h) => {
      const place = `[${p}].holes[${h}]`;
      if (lies(hole, outer) === 'outside')
        faults.push({ place, message: 'lies outside its outer loop', remedy: 'make it a part of its own' });
      const around = holes.findIndex((other, k) => k !== h && lies(hole, other) === 'inside');
      if (around >= 0)
        faults.push({ place, message: `lies in hole ${around}`, remedy: 'leave it out, or make it a part' });
    });
    const around = region.findIndex((other, q) => q !== p && isInMetal(outer, other));
    if (around >= 0)
      faults.push({
        place: `[${p}]`,
        message: `lies in the metal of part ${around}`,
        remedy: 'take the union of both',
      });
  });
  return faults.slice(0, MOST_FAULTS);
}

function isInMetal(loop: Loop, part: Region[number]): boolean {
  return lies(loop, part.outer) === 'inside' && !part.holes.some((hole) => lies(loop, hole) === 'inside');
}

/** Where a loop lies that does not cross another: by its first place that is not on the other. */
function lies(loop: Loop, other: Loop): 'inside' | 'outside' {
  const around = [{ outer: other, holes: [] }];
  for (const edge of loop) {
    const where = contains(around, pointAlong(edge, 0.5));
    if (where !== 'boundary') return where;
  }
  return 'outside';
}
