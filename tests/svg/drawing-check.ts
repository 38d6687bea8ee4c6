import { knifeMarks, type Report, webMarks } from '@edgebite/core';
import { pathArea } from '../../packages/svg/fixtures/path-area.js';
import { type Lettering, letteringOf, offSheet, overlaps } from './lettering.js';
import { strokesOf, struck } from './strokes.js';

/** The inch is 25.4 mm by definition (international yard and pound agreement, 1959). */
const MILLIMETRES = { mm: 1, inch: 25.4 };

/** What is wrong with a drawing of a report, in words; nothing if all is right. */
export function faultsOf(svg: string, report: Report): readonly string[] {
  return [
    ...areaFaults(svg, report),
    ...markFaults(svg, report),
    ...letteringFaults(svg),
    ...struckLabels(svg).map(({ text }) => `a line runs through "${text}"`),
    ...struckInSection(svg).map(({ text }) => `a line of the section runs through "${text}"`),
    ...hatchedFaces(svg),
    ...(/NaN|Infinity|undefined|\[object/.test(svg) ? ['something that is no number'] : []),
  ];
}

/** Pieces whose path data, read back, has not their area to one part in a million. */
function areaFaults(svg: string, report: Report): readonly string[] {
  const [, sheet, part] = /SCALE (\d+):(\d+)/.exec(svg) ?? [];
  const factor = (Number(sheet) / Number(part)) * MILLIMETRES[report.units];
  return report.pieces.flatMap((piece, p) => {
    const [, d] = new RegExp(`<path d="([^"]*)" id="[a-z-]*edgebite-piece-${p}"`).exec(svg) ?? [];
    // On the sheet y runs down, so what is counter-clockwise in the part has an area under 0.
    const area = -pathArea(d ?? '') / factor ** 2;
    // Of a speck no more than its rim's last digit can be right, the twelfth after the point.
    const speck = piece.perimeter * 1e-12;
    return Math.abs(area - piece.area) < 1e-6 * piece.area + speck
      ? []
      : [`${piece.id}: ${area} drawn of ${piece.area}`];
  });
}

/** Findings without a mark in the plan. */
function markFaults(svg: string, report: Report): readonly string[] {
  const plan = svg.slice(svg.indexOf('id="edgebite-plan"'), svg.indexOf('id="edgebite-cuts-table"'));
  return report.findings.flatMap(({ code }, i) =>
    plan.includes(`data-about="finding:${i}"`) ? [] : [`finding ${i}, ${code}, has no mark`],
  );
}

/** What of a report is neither whole on the drawing nor on its lists: findings, cautions, cuts, marks, arcs of paths. */
export function missingFrom(sheets: readonly string[], report: Report): readonly string[] {
  const words = sheets.flatMap((svg) => letteringOf(svg).map(({ text }) => text));
  const all = words.join(' ').replace(/\s+/g, ' ');
  const findings = report.findings.map(({ level, message }) => `${level.toUpperCase()}: ${message}`);
  const cautions = report.cautions.slice(0, -1).map(({ message }) => message);
  const marks = [...webMarks(report), ...knifeMarks(report)].map(({ id }) => id);
  const single = new Set(words);
  const arcs = report.steps
    .filter(({ stands }) => stands.some(({ what }) => what === 'path'))
    .flatMap(({ stands }) => stands.flatMap(({ arc }) => (arc === null ? [] : [arc.sense])));
  const told = words.filter((word) => word === 'clockwise' || word === 'counter-clockwise');
  return [
    ...[...findings, ...cautions].filter((text) => !all.includes(text.replace(/\s+/g, ' '))),
    ...[...report.cuts.map(({ id }) => id), ...marks].filter((id) => !single.has(id)),
    ...(told.length === arcs.length ? [] : [`${told.length} arcs of ${arcs.length}`]),
  ];
}

/**
 * Words of the plan that a line runs through: of the labels any line, of the rest, which stand where their dimension is, a line
 * that is drawn over them; those under them are broken by their rim of paper.
 */
export function struckLabels(svg: string): readonly Lettering[] {
  const whole = svg.slice(svg.indexOf('<g id="edgebite-plan"'));
  const plan = whole.slice(0, groupEnd(whole));
  const strokes = strokesOf(plan);
  const from = plan.indexOf('<g id="edgebite-labels"');
  const to = from + groupEnd(plan.slice(from));
  const starts = [...plan.matchAll(/<text [^>]*>/g)];
  return letteringOf(plan).filter((text, i) => {
    const { 0: tag, index } = starts[i] as RegExpExecArray;
    const isBroken = tag.includes('paint-order="stroke"') && (index < from || index > to);
    return struck([text], isBroken ? strokes.filter((stroke) => stroke.index > index) : strokes).length > 0;
  });
}

/** Words of the section that a line runs through, broken or not: there is room for them beside every line. */
export function struckInSection(svg: string): readonly Lettering[] {
  const whole = svg.slice(svg.indexOf('<g id="edgebite-section"'));
  if (!whole.startsWith('<g')) return [];
  const section = whole.slice(0, groupEnd(whole));
  return struck(letteringOf(section), strokesOf(section));
}

/** Where the group that a text begins with ends. */
function groupEnd(text: string): number {
  let depth = 0;
  for (const { 0: tag, index } of text.matchAll(/<\/?g\b[^>]*>/g)) {
    if (!tag.endsWith('/>')) depth += tag.startsWith('</') ? -1 : 1;
    if (depth === 0) return index + tag.length;
  }
  return text.length;
}

/** Only what is cut through is hatched: nothing in the plan, its details and the pictures of the steps (ISO 128-50). */
function hatchedFaces(svg: string): readonly string[] {
  const parts = ['plan', 'details', 'steps'].map((id) => svg.split(`<g id="edgebite-${id}"`)[1] ?? '');
  return parts
    .map((part) => part.slice(0, groupEnd(`<g${part}`)))
    .flatMap((part) => (part.includes('hatch-') ? ['a face that is not cut through is hatched'] : []));
}

/** Words that overlap others, or leave the sheet. */
export function letteringFaults(svg: string): readonly string[] {
  const all = letteringOf(svg);
  const [width = 0, height = 0] = (/viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? []).slice(1).map(Number);
  return [
    ...overlaps(all).map(([a, b]) => `"${a.text}" overlaps "${b.text}"`),
    ...offSheet(all, width, height).map(({ text }) => `"${text}" leaves the sheet`),
  ];
}
