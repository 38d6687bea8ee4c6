import { intersect } from '../combine/boolean.js';
import { moved, type Point, type Vector } from '../geometry/point.js';
import { shownNumber, shownPoint } from '../geometry/shown.js';
import { discOf, type ToolCircle } from '../load/tool-circle.js';
import { distanceToBoundary, wayOut } from '../load/touch.js';
import { contains } from '../region/contains.js';
import { area, centroid } from '../region/measure.js';
import type { Region } from '../region/region.js';
import { type Around, clearBehind } from './clear-stand.js';
import { type LaidPass, layOut, MOST_PASSES, type Motion, type Task } from './layout.js';

/** The motion of a cutter of fixed radius along a direction, a unit vector, to where it stands finally. */
export function movedAlong(final: ToolCircle, approach: Vector): Motion {
  return {
    stand: (short) => (short === 0 ? final : { ...final, center: moved(final.center, approach, -short) }),
    touch: (metal) => wayOut(metal, final.center, final.radius, approach),
    furthest: Number.POSITIVE_INFINITY,
  };
}

/** Metal outside of the final cut that a pass would cut. */
interface Stray {
  readonly pass: LaidPass;
  readonly area: number;
  readonly at: Point;
}

/** An approach and its passes. */
export interface Approach {
  readonly approach: Vector;
  readonly passes: readonly LaidPass[];
}

/**
 * The passes along a direction.
 * @param rest the metal that the final cut leaves
 * @throws RangeError if one of them would cut metal of the rest
 */
export function approachAlong(task: Task, rest: Region, approach: Vector): Approach {
  const motion = movedAlong(task.final, approach);
  const passes = layOut('stepIn', motion, task, strayFinder(task, rest));
  if (!('refused' in passes)) return { approach, passes };
  const { pass, area: size, at } = passes.refused;
  throw new RangeError(
    `stepIn: ${shownNumber(pass.short)} short of the true centre the cutter would cut ${shownNumber(size)} square ` +
      `units of metal that the final cut leaves, at ${shownPoint(at)}; come from another side, open out from the ` +
      `true centre, or allow a bite of ${shownNumber(motion.touch(task.metal))}, which needs no stop on the way`,
  );
}

/** Finds metal that a pass would cut and the final cut leaves: by an overlay, exact to the weld tolerance. */
function strayFinder({ nothing }: Task, rest: Region): (pass: LaidPass) => Stray | null {
  return (pass) => {
    const { center, radius } = pass.stand;
    if (pass.short === 0) return null;
    // Most stops are clear of the rest by a margin; only the others are worth an overlay.
    if (contains(rest, center) === 'outside' && distanceToBoundary(rest, center) >= radius) return null;
    const cut = intersect([rest, discOf(pass.stand)]);
    const size = area(cut);
    const largest = [...cut].sort((a, b) => area([b]) - area([a]))[0];
    const at = largest === undefined ? null : centroid([largest]);
    return size > nothing && at !== null ? { pass, area: size, at } : null;
  };
}

/** Directions tried, 5 degrees apart: closer than anyone sets a table by eye, and few enough to try all. */
const DIRECTIONS = 72;

/** Even steps over which the load along a direction is judged, whatever the bite. */
const JUDGED_STEPS = 24;

/** Loads within this factor of the smoothest are as good; the shortest way among them is taken. */
const AS_SMOOTH = 1.05;

/** Loads and ways that differ by less than this share are equal: rounding. */
const ALIKE = 1e-9;

/** A middle nearer to the centre than this share of the radius says nothing about a direction. */
const NO_DIRECTION = 1e-9;

interface Candidate {
  readonly approach: Vector;
  readonly motion: Motion;
  readonly travel: number;
  readonly unevenness: number;
}

/**
 * The direction with the smoothest load among those whose stops keep to the final cut, and its passes.
 * @param around what the tool is to stand clear of before the first pass, where there is such a direction; null to ask for none
 * @throws RangeError if there is none
 */
