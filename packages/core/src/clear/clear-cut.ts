/*
 * Room: a fast way for cuts that nothing comes near to touching: no overlay is made.
 * In: a region and the shapes to take from it.
 * Out: the region left; null where anything is close, and the overlay takes over.
 */

import { type Bounds, boxAround, extentOf, grown, joined, middleOf } from '../geometry/bounds.js';
import type { ArcEdge, Edge } from '../geometry/edge.js';
import { pointAlong } from '../geometry/measure.js';
import { anyMayMeet } from '../geometry/near.js';
import type { Point } from '../geometry/point.js';
import { weldTolerance } from '../geometry/tolerance.js';
import { homesOf, Whereabouts } from '../region/homes.js';
import { Joints } from '../region/joints.js';
import { loopArea, loopsOf } from '../region/measure.js';
import type { Loop, Region, RegionPart } from '../region/region.js';
import { isSliver } from '../region/sliver.js';
import { type BareWalls, bareWalls, type Fate } from './bare-walls.js';
import { clearMeetings } from './clear-meetings.js';
import { boxRoundRows, shapeRows } from './shape-rows.js';
import { shapeWalls } from './shape-walls.js';

/** How many tolerances two things must be apart to be clear: so far that neither rounding nor welding could matter. */
const CLEAR = 1000;

/**
 * The same where crossings are told by the directions in which edges run: at so many tolerances from touching they are
 * found to a thousandth of one across both edges. Many edges in one place seldom stay further apart.
 */
const CLEAR_SHAPES = 64;

/** How many times its size a disc may reach out of a region; up to that rounding stays far below `CLEAR`. */
const REACH = 100;

/** Places on a circle, at heights at which joints are rare, by right triangles of 3, 4, 5; 5, 12, 13; 8, 15, 17. */
const PLACES: readonly Point[] = [
  { x: -4 / 5, y: 3 / 5 },
  { x: -12 / 13, y: -5 / 13 },
  { x: -15 / 17, y: 8 / 17 },
];

/**
 * What is left of a region less discs, which may overlap, where nothing is in doubt. It is bounded by the stretches of
 * edges and circles that lie in no disc, and these follow each other from crossing to crossing: no overlay has to be
 * made, and nothing is asked about what lies within the discs.
 * @param discs full circles, counter-clockwise
 * @param frame box that says how large the work is
 * @returns null where something comes near to touching, which only an overlay can tell
 */
export function clearCut(from: Region, discs: readonly ArcEdge[], frame: Bounds): Region | null {
  const margin = CLEAR * weldTolerance(extentOf(frame));
  return clearly(from, boxRound(discs, margin), frame, margin, (active, whereabouts) => {
    const edges = active.length === 1 ? (active[0] as Loop) : active.flat();
    const meetings = clearMeetings(edges, discs, margin);
    if (meetings === null) return null;
    return bareWalls(active, edges, discs, meetings, ({ center, radius }) =>
      whereabouts().isInside(PLACES.length, (k) => {
        const { x, y } = PLACES[k] as Point;
        return { x: center.x + x * radius, y: center.y + y * radius };
      }),
    );
  });
}

/**
 * The same for cuts of any shape.
 * @param cuts the loops of each
 */
export function clearShapes(from: Region, cuts: readonly (readonly Loop[])[], frame: Bounds): Region | null {
  const margin = CLEAR_SHAPES * weldTolerance(extentOf(frame));
  const read = shapeRows(cuts.flat());
  return clearly(from, grown(boxRoundRows(read), margin), frame, margin, (active, whereabouts) =>
    shapeWalls(active, cuts, read, margin, (loop) =>
      whereabouts().isInside(Math.min(loop.length, PLACES.length), (k) => pointAlong(loop[k] as Edge, 0.3)),
    ),
  );
}

/**
 * @param near where the cuts are, and what comes near them
 * @param margin how far apart two things must be to be clear
 */
