import { betweenText, knifeMarks, type Report, type ReportCut, sourceText, webMarks } from '@edgebite/core';
import { angleText, numberText } from '../pen/numbers.js';
import { moreText, type Table } from '../pen/table.js';
import { countText, depthsText, depthText } from '../pen/words.js';
import { knifeLines, webLines } from '../plan/pointers.js';
import type { Place } from '../view/edges.js';
import { readoutNumbers, readoutOf, stepNumbers } from './readouts.js';

/** The table of cuts. */
export function cutTable(report: Report, prefix: string): Table {
  const number = (value: number): string => numberText(value, report.units);
  const read = report.setups.some(({ targets }) => targets.length > 0);
  const row = (cut: ReportCut): readonly string[] => [
    cut.id,
    cut.kind,
    ...centreCells(cut, number),
    number(cut.diameter),
    depthText(cut, report.units),
    cut.relation,
    ...(read ? readoutCells(report, cut) : []),
  ];
  return {
    id: `${prefix}cuts-table`,
    title: 'Cuts, in their order',
    columns: [
      { head: 'cut', align: 'start', widest: 26 },
      { head: 'kind', align: 'start', widest: 16 },
      { head: 'centre x', align: 'end', widest: 24 },
      { head: 'centre y', align: 'end', widest: 24 },
      { head: 'diameter', align: 'end', widest: 22 },
      { head: 'depth', align: 'end', widest: 28 },
      { head: 'to the part', align: 'start', widest: 22 },
      ...(read ? READOUT : []),
    ],
    rows: report.cuts.map(row),
    none: 'no cuts',
  };
}

const PLACE: Table['columns'] = [
  { head: 'x', align: 'end', widest: 22 },
  { head: 'y', align: 'end', widest: 22 },
];

const READOUT: Table['columns'] = [
  { head: 'readout X', align: 'end', widest: 24 },
  { head: 'readout Y', align: 'end', widest: 24 },
  { head: 'setup', align: 'start', widest: 20 },
];

function readoutCells(report: Report, cut: ReportCut): readonly string[] {
  const readout = readoutOf(report, cut.id);
  return readout === null ? ['', '', ''] : [...readoutNumbers(report, readout), readout.setup.id];
}

/** The table of the passes in which cuts are made; null where there are none. */
export function passTable(report: Report, prefix: string): Table | null {
  const number = (value: number): string => numberText(value, report.units);
  const rows = report.cuts.flatMap((cut) =>
    (cut.passes?.list ?? []).map((pass, i): readonly string[] => {
      const readout = readoutOf(report, cut.id, i + 1);
      const [x, y] = readout === null ? pass.center.map(number) : readoutNumbers(report, readout);
      const bite = pass.bite === null ? 'none' : number(pass.bite.size);
      return [cut.id, String(i + 1), pass.role, x ?? '', y ?? '', number(pass.diameter), bite];
    }),
  );
  if (rows.length === 0) return null;
  const read = report.setups.some(({ targets }) => targets.some(({ pass }) => pass !== null));
  return {
    id: `${prefix}passes-table`,
    title: 'Passes, with the largest bite of each',
    columns: [
      { head: 'cut', align: 'start', widest: 26 },
      { head: 'pass', align: 'end', widest: 10 },
      { head: '', align: 'start', widest: 14 },
      { head: read ? 'readout X' : 'centre x', align: 'end', widest: 24 },
      { head: read ? 'readout Y' : 'centre y', align: 'end', widest: 24 },
      { head: 'diameter', align: 'end', widest: 22 },
      { head: 'bite', align: 'end', widest: 20 },
    ],
    rows,
    none: 'none',
  };
}

/** The table of what cuts do to each face that they open; null where none opens one. */
export function biteTable({ cuts, units, names }: Report, prefix: string): Table | null {
  const number = (value: number | null): string => (value === null ? '' : numberText(value, units));
  const rows = cuts.flatMap(({ id, bites }) =>
    bites.map(({ face, depth, opening, left, far, includedAngle }): readonly string[] => [
      id,
      sourceText(face, names),
      number(depth),
      number(opening),
      number(left),
      far === null ? '' : sourceText(far, names),
      `${angleText(includedAngle)}°`,
    ]),
  );
  if (rows.length === 0) return null;
  return {
    id: `${prefix}bites-table`,
    title: 'Bites, from each face that is opened',
    columns: [
      { head: 'cut', align: 'start', widest: 26 },
      { head: 'from', align: 'start', widest: 46 },
      { head: 'deep', align: 'end', widest: 20 },
      { head: 'opens', align: 'end', widest: 20 },
      { head: 'leaves', align: 'end', widest: 20 },
      { head: 'to', align: 'start', widest: 46 },
      { head: 'arc', align: 'end', widest: 16 },
    ],
    rows,
    none: 'none',
  };
}

