import type { Job } from '../job/job.js';
import { circle } from './curves.js';
import { contacts } from './meetings.js';
import type { FreeNumber } from './number.js';
import type { Scene } from './scene.js';

/**
 * Every value, counted from where the scene was drawn, at which the metal under the middle of a tool can come or go: the
 * centre of the cut passes a boundary, or its rims pass the centre of another cut. Sorted. In between, a tool that must
 * not go down on metal, or has to be led by it, stands in one and the same way as far as its middle goes. None in a job
 * without tools.
 */
export function footings(job: Job, { index, cutAt }: FreeNumber, base: number, scene: Scene): number[] {
  if (job.tools.length === 0) return [];
  const { motion, slack, curves, rims, low, high } = scene;
  const cut = cutAt(base);
  const own = cut.kind === 'swept' || motion.growth !== 0 ? [] : [circle(cut.center, 0)];
  const others = job.cuts.flatMap((other, k) =>
    k === index || other.kind === 'swept' ? [] : [circle(other.center, 0)],
  );
  return [
    ...own.flatMap((center) => curves.flatMap((curve) => contacts(center, curve, 0, motion, slack))),
    ...rims.flatMap((rim) => others.flatMap((center) => contacts(rim, center, 0, motion, slack))),
  ]
    .map(({ s }) => s)
    .filter((s) => s > low && s < high)
    .sort((a, b) => a - b);
}
