import {
  knifeMarks,
  type Report,
  type ReportSetup,
  type ReportTarget,
  sourceText,
  webMarks,
} from '@edgebite/core';
import {
  angleText,
  clean,
  doneText,
  fixed,
  lostZeros,
  numberText,
  reachedText,
  type ZeroLink,
  zeroAxes,
} from '@edgebite/svg';
import { decimalsOf } from '../columns/decimals.js';
import { type Column, tableText } from '../columns/table.js';
import { hanging } from '../columns/wrap.js';
import { left, right } from './tables.js';

type Shown = (value: number) => string;
type Interval = NonNullable<Report['webs'][number]['interval']>;

/** The widest name of what an interval is of. */
const WIDEST_NAME = 28;

/** Indent of what belongs to a setup. */
const INDENT = '  ';

/** The setups of a report: how the part lies, how the zeros are found, and the targets of the readout. */
export function setupsText(report: Report): string {
  return report.setups.map((setup, k) => setupText(setup, k, lostZeros(report).has(setup.id))).join('\n\n');
}

function setupText(setup: ReportSetup, number: number, isLost: boolean): string {
  const { id, name, readout } = setup;
  const title = name === null || name === '' ? id : `${id}: ${name}`;
  const lies = `${lieWords(setup)}${heightWords(setup)} Readout in ${readout.units === 'mm' ? 'mm' : 'inches'}, in steps of ${readout.resolution}.`;
  return [
    hanging(`${number + 1}. `, title),
    hanging(INDENT, lies),
    indented(zeroText(setup)),
    isLost
      ? hanging(INDENT, 'No targets: the zero cannot be found so; see the findings.')
      : indented(targetsText(setup)),
  ].join('\n');
}

function lieWords({ flip, turn, up, angleTolerance }: ReportSetup): string {
  const over = flip === null ? null : `turned over about ${flip}, ${up} up`;
  const round = turn === 0 ? null : `turned ${angleText(turn)}° counter-clockwise`;
  const words = [over, round].filter((word) => word !== null).join(', then ');
  const off = angleTolerance === 0 ? '' : `, to ±${Number(angleTolerance.toPrecision(6))}°`;
  return words === '' ? `Lies as drawn${off}.` : `Lies ${words}${off}.`;
}

/** What is read in Z where that is not the readout. */
function heightWords({ heights }: ReportSetup): string {
  if (heights.on === 'readout') return '';
  return ` Z on the scale of the quill, which grows downwards, in ${heights.units === 'mm' ? 'mm' : 'inches'}, in steps of ${heights.resolution}.`;
}

function zeroText(setup: ReportSetup): string {
  const rows = zeroAxes(setup).flatMap(({ axis, found, scale }) => {
    const decimals = decimalsOf(scale.resolution);
    // What is under a step needs a decimal more.
    const fine = (value: number) => fixed(value, decimals + 1);
    // What is read: all its decimals, of a zero too.
    const shown = (value: number) => (value + 0).toFixed(decimals);
    return [
      ...found.links.map((link) => ({
        axis,
        what: doneText(link, shown, scale),
        stands: link.at === null ? '' : shown(link.at),
        off: isSure(link) ? '' : link.basis === 'none' ? '-' : plusMinus(link.tolerance, fine),
      })),
      {
        axis,
        what: `${reachedText(found.place)} stands at`,
        stands: shown(found.at),
        off: plusMinus(found.worst, fine),
      },
    ];
  });
  return tableText<(typeof rows)[number]>(
    [
      left('', (r) => r.axis),
      left('zero, as it is done', (r) => r.what),
      right('it stands at', (r) => r.stands),
      right('off by', (r) => r.off),
    ],
    rows,
  );
}

/** What is read off the readout is off by its step alone, which targets hold. */
function isSure({ kind, basis }: ZeroLink): boolean {
  return kind === 'set' || (kind === 'move' && basis === 'none');
}

function plusMinus(value: number, shown: Shown): string {
  return `±${shown(value)}`;
}

function targetsText({ readout, heights, targets }: ReportSetup): string {
  const decimals = decimalsOf(readout.resolution);
  // What is under a step needs a decimal more; what rounding of sums left is none.
  const fine = (value: number) =>
    fixed(Math.abs(value) < readout.resolution * NOISE ? 0 : value, decimals + 1);
  const which = ({ pass, point, path }: ReportTarget) =>
    pass === null ? (point === null ? '' : `point ${point}, ${moveText(path)}`) : `pass ${pass}`;
  return tableText<ReportTarget>(
    [
      left('cut', (t) => t.cut),
      left('', which),
      right('x', (t) => target(t.readout[0], decimals)),
      right('y', (t) => target(t.readout[1], decimals)),
      ...(targets.some(({ depth }) => depth !== null) ? depthColumns(heights) : []),
      right('rounded by', (t) => `${fine(t.roundingError[0])}, ${fine(t.roundingError[1])}`),
      right('±x', (t) => fine(t.worst[0])),
      right('±y', (t) => fine(t.worst[1])),
    ],
    targets,
  );
}

