import type { Run } from '../sim/run.js';
import { SPECK } from './bodies.js';
import type { ToldReport } from './told.js';
import type { Verdict } from './verdict.js';

/** A body with less volume than this share of the part is a speck of which the grid tells nothing. */
const LEAST = 2e-3;

/** The pieces that are left, and that each body is told once. */
export function compareLeft(verdict: Verdict, run: Run, report: ToldReport): void {
  verdict.at('what is left');
  const { end } = run;
  if (end === null || run.doubts > 0) {
    verdict.skip('pieces left');
    return;
  }
  const { flood, kept } = end;
  const loose = report.pieces.filter(({ role }) => role === 'slug' || role === 'offcut');
  const whole = report.pieces.filter((piece) => !loose.includes(piece));
  verdict.near('volume of what is kept', sum(whole), kept.volume, kept.slack);
  const rest = [...loose];
  for (const body of flood.bodies.values()) {
    if (body === kept) continue;
    const k = rest.findIndex(({ volume }) => Math.abs(volume - body.volume) <= body.slack);
    if (k < 0 && body.parts > 1) verdict.skip('pieces left');
    else
      verdict.check(
        'pieces left',
        k >= 0,
        () => `found one of ${body.volume}, told ${rest.map((p) => p.volume)}`,
      );
    if (k >= 0) rest.splice(k, 1);
  }
  const part = sum(report.pieces);
  const speck = (SPECK * run.grid.cell) ** 2 * run.job.part.thickness;
  for (const { id, volume } of rest) {
    if (volume < Math.max(speck, LEAST * part)) verdict.skip('pieces left');
    else verdict.check('pieces left', false, () => `told ${id} of ${volume}, found none`);
  }
  verdict.at('bodies');
  const ids = report.bodies.map(({ id }) => id);
  verdict.check('each body once', new Set(ids).size === ids.length, () => ids.join());
  const pieces = report.bodies.flatMap((body) => body.pieces);
  verdict.check('each piece of one body', new Set(pieces).size === pieces.length, () => pieces.join());
  for (const step of report.steps) {
    for (const { body } of [...step.frees, ...step.hangs, ...step.meets]) {
      verdict.check('bodies are listed', ids.includes(body), () => body);
    }
  }
}

function sum(pieces: readonly { readonly volume: number }[]): number {
  return pieces.reduce((all, { volume }) => all + volume, 0);
}
