import type { Edge } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import { cutSource } from '../geometry/source.js';
import type { Job } from '../job/job.js';
import { pointOf } from '../job/read-edges.js';
import type { CenterPass } from '../path/path.js';
import { disc, type Region } from '../region/region.js';
import type { ReportPasses } from '../report/report-schema.js';

/** The circle of a tool that goes straight down. */
export interface Round {
  readonly center: Point;
  readonly radius: number;
}

/** What one pass of a cut is: a circle, or a path, in runs between which the tool is lifted. */
export type PassShape =
  | ({ readonly kind: 'round' } & Round)
  | { readonly kind: 'path'; readonly path: readonly Edge[]; readonly runs: readonly CenterPass[] };

/** The passes of a cut as it is made: one at least. */
export function passShapes(cut: Job['cuts'][number], passes: ReportPasses | null): PassShape[] {
  if (cut.kind === 'swept') {
    return [{ kind: 'path', path: cut.path, runs: cut.plan?.along?.passes ?? [] }];
  }
  const own = passes?.list ?? [];
  if (own.length === 0) return [{ kind: 'round', center: cut.center, radius: cut.diameter / 2 }];
  return own.map(({ center, diameter }) => ({
    kind: 'round',
    center: pointOf(center),
    radius: diameter / 2,
  }));
}

/** What each pass takes in plan, where a cut has several; undefined where it has one. */
export function footprintsOf(cut: Job['cuts'][number], shapes: readonly PassShape[]): Region[] | undefined {
  if (shapes.length < 2) return undefined;
  const source = cutSource(cut.id);
  return shapes.flatMap((shape) =>
    shape.kind === 'round' ? [disc(shape.center, shape.radius, source)] : [],
  );
}
