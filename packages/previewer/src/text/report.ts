/*
 * Room: a report in words, for a terminal.
 * In: a report.
 * Out: lines of text.
 */

import { type Report, STANDING_CAUTION } from '@edgebite/core';
import { angleText, clean, lengthText, levelsText } from '@edgebite/svg';
import { hanging } from '../columns/wrap.js';
import { breakLines } from '../step/breaks.js';
import { freeLines } from '../step/ways-out.js';
import { batchText } from './batch.js';
import { bodiesTable } from './bodies.js';
import { breakOffText, hasBreakOff } from './break-off.js';
import { cautionsText } from './cautions.js';
import { volumeText } from './figures.js';
import { findingsText } from './findings.js';
import { isToldByStep, leftText, NOTHING_LEFT } from './left.js';
import { passesSections } from './passes.js';
import { bitesText, placingText } from './placing.js';
import { intervalsText, keepOutText, seamsText, setupsText } from './setups.js';
import { stepsText } from './steps.js';
import { cutsTable, floorsTable, knifeEdgesTable, piecesTable, websTable } from './tables.js';
import { pathSections } from './tool-path.js';
import { hasTools, toolsText } from './tools.js';

/** What every text ends with. */
export const CLOSING = STANDING_CAUTION;

/** How much of a report to tell. */
export interface TextOptions {
  /** All tables as well: pieces, cuts, bodies, placings, passes, paths, tools, setups. */
  readonly all?: boolean | undefined;
}

/**
 * A report as text for people, up to 80 columns where it can: findings first, gravest first, then the steps as they are
 * made and what is left. Lengths in the unit of the job, angles in degrees. The same report gives the same text.
 */
export function textReport(report: Report, { all = false }: TextOptions = {}): string {
  const blocks = all ? allBlocks(report) : shortBlocks(report);
  return `${[...blocks, hanging('', CLOSING)].join('\n\n')}\n`;
}

/** A kind of thin metal, with its limit in words, and its table; null where there is none. */
interface Thin {
  readonly what: string;
  readonly limit: string;
  readonly table: string | null;
}

function thinOf(report: Report): readonly Thin[] {
  const { units, limits, webs, knifeEdges, floors } = report;
  return [
    {
      what: 'webs',
      limit: ` under ${lengthText(limits.web, units)}`,
      table: webs.length === 0 ? null : websTable(report),
    },
    {
      what: 'knife edges',
      limit: ` under ${angleText(limits.knifeEdge)}°`,
      table: knifeEdges.length === 0 ? null : knifeEdgesTable(report),
    },
    { what: 'floors', limit: '', table: floors.length === 0 ? null : floorsTable(report) },
  ];
}

function thinBlock({ what, limit, table }: Thin): string {
  const head = `${what.toUpperCase()}${limit}`;
  return table === null ? `${head}: none` : block(head, table);
}

/** Findings, steps, what is left: as much as is read before a cut. */
function shortBlocks(report: Report): string[] {
  const thin = thinOf(report);
  const none = thin.filter(({ table }) => table === null).map(({ what, limit }) => `No ${what}${limit}.`);
  return [
    heading(report),
    shortFindings(report),
    ...cautionBlocks(report),
    ...stepBlocks(report),
    block('LEFT', [leftText(report), ...(none.length === 0 ? [] : [hanging('', none.join(' '))])].join('\n')),
    ...thin.flatMap((one) => (one.table === null ? [] : [thinBlock(one)])),
    ...freeBlocks(report),
    hanging('', MORE),
  ];
}

/** Findings but for the notes that the steps say again, which are counted. */
function shortFindings(report: Report): string {
  const told = report.findings.filter(isToldByStep).length;
  const rest = told === 0 ? '' : ` (${told} told with the steps)`;
  const text = findingsText(report, (finding) => !isToldByStep(finding));
  const head = `FINDINGS: ${levelsText(report)}${rest}`;
  return text === '' ? head : block(head, text);
}

