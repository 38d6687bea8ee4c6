import { inUnit } from '../datum/length-unit.js';
import type { Laid } from '../datum/setup.js';
import { targetAt } from '../datum/target.js';
import type { Job, Units } from '../job/job.js';
import type { Check } from '../measure/checks.js';
import { trialOf } from '../measure/trial.js';
import type { ReportCheck } from '../report/report-schema.js';

/** How good a reading is where nothing is said of it: that of a caliper (common practice, no source). */
export const USUAL_READING: Readonly<Record<Units, number>> = { mm: 0.02, inch: 0.001 };

/** What a trial cut leaves of the radius where the passes of a bore do not say it; common practice, no source. */
const TRIAL_LEAVES: Readonly<Record<Units, number>> = { mm: 0.5, inch: 0.02 };

/** The trial cut of an arc that a boring head with a dial makes; null for others. */
export function trialRow(job: Job, lays: readonly Laid[], { seat, ways }: Check): ReportCheck['trial'] {
  const head = job.tools.find(({ cuts }) => cuts.includes(seat.cut));
  if (head?.dial === undefined) return null;
  const { units } = job;
  const finish = job.cuts.find(({ id }) => id === seat.cut)?.plan?.passes?.finish ?? 0;
  const place = placeOff(lays, seat, units);
  const good = USUAL_READING[units];
  const leaves = finish > 0 ? finish : TRIAL_LEAVES[units];
  const trial = trialOf(seat, ways, { dial: head.dial, leaves, good, place });
  if (trial === null) return null;
  return {
    tool: head.id,
    dial: { ...head.dial },
    way: trial.way,
    diameter: 2 * trial.radius,
    leaves: trial.leaves,
    reading: trial.reading,
    good,
    place,
    uncertain: trial.uncertain,
    rows: trial.rows.map((row) => ({ ...row, short: [row.short[0], row.short[1]] })),
  };
}

/** How far the centre may be off at worst, in any of the setups in which it is cut. */
function placeOff(lays: readonly Laid[], { cut, center }: Check['seat'], units: Units): number {
  return Math.max(
    0,
    ...lays
      .filter(({ setup }) => setup.cuts.includes(cut))
      .map((lay) => {
        const [x, y] = targetAt(lay, center).worst;
        return inUnit(Math.hypot(x, y), lay.setup.readout.units, units);
      }),
  );
}
