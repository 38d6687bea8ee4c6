import type { Running } from '@edgebite/core';
import { fixed, numberText } from '@edgebite/svg';
import { rangeText } from '../text/figures.js';
import type { Sheet, SheetBlock, SheetStep } from './model.js';

/** What the readout is to show on an axis: all its decimals. */
export function targetText(value: number, { decimals }: SheetBlock): string {
  return (value + 0).toFixed(decimals);
}

/** From here on a tolerance is no tolerance, and decimals say nothing. */
const COARSE = 100;

/** How far the spindle may be off, the larger of both axes; a dash where it is not known. */
export function offText({ off }: SheetStep, { decimals }: SheetBlock): string {
  if (off === null) return '-';
  const most = Math.max(...off);
  return fixed(most, most < COARSE ? decimals + 1 : 0);
}

/** Which pass or point a step is; empty for a plain cut. */
export function whichText({ pass, point }: SheetStep): string {
  if (pass !== null) return `pass ${pass.number} of ${pass.count}, ${pass.role}`;
  if (point === null) return '';
  return point === 0 ? 'start of path' : `path point ${point}`;
}

/** How deep: `through`, or `4.000`; said besides if the cut starts from the face that lies down. */
export function depthText({ through, depth, from }: SheetStep, { up }: SheetBlock, { units }: Sheet): string {
  if (through) return 'through';
  return from === up ? numberText(depth, units) : `${numberText(depth, units)} from below`;
}

/** A tool and its running in one line. */
export function runningText({
  tool,
  kind,
  toolMaterial,
  spindle,
  set,
  feed,
  feedUnit,
  minutes,
}: Running): string {
  const none = spindle === null ? 'no figures for this material' : 'no speed: see what to watch';
  return [
    `${tool} (${toolMaterial} ${kind})`,
    set === null ? none : `${rangeText(set)} turns/min`,
    ...(set === null ? [] : [feed === null ? 'no feed known' : `feed ${rangeText(feed)} ${feedUnit}`]),
    ...(minutes === null ? [] : [`${minutesText(minutes)} a cut`]),
  ].join('; ');
}

/** A time: in seconds where it is short. */
export function minutesText([least, most]: readonly [number, number]): string {
  if (most >= 2) return `${rangeText([least, most])} min`;
  const [short, long] = [least, most].map((minutes) => Math.max(1, Math.ceil(minutes * 60)));
  return `${short === long ? short : `${short} to ${long}`} s`;
}

/** What stands over a step on its tool; null where the step before it has said the same. */
export function newRunning(steps: readonly SheetStep[], index: number): string | null {
  const text = toolText(steps[index]);
  return text === toolText(steps[index - 1]) ? null : text;
}

function toolText(step: SheetStep | undefined): string | null {
  if (step === undefined) return null;
  return step.running === null ? 'No tool given' : runningText(step.running);
}