function depthColumns({ on, resolution }: ReportSetup['heights']): Column<ReportTarget>[] {
  const decimals = decimalsOf(resolution);
  const name = on === 'quill' ? 'quill' : 'z';
  return [
    right(name, ({ depth }) => (depth === null ? '-' : target(depth.readout, decimals))),
    right(`±${name}`, ({ depth }) => (depth === null ? '-' : fixed(depth.worst, decimals + 1))),
  ];
}

/** How the tool comes to a place along a path; the arcs themselves are told in the part's own coordinates. */
function moveText(path: ReportTarget['path']): string {
  if (path === null) return '';
  const how = path.move === 'down' ? 'down' : `by ${path.move}`;
  return path.lift ? `${how}, lift` : how;
}

/** Share of a step under which a rounding error is one of the sum and not of the target. */
const NOISE = 1e-9;

/** A target is what the readout shows: all its decimals, a zero too. */
function target(value: number, decimals: number): string {
  return (value + 0).toFixed(decimals);
}

function indented(text: string): string {
  return text
    .split('\n')
    .map((line) => INDENT + line)
    .join('\n');
}

/** Between what webs, knife edges and bites can come out, as a table; null where no setup says. */
export function intervalsText(report: Report): string | null {
  const { units } = report;
  const span = (text: (value: number) => string) => (ends: readonly [number, number]) =>
    `${text(ends[0])} to ${text(ends[1])}`;
  const length = (value: number) => numberText(value, units);
  const rows = [
    ...webMarks(report).map(({ id, web }) => ({
      id,
      drawn: length(web.thickness),
      interval: web.interval,
      text: span(length),
    })),
    ...knifeMarks(report).map(({ id, knifeEdge }) => ({
      id,
      drawn: `${angleText(knifeEdge.angle)}°`,
      interval: knifeEdge.interval,
      text: span((value) => `${angleText(value)}°`),
    })),
    ...report.floors.map(({ under, thickness, interval }) => ({
      id: `floor under ${under}`,
      drawn: length(thickness),
      interval,
      text: span(length),
    })),
    ...report.cuts.flatMap(({ id, bites }) =>
      bites.flatMap(({ face, depth, opening, left: rest, far, ...intervals }) => [
        {
          id: `${id} deep in ${sourceText(face, report.names)}`,
          drawn: length(depth),
          interval: intervals.depthInterval,
          text: span(length),
        },
        {
          id: `${id} open at ${sourceText(face, report.names)}`,
          drawn: length(opening),
          interval: intervals.openingInterval,
          text: span(length),
        },
        {
          id: `${id} leaves to ${far === null ? '-' : sourceText(far, report.names)}`,
          drawn: length(rest ?? 0),
          interval: far === null ? null : intervals.leftInterval,
          text: span(length),
        },
      ]),
    ),
  ].filter((row): row is typeof row & { readonly interval: Interval } => row.interval !== null);
  if (rows.length === 0) return null;
  return tableText<(typeof rows)[number]>(
    [
      left('', (r) => clean(r.id), WIDEST_NAME),
      right('drawn', (r) => r.drawn),
      right('at worst', (r) => r.text(r.interval.worst)),
      right('by root of squares', (r) => r.text(r.interval.rss)),
    ],
    rows,
  );
}

/** Where two halves of a bore meet, and the step that may stay there; null where none do. */
export function seamsText({ seams, units }: Report): string | null {
  if (seams.length === 0) return null;
  const number = (value: number) => numberText(value, units);
  return tableText<Report['seams'][number]>(
    [
      left('from the top', ({ cuts }) => clean(cuts[0])),
      left('from the bottom', ({ cuts }) => clean(cuts[1])),
      right('meet at height', ({ from }) => number(from)),
      right('overlap', ({ overlap }) => number(overlap)),
      right('step at worst', ({ step }) => (step === null ? '-' : number(step.worst))),
      right('by root of squares', ({ step }) => (step === null ? '-' : number(step.rss))),
    ],
    seams,
  );
}

/** The table of jaws, stops, parallels and clamps. */
export function keepOutText(report: Report): string {
  return tableText<Report['keepOut'][number]>(
    [
      left('what', (k) => k.kind),
      left('id', (k) => clean(k.id)),
      left('in setup', (k) => k.setup ?? 'all'),
      right('from', (k) => numberText(k.from, report.units)),
      right('to', (k) => numberText(k.to, report.units)),
    ],
    report.keepOut,
  );
}
