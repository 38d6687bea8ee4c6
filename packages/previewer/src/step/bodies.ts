import type { Report, ReportBody, ReportStep } from '@edgebite/core';
import { lengthText } from '@edgebite/svg';
import { roughText } from '../text/figures.js';
import { sizeText, stepName } from './names.js';

/** What has to be taken out before a step: loose bodies that lie in its way. */
export function takeOutLines(report: Report, { meets }: ReportStep): string[] {
  return meets.map(({ body }) => {
    const { step } = bodyOf(report, body);
    return `First stop the spindle and take out ${body}, loose since ${stepName(report, step)}: it lies in the way.`;
  });
}

/** What lets go in a step, what hangs from then on, and what a floor holds. */
export function bodyLines(report: Report, step: ReportStep, index: number): string[] {
  const { units } = report;
  const depth = (value: number) => `${lengthText(value, units)} deep`;
  return [
    ...step.frees.map((freed) => {
      const { endStep } = bodyOf(report, freed.body);
      const later = endStep === null ? '' : `: ${stepName(report, endStep)} runs through where it lies`;
      return `Lets ${freed.body} go ${depth(freed.atDepth)}, ${sizeText(report, freed)}. Stop the spindle and take it out before you go on${later}.`;
    }),
    ...step.hangs.map((hung) => {
      const force =
        hung.force === null ? '' : ` About ${roughText(hung.force)} ${hung.forceUnit} tear it: an estimate.`;
      return `From ${depth(hung.atDepth)} on ${hung.body}, ${sizeText(report, hung)}, hangs by metal ${lengthText(hung.thickness, units)} thick: it may let go at any moment.${force} Clamp it, never hold it by hand.`;
    }),
    ...report.bodies.flatMap((body) =>
      body.role === 'held slug' && body.step === index ? [heldText(report, body)] : [],
    ),
  ];
}

function heldText(report: Report, body: ReportBody): string {
  const thickness = joinedBy(report, body);
  const by = thickness === null ? 'metal under it' : `metal ${lengthText(thickness, report.units)} thick`;
  return `${body.id}, ${sizeText(report, body)}, stays on ${by}.`;
}

/** How thick the metal is that joins a body: its floor, or what it hangs by; null where it is loose. */
export function joinedBy({ steps }: Report, { id, held, step }: ReportBody): number | null {
  return held?.thickness ?? steps[step]?.hangs.find(({ body }) => body === id)?.thickness ?? null;
}

function bodyOf(report: Report, id: string): ReportBody {
  return report.bodies.find((body) => body.id === id) as ReportBody;
}