export function smoothestApproach(task: Task, rest: Region, around: Around | null): Approach {
  const ways = directionsOf(task).map((approach) => candidateOf(task, approach));
  const short = ways.filter(({ travel }) => travel <= task.bite * MOST_PASSES);
  // Where every way is too long, straight ahead says so.
  const all = short.length > 0 ? short : ways.slice(0, 1);
  const tried = new Map<Candidate, readonly LaidPass[] | null>();
  const passesOf = (one: Candidate): readonly LaidPass[] | null => {
    let passes = tried.get(one);
    if (passes === undefined) {
      const laid = layOut('stepIn', one.motion, task, strayFinder(task, rest));
      passes = 'refused' in laid ? null : laid;
      tried.set(one, passes);
    }
    return passes;
  };
  const clear = around === null ? [] : all.filter((one) => startsClear(task, one, around));
  const smoothestOf = (some: readonly Candidate[]) =>
    sortedBy(some, ({ unevenness }) => unevenness).find((one) => passesOf(one) !== null);
  const clearest = smoothestOf(clear);
  const smoothest = clearest ?? smoothestOf(all);
  if (smoothest === undefined) {
    throw new RangeError(
      'stepIn: from every side a stop on the way would cut metal that the final cut leaves; open out from the ' +
        'true centre, or allow a bite that needs no stop on the way',
    );
  }
  const smooth = (clearest === undefined ? all : clear).filter(
    ({ unevenness }) => unevenness <= smoothest.unevenness * AS_SMOOTH,
  );
  const best = sortedBy(smooth, ({ travel }) => travel).find((one) => passesOf(one) !== null) as Candidate;
  return { approach: best.approach, passes: passesOf(best) as readonly LaidPass[] };
}

/** Whether the tool can stand clear on the line, behind where it first touches. */
function startsClear({ final }: Task, { approach, travel }: Candidate, around: Around): boolean {
  const touch = moved(final.center, approach, -travel);
  return clearBehind(touch, approach, final.radius, around).kind === 'stand';
}

/** Smallest first; those that differ by rounding only stay in the order given. */
function sortedBy(candidates: readonly Candidate[], key: (one: Candidate) => number): Candidate[] {
  return [...candidates].sort((a, b) => {
    const [p, q] = [key(a), key(b)];
    return Math.abs(p - q) <= ALIKE * Math.max(p, q) ? 0 : p - q;
  });
}

function directionsOf({ metal, final }: Task): Vector[] {
  const middle = centroid(metal) as Point;
  const dx = middle.x - final.center.x;
  const dy = middle.y - final.center.y;
  const away = Math.hypot(dx, dy);
  const ahead = away > NO_DIRECTION * final.radius ? { dx: dx / away, dy: dy / away } : { dx: 1, dy: 0 };
  // Straight ahead first, then by turns to the left and to the right.
  return Array.from({ length: DIRECTIONS }, (_, k): Vector => {
    if (k === 0) return ahead;
    const turn = ((k % 2 === 1 ? 1 : -1) * Math.ceil(k / 2) * 2 * Math.PI) / DIRECTIONS;
    const cos = Math.cos(turn);
    const sin = Math.sin(turn);
    return { dx: ahead.dx * cos - ahead.dy * sin, dy: ahead.dx * sin + ahead.dy * cos };
  });
}

function candidateOf({ final, metal }: Task, approach: Vector): Candidate {
  const motion = movedAlong(final, approach);
  const travel = motion.touch(metal);
  return { approach, motion, travel, unevenness: unevennessOf(motion, travel, metal) };
}

/** Largest over mean area removed in even steps. */
function unevennessOf(motion: Motion, travel: number, metal: Region): number {
  let before = 0;
  let largest = 0;
  for (let k = 1; k <= JUDGED_STEPS; k++) {
    const stand = motion.stand(k === JUDGED_STEPS ? 0 : travel * (1 - k / JUDGED_STEPS));
    const covered = area(intersect([metal, discOf(stand)]));
    largest = Math.max(largest, covered - before);
    before = covered;
  }
  return (largest * JUDGED_STEPS) / before;
}