function clearly(
  from: Region,
  near: Bounds,
  frame: Bounds,
  margin: number,
  wallsOf: (active: readonly Loop[], whereabouts: () => Whereabouts) => BareWalls | null,
): Region | null {
  const tolerance = weldTolerance(extentOf(frame));
  if (!isInReach(near, frame)) return null;
  const loops = loopsOf(from);
  const active: Loop[] = [];
  /** For each loop its place among the active ones, or -1. */
  const activeAs = new Int32Array(loops.length);
  for (let k = 0; k < loops.length; k++) {
    const loop = loops[k] as Loop;
    activeAs[k] = anyMayMeet(loop, near) ? active.push(loop) - 1 : -1;
  }
  let whereabouts: Whereabouts | null = null;
  const walls = wallsOf(active, () => {
    whereabouts ??= new Whereabouts(loops, margin);
    return whereabouts;
  });
  if (walls === null) return null;
  const fateOf = (loop: number) => {
    const at = activeAs[loop] as number;
    return at < 0 ? 'whole' : (walls.fates[at] as Fate);
  };
  if (active.length > 1 && mayPart(from, fateOf)) return null;
  const outers: Loop[] = [];
  const holes: Loop[] = [];
  for (const loop of walls.made) {
    const size = loopArea(loop);
    if (!isSliver(loop, Math.abs(size), tolerance)) (size > 0 ? outers : holes).push(loop);
  }
  return assembled(from, fateOf, outers, holes, margin);
}

function boxRound(discs: readonly ArcEdge[], by: number): Bounds {
  return discs.map(({ center, radius }) => boxAround(center, radius + by)).reduce(joined);
}

/** Whether neither the discs nor the origin lie so far away that rounding counts. */
function isInReach(near: Bounds, frame: Bounds): boolean {
  const most = REACH * extentOf(frame);
  const { x, y } = middleOf(frame);
  return (
    Math.max(Math.abs(x), Math.abs(y)) <= REACH * most &&
    Math.max(near.maxX - x, x - near.minX, near.maxY - y, y - near.minY) <= most
  );
}

/**
 * Whether two loops of one part are cut, one of which touches some loop: they may become one, which then comes to the
 * place of touching twice, so that the part falls in two there.
 */
function mayPart(from: Region, fateOf: (loop: number) => Fate): boolean {
  let first = 0;
  for (const { outer, holes } of from) {
    const isCut = (k: number) => fateOf(first + k) === 'cut';
    const loops = [outer, ...holes];
    const cut = loops.filter((_, k) => isCut(k));
    if (cut.length > 1 && isAnyTouched(loops, isCut)) return true;
    first += loops.length;
  }
  return false;
}

/** Whether a joint of a chosen loop is one of another loop too. */
function isAnyTouched(loops: readonly Loop[], isChosen: (k: number) => boolean): boolean {
  const joints = new Joints();
  for (const [k, loop] of loops.entries()) {
    if (!isChosen(k)) continue;
    if (joints.touch(loop)) return true;
    joints.add(loop);
  }
  return loops.some((loop, k) => !isChosen(k) && joints.touch(loop));
}

/** The loops that stay and new ones as a region; null if a hole has no home. */
function assembled(
  from: Region,
  fateOf: (loop: number) => Fate,
  newOuters: readonly Loop[],
  newHoles: readonly Loop[],
  margin: number,
): Region | null {
  const outers: Loop[] = [];
  const holes: Loop[] = [];
  const origin: RegionPart[] = [];
  let next = 0;
  for (const part of from) {
    if (fateOf(next++) === 'whole') {
      outers.push(part.outer);
      origin.push(part);
    }
    for (const hole of part.holes) if (fateOf(next++) === 'whole') holes.push(hole);
  }
  for (const loop of newOuters) outers.push(loop);
  for (const loop of newHoles) holes.push(loop);
  if (outers.length === 1) return [partLike(origin[0], outers[0] as Loop, holes)];
  const dealt: Loop[][] = outers.map(() => []);
  const homes = homesOf(outers, holes, margin);
  if (homes.includes(-1)) return null;
  for (let k = 0; k < holes.length; k++) (dealt[homes[k] as number] as Loop[]).push(holes[k] as Loop);
  return outers.map((outer, k) => partLike(origin[k], outer, dealt[k] as Loop[]));
}

/** The part that it has been, if it is the same. */
function partLike(before: RegionPart | undefined, outer: Loop, holes: readonly Loop[]): RegionPart {
  const isSame = before?.holes.length === holes.length && before.holes.every((hole, k) => hole === holes[k]);
  return isSame ? before : { outer, holes };
}
