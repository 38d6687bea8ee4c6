import type { Running } from '@edgebite/core';
import { fixed, numberText } from '@edgebite/svg';
import { PUSH_NOTE } from '../step/load.js';
import { rangeText } from '../text/figures.js';
import { BATCH_NOTE } from './parts.js';
import type { Sheet, SheetBlock, SheetStand, SheetStep } from './sheet.js';

/** From here on a tolerance is no tolerance, and decimals say nothing. */
const COARSE = 100;

/** How far the spindle may be off, the larger of both axes; a dash where it is not known. */
export function offText({ off }: SheetStand, { decimals }: SheetBlock): string {
  if (off === null) return '-';
  const most = Math.max(...off);
  return fixed(most, most < COARSE ? decimals + 1 : 0);
}

/** What stands over the rows of a block on how to move between them, and how to read what is told of pushes. */
export function overTexts({ steps, parts }: SheetBlock): string[] {
  const isSingle = steps.every(({ stands }) => stands.length === 1);
  const between = isSingle
    ? 'Between steps the tool is lifted off the part.'
    : 'Between steps the tool is lifted off the part; within a step it stays down until a row says lift.';
  return [...(parts.length > 0 ? [BATCH_NOTE] : []), between, ...(steps.some(isRound) ? [PUSH_NOTE] : [])];
}

function isRound({ stands }: SheetStep): boolean {
  return stands[0]?.what === 'center';
}

/** What stands over a step: its tool where that is another one, what to do first, and that arcs take more than wheels. */
export function overStep(steps: readonly SheetStep[], index: number): string[] {
  const step = steps[index] as SheetStep;
  const tool = newRunning(steps, index);
  return [...(tool === null ? [] : [tool]), ...step.before, ...(isFirstArc(steps, index) ? [ARC_NOTE] : [])];
}

function isFirstArc(steps: readonly SheetStep[], index: number): boolean {
  const hasArc = ({ stands }: SheetStep) => stands.some(({ arc }) => arc !== null);
  const { cut } = steps[index] as SheetStep;
  return steps.findIndex((step) => step.cut === cut && hasArc(step)) === index;
}

const ARC_NOTE =
  'Arcs: hand wheels cannot follow one. It takes a rotary table or a machine that moves both axes together; going straight from end to end cuts into the part.';

/** How deep: `through`, or `4.000`; said besides if the cut starts from the face that lies down. */
export function depthText(step: SheetStep, { up }: SheetBlock, { units }: Sheet): string {
  const { through, depth, from } = step;
  if (through) return 'through';
  return from === up ? numberText(depth, units) : `${numberText(depth, units)} from below`;
}

/** A tool and its running in one line, with the time that it is in the cut. */
function runningText(
  { tool, kind, toolMaterial, spindle, set, feed, feedUnit }: Running,
  minutes: SheetStep['minutes'],
): string {
  const none = spindle === null ? 'no figures for this material' : 'no speed: see what to watch';
  return [
    `${tool} (${toolMaterial} ${kind})`,
    set === null ? none : `${rangeText(set)} turns/min`,
    ...(set === null ? [] : [feed === null ? 'no feed known' : `feed ${rangeText(feed)} ${feedUnit}`]),
    ...(minutes === null ? [] : [`${minutesText(minutes)} a step`]),
  ].join('; ');
}

/** A time: in seconds where it is short. */
function minutesText([least, most]: readonly [number, number]): string {
  if (most >= 2) return `${rangeText([least, most])} min`;
  const [short, long] = [least, most].map((minutes) => Math.max(1, Math.ceil(minutes * 60)));
  return `${short === long ? short : `${short} to ${long}`} s`;
}

/** What stands over a step on its tool; null where the step before it has said the same. */
function newRunning(steps: readonly SheetStep[], index: number): string | null {
  const text = toolText(steps[index]);
  return text === toolText(steps[index - 1]) ? null : text;
}

function toolText(step: SheetStep | undefined): string | null {
  if (step === undefined) return null;
  return step.running === null ? 'No tool given' : runningText(step.running, step.minutes);
}
