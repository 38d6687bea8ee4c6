import { targetAt } from '../datum/target.js';
import type { Job } from '../job/job.js';
import type { Check } from '../measure/checks.js';
import { type Correction, correctionOf, type Dial } from '../measure/correction.js';
import { type Fit, fitCircle } from '../measure/fit.js';
import type { ReportCheck } from '../report/report-schema.js';
import { resultOf } from '../step/result.js';
import { checkRow, checksOf } from './check-rows.js';

/** The readings of an arc. */
export interface Measuring {
  /** id of the cut. */
  readonly cut: string;
  /** The number of the arc in the cut, from 0; usually there is only one. */
  readonly arc?: number | undefined;
  /** Readings: the number of the way in the row of the arc, from 0, its reading, and its tolerance, over 0. */
  readonly readings: readonly { readonly way: number; readonly value: number; readonly tolerance: number }[];
  /** The dial of the head; by default that of the cut's tool. */
  readonly dial?: Dial | undefined;
}

/** The arc that the readings give, and the correction. */
export interface Measured {
  readonly check: ReportCheck;
  readonly fit: Fit;
  /** The dial that the correction is for; null where none is known. */
  readonly dial: Dial | null;
  /** null where no dial is known. */
  readonly correction: Correction | null;
  /** By setup of the cut: the readout numbers at which the centre is where it is drawn. */
  readonly targets: readonly {
    readonly setup: string;
    /** Unit and step of its readout. */
    readonly units: Job['units'];
    readonly resolution: number;
    readonly was: readonly [number, number];
    readonly readout: readonly [number, number];
  }[];
}

/**
 * The arc that fits some readings, and the correction of head and centre. Lengths in the unit of the job, readouts in
 * their own.
 * @throws RangeError if the job has no such cut, or the cut no such arc or way.
 * @throws FitError if nothing can be made of the readings.
 */
export function measured(job: Job, { cut, arc = 0, readings, dial }: Measuring): Measured {
  const result = resultOf(job);
  const check = checkOf(job, checksOf(result), cut, arc);
  const { seat } = check;
  const drawn = { center: seat.center, radius: seat.radius };
  const fit = fitCircle(
    drawn,
    readings.map(({ way, value, tolerance }) => {
      const taken = check.ways[way];
      if (taken === undefined)
        throw new RangeError(
          `readings: there is no way ${way + 1} to measure ${cut}; it has ${check.ways.length}`,
        );
      return { way: taken.way, value, tolerance };
    }),
  );
  const set = dial ?? job.tools.find(({ cuts }) => cuts.includes(cut))?.dial;
  const correction = set === undefined ? null : correctionOf(drawn, seat.spans, fit, set);
  const off = {
    dx: fit.x === null ? 0 : fit.center.x - drawn.center.x,
    dy: fit.y === null ? 0 : fit.center.y - drawn.center.y,
  };
  const to = { x: drawn.center.x - off.dx, y: drawn.center.y - off.dy };
  return {
    check: checkRow(result, check),
    fit,
    dial: set ?? null,
    correction,
    targets: result.set.lays
      .filter(({ setup }) => setup.cuts.includes(cut))
      .map((lay) => ({
        setup: lay.setup.id,
        units: lay.setup.readout.units,
        resolution: lay.setup.readout.resolution,
        was: targetAt(lay, drawn.center).readout,
        readout: targetAt(lay, to).readout,
      })),
  };
}

/**
 * One of a cut's arcs.
 * @throws RangeError if the job has no such cut, or the cut no such arc.
 */
function checkOf(job: Job, checks: readonly Check[], cut: string, arc: number): Check {
  if (!job.cuts.some(({ id }) => id === cut)) {
    const known = job.cuts.map(({ id }) => id);
    throw new RangeError(`cut: there is no cut ${cut}; there are ${known.join(', ')}`);
  }
  const own = checks.filter(({ seat }) => seat.cut === cut);
  const found = own[arc];
  if (found !== undefined) return found;
  if (own.length === 0)
    throw new RangeError(
      `cut: ${cut} leaves no hollow arc to measure; a whole bore is measured across, with a bore gauge`,
    );
  throw new RangeError(`arc: ${cut} leaves ${own.length} arcs; there is no number ${arc + 1}`);
}
