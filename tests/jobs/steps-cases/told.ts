import { examine, parseJob } from '@edgebite/core';
import type { ToldReport, ToldStep } from '../../outside/machine/compare/told.js';
import { zeroByTouching } from '../../outside/machine/made/zero.js';
import type { CutDocument, JobDocument } from '../../outside/machine/sim/job.js';

/** What a report says besides its steps, as far as these cases read it. */
export type Told = ToldReport & {
  readonly pieces: readonly { readonly id: string; readonly role: string; readonly volume: number }[];
  readonly floors: readonly { readonly thickness: number; readonly holds: string | null }[];
  readonly webs: readonly {
    readonly thickness: number;
    readonly at: readonly [number, number];
    readonly between: readonly [string, string];
  }[];
  readonly merges: readonly { readonly step: number; readonly cuts: readonly string[] }[];
  readonly removedVolume: number;
};

/** A plate 80 by 30 by 12, and what is cut in it; keys given are in place of the plate's. */
export function plate(cuts: readonly CutDocument[], other: Record<string, unknown> = {}): JobDocument {
  return {
    edgebite: 1,
    units: 'mm',
    part: { outline: { rectangle: [80, 30] }, thickness: 12 },
    limits: { web: 1.5, knifeEdge: 30 },
    ...other,
    cuts,
  };
}

/** A setup zeroed at the left and the front face, with a tip of 10: a place over the left face reads 5. */
export function setup(id: string, cuts: readonly string[], lie: { flip?: 'x' | 'y'; turn?: number } = {}) {
  return { id, ...lie, zero: zeroByTouching(), cuts };
}

/** The report on a job. */
export function told(job: JobDocument): Told {
  return examine(parseJob(job)) as unknown as Told;
}

/** A step of a report that is there. */
export function stepOf(report: Told, k: number): ToldStep {
  const step = report.steps[k];
  if (step === undefined) throw new Error(`the report has no step ${k}`);
  return step;
}

/** The findings of a step. */
export function findingsOf(report: Told, k: number): Told['findings'] {
  return stepOf(report, k).findings.map((index) => report.findings[index] as Told['findings'][number]);
}
