import type { Report, ReportTarget } from '@edgebite/core';
import { fixed, numberText } from '../pen/numbers.js';

/** Where a cut's readout is to stand, and in which setup; null where the job has no setup for it. */
export interface Readout {
  readonly setup: Report['setups'][number];
  readonly target: ReportTarget;
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

/** Both numbers of a target as the readout shows them, with the decimals of its resolution. */
export function readoutNumbers({ setup, target }: Readout): readonly [string, string] {
  const { units, resolution } = setup.readout;
  const decimals = decimalsOf(resolution);
  const text = (value: number): string =>
    decimals === null ? numberText(value, units) : fixed(value, decimals);
  return [text(target.readout[0]), text(target.readout[1])];
}

/** `X 12.345 Y 6.000` for the readout; null where the job has no setup for the cut. */
export function targetText(report: Report, cut: string): string | null {
  const readout = readoutOf(report, cut);
  if (readout === null) return null;
  const [x, y] = readoutNumbers(readout);
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
