import type { Running } from '@edgebite/core';
import { fixed, numberText } from '@edgebite/svg';
import { rangeText } from '../text/figures.js';
import type { MoveArc, Sheet, SheetBlock, SheetStep } from './model.js';

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

/** Which pass a step is, or how the tool moves in it; empty for a plain cut. */
export function whichText({ pass, move }: SheetStep, block: SheetBlock, sheet: Sheet): string {
  if (pass !== null) return `pass ${pass.number} of ${pass.count}, ${pass.role}`;
  if (move === null) return '';
  const { kind, run, runs, arc } = move;
  const which = runs > 1 ? `run ${run} of ${runs}: ` : '';
  if (kind === 'down') return `${which}go there lifted, then down`;
  if (kind === 'lift') return `${which}lift off the part`;
  return arc === null ? `${which}straight there` : `${which}${arcText(arc, block, sheet)}`;
}

/** An arc from where the tool stands: centre in readout numbers, radius in the unit of sizes. */
function arcText({ center, radius, ccw }: MoveArc, block: SheetBlock, { units }: Sheet): string {
  const [x, y] = center.map((value) => targetText(value, block)) as [string, string];
  return `${ccw ? 'counter-clockwise' : 'clockwise'} arc there about X ${x} Y ${y}, radius ${numberText(radius, units)}`;
}

/** What stands over the rows of a block on how to move between them. */
export function betweenText({ steps }: SheetBlock): string {
  const along = 'straight there and arc there are made at depth';
  const isPath = steps.some(({ move }) => move !== null);
  const base = 'Between rows the tool is lifted off the part';
  return isPath ? `${base}; only ${along}.` : `${base}.`;
}

/** Over the first arc of a cut: that it is not made by hand wheels; null over other steps. */
export function arcNote(steps: readonly SheetStep[], index: number): string | null {
  const step = steps[index] as SheetStep;
  if (step.move?.kind !== 'arc') return null;
  const first = steps.findIndex(({ cut, move }) => cut === step.cut && move?.kind === 'arc');
  return first === index ? ARC_NOTE : null;
}

const ARC_NOTE =
  'Arcs: hand wheels cannot follow one. It takes a rotary table or a machine that moves both axes together; going straight from end to end cuts into the part.';

/** How deep: `through`, or `4.000`; said besides if the cut starts from the face that lies down. `lifted` after a lift. */
export function depthText(step: SheetStep, { up }: SheetBlock, { units }: Sheet): string {
  const { through, depth, from, move } = step;
  if (move?.kind === 'lift') return 'lifted';
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