/** The table of where the tool stands on paths, one stand after the other, with the arcs between them; null where there are none. */
export function pathTable(report: Report, prefix: string): Table | null {
  const number = (value: number): string => numberText(value, report.units);
  const rows = report.steps
    .filter(({ stands }) => stands.some(({ what }) => what === 'path'))
    .flatMap((step) =>
      step.stands.map(({ what, readout, arc, lifted }): readonly string[] => [
        step.pass === null ? step.cut : `${step.cut}, pass ${step.pass}`,
        what,
        ...stepNumbers(report, step, readout),
        ...(arc === null
          ? ['', '', '', '']
          : [...stepNumbers(report, step, arc.center), number(arc.radius), arc.sense]),
        lifted ? 'lifted before' : '',
      ]),
    );
  if (rows.length === 0) return null;
  return {
    id: `${prefix}paths-table`,
    title: 'Paths, in readout numbers: where the tool stands, and the arc by which it comes there',
    columns: [
      { head: 'cut', align: 'start', widest: 36 },
      { head: '', align: 'start', widest: 16 },
      { head: 'X', align: 'end', widest: 24 },
      { head: 'Y', align: 'end', widest: 24 },
      { head: 'centre X', align: 'end', widest: 24 },
      { head: 'centre Y', align: 'end', widest: 24 },
      { head: 'radius', align: 'end', widest: 22 },
      { head: 'sense', align: 'start', widest: 28 },
      { head: '', align: 'start', widest: 24 },
    ],
    rows,
    none: 'none',
  };
}

/**
 * The table of webs and knife edges, under the numbers that mark them on the plan, in at most so many rows; a compact one
 * leaves out their places, which the plan shows.
 */
export function markTable(report: Report, prefix: string, limit: number, compact = false): Table {
  const number = (value: number): string => numberText(value, report.units);
  const cells = ([x, y]: Place, between: readonly [string, string], slabs: readonly number[]): string[] => [
    ...(compact ? [] : [number(x), number(y)]),
    betweenText(between, report.names),
    depthsText(report, slabs),
  ];
  const webs = webMarks(report).map(({ id, web, slabs }) => [
    id,
    `web ${inOneLine(webLines(web, report))}`,
    ...cells(web.at, web.between, slabs),
  ]);
  const knives = knifeMarks(report).map(({ id, knifeEdge, slabs }) => [
    id,
    `edge ${inOneLine(knifeLines(report, knifeEdge))}`,
    ...cells(knifeEdge.at, knifeEdge.between, slabs),
  ]);
  return {
    id: `${prefix}marks-table`,
    title: `Thin metal: ${countText(webs.length, 'web')} (W), ${countText(knives.length, 'knife edge')} (K)`,
    columns: [
      { head: 'mark', align: 'start', widest: 12 },
      { head: 'what', align: 'start', widest: 48 },
      ...(compact ? [] : PLACE),
      { head: 'between', align: 'start', widest: 68 },
      { head: 'depths', align: 'start', widest: 34 },
    ],
    rows: sharedRows(webs, knives, limit),
    none: 'none under the limits',
  };
}

// A value, between which others it lies, and what it is on.
function inOneLine([value = '', ...more]: readonly string[]): string {
  return [value, ...more.map((line) => (line.startsWith('on ') ? line : `(${line})`))].join(' ');
}

// Where not all rows fit, webs and knife edges share the room, so that the worst of both are there.
function sharedRows(webs: readonly string[][], knives: readonly string[][], limit: number): string[][] {
  const all = webs.length + knives.length;
  if (all <= limit) return [...webs, ...knives];
  const room = Math.max(limit - 1, 0);
  const forWebs = Math.min(webs.length, Math.max(Math.ceil(room / 2), room - knives.length));
  const shown = [...webs.slice(0, forWebs), ...knives.slice(0, room - forWebs)];
  return [...shown, [moreText(all - shown.length)]];
}

// A swept cut has no centre: its path's bounds would be mistaken for one, so the table says where it starts.
function centreCells(cut: ReportCut, number: (value: number) => string): readonly string[] {
  if (cut.center !== null) return [number(cut.center[0]), number(cut.center[1])];
  const start = cut.path?.[0]?.a;
  return start === undefined ? ['', ''] : [`from ${number(start[0])}`, number(start[1])];
}
