import {
  type Along,
  examine,
  type Job,
  type RangeQuery,
  RangeQueryError,
  type Report,
  rangeOf,
} from '@edgebite/core';
import { draw, drawRange } from '@edgebite/svg';
import { sheetCsv } from '../../packages/previewer/src/sheet/csv.js';
import { sheetHtml } from '../../packages/previewer/src/sheet/html.js';
import { sheetOf } from '../../packages/previewer/src/sheet/model.js';
import { sheetText } from '../../packages/previewer/src/sheet/text.js';
import { rangeText } from '../../packages/previewer/src/text/range.js';
import { textReport } from '../../packages/previewer/src/text/report.js';
import type { Dice } from './mutate.js';

/** What the command does with a job. */
export const WAYS = ['check', 'draw', 'sheet', 'range'] as const;

/** One of the ways. */
export type Way = (typeof WAYS)[number];

/** What one of the ways came to. */
export interface Gone {
  readonly way: Way;
  /** All that is printed or drawn. */
  readonly text: string;
  /** Processor time in milliseconds. */
  readonly took: number;
}

/** All that came of a job. */
export interface Through {
  readonly report: Report;
  readonly gone: readonly Gone[];
  /** After how many questions the range was cut short; null if it was not. */
  readonly cutShort: number | null;
}

/** A range is cut short after so much processor time, milliseconds: a quarter of what is called a hang. */
const PATIENCE = 500;

/**
 * Puts a job through all four ways of the command.
 * @param parsing processor time that it took to parse it
 * @param cutShort where to cut the range short, in questions whether to stop; by processor time if it is null
 */
export function through(job: Job, parsing: number, roll: Dice, cutShort: number | null): Through {
  const start = cpu();
  const report = examine(job);
  const before = parsing + cpu() - start;
  const patience = cutShort === null ? timed() : counted(cutShort);
  const query = queryOf(job, roll);
  const gone = [
    goneThrough(
      'check',
      before,
      () => JSON.stringify(report) + textReport(report) + textReport(report, { all: true }),
    ),
    goneThrough('draw', before, () => draw(report)),
    goneThrough('sheet', before, () => sheetsOf(report)),
    ...(query === null ? [] : [goneThrough('range', parsing, () => rangeOr(job, query, patience.isOver))]),
  ];
  return { report, gone, cutShort: patience.stoppedAt() };
}

/** Processor time of this process in milliseconds, which does not hang on what else the machine does. */
export function cpu(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

function goneThrough(way: Way, before: number, work: () => string): Gone {
  const start = cpu();
  const text = work();
  return { way, text, took: before + cpu() - start };
}

function sheetsOf(report: Report): string {
  const sheet = sheetOf(report);
  return sheetText(sheet) + sheetCsv(sheet) + sheetHtml(sheet);
}

function rangeOr(job: Job, query: RangeQuery, isOver: () => boolean): string {
  try {
    const answer = rangeOf(job, query, isOver);
    return JSON.stringify(answer) + rangeText(answer) + drawRange(answer);
  } catch (error) {
    if (error instanceof RangeQueryError) return error.message;
    throw error;
  }
}

const ALONG: readonly Along[] = ['x', 'y', 'diameter'];

/** Lengths of ranges as shares of the cut's diameter. */
const SPANS = [0.001, 0.01, 0.03, 0.1, 0.3, 1];

/** A range round where a cut is, one end of it or the middle; null for a job without cuts. */
function queryOf({ cuts }: Job, roll: Dice): RangeQuery | null {
  const cut = cuts[roll(Math.max(1, cuts.length))];
  const along = ALONG[roll(ALONG.length)] as Along;
  const span = SPANS[roll(SPANS.length)] as number;
  const share = [0, 0.5, 1][roll(3)] as number;
  if (cut === undefined) return null;
  const { diameter } = cut;
  const now = along === 'diameter' ? diameter : placeOf(cut)[along];
  const from = now - share * span * diameter;
  return { cut: cut.id, along, from, to: from + span * diameter };
}

function placeOf(cut: Job['cuts'][number]): { readonly x: number; readonly y: number } {
  return cut.kind === 'swept' ? (cut.path[0]?.a ?? { x: 0, y: 0 }) : cut.center;
}

interface Patience {
  readonly isOver: () => boolean;
  readonly stoppedAt: () => number | null;
}

function timed(): Patience {
  const start = cpu();
  let [asked, stopped] = [0, null as number | null];
  return {
    isOver: () => {
      asked++;
      if (stopped === null && cpu() - start > PATIENCE) stopped = asked;
      return stopped !== null;
    },
    stoppedAt: () => stopped,
  };
}

function counted(most: number): Patience {
  let asked = 0;
  return { isOver: () => ++asked >= most, stoppedAt: () => (asked >= most ? most : null) };
}
