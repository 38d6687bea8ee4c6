import type { Correction, Dial, Estimate, Measured, ReportCheck, ReportWay } from '@edgebite/core';
import { angleText, clean, lengthText, numberText, unitText } from '@edgebite/svg';
import { trialTold } from '../step/trial.js';
import { decimalsOf } from './decimals.js';
import { CLOSING } from './report.js';
import { type Column, tableText } from './table.js';
import { hanging } from './wrap.js';

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

const STOP =
  'Stop the spindle and let it stand still before you measure or reach in. Fresh edges and horns cut: break them, and do not feel along them. Let slug, cutter and part cool.';

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
  dial: Dial | null,
  facts: MeasureFacts,
): string {
  return `${[
    facts.name === '' ? 'Job without a name' : clean(facts.name),
    readingsText(answer, taken, facts),
    arcText(answer, facts),
    correctionText(answer, dial, facts),
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
  const wrong = fit.contradicted.map((k) => (taken[k] as { way: number }).way + 1);
  const contradiction =
    wrong.length === 0
      ? []
      : [
          hanging(
            '',
            `CONTRADICTION: ${wrong.length === 1 ? 'way' : 'ways'} ${wrong.join(', ')} cannot all be right, each as good as it is said to be. Measure again before you correct anything.`,
          ),
        ];
  return [`READINGS of cut ${clean(check.cut)}`, table, ...contradiction].join('\n');
}

function arcText({ check, fit }: Measured, { units }: MeasureFacts): string {
  const line = (name: string, one: Estimate | null, drawn: number) =>
    one === null
      ? `${name}  not told by these readings; as drawn ${lengthText(drawn, units)}`
      : `${name}  ${lengthText(one.value, units)}, at worst ${numberText(one.worst[0], units)} to ${numberText(one.worst[1], units)}, ± ${numberText(one.rss, units)} in 95 cases of 100 by root of squares; drawn ${numberText(drawn, units)}`;
  const [x, y] = check.center;
  return [
    'THE ARC, in the coordinates of the drawing',
    hanging('  ', line('radius  ', fit.radius, check.radius)),
    hanging('  ', line('centre x', fit.x, x)),
    hanging('  ', line('centre y', fit.y, y)),
  ].join('\n');
}

function correctionText(answer: Measured, dial: Dial | null, facts: MeasureFacts): string {
  const { fit, correction, targets } = answer;
  const lines = [
    ...(fit.contradicted.length > 0
      ? ['None until the readings agree.']
      : [headText(correction, dial, facts)]),
    ...(fit.contradicted.length > 0 ? [] : placeText(answer, facts)),
    ...(fit.contradicted.length > 0 ? [] : targets.map(targetText)),
  ];
  return ['CORRECTION', ...lines.map((line) => hanging('  ', line))].join('\n');
}

function targetText({ setup, units, resolution, was, readout }: Measured['targets'][number]): string {
  const shown = ([x, y]: readonly [number, number]) =>
    `X ${x.toFixed(decimalsOf(resolution))} Y ${y.toFixed(decimalsOf(resolution))} ${unitText(units)}`;
  return was[0] === readout[0] && was[1] === readout[1]
    ? `Setup ${clean(setup)}: the readout stays at ${shown(was)}.`
    : `Setup ${clean(setup)}: stand at ${shown(readout)} in place of ${shown(was)}.`;
}

function headText(correction: Correction | null, dial: Dial | null, { units }: MeasureFacts): string {
  if (correction === null || dial === null)
    return 'Head: no dial is known. Give the tool a dial in the job, or --dial and --dial-on.';
  const { state, graduations, turn, short } = correction;
  if (state === 'radius not known' || short === null)
    return 'Head: leave it. These readings do not tell the radius from the place; add one that does.';
  if (state === 'over size')
    return `Head: the bore is over size by ${lengthText(-short[1], units)} at least in radius. No turn of the head mends that.`;
  if (state === 'on size')
    return `Head: leave it. It is on size as far as readings and graduation tell: ${leftWords(short, units)}.`;
  return `Head: open by ${graduations} ${graduations === 1 ? 'graduation' : 'graduations'}, ${lengthText(turn ?? 0, units)} on the dial (${dial.on}). Then ${leftWords(short, units)}. Measure again after the cut.`;
}

function leftWords([low, high]: readonly [number, number], units: 'mm' | 'inch'): string {
  return `${numberText(low, units)} to ${lengthText(high, units)} of the radius ${low < 0 ? 'over (below 0) or short' : 'is left'}`;
}

function placeText({ fit, correction }: Measured, { units }: MeasureFacts): string[] {
  const past = correction?.past ?? null;
  const gone =
    past === null
      ? []
      : [
          `The arc is already ${lengthText(past.by, units)} past the drawn one at (${numberText(past.at.x, units)}, ${numberText(past.at.y, units)}): moving does not put metal back.`,
        ];
  const unknown = [fit.x === null ? 'x' : null, fit.y === null ? 'y' : null].filter((axis) => axis !== null);
  const kept =
    unknown.length === 0
      ? []
      : [`Along ${unknown.join(' and ')} of the drawing nothing was told: the place stays as it is there.`];
  return [...gone, ...kept];
}
