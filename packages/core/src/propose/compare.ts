import { DEFAULT_MINUTES, SAME_SHARE } from '../aim/aim.js';
import { subtract } from '../combine/subtract.js';
import type { Point } from '../geometry/point.js';
import type { Job } from '../job/job.js';
import { area, loopsOf } from '../region/measure.js';
import type { Loop, Region } from '../region/region.js';
import { regionFromReport } from '../report/from-report.js';
import type { Report } from '../report/report-schema.js';
import { examine } from '../write/examine.js';
import { tolerancesOf, type WayRow, wayRowOf } from './row.js';

/** A place where two finished parts differ, between two heights over the bottom; lengths in the unit of the jobs. */
export interface PartDifference {
  readonly from: number;
  readonly to: number;
  /** Which of the two has metal there that the other lacks. */
  readonly more: 'first' | 'second';
  readonly area: number;
  /** A place on its edge. */
  readonly at: Point;
}

/** Two jobs side by side: what each comes to, and where their finished parts differ. */
export interface Comparison {
  readonly rows: readonly [WayRow, WayRow];
  /** Going up; none where the kept pieces are the same but for rounding. */
  readonly differences: readonly PartDifference[];
}

/**
 * Compares two jobs: steps, changes, times, loads, dangers and checks of each, and each place where one leaves metal in its
 * kept piece that the other does not. Both parts lie on the same zero, bottom on bottom.
 * @throws RangeError if the jobs are not in the same unit.
 */
export function compareJobs(first: Job, second: Job): Comparison {
  if (first.units !== second.units) {
    throw new RangeError(
      `compareJobs: the first job is in ${first.units}, the second in ${second.units}; write both in one unit`,
    );
  }
  const reports = [examine(first), examine(second)] as const;
  const rowOf = (job: Job, report: Report) =>
    wayRowOf(report, { ...DEFAULT_MINUTES, tolerances: tolerancesOf(job) });
  return {
    rows: [rowOf(first, reports[0]), rowOf(second, reports[1])],
    differences: differencesOf(reports[0], reports[1], SAME_SHARE * area(first.outline)),
  };
}

function differencesOf(first: Report, second: Report, nothing: number): PartDifference[] {
  const heights = [...new Set([first, second].flatMap(keptSections).flatMap(({ from, to }) => [from, to]))];
  heights.sort((a, b) => a - b);
  return heights.slice(1).flatMap((to, k) => {
    const from = heights[k] as number;
    const [one, other] = [sectionAt(first, (from + to) / 2), sectionAt(second, (from + to) / 2)];
    const told = (more: PartDifference['more'], region: Region): PartDifference[] =>
      region
        .map((part) => ({ from, to, more, area: area([part]), at: (part.outer[0] as Loop[number]).a }))
        .filter((difference) => difference.area > nothing);
    return [...told('first', without(one, other)), ...told('second', without(other, one))];
  });
}

function without(region: Region, other: Region): Region {
  return loopsOf(other).length === 0 ? region : subtract(region, [other]);
}

function keptSections({ pieces: [kept] }: Report): Report['pieces'][number]['sections'] {
  return kept?.role === 'kept' ? kept.sections : [];
}

function sectionAt(report: Report, height: number): Region {
  const section = keptSections(report).find(({ from, to }) => from < height && height < to);
  return section === undefined ? [] : regionFromReport(section.region);
}
