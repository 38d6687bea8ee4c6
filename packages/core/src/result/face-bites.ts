import { biteInterval, chord, insideFace } from '../datum/bite-interval.js';
import { asDrawn, type Placed } from '../datum/drift.js';
import type { LineEdge } from '../geometry/edge.js';
import { distance, type Point } from '../geometry/point.js';
import type { Job } from '../job/job.js';
import { loopsOf } from '../region/measure.js';
import type { ReportCut } from '../report/report-schema.js';
import { type EdgesNear, edgesNearOf } from './edges-near.js';
import { hull } from './intervals.js';
import { normalOf } from './moving.js';

type BiteRow = ReportCut['bites'][number];

/** An index of the straight faces of a job's outline. */
export function facesOf(job: Job): EdgesNear<LineEdge> {
  const edges = loopsOf(job.outline).flat();
  return edgesNearOf(edges.filter((edge): edge is LineEdge => edge.kind === 'line'));
}

/**
 * The straight faces of the outline that a circle opens, the whole of the opening within the face.
 * @param placed how far the cut may be off, for each setup that it is made in
 */
export function faceBites(
  job: Job,
  facesNear: EdgesNear<LineEdge>,
  placed: readonly Placed[],
  center: Point,
  radius: number,
): BiteRow[] {
  return facesNear(center, radius).flatMap((edge): BiteRow[] => {
    const inward = normalOf(edge);
    const h = insideFace(center, edge.a, inward);
    if (Math.abs(h) >= radius) return [];
    const opening = chord(radius, h);
    if (!isWithin(edge, center, opening / 2)) return [];
    const foot = { x: center.x - inward.dx * h, y: center.y - inward.dy * h };
    const intervals = placed.map((cut) => biteInterval(h, radius, inward, asDrawn(foot), cut, job));
    return [
      {
        face: edge.source ?? '',
        depth: radius + h,
        opening,
        depthInterval: hull(intervals.map((one) => one.depth)),
        openingInterval: hull(intervals.map((one) => one.opening)),
      },
    ];
  });
}

/** Whether a stretch to both sides of the foot of a place lies within an edge. */
function isWithin({ a, b }: LineEdge, center: Point, half: number): boolean {
  const length = distance(a, b);
  const foot = ((center.x - a.x) * (b.x - a.x) + (center.y - a.y) * (b.y - a.y)) / length;
  return foot - half >= 0 && foot + half <= length;
}
