import type { Report, ReportCheck, ReportWay } from '@edgebite/core';
import { numberText, unitText } from '@edgebite/svg';
import { type TrialTold, trialTold } from '../step/trial.js';

/** Most ways that a sheet lists for an arc: two tell it, a third shows whether they agree. */
const MOST_WAYS = 3;

/**
 * What to measure once a block is cut, one line for each way, with room to write the reading down: of the partial bores
 * whose last step is in it. Walls to other cuts come last.
 */
export function measuringOf(report: Report, indices: readonly number[]): string[] {
  return checksOf(report, indices).flatMap((check) => bestOf(check).map((way) => lineOf(report, check, way)));
}

/** The trial cuts of those bores. */
export function trialsOf(report: Report, indices: readonly number[]): TrialTold[] {
  return checksOf(report, indices).flatMap((check) => trialTold(check, report.units) ?? []);
}

/** The arcs of cuts whose last step is among some; a swept cut has no size to set. */
function checksOf(report: Report, indices: readonly number[]): ReportCheck[] {
  const last = new Map(report.steps.map(({ cut }, k) => [cut, k]));
  const own = new Set(indices);
  return report.checks.filter((check) => {
    const cut = report.cuts.find(({ id }) => id === check.cut);
    return cut !== undefined && cut.kind !== 'swept' && own.has(last.get(check.cut) ?? -1);
  });
}

/** Ways of different kinds, the best of each; horns are no good place to measure from. */
function bestOf({ ways }: ReportCheck): ReportWay[] {
  const fit = ways.filter(({ horn }) => horn === null);
  const kinds = new Set<ReportWay['kind']>();
  return [...fit.filter(({ kind }) => kind !== 'wall'), ...fit.filter(({ kind }) => kind === 'wall')]
    .filter(({ kind }) => {
      const isNew = !kinds.has(kind);
      kinds.add(kind);
      return isNew;
    })
    .slice(0, MOST_WAYS);
}

function lineOf({ units }: Report, { cut }: ReportCheck, { words, reading, allowed }: ReportWay): string {
  const number = (value: number) => numberText(value, units);
  const between = allowed === null ? '' : ` (${number(allowed[0])} to ${number(allowed[1])})`;
  return `${cut}: ${words}: ${number(reading)}${between} ${unitText(units)}; read ________`;
}
