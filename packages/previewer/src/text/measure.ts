import type { Measured, ReportCheck, ReportWay } from '@edgebite/core';
import { angleText, clean, lengthText, numberText, unitText } from '@edgebite/svg';
import { type Column, tableText } from '../columns/table.js';
import { hanging } from '../columns/wrap.js';
import { arcLines, contradictionLines, correctionLines, STOP } from '../step/measured.js';
import { trialTold } from '../step/trial.js';
import { CLOSING } from './report.js';

/** What a text on measuring tells of beside the arc. */
export interface MeasureFacts {
  readonly units: 'mm' | 'inch';
  /** Of the job; empty if it has none. */
  readonly name: string;
  /** Heights of the part's bottom and top. */
  readonly thickness: number;
}

/** A reading hardly moves with the radius where it grows by less than this share of it. */
const HARDLY = 0.25;

/** How to measure the arcs of a cut, as text for people, up to 80 columns where it can. The same rows give the same text. */
export function waysText(checks: readonly ReportCheck[], facts: MeasureFacts): string {
  return `${[
    facts.name === '' ? 'Job without a name' : clean(facts.name),
    ...checks.flatMap((check, k) => {
      const which = checks.length > 1 ? ` (arc ${k + 1})` : '';
      return [checkText(check, facts, which), ...trialText(check, facts, which)];
    }),
    hanging('', STOP),
    hanging('', CLOSING),
  ].join('\n\n')}\n`;
}

function checkText(check: ReportCheck, facts: MeasureFacts, which: string): string {
  const { units, thickness } = facts;
  const between =
    check.from === 0 && check.to === thickness
      ? ''
      : `, from ${numberText(check.from, units)} to ${lengthText(check.to, units)} over the bottom`;
  const head = `MEASURE cut ${clean(check.cut)}${which}: radius ${lengthText(check.radius, units)}${between}`;
  const hardly = check.ways.flatMap(({ byRadius }, k) => (Math.abs(byRadius) < HARDLY ? [k + 1] : []));
  const horns = check.ways.flatMap(({ horn }, k) =>
    horn === null
      ? []
      : [
          `Way ${k + 1} is taken at the horns, ${angleText(horn)}° of metal: burrs and broken edges falsify it.`,
        ],
  );
  const notes = [
    check.pairs === null
      ? []
      : [
          `Two like pins of ${numberText(check.pairs[0], units)} to ${lengthText(check.pairs[1], units)} tell the radius, side by side in the arc.`,
        ],
    hardly.length === 0
      ? []
      : [
          `${hardly.length === 1 ? 'Way' : 'Ways'} ${hardly.join(', ')} hardly ${hardly.length === 1 ? 'moves' : 'move'} with the radius: useless for it.`,
        ],
    check.refused.map(({ words }) => words),
    horns,
  ].flat();
  return [
    head,
    tableText(
      columns(check, facts),
      check.ways.map((way, k) => ({ way, number: k + 1 })),
    ),
    ...notes.map((note) => hanging('', note)),
  ].join('\n');
}

/** The trial cut of an arc; no text where there is none. */
function trialText(check: ReportCheck, { units }: MeasureFacts, which: string): string[] {
  const told = trialTold(check, units);
  if (told === null) return [];
  const { lines, heads, rows } = told;
  const table = tableText<readonly string[]>(
    heads.map((head, k) => ({ head, align: 'right', cell: (row) => row[k] as string })),
    rows,
  );
  return [
    [`TRIAL CUT of ${clean(check.cut)}${which}`, ...lines.map((line) => hanging('', line)), table].join('\n'),
  ];
}

interface Numbered {
  readonly way: ReportWay;
  readonly number: number;
}

function columns(check: ReportCheck, { units }: MeasureFacts): Column<Numbered>[] {
  const slope = (value: number) => value.toFixed(2);
  const height = ({ way }: Numbered) =>
    way.ball || (way.from === check.from && way.to === check.to)
      ? ''
      : ` (${numberText(way.from, units)} to ${numberText(way.to, units)} over the bottom)`;
  return [
    { head: 'way', align: 'right', cell: ({ number }) => String(number) },
    { head: `reads, ${unitText(units)}`, align: 'right', cell: ({ way }) => numberText(way.reading, units) },
    {
      head: 'allowed',
      align: 'left',
      cell: ({ way }) =>
        way.allowed === null
          ? '-'
          : `${numberText(way.allowed[0], units)} to ${numberText(way.allowed[1], units)}`,
    },
    { head: 'by radius', align: 'right', cell: ({ way }) => slope(way.byRadius) },
    { head: 'by place', align: 'right', cell: ({ way }) => slope(way.byPlace) },
    { head: 'what', align: 'left', cell: (one) => `${one.way.words}${height(one)}` },
  ];
}

/** What readings say of an arc and what to correct, as text for people. */
export function measuredText(
  answer: Measured,
  taken: readonly { way: number; value: number; tolerance: number }[],
  facts: MeasureFacts,
): string {
  return `${[
    facts.name === '' ? 'Job without a name' : clean(facts.name),
    readingsText(answer, taken, facts),
    arcText(answer, facts),
    correctionText(answer, facts),
    hanging('', STOP),
    hanging('', CLOSING),
  ].join('\n\n')}\n`;
}

function readingsText(
  { check, fit }: Measured,
  taken: readonly { way: number; value: number; tolerance: number }[],
  { units }: MeasureFacts,
): string {
  const rows = taken.map((one, k) => ({
    ...one,
    row: check.ways[one.way] as ReportWay,
    residual: fit.residuals[k] as number,
  }));
  const table = tableText<(typeof rows)[number]>(
    [
      { head: 'way', align: 'right', cell: ({ way }) => String(way + 1) },
      { head: `read, ${unitText(units)}`, align: 'right', cell: ({ value }) => numberText(value, units) },
      { head: 'good to', align: 'right', cell: ({ tolerance }) => numberText(tolerance, units) },
      { head: 'as drawn', align: 'right', cell: ({ row }) => numberText(row.reading, units) },
      { head: 'off the arc found', align: 'right', cell: ({ residual }) => numberText(-residual, units) },
      { head: 'what', align: 'left', cell: ({ row }) => row.words },
    ],
    rows,
  );
  const contradiction = contradictionLines(fit, taken).map((line) => hanging('', line));
  return [`READINGS of cut ${clean(check.cut)}`, table, ...contradiction].join('\n');
}

function arcText(answer: Measured, facts: MeasureFacts): string {
  return [
    'THE ARC, in the coordinates of the drawing',
    ...arcLines(answer, facts).map((line) => hanging('  ', line)),
  ].join('\n');
}

function correctionText(answer: Measured, facts: MeasureFacts): string {
  return ['CORRECTION', ...correctionLines(answer, facts).map((line) => hanging('  ', line))].join('\n');
}
