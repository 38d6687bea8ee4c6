import type { Report, ReportCut } from '@edgebite/core';
import type { Place } from './edges.js';
import { knifeMarks, webMarks } from './marks.js';
import { angleText, numberText } from './numbers.js';
import { moreText, type Table } from './table.js';
import { betweenText, countText, depthsText, depthText } from './words.js';

/** The table of cuts. */
export function cutTable(report: Report, prefix: string): Table {
  const number = (value: number): string => numberText(value, report.units);
  const row = (cut: ReportCut): readonly string[] => [
    cut.id,
    cut.kind,
    ...centreCells(cut, number),
    number(cut.diameter),
    depthText(cut, report.units),
    cut.relation,
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
    ],
    rows: report.cuts.map(row),
    none: 'no cuts',
  };
}

/** The table of webs and knife edges, under the numbers that mark them on the plan, in at most so many rows. */
export function markTable(report: Report, prefix: string, limit: number): Table {
  const number = (value: number): string => numberText(value, report.units);
  const cells = ([x, y]: Place, between: readonly [string, string], slabs: readonly number[]): string[] => [
    number(x),
    number(y),
    betweenText(between),
    depthsText(report, slabs),
  ];
  const webs = webMarks(report).map(({ id, web, slabs }) => [
    id,
    `web ${number(web.thickness)}`,
    ...cells(web.at, web.between, slabs),
  ]);
  const knives = knifeMarks(report).map(({ id, knifeEdge, slabs }) => [
    id,
    `edge ${angleText(knifeEdge.angle)}°`,
    ...cells(knifeEdge.at, knifeEdge.between, slabs),
  ]);
  return {
    id: `${prefix}marks-table`,
    title: `Thin metal: ${countText(webs.length, 'web')} (W), ${countText(knives.length, 'knife edge')} (K)`,
    columns: [
      { head: 'mark', align: 'start', widest: 12 },
      { head: 'what', align: 'start', widest: 30 },
      { head: 'x', align: 'end', widest: 22 },
      { head: 'y', align: 'end', widest: 22 },
      { head: 'between', align: 'start', widest: 52 },
      { head: 'depths', align: 'start', widest: 34 },
    ],
    rows: sharedRows(webs, knives, limit),
    none: 'none under the limits',
  };
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
