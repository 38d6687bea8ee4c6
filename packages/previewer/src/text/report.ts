import type { Report } from '@edgebite/core';
import { angleText, clean, lengthText, levelsText, numberText, unitText } from '@edgebite/svg';
import { findingsText } from './findings.js';
import { cutsTable, floorsTable, knifeEdgesTable, piecesTable, websTable } from './tables.js';
import { hanging } from './wrap.js';

const CLOSING =
  "This is geometry, not permission. The machine's and the cutter's instructions, the rules where you work and the word of a qualified person come first.";

/**
 * A report as text for people, up to 80 columns where it can: findings first, gravest first, then what is left and
 * what the cuts did, in tables. Lengths in the unit of the job, angles in degrees. The same report gives the same text.
 */
export function textReport(report: Report): string {
  const { units, limits } = report;
  return `${[
    heading(report),
    block(`FINDINGS: ${levelsText(report)}`, findingsText(report)),
    report.pieces.length === 0
      ? block('PIECES', 'Nothing is left of the part.')
      : block(`PIECES left: ${report.pieces.length}`, piecesTable(report)),
    report.cuts.length === 0
      ? block('CUTS', 'No cut in this job.')
      : block('CUTS, in their order', cutsTable(report)),
    tableOrNone(`WEBS under ${lengthText(limits.web, units)}`, report.webs.length, () => websTable(report)),
    tableOrNone(`KNIFE EDGES under ${angleText(limits.knifeEdge)}°`, report.knifeEdges.length, () =>
      knifeEdgesTable(report),
    ),
    tableOrNone('FLOORS', report.floors.length, () => floorsTable(report)),
    hanging('', CLOSING),
  ].join('\n\n')}\n`;
}

function heading(report: Report): string {
  const { units } = report;
  const name = report.name === '' ? 'Job without a name' : clean(report.name);
  const facts = [
    `thickness ${lengthText(report.thickness, units)}`,
    ...(report.material === null ? [] : [report.material]),
    `${numberText(report.removedVolume, units)} ${unitText(units)}³ cut away`,
    `lengths in ${units}`,
  ];
  return `${name}\n${hanging('', facts.join('; '))}`;
}

function block(head: string, body: string): string {
  return `${head}\n${body}`;
}

function tableOrNone(head: string, count: number, table: () => string): string {
  return count === 0 ? `${head}: none` : block(head, table());
}
