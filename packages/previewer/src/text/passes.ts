import type { Report, ReportCut, ReportLoadAt } from '@edgebite/core';
import { angleText, countText, fixed, lengthText, numberText, unitText } from '@edgebite/svg';
import { type Column, tableText } from '../columns/table.js';
import { hanging } from '../columns/wrap.js';
import { sideLoadText } from '../step/load.js';
import { left, right } from './tables.js';

type Passes = NonNullable<ReportCut['passes']>;

/** Passes that take less than this share of what the cut does have left out a core that came loose before. */
const ALL = 1 - 1e-6;

/** Head and body of one section. */
export type Section = readonly [head: string, body: string];

/** The passes of each cut that is made in several. */
export function passesSections(report: Report): Section[] {
  return report.cuts.flatMap((cut): Section[] =>
    cut.passes === null
      ? []
      : [[`PASSES of cut ${cut.id}: ${cut.passes.kind}, as drawn`, passesText(report, cut, cut.passes)]],
  );
}

interface Row {
  readonly pass: Passes['list'][number];
  readonly number: number;
  /** At its worst; null where it meets no metal. */
  readonly load: ReportLoadAt | null;
}

/** Each pass, with what it meets where it is made first. */
function passRows({ steps }: Report, cut: ReportCut, { list }: Passes): Row[] {
  const own = steps.filter((step) => step.cut === cut.id);
  return list.map((pass, k) => ({
    pass,
    number: k + 1,
    load: own.find((step) => (step.pass ?? 1) === k + 1)?.load?.worst ?? null,
  }));
}

function passesText(report: Report, cut: ReportCut, passes: Passes): string {
  const { units } = report;
  const { list, minutes } = passes;
  if (list.length === 0) return 'There is nothing to cut.';
  const volume = list.reduce((sum, pass) => sum + pass.volume, 0);
  const facts = [
    wayText(passes, units),
    countText(list.length, 'pass', 'passes'),
    `${numberText(volume, units)} ${unitText(units)}³ in all`,
    ...(minutes === null ? [] : [`${minutesText(minutes)} min in the cut`]),
    ...(volume < cut.removedVolume * ALL ? ['the loose core counts as lifted out'] : []),
  ];
  const minutesColumn: Column<Row> = right('min', ({ pass }) => minutesText(pass.minutes ?? 0));
  const table = tableText<Row>(
    [
      left('pass', ({ pass, number }) => `${number} ${pass.role}`),
      right('centre x', ({ pass }) => numberText(pass.center[0], units)),
      right('centre y', ({ pass }) => numberText(pass.center[1], units)),
      right('diameter', ({ pass }) => numberText(pass.diameter, units)),
      right('bite', ({ pass }) => (pass.bite === null ? '-' : numberText(pass.bite.size, units))),
      right('strikes', ({ load }) => String(load?.strikes ?? 0)),
      right('side load', ({ load }) => sideLoadText(load)),
      ...(minutes === null ? [] : [minutesColumn]),
    ],
    passRows(report, cut, passes),
  );
  return `${hanging('', `${facts.join('; ')}.`)}\n${table}`;
}

function wayText({ kind, approach, travel }: Passes, units: Report['units']): string {
  const from = `${lengthText(travel, units)} from first touch`;
  if (kind === 'open out') return `The centre stays, the tool is set larger, ${from} in radius`;
  return `The centre moves towards ${angleText(approach ?? 0)}°, ${from}`;
}

function minutesText(minutes: number): string {
  return fixed(minutes, 2);
}
