import type { Job } from '../job/job.js';
import type { Report } from '../report/report-schema.js';
import { floorBreakOff, webBreakOff } from './break-off.js';
import { runningOf, toolsByCut } from './running.js';

/** A report's body with speeds and feeds for its cuts, and with what it takes to break its floors and webs. */
export function withShopNumbers<Body extends Pick<Report, 'cuts' | 'floors' | 'webs' | 'slabs'>>(
  job: Job,
  body: Body,
): Body {
  const tools = toolsByCut(job);
  const running = (cut: Body['cuts'][number]) => {
    const tool = tools.get(cut.id);
    return tool === undefined ? null : runningOf(job, cut, tool);
  };
  return {
    ...body,
    cuts: body.cuts.map((cut) => ({ ...cut, running: running(cut) })),
    floors: body.floors.map((floor) => ({ ...floor, breakOff: floorBreakOff(job, floor) })),
    webs: body.webs.map((web) => ({ ...web, breakOff: webBreakOff(job, body.slabs, web) })),
  };
}
