import type { RangeReport } from '@edgebite/core';
import { angleText, numberText } from '../pen/numbers.js';
import { lengthText } from '../pen/words.js';
import { alongText, changesText, intervalText } from './range-words.js';

/** The strip's title, for those who do not see it. */
export function rangeTitle(answer: RangeReport): string {
  const name = answer.name === '' ? 'Job without a name' : answer.name;
  return `${name}: safe intervals of cut ${answer.cut}, ${alongText(answer)}`;
}

/** What the strip shows, in sentences, for those who do not see it. */
export function rangeDescription(answer: RangeReport): string {
  const { from, to, now, units, cut, names, intervals, events } = answer;
  const value = (at: number) => numberText(at, units);
  return [
    `The ${alongText(answer)} of cut ${cut} from ${value(from)} to ${lengthText(to, units)}; now ${value(now)}.`,
    `Not asked: ${answer.notAsked.join(', ')}.`,
    ...(answer.knownTo < to ? [`Known up to ${value(answer.knownTo)} only.`] : []),
    ...intervals.map(
      (interval) =>
        `${value(interval.from)} to ${value(interval.to)} ${interval.safe ? 'safe' : 'not safe'}: ${intervalText(interval, cut, names)}.`,
    ),
    ...events.map(({ at, changes }) => `At ${value(at)}: ${changesText(changes, cut, names)}.`),
  ].join(' ');
}

/** What the strip is of, in one line. */
export function rangeFacts(answer: RangeReport): string {
  const { from, to, units, cut, limits } = answer;
  return [
    `cut ${cut}: ${alongText(answer)} from ${numberText(from, units)} to ${lengthText(to, units)}`,
    ...(answer.knownTo < to ? [`CUT SHORT: known up to ${lengthText(answer.knownTo, units)} only`] : []),
    `webs under ${lengthText(limits.web, units)}`,
    `knife edges under ${angleText(limits.knifeEdge)}°`,
  ].join(' · ');
}
