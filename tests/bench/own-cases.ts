import { examine, type Job, parseJob, type Report, subtract, websOf } from '@edgebite/core';
import { platesOf, sieve, WEB_LIMIT } from './problems.js';

/** Something that no peer does: it is timed, and the time says how it grows. */
export interface OwnCase {
  readonly name: string;
  /** With reading the job from its text, where there is one. */
  readonly whole: () => unknown;
  readonly bare: () => unknown;
  /** Whether the answer is as it should be. */
  readonly isRight: () => boolean;
}

/** Webs of 50 by 40 holes: between neighbours in rows and columns, and out to the four edges. */
const WEBS_OF_2000 = 49 * 40 + 50 * 39 + 2 * 50 + 2 * 40;

/** The cases without a peer. */
export function ownCases(): OwnCase[] {
  return [
    websCase(),
    examineCase('examine-5', bracket(), isBracket),
    examineCase('examine-2000', sieve(), isPierced),
  ];
}

function websCase(): OwnCase {
  const { plate, holes } = platesOf(2000);
  const section = subtract(plate, holes);
  const whole = (): number => websOf(section, WEB_LIMIT).length;
  return { name: 'webs-2000', whole, bare: whole, isRight: () => whole() === WEBS_OF_2000 };
}

function examineCase(name: string, document: unknown, isRight: (report: Report) => boolean): OwnCase {
  const text = JSON.stringify(document);
  const job: Job = parseJob(text);
  return {
    name,
    whole: () => examine(parseJob(text)),
    bare: () => examine(job),
    isRight: () => isRight(examine(job)),
  };
}

/** Five cuts of all kinds, at three depths. */
function bracket(): unknown {
  return {
    edgebite: 1,
    name: 'Rocker post of a rope walk',
    units: 'mm',
    part: { outline: { rectangle: [80, 30], corner: 4 }, thickness: 12, material: 'mild steel' },
    keep: [20, 15],
    limits: { web: 1.5, knifeEdge: 30 },
    cuts: [
      { id: 'rough', kind: 'annular', center: [83, 15], diameter: 32, wall: 4.5, reach: 25 },
      { id: 'seat', kind: 'bore', center: [83, 15], diameter: 34 },
      { id: 'pin', kind: 'bore', center: [12, 10], diameter: 8 },
      {
        id: 'groove',
        kind: 'swept',
        diameter: 6,
        path: { svgPath: 'M10 24 L40 24 A8 8 0 0 1 48 32' },
        depth: 4,
      },
      { id: 'pocket', kind: 'bore', center: [52, 12], diameter: 14, depth: 7, from: 'bottom' },
    ],
  };
}

/** What the cuts took and what is left add up to the blank: 80 by 30 by 12 with corners of radius 4. */
function isBracket(report: Report): boolean {
  const blank = 12 * (80 * 30 - (4 - Math.PI) * 16);
  const left = report.pieces.reduce((sum, piece) => sum + piece.volume, 0);
  return report.cuts.length === 5 && Math.abs(left + report.removedVolume - blank) <= 1e-9 * blank;
}

function isPierced(report: Report): boolean {
  const removed = 5 * 2000 * Math.PI * 0.49;
  return report.webs.length === WEBS_OF_2000 && Math.abs(report.removedVolume - removed) <= 1e-9 * removed;
}
