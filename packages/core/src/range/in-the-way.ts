import { offset } from '../combine/offset.js';
import { mostGrowth } from '../datum/growth.js';
import { type KeepOut, POINT_SHARE } from '../datum/keep-out.js';
import { offOf } from '../find/keep-out-findings.js';
import { boxesMeet, grown } from '../geometry/bounds.js';
import type { Job } from '../job/job.js';
import { boundsOf, loopsOf } from '../region/measure.js';
import { circleLoop, type Region } from '../region/region.js';
import { cutSizes } from '../result/cut-sizes.js';
import { laidSetups } from '../result/setup-rows.js';
import { type Curve, circle, widened } from './curves.js';
import { crossingsOf, type DrawnEdge, drawnOutline } from './drawn.js';
import { contacts, type Time } from './meetings.js';
import type { FreeNumber } from './number.js';
import type { Scene } from './scene.js';

/**
 * Every value, counted from where the scene was drawn, at which the cutter can begin to run into a jaw, stop, parallel
 * or clamp, or to take away what one bears on; in closed form.
 *
 * - The rims, as they are and moved out by what the spindle may be off, touch what is in the way, or pass its corners.
 * - They touch it widened by the shop's resolution, where a grip begins to bear, or a crossing of that with a boundary
 *   of the part: there the metal that it bears on is gone.
 * - A hole grows so wide that the point of its drill comes down to what lies under the part.
 */
export function inTheWay(job: Job, number: FreeNumber, base: number, scene: Scene): Time[] {
  if (job.keepOuts.length === 0) return [];
  const sizeOf = cutSizes(job);
  const offs = [
    0,
    ...laidSetups(job).map(
      (lay) =>
        offOf(lay, job) +
        mostGrowth(sizeOf((job.cuts[number.index] as Job['cuts'][number]).id, lay.setup.id)),
    ),
  ];
  const farthest = Math.max(...offs) + job.resolution + scene.slack;
  const near = job.keepOuts.filter((one) => isNear(one.region, scene, farthest));
  const body = [...new Set(offs)].flatMap((off) => scene.rims.map((rim) => widened(rim, off)));
  const points = [...new Set(offs)].flatMap((off) =>
    scene.rimCorners.map(({ at }): Curve => circle(at, off)),
  );
  return [
    ...near.flatMap((one) => touchTimes([...body, ...points], wallsOf(one, job.resolution, scene), scene)),
    ...depthTimes(job, number, base),
  ];
}

function isNear(region: Region, { box }: Scene, by: number): boolean {
  const own = boundsOf(region);
  return own !== null && boxesMeet(own, grown(box, by));
}

/** Boundaries and corners of what is in the way; and where its reach, if it grips, crosses those of the part. */
function wallsOf({ kind, region }: KeepOut, resolution: number, scene: Scene): Curve[] {
  const regions = kind === 'jaw' || kind === 'clamp' ? [region, offset(region, resolution)] : [region];
  const drawn = regions.map((one) => drawnOutline(loopsOf(one), IN_THE_WAY));
  const edges = drawn.flatMap((one) => one.edges);
  const others = scene.curves.flatMap((curve) => edgesOf(curve));
  const crossed = crossingsOf([...edges, ...others], scene.slack);
  return [
    ...new Set(edges.map(({ curve }) => curve)),
    ...[...drawn.flatMap((one) => one.corners), ...crossed].map(({ at }) => circle(at, 0)),
  ];
}

/** What stands still has one owner, and what is in the way another: crossings are looked for between the two. */
const STILL = 0;
const IN_THE_WAY = 1;

function edgesOf(curve: Curve): DrawnEdge[] {
  const edges =
    curve.shape === 'round' && curve.edge === null ? circleLoop(curve.center, curve.radius) : [curve.edge];
  return edges.flatMap((edge) => (edge === null ? [] : [{ edge, curve, owner: STILL }]));
}

function touchTimes(
  moving: readonly Curve[],
  still: readonly Curve[],
  { motion, slack, blur }: Scene,
): Time[] {
  return moving.flatMap((m) =>
    still.flatMap((f) =>
      contacts(m, f, 0, motion, slack).map(({ s, isLong, pace = 1 }) => ({ s, isLong, blur: blur / pace })),
    ),
  );
}

function depthTimes(job: Job, { cutAt, motion }: FreeNumber, base: number): Time[] {
  const cut = cutAt(base);
  if (motion.growth === 0 || cut.kind !== 'bore' || !cut.through) return [];
  return job.keepOuts.map(({ to }) => ({ s: -to / POINT_SHARE - base, isLong: false, blur: 0 }));
}
