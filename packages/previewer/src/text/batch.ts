import type { Report, ReportStep } from '@edgebite/core';
import { clean } from '@edgebite/svg';
import { decimalsOf } from '../columns/decimals.js';
import { type Column, tableText } from '../columns/table.js';
import { hanging } from '../columns/wrap.js';
import { shownIn, shownText } from '../step/readout.js';

type BatchPart = Report['batch'][number];

/** The parts of a batch: the measured lengths of each, and its targets. */
export function batchText(report: Report): string {
  return report.batch.map((part) => partText(report, part)).join('\n\n');
}

interface Row {
  readonly step: BatchPart['steps'][number];
  readonly what: ReportStep['stands'][number]['what'];
  readonly target: readonly [number, number];
}

function partText(report: Report, { name, measured, steps }: BatchPart): string {
  const lengths = measured.map(
    (one) => `${clean(one.name)} ${one.measured} ${one.units === 'mm' ? 'mm' : 'in'}`,
  );
  const rows = steps.flatMap((step): Row[] => {
    const { stands } = report.steps[step.step] as ReportStep;
    return step.targets.map(({ readout }, k) => ({
      step,
      what: stands[k]?.what ?? 'center',
      target: readout,
    }));
  });
  const shown = (value: number, { step }: Row) => shownText(value, shownIn(report, step.setup));
  const columns: Column<Row>[] = [
    { head: 'step', align: 'right', cell: ({ step }) => String(step.step + 1) },
    { head: 'setup', align: 'left', cell: ({ step }) => step.setup },
    { head: 'cut', align: 'left', cell: ({ step }) => step.cut },
    { head: '', align: 'left', cell: ({ what }) => (what === 'center' ? '' : what) },
    { head: 'x', align: 'right', cell: (row) => shown(row.target[0], row) },
    { head: 'y', align: 'right', cell: (row) => shown(row.target[1], row) },
    {
      head: 'z',
      align: 'right',
      cell: ({ step }) => depthText(report, step),
    },
  ];
  const table = tableText(columns, rows);
  return [
    hanging('', `${clean(name)}: ${lengths.join(', ')}`),
    ...table.split('\n').map((line) => `  ${line}`),
  ].join('\n');
}

/** What Z is to show, on the readout or on the scale of the quill. */
function depthText({ setups }: Report, { setup, depth }: BatchPart['steps'][number]): string {
  const heights = setups.find(({ id }) => id === setup)?.heights;
  if (depth === null || heights === undefined) return '';
  return (depth.readout + 0).toFixed(decimalsOf(heights.resolution));
}
