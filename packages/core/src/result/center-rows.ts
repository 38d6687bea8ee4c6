import type { Side } from '../cut/cut.js';
import { pointToJson } from '../format/json.js';
import { DEGREE } from '../geometry/angle.js';
import type { Vector } from '../geometry/point.js';
import type { Job } from '../job/job.js';
import { type CenterPlan, DEFAULT_CLEARANCE, type JobCut } from '../job/plan.js';
import type { ArcEnd } from '../load/bite.js';
import type { Engagement } from '../load/engagement.js';
import { bitesIn, type OutlineBite } from '../placing/place-outline.js';
import type { ReportLoad, ReportPlacement } from '../report/report-schema.js';
import type { NearMetal, RoundCut } from './near-metal.js';

/** A direction in degrees, from 0 up to 360. */
export function headingOf(radians: number): number {
  const degrees = radians / DEGREE;
  const turned = degrees < 0 ? degrees + 360 : degrees;
  return turned >= 360 ? turned - 360 : turned + 0;
}

/** The direction of a vector in degrees. */
export function headingAlong({ dx, dy }: Vector): number {
  return headingOf(Math.atan2(dy, dx));
}

/**
 * Entry and exit of an arc. The library speaks of a spindle that turns clockwise seen from above; from below, where
 * a cut may start, that is the other way round.
 */
function endsOf(
  { entry, exit }: { readonly entry: ArcEnd | null; readonly exit: ArcEnd | null },
  from: Side,
): Pick<ReportPlacement, 'entry' | 'exit'> {
  const [first, last] = from === 'top' ? [entry, exit] : [exit, entry];
  return { entry: endJson(first), exit: endJson(last) };
}

function endJson(end: ArcEnd | null): ReportPlacement['entry'] {
  return end === null
    ? null
    : { at: pointToJson(end.at), angle: Math.min(180, end.angle / DEGREE), source: end.source };
}

/** The load of a tool as a report has it. */
export function loadJson(engagement: Engagement, from: Side): ReportLoad {
  const { arcs, angle, share, entries, interrupted, sideLoad } = engagement;
  const { size, direction } = sideLoad;
  const sign = from === 'top' ? 1 : -1;
  return {
    arcs: arcs.map((arc) => ({
      start: headingOf(arc.start),
      sweep: arc.sweep / DEGREE,
      length: arc.length,
      ...endsOf(arc, from),
    })),
    angle: angle / DEGREE,
    share: Math.min(1, share),
    entries,
    interrupted,
    sideLoad: {
      size,
      direction:
        direction === null ? null : headingAlong({ dx: sign * direction.dx, dy: sign * direction.dy }),
    },
  };
}

/** The gap that a cut is to have to the wall before its tool is lifted. */
export function clearanceOf(job: Job, cut: JobCut): number {
  return cut.plan?.clearance ?? DEFAULT_CLEARANCE[job.units];
}

/** How far a tool moves at most for a clearance, and what it looks at beyond. */
export function backOffReach(radius: number, clearance: number): number {
  return Math.sqrt(clearance * (2 * radius + clearance)) + 2 * clearance;
}

/** How the centre of a hole was given, and the longest of its arcs. */
export function placementRow(cut: RoundCut, plan: CenterPlan, { part }: NearMetal): ReportPlacement {
  const { form, about, pick } = plan;
  const placed = bitesIn(part, cut.center, cut.diameter / 2);
  const longest = placed.bites.reduce<OutlineBite | null>(
    (best, bite) => (best === null || bite.arcLength > best.arcLength ? bite : best),
    null,
  );
  const common = { form, about, pick, bites: placed.bites.length };
  if (longest === null) return { ...common, ...NO_BITE };
  return {
    ...common,
    includedAngle: longest.includedAngle / DEGREE,
    arcLength: longest.arcLength,
    ...endsOf(longest, cut.from),
  };
}

const NO_BITE = { includedAngle: 0, arcLength: 0, entry: null, exit: null };
