import type { Report, ReportStep } from '@edgebite/core';
import { dimensionText } from '../pen/numbers.js';
import { lieOf, lieText } from '../plan/lie.js';
import type { Picture } from '../sheet/pictures.js';
import { stepReadout } from '../sheet/readouts.js';

/** A line under a picture, and whether a person has to act on it. */
export interface StepLine {
  readonly text: string;
  readonly grave: boolean;
}

/** The steps of a picture, first to last. */
export function stepsIn(report: Report, { steps }: Picture): readonly ReportStep[] {
  return steps.map((k) => report.steps[k] as ReportStep);
}

/** The last step of each cut in a picture: there its tool has its full size and place. */
export function lastOfCuts(report: Report, picture: Picture): readonly ReportStep[] {
  return [...new Map(stepsIn(report, picture).map((step) => [step.cut, step])).values()];
}

/** Numbers of the steps from 1 and names of the cuts: `2–5 rest`. */
export function headText(report: Report, picture: Picture): string {
  const { steps } = picture;
  const [first, last] = [(steps[0] as number) + 1, (steps.at(-1) as number) + 1];
  const numbers = first === last ? String(first) : `${first}–${last}`;
  const cuts = lastOfCuts(report, picture);
  return `${numbers} ${cuts.map(({ cut }) => cut).join(', ')}`;
}

/**
 * The tool, how deep it goes if not through, and which pass is the last of the picture: `Ø26, 12 deep, to pass 4 of 4`. Of
 * several cuts their diameters alone.
 */
export function toolText(report: Report, picture: Picture): string {
  const length = (value: number): string => dimensionText(value, report.units);
  const cuts = lastOfCuts(report, picture);
  const [only] = cuts;
  if (cuts.length > 1 || only === undefined) {
    return [...new Set(cuts.map(({ diameter }) => `Ø${length(diameter)}`))].join(', ');
  }
  const wall = only.wall === null ? '' : `, wall ${length(only.wall)}`;
  const depth = only.reaches >= report.thickness ? '' : `, ${length(only.reaches)} deep`;
  const to = picture.steps.length === 1 ? '' : 'to ';
  const pass = only.pass === null ? '' : `, ${to}pass ${only.pass} of ${only.passes}`;
  return `Ø${length(only.diameter)}${wall}${depth}${pass}`;
}

/** Where the readout is to stand for the last step; of several cuts that the table has it. */
export function placeText(report: Report, picture: Picture): string {
  const cuts = lastOfCuts(report, picture);
  const [only] = cuts;
  if (cuts.length > 1 || only === undefined) return 'places: see the table';
  const target = only.targets[0];
  if (target === undefined) return '';
  const text = stepReadout(report, only, target.readout);
  return only.center === null ? `from ${text}` : text;
}

/** The setup of a picture, and how the part lies in it; empty for a part that lies as drawn in none. */
export function setupText(report: Report, picture: Picture): { readonly name: string; readonly lie: string } {
  const [step] = stepsIn(report, picture);
  if (step === undefined) return { name: '', lie: '' };
  const known = report.setups.some(({ id }) => id === step.setup);
  return { name: known ? step.setup : '', lie: lieText(lieOf(report, step)) };
}

/** What is to be known of a picture, in the order in which it matters; directions in the machine's axes. */
export function linesOf(report: Report, picture: Picture): readonly StepLine[] {
  const steps = stepsIn(report, picture);
  const grave = (text: string): StepLine => ({ text, grave: true });
  const plain = (text: string): StepLine => ({ text, grave: false });
  const length = (value: number): string => dimensionText(value, report.units);
  const own = steps.flatMap(({ frees }) => frees.map(({ body }) => body));
  return [
    ...steps.flatMap(({ meets }) =>
      meets.filter(({ body }) => !own.includes(body)).map(({ body }) => grave(`take ${body} out first`)),
    ),
    ...steps.flatMap(({ frees }) =>
      frees.map(({ body, atDepth }) => grave(`${body} lets go at ${length(atDepth)} deep`)),
    ),
    ...steps.flatMap(({ hangs }) =>
      hangs.map(({ body, thickness }) => grave(`${body} hangs by ${length(thickness)} of metal`)),
    ),
    ...heldLines(report, picture).map(plain),
    ...pushLines(steps).map(plain),
    ...backOffLines(report, picture).map(plain),
    ...missLines(report, picture).map(plain),
  ];
}

function heldLines(report: Report, { steps }: Picture): readonly string[] {
  const held = report.bodies.filter(({ role, step }) => role === 'held slug' && steps.includes(step));
  return held.map(({ id, held: floor }) =>
    floor === null
      ? `${id} stays on a floor`
      : `${id} stays on a floor of ${dimensionText(floor.thickness, report.units)}`,
  );
}

/** Side loads under this share are not worth bracing against. */
export const LEAST_SIDE_LOAD = 0.1;

/** The hardest push of each cut of a picture, if there is any to speak of. */
export function pushesOf(steps: readonly ReportStep[]): ReadonlyMap<string, ReportStep> {
  const hardest = new Map<string, ReportStep>();
  const sideLoad = (step: ReportStep | undefined): number => step?.load?.worst?.sideLoad ?? 0;
  for (const step of steps) {
    if (sideLoad(step) < LEAST_SIDE_LOAD || sideLoad(step) <= sideLoad(hardest.get(step.cut))) continue;
    hardest.set(step.cut, step);
  }
  return hardest;
}

function pushLines(steps: readonly ReportStep[]): readonly string[] {
  const pushes = [...pushesOf(steps).values()].map(({ load }) => load?.worst?.push?.words ?? '');
  return [...new Set(pushes)].map((words) => `pushes the part ${words}`);
}

function backOffLines(report: Report, picture: Picture): readonly string[] {
  const cuts = lastOfCuts(report, picture);
  const [only] = cuts;
  if (cuts.length > 1 || only === undefined) return [];
  const { by, machine, readout } = only.backOff;
  if (by === null) return [];
  if (machine === null || readout === null) return ['lift the tool as it stands'];
  return [`off ${machine.words}, to ${stepReadout(report, only, readout, only.targets[0]?.readout)}`];
}

function missLines(report: Report, picture: Picture): readonly string[] {
  const missing = lastOfCuts(report, picture).filter(
    ({ cut }) => report.cuts.find(({ id }) => id === cut)?.relation === 'clear',
  );
  return missing.map(({ cut }) => `${cut} misses the part`);
}
