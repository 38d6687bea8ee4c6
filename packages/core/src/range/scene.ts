import type { Cut } from '../cut/cut.js';
import { boxOfCut, footprint } from '../cut/footprint.js';
import { type Bounds, boxAround, boxesMeet, grown, joined } from '../geometry/bounds.js';
import { edgeBounds } from '../geometry/measure.js';
import type { Point } from '../geometry/point.js';
import type { Job } from '../job/job.js';
import { contains } from '../region/contains.js';
import { loopsOf } from '../region/measure.js';
import { type Curve, circle } from './curves.js';
import { type Corner, crossingsOf, type Drawn, drawnCut, drawnOutline } from './drawn.js';
import type { FreeNumber, Motion } from './number.js';

/** All that the moving cut can come upon: its own rims, drawn at one value, and what stands still near them. */
export interface Scene {
  readonly motion: Motion;
  /** How far the free number goes below and above the value that the rims are drawn at. */
  readonly low: number;
  readonly high: number;
  readonly limits: Job['limits'];
  readonly resolution: number;
  readonly rims: readonly Curve[];
  readonly rimCorners: readonly Corner[];
  /** The centre of a ring-shaped cut that moves: metal under it bears a centre pin. */
  readonly pin: Point | null;
  readonly outline: readonly Curve[];
  /** Corners and joints of the outline, the smooth ones among them where the name changes. */
  readonly outlineCorners: readonly Corner[];
  /** All curves that stand still, those of the outline among them, and their corners and crossings. */
  readonly curves: readonly Curve[];
  readonly corners: readonly Corner[];
  /** Places whose metal matters: where the part is held, and the centres of other ring-shaped cuts. */
  readonly places: readonly Point[];
  /** The box that the cut stays in, with the web limit round it. */
  readonly box: Bounds;
  /** What curves may miss each other by and still be taken to meet. */
  readonly slack: number;
  /** Boundaries nearer to each other than this, or as far into each other, may touch in a report. */
  readonly blur: number;
  /** Whether a place lies in the part by more than a depth. */
  readonly isWithin: (p: Point, depth: number) => boolean;
  /** Whether a place is on the part and no earlier cut has gone through there. */
  readonly standsBefore: (p: Point) => boolean;
  /** Whether a place is on the part and no other cut goes through there. */
  readonly standsAfter: (p: Point) => boolean;
}

/**
 * Curves are taken to meet within this many weld tolerances, which is more than welding moves them. A place too many
 * costs a look at the outcome beside it, one too few an event.
 */
const SLACK = 100;

/**
 * Boundaries within this many weld tolerances of each other may touch in a report: ends of edges move by up to two when
 * they are welded, and discs may be entered by four.
 */
const BLUR = 8;

/** Draws the scene, with the rims as they are at `base`. */
export function sceneOf(job: Job, number: FreeNumber, base: number, from: number, to: number): Scene {
  const slack = SLACK * number.tolerance;
  const box = grown(
    joined(boxOfCut(number.cutAt(from)), boxOfCut(number.cutAt(to))),
    Math.max(job.limits.web, job.resolution) + slack,
  );
  const cut = number.cutAt(base);
  const own = drawnCut(cut, -1);
  const others = job.cuts.filter((_, k) => k !== number.index);
  const outline = near(drawnOutline(loopsOf(job.outline), -1), box);
  const cuts = others.map((other, k) => near(drawnCut(other, k), box));
  const still = [outline, ...cuts];
  const edges = still.flatMap((drawn) => drawn.edges);
  const isNear = (p: Point) => isIn(box, p);
  return {
    motion: number.motion,
    low: from - base,
    high: to - base,
    limits: job.limits,
    resolution: job.resolution,
    rims: curvesOf([own]),
    rimCorners: own.corners,
    pin: cut.kind === 'annular' && number.motion.growth === 0 ? cut.center : null,
    outline: curvesOf([outline]),
    outlineCorners: outline.corners,
    curves: curvesOf(still),
    corners: [
      ...still.flatMap(({ corners }) => corners),
      ...crossingsOf(edges, number.tolerance).filter(({ at }) => isNear(at)),
    ],
    places: [
      ...(job.keep === null ? [] : [job.keep]),
      ...others.flatMap((other) => (other.kind === 'annular' ? [other.center] : [])),
    ].filter(isNear),
    box,
    slack,
    blur: BLUR * number.tolerance,
    isWithin: (p, depth) => contains(job.outline, p, depth) === 'inside',
    standsBefore: standing(job, job.cuts.slice(0, number.index), slack),
    standsAfter: standing(job, others, slack),
  };
}

/** What a rim can have a web to: curves, and corners that point into metal. */
export function wallsIn({ curves, corners }: Scene): Curve[] {
  return [...curves, ...corners.filter(({ isReflex }) => isReflex).map(({ at }) => circle(at, 0))];
}

function near({ edges, corners }: Drawn, box: Bounds): Drawn {
  return {
    edges: edges.filter(({ edge }) => boxesMeet(edgeBounds(edge), box)),
    corners: corners.filter(({ at }) => isIn(box, at)),
  };
}

function isIn(box: Bounds, p: Point): boolean {
  return boxesMeet(box, boxAround(p));
}

function curvesOf(drawn: readonly Drawn[]): Curve[] {
  return [...new Set(drawn.flatMap(({ edges }) => edges.map(({ curve }) => curve)))];
}

/** Whether a place is on the part and none of some cuts has gone through there; on a boundary it is. */
function standing(job: Job, cuts: readonly Cut[], slack: number): (p: Point) => boolean {
  const holes = cuts
    .filter(({ through }) => through)
    .map((cut) => ({ box: boxOfCut(cut), taken: footprint(cut) }));
  return (p) =>
    contains(job.outline, p, slack) !== 'outside' &&
    !holes.some(({ box, taken }) => isIn(box, p) && contains(taken, p, slack) === 'inside');
}
