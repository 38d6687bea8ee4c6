import { pointToJson } from '../format/json.js';
import { DEGREE } from '../geometry/angle.js';
import { knifeEdgesOf } from '../left/knife-edges.js';
import type { Left } from '../left/left.js';
import { websOf } from '../left/webs.js';
import type { Region } from '../region/region.js';
import type { ReportKnifeEdge, ReportWeb } from '../report/report-schema.js';
import { knifeInterval, webInterval } from '../result/intervals.js';
import type { Result } from '../step/result.js';

/** A web as far as its finding goes. */
export type NearWeb = Pick<
  ReportWeb,
  'thickness' | 'at' | 'ends' | 'between' | 'slab' | 'piece' | 'interval'
>;
/** A corner as far as its finding goes. */
export type NearEdge = Pick<ReportKnifeEdge, 'angle' | 'at' | 'between' | 'slab' | 'piece' | 'interval'>;

/** How far over the limit corners are looked at, degrees; errors of setups seldom turn one by more. */
const NEAR_ANGLE = 15;

/** Every section of the pieces that are left, with its slab. */
function sections({ pieces, cells }: Left): { region: Region; slab: number; piece: string }[] {
  return pieces.pieces.flatMap(({ id, sections: own }) =>
    own.map(({ from, to, region }) => {
      const slab = cells.slabs.findIndex((one) => one.from >= from && one.to <= to);
      return { region, slab, piece: id };
    }),
  );
}

/** The webs over the limit that may come out under it. */
export function nearWebs({ job, set: { moving }, left }: Result): NearWeb[] {
  const limit = job.limits.web;
  const reach = limit + moving.farthest;
  return sections(left).flatMap(({ region, slab, piece }) =>
    websOf(region, reach)
      .filter(({ thickness }) => thickness >= limit)
      .map(({ thickness, at, ends, strip, between: [a, b] }): NearWeb => {
        const between: [string, string] = [a ?? '', b ?? ''];
        const interval = webInterval(job, moving, { thickness, ends, between, strip });
        return {
          thickness,
          at: pointToJson(at),
          ends: [pointToJson(ends[0]), pointToJson(ends[1])],
          between,
          slab,
          piece,
          interval,
        };
      })
      .filter(({ interval }) => interval !== null && interval.worst[0] < limit),
  );
}

/** The corners over the limit that may come out under it. */
export function nearKnifeEdges({ job, set: { moving }, left }: Result): NearEdge[] {
  const limit = job.limits.knifeEdge;
  return sections(left).flatMap(({ region, slab, piece }) =>
    knifeEdgesOf(region, (limit + NEAR_ANGLE) * DEGREE, job.limits.web)
      .filter(({ angle }) => angle >= limit * DEGREE)
      .map(({ angle, at, between: [a, b] }): NearEdge => {
        const between: [string, string] = [a ?? '', b ?? ''];
        const interval = knifeInterval(job, moving, { angle: angle / DEGREE, at, between });
        return { angle: angle / DEGREE, at: pointToJson(at), between, slab, piece, interval };
      })
      .filter(({ interval }) => interval !== null && interval.worst[0] < limit),
  );
}
