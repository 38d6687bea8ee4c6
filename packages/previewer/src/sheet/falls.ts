import type { BreakOff, Report, ReportBody, ReportFloor, ReportStep } from '@edgebite/core';
import { lengthText } from '@edgebite/svg';
import { joinedBy } from '../step/bodies.js';
import { sizeText, stepName } from '../step/names.js';
import { roughText } from '../text/figures.js';

/** What comes off in some steps, or may: one line each. */
export function fallsOf(report: Report, indices: readonly number[]): string[] {
  const own = new Set(indices);
  const lines = report.bodies.flatMap((body) => (own.has(body.step) ? [bodyText(report, body)] : []));
  return lines.length === 0 ? ['Nothing comes loose.'] : lines;
}

function bodyText(report: Report, body: ReportBody): string {
  const { id, role, step, endStep } = body;
  const name = `${id}, ${sizeText(report, body)}`;
  switch (role) {
    case 'held slug':
      return heldText(report, body);
    case 'hanging':
      return `${name}, hangs from ${stepName(report, step)} on, by metal ${lengthText(joinedBy(report, body) ?? 0, report.units)} thick.`;
    default: {
      const freed = report.steps.findIndex(({ frees }) => frees.some((one) => one.body === id));
      const when = endStep === null ? '' : ` Take it out before ${stepName(report, endStep)}.`;
      return `${name}, comes loose in ${stepName(report, freed < 0 ? step : freed)}.${when} Stop the spindle and let it cool before you touch it.`;
    }
  }
}

function heldText(report: Report, body: ReportBody): string {
  const { id } = body;
  const { cut } = report.steps[body.step] as ReportStep;
  const floors = report.floors.filter(({ holds }) => holds === id);
  const stays = `${id}, held slug, stays after cut ${cut}`;
  if (floors.length === 0) return `${stays}.`;
  const broken = floors.flatMap(({ breakOff }) => (breakOff === null ? [] : [breakOff]));
  return [
    `${stays} on ${floorsText(report, floors)}.`,
    ...(broken.length === floors.length ? [breakText(broken)] : []),
    `It can let go at any time. A saw cut through it, the part clamped, is ${lengthText(total(floors.map(({ kerfLength }) => kerfLength ?? 0)), report.units)} long.`,
  ].join(' ');
}

function floorsText({ units }: Report, floors: readonly ReportFloor[]): string {
  const thick = floors.map(({ thickness }) => thickness).sort((a, b) => a - b);
  const [least = 0, most = least] = [thick[0], thick.at(-1)];
  if (floors.length === 1) return `a floor ${lengthText(least, units)} thick`;
  return `${floors.length} floors, ${lengthText(least, units)} to ${lengthText(most, units)} thick`;
}

/** To break all floors of a slug at once. */
function breakText(all: readonly BreakOff[]): string {
  const [{ forceUnit, momentUnit }] = all as readonly [BreakOff];
  const sum = (key: 'force' | 'moment'): [number, number] => [
    total(all.map((one) => one[key][0])),
    total(all.map((one) => one[key][1])),
  ];
  return `To shear it about ${roughText(sum('force'))} ${forceUnit}, to bend it over about ${roughText(sum('moment'))} ${momentUnit}: an estimate.`;
}

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
