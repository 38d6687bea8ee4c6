import type { Report, ReportStep } from '@edgebite/core';
import { clean, countText, lengthText } from '@edgebite/svg';
import { hanging } from '../columns/wrap.js';
import { PUSH_NOTE } from '../step/load.js';
import { placeText, shownIn } from '../step/readout.js';
import { toldOf } from '../step/told.js';
import { volumeText } from './figures.js';

/** Every step in order, as the part lies and stands then: where, what it takes, what it meets and what comes off. */
export function stepsText(report: Report): string {
  const lines = report.steps.flatMap((step, index) => {
    const isNew = step.setup !== report.steps[index - 1]?.setup;
    return [...(isNew ? [setupName(report, step)] : []), ...stepText(report, step, index)];
  });
  const isPushed = report.steps.some(({ load }) => load !== null && load.entry !== null);
  return [...lines, ...(isPushed ? [hanging('', PUSH_NOTE)] : [])].join('\n');
}

function setupName({ setups }: Report, { setup }: ReportStep): string {
  const isOne = setups.some(({ id }) => id === setup);
  return isOne ? `Setup ${clean(setup)}` : setup.replace(/^a/, 'A');
}

function stepText(report: Report, step: ReportStep, index: number): string[] {
  const { units } = report;
  const { before, lines } = toldOf(report, index);
  const lead = `${index + 1}. `.padStart(LEAD);
  const said = [...before, ...lines].join(' ');
  return [
    hanging(
      lead,
      `${nameOf(step)}: ${sizeOf(report, step)}, ${whereText(report, step)}; takes ${volumeText(step.volume, units)}.`,
    ),
    ...(said === '' ? [] : [hanging(' '.repeat(lead.length), said)]),
  ];
}

/** Columns of a step's number. */
const LEAD = 5;

function nameOf({ cut, pass, passes }: ReportStep): string {
  return pass === null ? cut : `${cut}, pass ${pass} of ${passes}`;
}

function sizeOf(report: Report, { cut, diameter, reaches, up, setup }: ReportStep): string {
  const { units } = report;
  const row = report.cuts.find(({ id }) => id === cut);
  const lies = report.setups.find(({ id }) => id === setup)?.up ?? up;
  const below = lies === up ? '' : ' from below';
  const depth = row?.through === true ? 'through' : `${lengthText(reaches, units)} deep${below}`;
  return `${lengthText(diameter, units)} across, ${depth}`;
}

/** The first place; of a path how many there are, and that it is lifted in between. */
function whereText(report: Report, { stands, setup }: ReportStep): string {
  const [first] = stands;
  if (first === undefined) return 'nowhere';
  const at = `at ${placeText(first.readout, shownIn(report, setup))}`;
  if (first.what === 'center') return at;
  const more = stands.length - 1;
  return more < 1 ? at : `${at} and on to ${countText(more, 'more place')}`;
}
