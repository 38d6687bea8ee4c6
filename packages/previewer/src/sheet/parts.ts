import type { Report, ReportStep } from '@edgebite/core';
import { decimalsOf } from '../columns/decimals.js';
import type { SheetPart, SheetPartRow } from './sheet.js';

/** The parts of a batch in some steps of a report. */
export function partsOf(report: Report, indices: readonly number[]): SheetPart[] {
  const own = new Set(indices);
  return report.batch.flatMap(({ name, measured, steps }): SheetPart[] => {
    const rows = steps.filter(({ step }) => own.has(step)).flatMap((one) => rowsOf(report, one));
    if (rows.length === 0) return [];
    const lengths = measured.map((one) => `${one.name} ${one.measured} ${one.units === 'mm' ? 'mm' : 'in'}`);
    return [{ name, measured: lengths.join(', '), depths: depthsOf(report, rows[0] as SheetPartRow), rows }];
  });
}

/** What depths are read on in the setup of a row. */
function depthsOf({ setups, steps }: Report, { step }: SheetPartRow): SheetPart['depths'] {
  const heights = setups.find(({ id }) => id === steps[step - 1]?.setup)?.heights;
  if (heights === undefined) return { head: 'Z', decimals: 0 };
  const unit = heights.units === 'mm' ? 'mm' : 'in';
  return {
    head: heights.on === 'quill' ? `quill ${unit}` : `Z ${unit}`,
    decimals: decimalsOf(heights.resolution),
  };
}

/** A depth as it is read. */
export function partDepth({ depth }: SheetPartRow, { decimals }: SheetPart['depths']): string {
  return depth === null ? '-' : (depth + 0).toFixed(decimals);
}

type BatchStep = Report['batch'][number]['steps'][number];

function rowsOf(report: Report, { step, cut, targets, depth }: BatchStep): SheetPartRow[] {
  const { stands } = report.steps[step] as ReportStep;
  return targets.map(({ readout }, k) => ({
    step: step + 1,
    stand: targets.length === 1 ? null : k + 1,
    cut,
    what: stands[k]?.what ?? 'center',
    target: readout,
    depth: depth === null ? null : depth.readout,
  }));
}

/** What stands over the steps of a batch: their numbers hold for none of its parts. */
export const BATCH_NOTE =
  'X, Y and Z of the steps are for the lengths as written. Each part of the batch has its own: go by its table below.';

/** What of a step a row is, where it is not simply its place: `back off`, `path`. */
export function partWords({ cut, what }: SheetPartRow): string {
  return what === 'center' ? cut : `${cut}, ${what}`;
}

/** `4`, or `4.1`, `4.2` where a step goes to several places; lifts are not counted. */
export function partNumber({ step, stand }: SheetPartRow): string {
  return stand === null ? String(step) : `${step}.${stand}`;
}
