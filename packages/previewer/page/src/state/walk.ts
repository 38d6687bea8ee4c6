import type { Report } from '@edgebite/core';
import { computed, effect, signal } from '@preact/signals';
import { sheetOf } from '../../../src/sheet/model.js';
import { rowsOf, type SheetRow } from '../../../src/sheet/rows.js';
import type { Sheet, SheetBlock, SheetStep } from '../../../src/sheet/sheet.js';
import { rested } from './rested.js';
import { job } from './store.js';

/** A step with the sheet and the block of it that it stands in, and its rows there. */
export interface Walked {
  readonly sheet: Sheet;
  readonly step: SheetStep;
  readonly block: SheetBlock;
  readonly rows: readonly SheetRow[];
}

interface Known {
  readonly report: Report;
  readonly sheet: Sheet;
  readonly steps: readonly (readonly [SheetStep, SheetBlock])[];
}

/** The last report that was worked out in full, with its sheet; it stays while the job changes. */
const known = signal<Known | null>(null);

/** The number of the step that is being looked at, from 0; past the last one once a job has become shorter. */
const wanted = signal(0);

effect(() => {
  if (job.value === null) {
    known.value = null;
    wanted.value = 0;
    return;
  }
  const report = rested.value;
  if (report === null) return;
  const sheet = sheetOf(report);
  const steps = sheet.blocks.flatMap((block) => block.steps.map((step) => [step, block] as const));
  known.value = { report, sheet, steps };
});

/** The report that the steps are of; null before the first. */
export const walkedReport = computed(() => known.value?.report ?? null);

/** How many steps there are. */
export const stepCount = computed(() => known.value?.steps.length ?? 0);

/** The number of the step that is being looked at, from 0. */
export const stepAt = computed(() => Math.max(0, Math.min(wanted.value, stepCount.value - 1)));

/** The step that is being looked at; null where there is none. */
export const walked = computed<Walked | null>(() => {
  const one = known.value?.steps[stepAt.value];
  if (known.value === null || one === undefined) return null;
  const [step, block] = one;
  const { sheet } = known.value;
  return { sheet, step, block, rows: rowsOf(step, block, sheet) };
});

/** Goes so many steps on, or back. */
export function walk(by: number): void {
  wanted.value = Math.max(0, Math.min(stepAt.value + by, stepCount.value - 1));
}
