import type { RangeReport } from '@edgebite/core';
import { lengthText, numberText } from '@edgebite/svg';

/** What a range comes to for one who has to decide, the most important first. */
export interface Verdict {
  /** Whether the present value is safe; null where that cannot be said of it. */
  readonly safe: boolean | null;
  readonly head: string;
  /** How much room there is, or which way to go; empty if there is nothing to say. */
  readonly next: string;
  /** All safe stretches, from the lowest. */
  readonly stretches: readonly string[];
}

/** The verdict on the value that a job has, in words with units. */
export function verdictOf(report: RangeReport): Verdict {
  const { now, units, present, intervals } = report;
  const at = lengthText(now, units);
  const stretches = intervals.filter(({ safe }) => safe).map((one) => stretchText(one, report));
  const own = present.interval === null ? undefined : intervals[present.interval];
  if (own?.safe === true)
    return { safe: true, head: `Safe at ${at}, as to shape and clamps`, next: roomText(report), stretches };
  const next = stretches.length === 0 ? 'Nothing in this range is safe.' : nearestText(report);
  if (own !== undefined) return { safe: false, head: `Not safe at ${at}`, next, stretches };
  return present.event === null
    ? { safe: null, head: `${at} is outside of this range`, next, stretches }
    : { safe: false, head: `Stay off ${at}: two edges touch there`, next, stretches };
}

function stretchText({ from, to }: { from: number; to: number }, { units }: RangeReport): string {
  return `${numberText(from, units)} to ${lengthText(to, units)}`;
}

function roomText({ present: { below, above }, now, from, to, units }: RangeReport): string {
  const down = below === null ? `${lengthText(now - from, units)} and more` : lengthText(below, units);
  const up = above === null ? `${lengthText(to - now, units)} and more` : lengthText(above, units);
  return `Room to the next change: ${down} down, ${up} up.`;
}

function nearestText(report: RangeReport): string {
  const { now, units, intervals } = report;
  const [nearest] = intervals
    .filter(({ safe }) => safe)
    .map((one) => ({ one, off: Math.max(one.from - now, now - one.to) }))
    .sort((a, b) => a.off - b.off);
  if (nearest === undefined) return '';
  const { one, off } = nearest;
  const way = one.from >= now ? 'up' : 'down';
  return `Nearest safe: ${stretchText(one, report)}, which begins ${lengthText(off, units)} ${way}.`;
}
