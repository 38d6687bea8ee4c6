import type { Report, ReportStep } from '@edgebite/core';

/** Steps that share a picture, one after the other in one setup: indices into the report's steps. */
export interface Picture {
  readonly steps: readonly number[];
  /** Whether a person has to act there: something lets go, hangs, lies in the way, or is a danger. */
  readonly grave: boolean;
  /** How much there is to tell. */
  readonly weight: number;
}

/** The pictures that there is room for, in the order of the steps, and those that there is none for. */
export interface Pictures {
  readonly shown: readonly Picture[];
  readonly leftOut: readonly Picture[];
}

/** What a finding of a level adds to tell, and what it adds that something lets go, hangs or lies in the way. */
const WEIGHT = { note: 1, check: 4, danger: 40 } as const;
const STOP = 100;

/** Whether the report tells of its steps what stands before and after them: it does not in a very large job. */
export function hasSections({ steps }: Report): boolean {
  return steps.length > 0 && steps.every(({ before, after }) => before !== null && after !== null);
}

/**
 * The pictures of all steps of a job: one for each cut in a setup, however many passes it has, but that one ends where
 * something has come loose or hangs, since the work stops there. None in a job that is too large for sections.
 */
export function picturesOf(report: Report): readonly Picture[] {
  if (!hasSections(report)) return [];
  const pictures: Picture[] = [];
  report.steps.forEach((step, i) => {
    const last = pictures.at(-1);
    const before = report.steps[i - 1];
    const own = pictureOf(report, step, i);
    const goesOn = before !== undefined && isSameCut(before, step) && !stopsAfter(before);
    if (last !== undefined && goesOn) pictures[pictures.length - 1] = joined(last, own);
    else pictures.push(own);
  });
  return pictures;
}

/**
 * The pictures of a job in at most so many. Where there are more, neighbours in one setup that have little to tell share
 * one; and where that is not enough, those that have the least to tell are left out.
 */
export function picturesIn(report: Report, most: number): Pictures {
  const pictures = [...picturesOf(report)];
  while (pictures.length > most) {
    const pair = lightestPair(report, pictures);
    if (pair === null) break;
    pictures.splice(pair, 2, joined(pictures[pair] as Picture, pictures[pair + 1] as Picture));
  }
  const order = [...pictures].sort((a, b) => b.weight - a.weight || firstOf(a) - firstOf(b));
  const kept = new Set(order.slice(0, most));
  return {
    shown: pictures.filter((one) => kept.has(one)),
    leftOut: pictures.filter((one) => !kept.has(one)),
  };
}

function pictureOf(report: Report, step: ReportStep, index: number): Picture {
  const levels = step.findings.map((k) => report.findings[k]?.level ?? 'note');
  const isStop = stopsAfter(step) || step.meets.length > 0;
  return {
    steps: [index],
    grave: isStop || levels.includes('danger'),
    weight: levels.reduce((sum, level) => sum + WEIGHT[level], isStop ? STOP : 0),
  };
}

function stopsAfter({ frees, hangs }: ReportStep): boolean {
  return frees.length > 0 || hangs.length > 0;
}

function isSameCut(a: ReportStep, b: ReportStep): boolean {
  return a.cut === b.cut && a.setup === b.setup;
}

// What several passes tell once is not told more often by being told of each.
function joined(a: Picture, b: Picture): Picture {
  return {
    steps: [...a.steps, ...b.steps],
    grave: a.grave || b.grave,
    weight: Math.max(a.weight, b.weight),
  };
}

/** The first of the two neighbours that have least to tell together; null if no two can share a picture. */
function lightestPair(report: Report, pictures: readonly Picture[]): number | null {
  let best: number | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i + 1 < pictures.length; i++) {
    const [a, b] = [pictures[i] as Picture, pictures[i + 1] as Picture];
    if (a.grave || b.grave) continue;
    if (report.steps[firstOf(a)]?.setup !== report.steps[firstOf(b)]?.setup) continue;
    const both = a.weight + b.weight + a.steps.length + b.steps.length;
    if (both < least) [best, least] = [i, both];
  }
  return best;
}

function firstOf({ steps }: Picture): number {
  return steps[0] as number;
}
