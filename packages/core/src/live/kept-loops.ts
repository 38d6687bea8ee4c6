import type { Bounds } from '../geometry/bounds.js';
import type { Point } from '../geometry/point.js';
import { windingRound } from '../region/contains.js';
import { loopArea, loopBounds, loopLength } from '../region/measure.js';
import type { Loop } from '../region/region.js';
import { regionOf } from '../report/report-region.js';
import type { ReportEdge, ReportRegion } from '../report/report-schema.js';

type ReportLoop = readonly ReportEdge[];

/** A loop of a report's region, with what a change elsewhere leaves as it is. */
export interface KeptLoop {
  readonly json: ReportLoop;
  readonly loop: Loop;
  readonly box: Bounds;
  readonly area: number;
  readonly length: number;
  /** Least number of the cuts that it runs along; -1 if it runs along the outline too. */
  readonly first: number;
}

/** A region of one part, loop by loop. */
export interface KeptRegion {
  readonly json: ReportRegion;
  readonly outer: KeptLoop;
  readonly holes: readonly KeptLoop[];
}

/** Tells the number of a cut by a source; -1 for the outline. */
export type CutNumber = (source: string | undefined) => number;

/** The loops of a report's region of one part; null if it has more, or if its holes are not in the order of cuts. */
export function keptRegion(json: ReportRegion, cutNumber: CutNumber): KeptRegion | null {
  const [part, more] = json;
  if (part === undefined || more !== undefined) return null;
  const holes = part.holes.map((hole) => keptLoop(hole, cutNumber));
  for (let k = 1; k < holes.length; k++) {
    if ((holes[k] as KeptLoop).first < (holes[k - 1] as KeptLoop).first) return null;
  }
  return { json, outer: keptLoop(part.outer, cutNumber), holes };
}

/** Measures a loop. */
export function keptLoop(json: ReportLoop, cutNumber: CutNumber): KeptLoop {
  const loop = regionOf([{ outer: json, holes: [] }])[0]?.outer as Loop;
  const first = json.reduce((least, { source }) => Math.min(least, cutNumber(source)), Infinity);
  return { json, loop, box: loopBounds(loop), area: loopArea(loop), length: loopLength(loop), first };
}

/**
 * A region with the holes of some cuts replaced. They come in the order of the cuts, as from an overlay of all.
 * @param isOld whether a hole is one that goes
 * @param fresh the holes that come, in the order of the cuts
 */
export function withHoles(
  { outer, holes }: KeptRegion,
  isOld: (hole: KeptLoop) => boolean,
  fresh: readonly KeptLoop[],
): KeptRegion {
  const made: KeptLoop[] = [];
  let next = 0;
  for (const hole of holes) {
    if (isOld(hole)) continue;
    for (let one = fresh[next]; one !== undefined && one.first < hole.first; one = fresh[next]) {
      made.push(one);
      next++;
    }
    made.push(hole);
  }
  for (; next < fresh.length; next++) made.push(fresh[next] as KeptLoop);
  return { json: [{ outer: outer.json, holes: made.map(({ json }) => json) }], outer, holes: made };
}

/** Area of a region; added up as `area` does. */
export function keptArea({ outer, holes }: KeptRegion): number {
  return holes.reduce((sum, hole) => sum + hole.area, outer.area);
}

/** Length of all boundaries of a region; added up as `perimeter` does. */
export function keptPerimeter({ outer, holes }: KeptRegion): number {
  return holes.reduce((sum, hole) => sum + hole.length, outer.length);
}

/** Area of the holes that no outline runs along: what cuts have opened within the metal. */
export function openedArea({ holes }: KeptRegion): number {
  return holes.reduce((sum, hole) => (hole.first < 0 ? sum : sum - hole.area), 0);
}

/** Whether a place that is on no loop lies in a region; some of its holes may be looked past. */
export function holdsPlace(
  { outer, holes }: KeptRegion,
  p: Point,
  isThere: (hole: KeptLoop) => boolean = () => true,
): boolean {
  if (!isInBox(outer.box, p) || windingRound(outer.loop, p) === 0) return false;
  return !holes.some((hole) => isInBox(hole.box, p) && isThere(hole) && windingRound(hole.loop, p) !== 0);
}

/** Whether a place is a vertex of a region. */
export function hasVertex({ outer, holes }: KeptRegion, [x, y]: readonly [number, number]): boolean {
  return [outer, ...holes].some(
    ({ box, json }) => isInBox(box, { x, y }) && json.some(({ a }) => a[0] === x && a[1] === y),
  );
}

function isInBox(box: Bounds, { x, y }: Point): boolean {
  return x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY;
}
