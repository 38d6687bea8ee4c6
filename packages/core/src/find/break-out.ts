import { asDrawn, driftBetween } from '../datum/drift.js';
import { alongDrift, type Interval, spread } from '../datum/reach.js';
import { nearestOnEdge } from '../geometry/distance.js';
import type { Job } from '../job/job.js';
import { pointOf } from '../job/read-edges.js';
import type { ReportCut } from '../report/report-schema.js';
import type { EdgesNear } from '../result/edges-near.js';
import { hull } from '../result/intervals.js';
import type { SetUp } from '../result/set-up.js';

/**
 * Between what the gap can lie that the circle of a cut leaves to the outline where it is nearest, below 0 where it
 * reaches over it; null where it is far from the outline, its centre lies on it, or the cut is in no setup. Linear,
 * along the shortest way from the outline to the centre.
 */
export function breakOutGap(
  job: Job,
  { moving }: SetUp,
  edgesNear: EdgesNear,
  cut: ReportCut,
): Interval | null {
  const placed = moving.cuts.get(cut.id) ?? [];
  if (cut.center === null || placed.length === 0) return null;
  const center = pointOf(cut.center);
  const radius = cut.diameter / 2;
  const reach = radius + moving.farthest;
  const nearest = edgesNear(center, reach)
    .map((edge) => nearestOnEdge(edge, center))
    .reduce((best, one) => (one.distance < best.distance ? one : best), {
      at: center,
      distance: Number.POSITIVE_INFINITY,
    });
  const { at, distance } = nearest;
  if (!Number.isFinite(distance) || distance === 0) return null;
  const n = { dx: (center.x - at.x) / distance, dy: (center.y - at.y) / distance };
  const gap = distance - radius;
  return hull(
    placed.map((one) => {
      const drift = driftBetween({ placed: asDrawn(at), at }, { placed: one, at: center }, job);
      const { known, ...rest } = alongDrift(drift, n, (_, { rim }) => -rim);
      return spread({ known: gap + known, ...rest });
    }),
  );
}
