import { pointToJson, regionToJson } from '../format/json.js';
import { pointAlong } from '../geometry/measure.js';
import type { AlongPlan } from '../job/plan.js';
import { passesToJson } from '../path/path-json.js';
import { isOnStretch } from '../path/path-stretch.js';
import { type Unreached, unreached } from '../path/reach.js';
import { loopOf } from '../read/read-along.js';
import type { Region } from '../region/region.js';
import type { ReportToolPath } from '../report/report-schema.js';

/** The path of a swept cut that follows the outline, and what its tool leaves beside it. */
export function pathRow(
  outline: Region,
  diameter: number,
  plan: AlongPlan,
  resolution: number,
): ReportToolPath {
  const { side, milling, allowance, passes, loops } = plan;
  const left = unreached(outline, diameter / 2, { side, allowance, tolerance: resolution });
  const followed = new Set(passes.flatMap(({ cut }) => cut.map(loopOf)));
  return {
    side,
    milling,
    allowance,
    passes: passesToJson(passes),
    unreached: left
      .filter((one) => isBeside(outline, plan, one))
      .map(({ region, area, limit }) => ({
        region: regionToJson(region),
        area,
        largestTool: 2 * limit.radius,
        by: limit.by,
        at: pointToJson(limit.at),
      })),
    missed: loops.filter((loop) => !followed.has(loop)),
  };
}

/** Whether a place that the tool leaves lies beside what it follows. */
function isBeside(outline: Region, { stretch, loops }: AlongPlan, { along }: Unreached): boolean {
  return along.some((edge) =>
    stretch === null ? loops.includes(loopOf(edge)) : isOnStretch(outline, stretch, pointAlong(edge, 0.5)),
  );
}
