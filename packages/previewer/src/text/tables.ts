import {
  betweenText,
  type KnifeMark,
  knifeMarks,
  type Report,
  type ReportCut,
  type ReportFloor,
  type ReportPiece,
  type WebMark,
  webMarks,
} from '@edgebite/core';
import { angleText, depthsText, depthText, numberText, roleText, unitText } from '@edgebite/svg';
import { type Column, tableText } from '../columns/table.js';

/** A column of entries at the left, of a width at most if one is given. */
export const left = <Row>(head: string, cell: Column<Row>['cell'], most?: number): Column<Row> => ({
  head,
  align: 'left',
  cell,
  ...(most === undefined ? {} : { most }),
});
/** A column of entries at the right. */
export const right = <Row>(head: string, cell: Column<Row>['cell']): Column<Row> => ({
  head,
  align: 'right',
  cell,
});

/** A number of the report, or a dash where it does not apply. */
function numbers(report: Report): (value: number | null) => string {
  return (value) => (value === null ? '-' : numberText(value, report.units));
}

/** The table of pieces, kept first. */
export function piecesTable(report: Report): string {
  const number = numbers(report);
  const unit = unitText(report.units);
  const mass: Column<ReportPiece>[] =
    report.massUnit === null ? [] : [right(`mass ${report.massUnit}`, (p) => number(p.mass))];
  return tableText<ReportPiece>(
    [
      left('piece', (p) => p.id),
      left('what', (p) => roleText(p.role)),
      right(`area ${unit}²`, (p) => number(p.area)),
      right(`volume ${unit}³`, (p) => number(p.volume)),
      ...mass,
      right('holes', (p) => String(p.holes)),
      left('freed by', (p) => p.freedBy ?? '-'),
    ],
    report.pieces,
  );
}

/** The table of cuts, in the order of the job. */
export function cutsTable(report: Report): string {
  const number = numbers(report);
  const unit = unitText(report.units);
  return tableText<ReportCut>(
    [
      left('cut', (c) => c.id),
      left('kind', (c) => c.kind),
      left('relation', (c) => c.relation),
      right('x', (c) => number(c.center?.[0] ?? null)),
      right('y', (c) => number(c.center?.[1] ?? null)),
      right('across', (c) => number(c.diameter)),
      right('depth', (c) => depthText(c, report.units)),
      right(`cut ${unit}³`, (c) => number(c.removedVolume)),
    ],
    report.cuts,
  );
}

/** The table of webs under the limit, thinnest first. */
export function websTable(report: Report): string {
  const number = numbers(report);
  return tableText<WebMark>(
    [
      left('web', (m) => m.id),
      right('thick', ({ web }) => number(web.thickness)),
      right('long', ({ web }) => number(web.length)),
      right('x', ({ web }) => number(web.at[0])),
      right('y', ({ web }) => number(web.at[1])),
      { ...left<WebMark>('between', ({ web }) => betweenText(web.between, report.names)), gives: true },
      left('depths', (m) => depthsText(report, m.slabs)),
      ...inPiece(webMarks(report), ({ web }) => web.piece, report),
    ],
    webMarks(report),
  );
}

/** The table of knife edges under the limit, sharpest first. */
export function knifeEdgesTable(report: Report): string {
  const number = numbers(report);
  return tableText<KnifeMark>(
    [
      left('edge', (m) => m.id),
      right('angle °', ({ knifeEdge }) => angleText(knifeEdge.angle)),
      right('feather', ({ knifeEdge }) => number(knifeEdge.feather)),
      right('x', ({ knifeEdge }) => number(knifeEdge.at[0])),
      right('y', ({ knifeEdge }) => number(knifeEdge.at[1])),
      {
        ...left<KnifeMark>('between', ({ knifeEdge }) => betweenText(knifeEdge.between, report.names)),
        gives: true,
      },
      left('depths', (m) => depthsText(report, m.slabs)),
      ...inPiece(knifeMarks(report), ({ knifeEdge }) => knifeEdge.piece, report),
    ],
    knifeMarks(report),
  );
}

/** The table of floors. */
export function floorsTable(report: Report): string {
  const number = numbers(report);
  const unit = unitText(report.units);
  return tableText<ReportFloor>(
    [
      left('under cut', (f) => f.under),
      right('thick', (f) => number(f.thickness)),
      right(`area ${unit}²`, (f) => number(f.area)),
      right('x', (f) => number(f.at[0])),
      right('y', (f) => number(f.at[1])),
      left('holds', (f) => f.holds ?? '-'),
      right('kerf to break', (f) => number(f.kerfLength)),
    ],
    report.floors,
  );
}

// Said only where there is a choice: nearly always all of it is in the one kept piece.
function inPiece<Row>(rows: readonly Row[], piece: (row: Row) => string, report: Report): Column<Row>[] {
  const first = report.pieces[0]?.id;
  return rows.every((row) => piece(row) === first) ? [] : [left('in', piece)];
}
