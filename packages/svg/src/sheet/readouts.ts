import type { FindingCode, Report, ReportStep, ReportTarget } from '@edgebite/core';
import { fixed, numberText } from '../pen/numbers.js';
import type { Place } from '../view/edges.js';

/** Where a cut's readout is to stand, and in which setup; null where the job has no setup for it. */
export interface Readout {
  readonly setup: Report['setups'][number];
  readonly target: ReportTarget;
}

/** Findings with which a zero cannot be found as it is written: no number that is counted from it holds. */
const LOSES_ZERO: ReadonlySet<FindingCode> = new Set<FindingCode>(['face-cut-away', 'tip-in-metal']);

/** What stands where a target would. */
export const NO_TARGET = '\u2014';

const lostIn = new WeakMap<Report, ReadonlySet<string>>();

/** Setups whose zero cannot be found as it is written, so that no target of theirs is printed. */
export function lostZeros(report: Report): ReadonlySet<string> {
  const known = lostIn.get(report);
  if (known !== undefined) return known;
  const isLost = (k: number): boolean => {
    const finding = report.findings[k];
    return finding !== undefined && LOSES_ZERO.has(finding.code);
  };
  const lost = new Set(report.steps.flatMap(({ setup, findings }) => (findings.some(isLost) ? [setup] : [])));
  lostIn.set(report, lost);
  return lost;
}

/**
 * The first readout target of a cut, or of one of its passes from 1; without one, of its last pass if it has passes:
 * there it has its full size.
 */
export function readoutOf(report: Report, cut: string, number: number | null = null): Readout | null {
  for (const setup of report.setups) {
    const own = setup.targets.filter((target) => target.cut === cut);
    const whole =
      own.find(({ pass, point }) => pass === null && (point === null || point === 0)) ?? own.at(-1);
    const target = number === null ? whole : own.find(({ pass }) => pass === number);
    if (target !== undefined) return { setup, target };
  }
  return null;
}

/** Both numbers of a target as the readout shows them, with the decimals of its resolution; dashes without a zero. */
export function readoutNumbers(report: Report, { setup, target }: Readout): readonly [string, string] {
  if (lostZeros(report).has(setup.id)) return [NO_TARGET, NO_TARGET];
  const text = textOn(setup);
  return [text(target.readout[0]), text(target.readout[1])];
}

function textOn({ readout: { units, resolution } }: Report['setups'][number]): (value: number) => string {
  const decimals = decimalsOf(resolution);
  return (value) => (decimals === null ? numberText(value, units) : fixed(value, decimals));
}

/** Both numbers of a step's readout as it shows them, in the job's unit where it is in no setup; dashes without a zero. */
export function stepNumbers(report: Report, step: ReportStep, [x, y]: Place): readonly [string, string] {
  if (lostZeros(report).has(step.setup)) return [NO_TARGET, NO_TARGET];
  const setup = report.setups.find(({ id }) => id === step.setup);
  const text = setup === undefined ? (value: number) => numberText(value, report.units) : textOn(setup);
  return [text(x), text(y)];
}

/**
 * Numbers of a step's readout with their axes: `X 12.345 Y 6.000`. Of a move `from` another place only the numbers that change,
 * and both of one that changes none.
 */
export function stepReadout(report: Report, step: ReportStep, to: Place, from?: Place): string {
  const [x, y] = stepNumbers(report, step, to);
  if (x !== NO_TARGET && from !== undefined) {
    if (from[1] === to[1] && from[0] !== to[0]) return `X ${x}`;
    if (from[0] === to[0] && from[1] !== to[1]) return `Y ${y}`;
  }
  return `X ${x} Y ${y}`;
}

// Enough decimals to write every step of the readout; null beyond what any has.
function decimalsOf(resolution: number): number | null {
  for (let decimals = 0; decimals <= 6; decimals++) {
    const steps = resolution * 10 ** decimals;
    if (Math.abs(steps - Math.round(steps)) < 1e-6) return decimals;
  }
  return null;
}
