import { breakOffOf } from '../cutting/break-off.js';
import { metalOf } from '../cutting/material.js';
import { strengthOf } from '../cutting/strength.js';
import type { Job } from '../job/job.js';
import type { ReportStep } from '../report/report-schema.js';

type Force = Pick<ReportStep['hangs'][number], 'force' | 'forceUnit'>;

/** About what it takes to shear through metal of an area; null where the strength is not known. */
export function forceOf(job: Job, area: number): Force {
  const metal = job.material === null ? null : metalOf(job.material);
  if (metal === null) return { force: null, forceUnit: null };
  const { force, forceUnit } = breakOffOf(strengthOf(metal), area, 1, job.units);
  return { force: [...force] as [number, number], forceUnit };
}
