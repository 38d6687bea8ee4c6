import { biteInterval, insideFace } from '../datum/bite-interval.js';
import { asDrawn, type Placed } from '../datum/drift.js';
import { pointToJson } from '../format/json.js';
import { boxAround } from '../geometry/bounds.js';
import { DEGREE } from '../geometry/degree.js';
import { moved, type Point } from '../geometry/point.js';
import type { Job } from '../job/job.js';
import { type OpenedFace, openedFaces } from '../placing/opened-faces.js';
import type { ReportCut } from '../report/report-schema.js';
import { hull } from './intervals.js';
import { farEndFinder } from './left-behind.js';
import { Tiles } from './tiles.js';

type BiteRow = ReportCut['bites'][number];

/** Tells what a circle does to each face of a job's outline that it opens. */
export type BiteFinder = (placed: readonly Placed[], center: Point, radius: number) => BiteRow[];

/**
 * Looks for the faces that circles open, each answer at the cost of what is near.
 *
 * `placed` says how far the cut may be off, for each setup that it is made in.
 */
export function biteFinder(job: Job): BiteFinder {
  const tiles = new Tiles(job.outline);
  const farEnd = farEndFinder(job.outline);
  return (placed, center, radius) =>
    openedFaces(tiles.around(boxAround(center, radius)), center, radius).map((opened): BiteRow => {
      const { face, depth, opening, whole, arcLength, deepest, beyond, inward } = opened;
      const far = beyond === null ? null : farEnd(deepest, beyond);
      const along = beyond === null ? 0 : beyond.dx * inward.dx + beyond.dy * inward.dy;
      return {
        face: face.source ?? '',
        depth,
        opening,
        whole,
        left: beyond === null ? 0 : far === null ? null : far.distance * along,
        far: far?.edge.source ?? null,
        arcLength,
        includedAngle: arcLength / radius / DEGREE,
        deepest: pointToJson(deepest),
        ...intervalsOf(job, placed, opened, center, radius),
      };
    });
}

/** Of a bite in a straight face that it opens from one end of its arc to the other. */
function intervalsOf(
  job: Job,
  placed: readonly Placed[],
  { face, from, inward, atBottom, opening }: OpenedFace,
  center: Point,
  radius: number,
): Pick<BiteRow, 'depthInterval' | 'openingInterval'> {
  const h = insideFace(center, from, inward);
  const isWhole =
    Math.abs(opening - 2 * Math.sqrt(Math.max(0, (radius - h) * (radius + h)))) <= NEAR * radius;
  if (face.kind !== 'line' || !atBottom || !isWhole) return { depthInterval: null, openingInterval: null };
  const foot = asDrawn(moved(center, inward, -h));
  const intervals = placed.map((cut) => biteInterval(h, radius, inward, foot, cut, job));
  return {
    depthInterval: hull(intervals.map((one) => one.depth)),
    openingInterval: hull(intervals.map((one) => one.opening)),
  };
}

/** Share of the radius by which an opening may fall short of a chord, by rounding. */
const NEAR = 1e-9;
