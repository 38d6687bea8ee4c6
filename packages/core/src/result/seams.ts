import { seamStep } from '../datum/seam.js';
import type { Stack } from '../datum/stack.js';
import { pointToJson } from '../format/json.js';
import { distance } from '../geometry/point.js';
import type { Job } from '../job/job.js';
import type { JobCut } from '../job/plan.js';
import type { ReportSeam } from '../report/report-schema.js';
import type { Moving } from './moving.js';
import type { RoundCut } from './near-metal.js';

/** Share of the thickness by which two depths may fall short of it together, by rounding. */
const MEETS = 1e-9;

/** Where two halves of one bore meet: of one centre and diameter to the resolution, one from the top and one from below. */
export function seamRows(job: Job, moving: Moving): ReportSeam[] {
  const blind = job.cuts.filter((cut): cut is JobCut & RoundCut => cut.kind !== 'swept' && !cut.through);
  const below = blind.filter(({ from }) => from === 'bottom');
  return blind
    .filter(({ from }) => from === 'top')
    .flatMap((top) =>
      below
        .filter((bottom) => isOneBore(job, top, bottom))
        .map((bottom) => seamRow(job, moving, top, bottom)),
    );
}

function isOneBore(job: Job, top: RoundCut, bottom: RoundCut): boolean {
  return (
    top.kind === bottom.kind &&
    Math.abs(top.diameter - bottom.diameter) <= job.resolution &&
    distance(top.center, bottom.center) <= job.resolution &&
    top.depth + bottom.depth >= job.thickness * (1 - MEETS)
  );
}

function seamRow(job: Job, moving: Moving, top: RoundCut, bottom: RoundCut): ReportSeam {
  const pairs = (moving.cuts.get(top.id) ?? []).flatMap((one) =>
    (moving.cuts.get(bottom.id) ?? []).map((other) => ({ one, other })),
  );
  const steps = pairs.map(({ one, other }): Stack => seamStep(one, other, [top, bottom], job));
  return {
    cuts: [top.id, bottom.id],
    center: pointToJson(top.center),
    diameter: top.diameter,
    from: job.thickness - top.depth,
    overlap: Math.max(0, top.depth + bottom.depth - job.thickness),
    step:
      steps.length === 0
        ? null
        : {
            worst: Math.max(...steps.map(({ worst }) => worst)),
            rss: Math.max(...steps.map(({ rss }) => rss)),
          },
  };
}
