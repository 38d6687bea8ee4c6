import { type Aim, SAME_SHARE } from '../aim/aim.js';
import { intersect } from '../combine/boolean.js';
import { doingOf, travelOfPass } from '../cutting/doing.js';
import { feedOfDoing, minutesOfPass } from '../cutting/feed-of-doing.js';
import { metalOf } from '../cutting/material.js';
import type { PlannedCut } from '../feature/cut-plan.js';
import { discOf } from '../load/tool-circle.js';
import { toolDocument } from '../read/read-drawer.js';
import { area } from '../region/measure.js';
import { disc } from '../region/region.js';
import { spindleSetOf } from '../result/running.js';
import { circleOfPlan } from './first-bite.js';

/** What a way is likely to come to, before it is examined. */
export interface Estimate {
  readonly dangers: number;
  /** Cutting alone, in minutes. */
  readonly time: number;
}

/**
 * What the cuts of one feature are likely to come to: a drill over an edge is led by nothing; a core of metal comes
 * loose, and lies in the way of what follows;
 * passes go out from what was cut before.
 */
export function estimateOf(aim: Aim, cuts: readonly PlannedCut[]): Estimate {
  let dangers = 0;
  let time = 0;
  cuts.forEach((cut, k) => {
    const before = cuts[k - 1];
    const isFirst = before === undefined || before.feature !== cut.feature;
    const open = isFirst ? 0 : (before.document.diameter ?? 0);
    if (isFirst && entersBadly(aim, cut)) dangers++;
    if (hasCore(aim, cut) && (isFirst || before.tool !== cut.tool)) dangers++;
    if (!isFirst && before.tool.kind === 'annular cutter' && before.tool !== cut.tool) dangers++;
    time += minutesOfCut(aim, cut, open);
  });
  return { dangers, time };
}

/** Whether a drill, or a mill that does not cut to its centre, goes down with a part of it over an edge of the blank. */
function entersBadly({ job }: Aim, { tool, document }: PlannedCut): boolean {
  const isLed = tool.kind === 'drill' || (tool.kind === 'end mill' && tool.centerCutting !== true);
  if (!isLed || document.kind !== 'bore' || document.passes !== undefined) return false;
  const circle = circleOfPlan(document);
  if (circle === null) return false;
  const round = discOf(circle);
  const under = area(intersect([job.outline, round]));
  return under > 0 && area(round) - under > SAME_SHARE * area(round);
}

function hasCore({ job }: Aim, { document }: PlannedCut): boolean {
  const circle = circleOfPlan(document);
  if (document.kind !== 'annular' || circle === null) return false;
  return area(intersect([job.outline, disc(circle.center, circle.radius - document.wall)])) > 0;
}

/** Minutes of a cut in all its passes, the middle of the range; 0 where no feed is known. */
function minutesOfCut({ job }: Aim, { tool, document }: PlannedCut, open: number): number {
  const diameter = document.diameter ?? 0;
  const own = toolDocument(tool, []);
  const across = own.diameter ?? diameter;
  const doing = doingOf({ kind: tool.kind, diameter: across }, { kind: document.kind, diameter });
  const { rate } = feedOfDoing({
    doing,
    kind: tool.kind,
    metal: job.material === null ? null : metalOf(job.material),
    diameter: across,
    teeth: own.teeth ?? null,
    units: job.units,
    spindle: spindleSetOf(job, own, diameter).range,
    own: null,
  });
  const depth = typeof document.depth === 'number' ? document.depth : job.thickness;
  if (document.kind === 'swept') {
    const minutes = minutesOfPass(lengthOf(document.path), rate);
    return minutes === null ? 0 : (minutes[0] + minutes[1]) / 2;
  }
  return sizesOf(document, diameter, open).reduce((sum, size) => {
    const minutes = minutesOfPass(travelIn(doing, size, across, depth), rate);
    return minutes === null ? sum : sum + (minutes[0] + minutes[1]) / 2;
  }, 0);
}

/** How long a drawn path is about: arcs count as their chords. */
function lengthOf(path: (PlannedCut['document'] & { kind: 'swept' })['path']): number {
  if (!('edges' in path)) return 0;
  return path.edges.reduce((sum, { a, b }) => sum + Math.hypot(b[0] - a[0], b[1] - a[1]), 0);
}

/** The diameter after each pass. */
function sizesOf(document: PlannedCut['document'], diameter: number, open: number): number[] {
  if (document.kind !== 'bore' || document.passes === undefined) return [diameter];
  const { passes } = document;
  const from = passes.kind === 'open out' ? Math.max(open, passes.smallest ?? 0) : 0;
  const count = Math.max(1, Math.ceil((diameter - from) / 2 / passes.bite));
  if (passes.kind === 'step in') return Array.from({ length: count }, () => diameter);
  return Array.from({ length: count }, (_, k) => from + ((diameter - from) * (k + 1)) / count);
}

function travelIn(
  doing: ReturnType<typeof doingOf>,
  diameter: number,
  across: number,
  depth: number,
): number {
  switch (doing) {
    case 'mills round':
      return travelOfPass({ doing, diameter, toolDiameter: Math.min(across, diameter * (1 - 1e-9)) });
    case 'drills':
      return travelOfPass({ doing, depth, diameter });
    case 'mills along':
      return 0;
    default:
      return travelOfPass({ doing, depth });
  }
}
