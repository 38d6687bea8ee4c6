import type { Laid } from '../datum/setup.js';
import type { Job, PartName } from '../job/job.js';
import { forgetful, type Memory } from '../memory/memory.js';
import { edgeNames } from './edge-names.js';
import { type Moving, movingOf } from './moving.js';
import { laidSetups } from './setup-rows.js';

/** The setups of a job worked out, and how its boundaries may move for that. */
export interface SetUp {
  readonly lays: readonly Laid[];
  readonly moving: Moving;
  /** What people call the edges of the part: the job's names, and sides as the part lies. */
  readonly names: readonly PartName[];
}

/** Works the setups of a job out. */
export function setUp(job: Job, memory: Memory = forgetful): SetUp {
  const lays = laidSetups(job).map((lay, k) => memory.same(`lay ${k}`, lay));
  return { lays, moving: movingOf(job, lays), names: edgeNames(job, lays) };
}
