import type { Laid } from '../datum/setup.js';
import type { Job } from '../job/job.js';
import { pointOf } from '../job/read-edges.js';
import type { ReportCut, ReportRows } from '../report/report-schema.js';
import { faceBites, facesOf } from './face-bites.js';
import { knifeInterval, webInterval } from './intervals.js';
import { type Moving, movingOf } from './moving.js';
import { keepOutRows, laidSetups, setupRows } from './setup-rows.js';

/** The setups of a job worked out, and how its boundaries may move for that. */
export interface SetUp {
  readonly lays: readonly Laid[];
  readonly moving: Moving;
}

/** Works the setups of a job out. */
export function setUp(job: Job): SetUp {
  const lays = laidSetups(job);
  return { lays, moving: movingOf(job, lays) };
}

/** A report's body with all that the setups and keep-outs of its job say. Depends on nothing but these. */
export function withSetups(job: Job, { lays, moving }: SetUp, body: ReportRows): ReportRows {
  const facesNear = facesOf(job);
  const cuts = body.cuts.map((cut): ReportCut => {
    if (cut.kind === 'swept' || cut.center === null || cut.relation !== 'breaks out') return cut;
    const placed = moving.cuts.get(cut.id) ?? [];
    return { ...cut, bites: faceBites(job, facesNear, placed, pointOf(cut.center), cut.diameter / 2) };
  });
  const whole = { ...body, cuts, setups: setupRows(lays, cuts), keepOut: keepOutRows(job) };
  if (lays.length === 0) return whole;
  return {
    ...whole,
    webs: body.webs.map((web) => ({
      ...web,
      interval: webInterval(job, moving, { ...web, ends: [pointOf(web.ends[0]), pointOf(web.ends[1])] }),
    })),
    knifeEdges: body.knifeEdges.map((edge) => ({
      ...edge,
      interval: knifeInterval(job, moving, { ...edge, at: pointOf(edge.at) }),
    })),
  };
}
