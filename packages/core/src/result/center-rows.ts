import type { Side } from '../cut/cut.js';
import { pointToJson } from '../format/json.js';
import { DEGREE } from '../geometry/degree.js';
import type { Vector } from '../geometry/point.js';
import type { Segment } from '../geometry/segment.js';
import type { Job } from '../job/job.js';
import { type CenterPlan, DEFAULT_CLEARANCE, type JobCut } from '../job/plan.js';
import type { ArcEnd } from '../load/bite.js';
import type { Engagement } from '../load/engagement.js';
import { edgeNamed } from '../placing/named-edge.js';
import { placementOn } from '../placing/place-face.js';
import { bitesIn, type OutlineBite } from '../placing/place-outline.js';
import type { Region } from '../region/region.js';
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

/** The dimensions of a hole whose centre was given by a placement. */
export function placementRow(cut: RoundCut, plan: CenterPlan, { part }: NearMetal): ReportPlacement {
  const { form, about, pick } = plan;
  const placed = bitesIn(part, cut.center, cut.diameter / 2);
  const longest = placed.bites.reduce<OutlineBite | null>(
    (best, bite) => (best === null || bite.arcLength > best.arcLength ? bite : best),
    null,
  );
  const common = { form, about, pick, bites: placed.bites.length };
  if (longest === null) return { ...common, ...NO_BITE };
  const { entry, exit } = longest;
  const isFull = entry === null || exit === null;
  const size = isFull ? longest : onFace(cut, plan, part, longest);
  return {
    ...common,
    depth: isFull ? null : size.depth,
    opening: isFull ? null : size.opening,
    includedAngle: size.includedAngle / DEGREE,
    arcLength: size.arcLength,
    ...endsOf(longest, cut.from),
  };
}

const NO_BITE = { depth: null, opening: null, includedAngle: 0, arcLength: 0, entry: null, exit: null };

/** The dimensions in the face that a placement names, where the hole opens that alone: closed forms of what was given. */
function onFace(cut: RoundCut, { form, about }: CenterPlan, part: Region, bite: OutlineBite): Segment {
  const [name] = about;
  if ((form !== 'depth' && form !== 'opening') || name === undefined) return bite;
  if (bite.entry?.source !== name || bite.exit?.source !== name) return bite;
  const pieces = part.flatMap(({ outer, holes }) => [outer, ...holes].flat());
  if (!pieces.some(({ source }) => source === name)) return bite;
  const face = edgeNamed('face', part, name);
  return face.kind === 'line' ? placementOn(face, cut.center, cut.diameter / 2) : bite;
}
