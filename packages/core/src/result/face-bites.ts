import type { Placed } from '../datum/drift.js';
import { pointToJson } from '../format/json.js';
import { DEGREE } from '../geometry/angle.js';
import { boxAround } from '../geometry/bounds.js';
import type { Point } from '../geometry/point.js';
import type { Job } from '../job/job.js';
import { openedFaces } from '../placing/opened-faces.js';
import type { ReportCut } from '../report/report-schema.js';
import { biteIntervals } from './bite-intervals.js';
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
      const { face, depth, opening, crossed, arcLength, deepest, beyond, inward } = opened;
      const far = beyond === null ? null : farEnd(deepest, beyond);
      const along = beyond === null ? 0 : beyond.dx * inward.dx + beyond.dy * inward.dy;
      const left = beyond === null ? 0 : far === null ? null : far.distance * along;
      return {
        face: face.source ?? '',
        depth,
        opening,
        whole: !crossed[0] && !crossed[1],
        left,
        far: far?.edge.source ?? null,
        arcLength,
        includedAngle: arcLength / radius / DEGREE,
        deepest: pointToJson(deepest),
        ...biteIntervals(job, placed, opened, { center, radius }, left, far),
      };
    });
}
