import { type Doing, doingOf, travelOfPass } from '../cutting/doing.js';
import { type FeedTask, feedOfDoing, minutesOfPass } from '../cutting/feed-of-doing.js';
import { metalOf } from '../cutting/material.js';
import type { Range } from '../cutting/range.js';
import { spindleSpeed, surfaceSpeedUnit } from '../cutting/speed.js';
import { surfaceSpeedFor } from '../cutting/speed-table.js';
import { type SpindleSetting, spindleSetting } from '../cutting/spindle-set.js';
import type { ToolDocument } from '../document/schema.js';
import type { Job } from '../job/job.js';
import { edgeFromReport } from '../report/from-report.js';
import type { ReportCut, Running } from '../report/report-schema.js';

type Row = Omit<ReportCut, 'running' | 'bites'>;

/** By id of a cut: the tool that makes it. */
export function toolsByCut({ tools }: Job): ReadonlyMap<string, ToolDocument> {
  return new Map(tools.flatMap((tool) => tool.cuts.map((cut) => [cut, tool])));
}

/** Turns in a minute at which a tool is to run in a cut, and what limits them; null where they are not known. */
export function spindleSetOf(
  job: Job,
  tool: ToolDocument,
  cutDiameter: number,
): SpindleSetting & { readonly speed: Speed | null; readonly spindle: Range | null } {
  const { units } = job;
  const metal = job.material === null ? null : metalOf(job.material);
  const speed =
    metal === null ? null : surfaceSpeedFor(tool.kind, tool.toolMaterial, metal, surfaceSpeedUnit(units));
  const spindle = speed === null ? null : spindleSpeed(speed.range, tool.diameter ?? cutDiameter, units);
  const setting = spindle === null ? { range: null, limitedBy: null } : settingOf(job, tool, spindle);
  return { ...setting, speed, spindle };
}

type Speed = NonNullable<ReturnType<typeof surfaceSpeedFor>>;

/** How a cut is to be run with a tool; its speeds are null where the material is not in the tables. */
export function runningOf(job: Job, row: Row, tool: ToolDocument): Running {
  const { units } = job;
  const own = job.cuts.find(({ id }) => id === row.id)?.plan?.passes?.feed ?? null;
  const metal = job.material === null ? null : metalOf(job.material);
  const diameter = tool.diameter ?? row.diameter;
  const unit = surfaceSpeedUnit(units);
  const { speed, spindle, range: set, limitedBy } = spindleSetOf(job, tool, row.diameter);
  const doing = doingOf({ kind: tool.kind, diameter }, row);
  const travel = travelOf(tool, doing, row);
  return {
    tool: tool.id,
    kind: tool.kind,
    toolMaterial: tool.toolMaterial,
    diameter,
    teeth: tool.teeth ?? null,
    surfaceSpeed: speed === null ? null : pair(speed.range),
    surfaceSpeedUnit: unit,
    spindle: spindle === null ? null : pair(spindle),
    set: set === null ? null : pair(set),
    limitedBy,
    ...feedOf(
      { doing, kind: tool.kind, metal, diameter, teeth: tool.teeth ?? null, units, spindle: set, own },
      travel,
    ),
    feedUnit: units === 'mm' ? 'mm/min' : 'in/min',
    travel,
    source: speed?.source ?? null,
  };
}

function settingOf(job: Job, tool: ToolDocument, spindle: Range): SpindleSetting {
  // How far out of balance a boring head is, nobody but its user knows: no limit, no speed.
  if (tool.kind === 'boring head' && tool.maxSpeed === undefined) return { range: null, limitedBy: 'tool' };
  const { slowest = null, fastest = null, speeds = null } = job.machine;
  return spindleSetting(spindle, { tool: tool.maxSpeed ?? null, slowest, fastest, speeds });
}

/** What a tool does in a cut, pass by pass. */
function travelOf(tool: ToolDocument, doing: Doing, row: Row): number {
  if (row.kind === 'swept') {
    const runs = row.toolPath?.passes.map(({ leadIn, cut, leadOut }) => [...leadIn, ...cut, ...leadOut]);
    const edges = (runs?.flat() ?? row.path ?? []).map(edgeFromReport);
    return travelOfPass({ doing: 'mills along', edges });
  }
  const passes = row.passes?.list ?? [];
  const diameters = passes.length === 0 ? [row.diameter] : passes.map(({ diameter }) => diameter);
  return diameters.reduce((sum, diameter) => sum + passTravel(tool, doing, row, diameter), 0);
}

function passTravel(tool: ToolDocument, doing: Doing, { depth }: Row, diameter: number): number {
  const own = tool.diameter ?? diameter;
  switch (doing) {
    case 'drills':
      return travelOfPass({ doing, depth, diameter: own });
    case 'mills round':
      // A pass no wider than its tool is a plunge.
      return own < diameter
        ? travelOfPass({ doing, diameter, toolDiameter: own })
        : travelOfPass({ doing: 'plunges', depth });
    case 'rings':
    case 'bores':
    case 'plunges':
    case 'mills along':
      return travelOfPass({ doing: doing === 'mills along' ? 'plunges' : doing, depth });
  }
}

type FeedKeys = 'feedPerTooth' | 'feedPerTurn' | 'feed' | 'minutes' | 'feedSource';

function feedOf(task: FeedTask, travel: number): Pick<Running, FeedKeys> {
  const { perTooth, perTurn, rate, source } = feedOfDoing(task);
  const orNull = (range: Range | null) => (range === null ? null : pair(range));
  return {
    feedPerTooth: orNull(perTooth),
    feedPerTurn: orNull(perTurn),
    feed: orNull(rate),
    minutes: orNull(minutesOfPass(travel, rate)),
    feedSource: source,
  };
}

function pair([least, most]: Range): [number, number] {
  return [least, most];
}
