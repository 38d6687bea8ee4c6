import type { Report } from '@edgebite/core';
import { pathArea } from '../../packages/svg/fixtures/path-area.js';
import { letteringOf, offSheet, overlaps } from './lettering.js';

/** The inch is 25.4 mm by definition (international yard and pound agreement, 1959). */
const MILLIMETRES = { mm: 1, inch: 25.4 };

/** What is wrong with a drawing of a report, in words; nothing if all is right. */
export function faultsOf(svg: string, report: Report): readonly string[] {
  return [
    ...areaFaults(svg, report),
    ...markFaults(svg, report),
    ...letteringFaults(svg),
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
    return Math.abs(area / piece.area - 1) < 1e-6 ? [] : [`${piece.id}: ${area} drawn of ${piece.area}`];
  });
}

/** Findings without a mark in the plan. */
function markFaults(svg: string, report: Report): readonly string[] {
  const plan = svg.slice(svg.indexOf('id="edgebite-plan"'), svg.indexOf('id="edgebite-cuts-table"'));
  return report.findings.flatMap(({ code }, i) =>
    plan.includes(`data-about="finding:${i}"`) ? [] : [`finding ${i}, ${code}, has no mark`],
  );
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
