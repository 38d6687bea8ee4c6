import { breakOffOf } from '../cutting/break-off.js';
import { metalOf } from '../cutting/material.js';
import { strengthOf } from '../cutting/strength.js';
import type { Job } from '../job/job.js';
import type { Slab } from '../left/cells.js';
import type { BreakOff, ReportFloor } from '../report/report-schema.js';

/** To break out the slug that a floor holds: along the wall of the slug in the kerf, through the floor. */
export function floorBreakOff(
  job: Job,
  { holds, kerfLength, thickness }: Omit<ReportFloor, 'breakOff'>,
): BreakOff | null {
  if (holds === null || kerfLength === null) return null;
  return estimate(job, kerfLength, thickness, kerfLength);
}

/** To break a web sideways in its slab: along a line as high as the slab, through the web. */
export function webBreakOff(job: Job, { from, to }: Slab, thickness: number): BreakOff | null {
  return estimate(job, to - from, thickness, thickness);
}

function estimate(job: Job, width: number, thickness: number, sawLength: number): BreakOff | null {
  const metal = job.material === null ? null : metalOf(job.material);
  if (metal === null) return null;
  const strength = strengthOf(metal);
  const { force, moment, ...units } = breakOffOf(strength, width, thickness, job.units);
  return {
    thickness,
    width,
    area: width * thickness,
    force: [...force],
    moment: [...moment],
    ...units,
    sawLength,
    source: strength.source,
  };
}
