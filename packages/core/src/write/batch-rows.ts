import { laid } from '../datum/setup.js';
import { targetAt } from '../datum/target.js';
import type { Report } from '../report/report-schema.js';
import { depthOf } from '../result/setup-rows.js';
import type { Result } from '../step/result.js';

type BatchRow = Report['batch'][number];

/** The parts of a batch: for each step in a setup, where the readout is to stand with the part as it was measured. */
export function batchRows({ job, steps }: Result): BatchRow[] {
  return job.batch.map(({ name, measured, setups }): BatchRow => {
    const lays = new Map(setups.map((setup) => [setup.id, laid(setup, job)]));
    return {
      name,
      measured: measured.map((one) => ({ ...one })),
      steps: steps.flatMap(({ approach, stands }, step) => {
        const lay = lays.get(approach.lay.setup.id);
        const cut = job.cuts[approach.cut];
        if (lay === undefined || cut === undefined) return [];
        const depth = depthOf(job, lay, cut.id);
        return [
          {
            step,
            setup: lay.setup.id,
            cut: cut.id,
            targets: stands.map(({ target: { center } }) => {
              const { exact, readout, roundingError, worst, rss } = targetAt(lay, center);
              return {
                exact: [...exact] as [number, number],
                readout: [...readout] as [number, number],
                roundingError: [...roundingError] as [number, number],
                worst: [...worst] as [number, number],
                rss: [...rss] as [number, number],
              };
            }),
            depth: depth === null ? null : { ...depth },
          },
        ];
      }),
    };
  });
}
