import { numberText } from '@edgebite/svg';
import { placeText, type Shown } from '../step/readout.js';
import type { Sheet, SheetBlock, SheetStand, SheetStep } from './sheet.js';
import { depthText } from './words.js';

/** One row of a printed table: a place to go to, or a lift there. */
export interface SheetRow {
  /** `4`, or `4.1`, `4.2` where the step has several rows. */
  readonly number: string;
  /** Which pass, and how the tool comes there; empty for a plain cut. */
  readonly words: string;
  readonly stand: SheetStand;
  readonly depth: string;
}

/** The rows of a step: each can be ticked off. */
export function rowsOf(step: SheetStep, block: SheetBlock, sheet: Sheet): SheetRow[] {
  const { stands } = step;
  const depth = depthText(step, block, sheet);
  const runs = stands.filter(({ what }) => what === 'start').length;
  let run = 0;
  const rows = stands.flatMap((stand, k): Omit<SheetRow, 'number'>[] => {
    if (stand.what === 'start') run += 1;
    const which = runs > 1 ? `run ${run} of ${runs}: ` : '';
    const there = { stand, words: `${which}${wordsOf(step, stand, block, sheet)}`, depth };
    return isLiftedAfter(stands, k)
      ? [there, { stand, words: `${which}lift off the part`, depth: 'lifted' }]
      : [there];
  });
  return rows.map((row, k) => ({
    ...row,
    number: rows.length === 1 ? String(step.number) : `${step.number}.${k + 1}`,
  }));
}

/** A row of its own is for lifting along a path; a tool that goes straight down comes up as a matter of course. */
function isLiftedAfter(stands: readonly SheetStand[], k: number): boolean {
  const { what } = stands[k] as SheetStand;
  if (what === 'center' || what === 'back off') return false;
  return stands[k + 1]?.lifted ?? true;
}

function wordsOf(step: SheetStep, { what, arc }: SheetStand, shown: Shown, { units }: Sheet): string {
  const there =
    arc === null
      ? 'straight there'
      : `${arc.sense} arc there about ${placeText(arc.center, shown)}, radius ${numberText(arc.radius, units)}`;
  switch (what) {
    case 'center':
      return passWords(step);
    case 'start':
      return 'go there lifted, then down';
    case 'path':
      return there;
    case 'back off':
      return 'back off there at depth, then lift';
    default:
      return `${what}: ${there}`;
  }
}

function passWords({ pass }: SheetStep): string {
  if (pass === null) return '';
  const role = pass.role === null ? '' : `, ${pass.role}`;
  return `pass ${pass.number} of ${pass.count}${role}`;
}