const MORE = 'For all tables give --all; for zeros and targets print the sheet.';

function allBlocks(report: Report): string[] {
  return [
    heading(report),
    block(`FINDINGS: ${levelsText(report)}`, findingsText(report)),
    ...cautionBlocks(report),
    report.pieces.length === 0
      ? block('PIECES', NOTHING_LEFT)
      : block(`PIECES left: ${report.pieces.length}`, piecesTable(report)),
    report.cuts.length === 0
      ? block('CUTS', 'No cut in this job.')
      : block('CUTS in their order; x and y of the centre', cutsTable(report)),
    ...stepBlocks(report),
    ...(report.bodies.length === 0
      ? []
      : [block('BODIES that come loose, hang or are held, as they are then', bodiesTable(report))]),
    ...freeBlocks(report),
    ...centerBlocks(report),
    ...thinOf(report).map(thinBlock),
    ...(report.knifeEdges.length === 0
      ? []
      : [
          block(
            'TO BREAK knife edges, so that no metal thinner than the web limit is left',
            breakLines(report)
              .map(({ line }) => hanging('', line))
              .join('\n'),
          ),
        ]),
    ...(hasBreakOff(report)
      ? [block('TO BREAK THIN METAL: an estimate, not to be relied on', breakOffText(report))]
      : []),
    ...(hasTools(report) ? [block('TOOLS, from a range of usual figures', toolsText(report))] : []),
    ...setupBlocks(report),
  ];
}

function freeBlocks(report: Report): string[] {
  const free = freeLines(report);
  if (free.length === 0) return [];
  const lines = free.map(({ line }) => hanging('', line));
  return [block('TO FREE what is held, the part clamped and the spindle stopped', lines.join('\n'))];
}

function cautionBlocks(report: Report): string[] {
  return report.cautions.length < 2 ? [] : [block('CAUTIONS', cautionsText(report))];
}

function stepBlocks(report: Report): string[] {
  const { length } = report.steps;
  return length === 0
    ? []
    : [block(`STEPS: ${length}, each as the part lies and stands then`, stepsText(report))];
}

/** How centres were given, passes and paths: in the coordinates of the drawing. */
function centerBlocks(report: Report): string[] {
  const sections: (readonly [string, string | null])[] = [
    ['BITES: each face that a cut opens, as drawn', bitesText(report)],
    ['PLACED by what the drawing gives; x and y as drawn', placingText(report)],
    ...passesSections(report),
    ...pathSections(report),
  ];
  return sections.flatMap(([head, body]) => (body === null ? [] : [block(clean(head), body)]));
}

function setupBlocks(report: Report): string[] {
  const intervals = intervalsText(report);
  const seams = seamsText(report);
  return [
    ...(report.setups.length === 0 ? [] : [block(`SETUPS: ${report.setups.length}`, setupsText(report))]),
    ...(report.batch.length === 0
      ? []
      : [block(`BATCH: ${report.batch.length}, with targets of their own`, batchText(report))]),
    ...(intervals === null ? [] : [block('AS THE SETUPS MAY BE OFF', intervals)]),
    ...(seams === null ? [] : [block('SEAMS of what is cut from both sides', seams)]),
    ...(report.keepOut.length === 0
      ? []
      : [block(`IN THE WAY: ${report.keepOut.length}`, keepOutText(report))]),
  ];
}

function heading(report: Report): string {
  const { units } = report;
  const name = report.name === '' ? 'Job without a name' : clean(report.name);
  const facts = [
    `thickness ${lengthText(report.thickness, units)}`,
    ...(report.material === null ? [] : [report.material]),
    `${volumeText(report.removedVolume, units)} cut away`,
    `lengths in ${units}`,
  ];
  return `${name}\n${hanging('', facts.join('; '))}`;
}

function block(head: string, body: string): string {
  return `${head}\n${body}`;
}
