import type { RangeInterval, RangeReport } from '@edgebite/core';
import {
  alongText,
  angleText,
  changesText,
  clean,
  countText,
  intervalText,
  lengthText,
  numberText,
} from '@edgebite/svg';
import { hanging } from '../columns/wrap.js';
import { CLOSING } from './report.js';

/**
 * What comes of a job over a range, as text for people, up to 80 columns where it can: where the present value stands,
 * the intervals with what each comes to, and what changes at each value between them. Lengths in the unit of the
 * job. The same answer gives the same text.
 */
export function rangeText(answer: RangeReport): string {
  const { intervals, events } = answer;
  const safe = intervals.filter((interval) => interval.safe).length;
  const count = safe === 0 ? 'none of them safe' : safe === intervals.length ? 'all safe' : `${safe} safe`;
  return `${[
    heading(answer),
    hanging(
      'NOT ASKED: ',
      `${answer.notAsked.join(', ')}. Dangers of these are looked for at some values of a safe interval only; one may lie between. Run check with the value that you choose.`,
    ),
    ...(answer.knownTo < answer.to ? [cutShortText(answer)] : []),
    presentText(answer),
    `${countText(intervals.length, 'INTERVAL', 'INTERVALS')}, ${count}\n${intervalRows(answer)}`,
    events.length === 0
      ? `NO CHANGES: all of ${answer.knownTo < answer.to ? 'what is known' : 'the range'} comes to the same.`
      : `CHANGES, as the number grows\n${eventRows(answer)}`,
    hanging('', SAFE),
    hanging('', CLOSING),
  ].join('\n\n')}\n`;
}

const SAFE =
  'Safe means: the cut bites, and leaves nothing dangerous and nothing to check that is not there without it, and the cutter meets nothing that is in the way. At the very values where something changes two edges touch: stay off them.';

function heading(answer: RangeReport): string {
  const { name, units, cut, from, to, limits } = answer;
  const facts = [
    `cut ${cut}, ${alongText(answer)} from ${numberText(from, units)} to ${lengthText(to, units)}`,
    `webs under ${lengthText(limits.web, units)}`,
    `knife edges under ${angleText(limits.knifeEdge)}°`,
  ];
  return `${name === '' ? 'Job without a name' : clean(name)}\n${hanging('', facts.join('; '))}`;
}

function presentText(answer: RangeReport): string {
  const { now, from, to, knownTo, present, units } = answer;
  const head = `NOW ${numberText(now, units)}`;
  if (now > knownTo && now <= to) return `${head}: not looked at`;
  if (present.interval === null && present.event === null) {
    const side =
      now < from
        ? `under it by ${lengthText(from - now, units)}`
        : `over it by ${lengthText(now - to, units)}`;
    return `${head}, outside of the range: ${side}`;
  }
  const { interval, event } = present;
  if (event !== null) {
    return [
      `${head}, AT A CHANGE: two edges touch there`,
      besideText('down', present.below, answer, event),
      besideText('up', present.above, answer, event + 1),
    ].join('\n');
  }
  const at = interval ?? 0;
  return [
    `${head}, ${answer.intervals[at]?.safe ? 'SAFE' : 'NOT SAFE'}`,
    stepText('down', present.below, answer, at - 1),
    stepText('up', present.above, answer, at + 1),
  ].join('\n');
}

function cutShortText({ knownTo, to, units }: RangeReport): string {
  return hanging(
    'CUT SHORT: ',
    `known up to ${lengthText(knownTo, units)}; of the rest, to ${lengthText(to, units)}, nothing is known. Ask for a shorter range, or give it more --seconds.`,
  );
}

type Way = 'down' | 'up';

/** The start of a line about one way from the present value. */
const leadFor = (way: Way) => `  ${way.padEnd(4)}  `;

/** From within an interval: how far it is to the next change, and what comes beyond it. */
function stepText(way: Way, far: number | null, answer: RangeReport, beyond: number): string {
  const { units, now, from, to, knownTo } = answer;
  if (far === null) {
    const end = way === 'up' && knownTo < to ? 'what is known' : 'the range';
    return `${leadFor(way)}no change before ${end} ends, at ${numberText(way === 'down' ? from : knownTo, units)}`;
  }
  const place = numberText(way === 'down' ? now - far : now + far, units);
  return hanging(
    leadFor(way),
    `${lengthText(far, units)} to the next change, at ${place}; beyond it ${verdictText(answer, beyond)}`,
  );
}

/** From a change: what is beside it, and how far that goes. */
function besideText(way: Way, far: number | null, answer: RangeReport, beside: number): string {
  const reach = far === null ? 'to the end of the range' : `for ${lengthText(far, answer.units)}`;
  return hanging(leadFor(way), `${reach} ${verdictText(answer, beside)}`);
}

function verdictText({ intervals, cut, names }: RangeReport, index: number): string {
  const interval = intervals[index] as RangeInterval;
  return `${interval.safe ? 'safe' : 'not safe'}: ${intervalText(interval, cut, names)}`;
}

const NOW = 'now';

function intervalRows({ intervals, present, cut, units, names }: RangeReport): string {
  const ends = intervals.map(({ from, to }) => [numberText(from, units), numberText(to, units)] as const);
  const width = Math.max(...ends.flat().map((end) => end.length), 'from'.length);
  const row = (now: string, from: string, to: string, safe: string) =>
    `${now.padEnd(NOW.length)}  ${from.padStart(width)}  ${to.padStart(width)}  ${safe.padEnd(4)}  `;
  return [
    `${row('', 'from', 'to', 'safe')}to the part; what is left; what the cut adds`,
    ...intervals.map((interval, k) => {
      const [from = '', to = ''] = ends[k] ?? [];
      const lead = row(k === present.interval ? NOW : '', from, to, interval.safe ? 'SAFE' : 'no');
      return hanging(lead, intervalText(interval, cut, names));
    }),
  ].join('\n');
}

function eventRows({ events, present, cut, units, names }: RangeReport): string {
  const values = events.map(({ at }) => numberText(at, units));
  const width = Math.max(...values.map((value) => value.length));
  return events
    .map(({ changes }, k) => {
      const mark = (k === present.event ? NOW : '').padEnd(NOW.length);
      return hanging(`${mark}  ${(values[k] as string).padStart(width)}  `, changesText(changes, cut, names));
    })
    .join('\n');
}
