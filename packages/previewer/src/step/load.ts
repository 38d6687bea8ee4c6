import type { Report, ReportLoadAt, ReportStep } from '@edgebite/core';
import { countText, fixed, lengthText } from '@edgebite/svg';
import { directionText } from './names.js';

/** What to know to read what is told of pushes; it stands once, over them. */
export const PUSH_NOTE =
  'Right is X+, away from you is Y+; degrees go counter-clockwise from X+, seen from above. Pushes are for a spindle that turns clockwise. Side load: 0 if teeth push evenly all round, 1 if all push one way.';

/** What a step meets on its way down, one line each: at entry, at worst and breaking through, where they differ. */
export function loadLines(report: Report, { load, starts }: ReportStep): string[] {
  if (load === null) return [];
  const { entry, worst, breakThrough } = load;
  if (entry === null) return ['Meets no metal.'];
  const met = starts !== 'air' ? [] : [`Starts in no metal, meets it ${deep(report, entry)}.`];
  const moments = [
    { name: 'at entry', at: entry },
    { name: 'at worst', at: worst ?? entry },
    ...(breakThrough === null ? [] : [{ name: 'breaking through', at: breakThrough }]),
  ];
  const alike = new Map<string, typeof moments>();
  for (const moment of moments) {
    const text = loadText(moment.at);
    alike.set(text, [...(alike.get(text) ?? []), moment]);
  }
  const told = [...alike].map(([text, same]) => ({ text, same }));
  return [
    ...met,
    ...told.map(({ text, same }) => {
      if (told.length === 1) return `${capital(text)}.`;
      const [first] = same as [(typeof moments)[number]];
      const names = same.map(({ name }) => name).join(' and ');
      return `${capital(names)}, ${deep(report, first.at)}: ${text}.`;
    }),
  ];
}

function deep({ units }: Report, { from }: ReportLoadAt): string {
  return from === 0 ? 'from the top' : `from ${lengthText(from, units)} deep`;
}

/** The side load of a step, from 0 to 1. */
export function sideLoadText(at: ReportLoadAt | null): string {
  return fixed(at?.sideLoad ?? 0, 2);
}

/** A load as it goes on in a sentence. */
function loadText(at: ReportLoadAt): string {
  const { share, strikes, push } = at;
  const isAllRound = share === 1 && strikes === 0;
  const turn = isAllRound
    ? 'in metal all round'
    : `in metal ${fixed(100 * share, 1)} % of a turn, ${countText(strikes, 'strike')} a turn`;
  return push === null
    ? `${turn}, no push to one side`
    : `pushes the part ${directionText(push)}, side load ${sideLoadText(at)}, ${turn}`;
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
