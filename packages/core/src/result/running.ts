import { feedFor } from '../cutting/feed-table.js';
import { type Metal, metalOf } from '../cutting/material.js';
import type { Range } from '../cutting/range.js';
import { feedPerTurnOf, feedRate, minutesFor, spindleSpeed, surfaceSpeedUnit } from '../cutting/speed.js';
import { surfaceSpeedFor } from '../cutting/speed-table.js';
import { type SpindleSetting, spindleSetting } from '../cutting/spindle-set.js';
import type { ToolDocument } from '../document/schema.js';
import type { Job } from '../job/job.js';
import type { ReportCut, Running } from '../report/report-schema.js';
import { travelOf } from './travel.js';

type Row = Omit<ReportCut, 'running'>;

/** By id of a cut: the tool that makes it. */
export function toolsByCut({ tools }: Job): ReadonlyMap<string, ToolDocument> {
  return new Map(tools.flatMap((tool) => tool.cuts.map((cut) => [cut, tool])));
}

/** How a cut is to be run with a tool; its speeds are null where the material is not in the tables. */
export function runningOf(job: Job, row: Row, tool: ToolDocument): Running {
  const { units } = job;
  const metal = job.material === null ? null : metalOf(job.material);
  const diameter = tool.diameter ?? row.diameter;
  const unit = surfaceSpeedUnit(units);
  const speed = metal === null ? null : surfaceSpeedFor(tool.kind, tool.toolMaterial, metal, unit);
  const spindle = speed === null ? null : spindleSpeed(speed.range, diameter, units);
  const { range: set, limitedBy } =
    spindle === null ? { range: null, limitedBy: null } : settingOf(job, tool, spindle);
  const travel = travelOf(tool.kind, diameter, row);
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
    ...feedOf(job, tool, metal, diameter, set, travel),
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

type FeedKeys = 'feedPerTooth' | 'feedPerTurn' | 'feed' | 'minutes' | 'feedSource';

function feedOf(
  job: Job,
  tool: ToolDocument,
  metal: Metal | null,
  diameter: number,
  set: Range | null,
  travel: number,
): Pick<Running, FeedKeys> {
  const entry = metal === null ? null : feedFor(tool.kind, metal, diameter, job.units);
  const perTurn =
    entry === null
      ? null
      : entry.per === 'turn'
        ? entry.range
        : tool.teeth === undefined
          ? null
          : feedPerTurnOf(entry.range, tool.teeth);
  const feed = perTurn === null || set === null ? null : feedRate(set, perTurn);
  return {
    feedPerTooth: entry?.per === 'tooth' ? pair(entry.range) : null,
    feedPerTurn: perTurn === null ? null : pair(perTurn),
    feed: feed === null ? null : pair(feed),
    minutes: feed === null ? null : pair(minutesFor(travel, feed)),
    feedSource: entry?.source ?? null,
  };
}

function pair([least, most]: Range): [number, number] {
  return [least, most];
}
