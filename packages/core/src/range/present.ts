/** Where the value of a job as it is stands in a range; what does not apply is null. */
export interface RangePresent {
  /** Index of the interval that it is in; null at an event, where two edges touch, and outside of the range. */
  readonly interval: number | null;
  /** Index of the event that it stands at. */
  readonly event: number | null;
  /** How far it is down to the next event, over 0; null if there is none before the range ends, and outside of it. */
  readonly below: number | null;
  /** The same upwards. */
  readonly above: number | null;
}

/** The ends of a range, the places of its events in order, and how near two values are one. */
export interface Places {
  readonly from: number;
  readonly to: number;
  readonly places: readonly number[];
  readonly near: number;
}

/** Looks up where a value stands. */
export function presentAmong(now: number, { from, to, places, near }: Places): RangePresent {
  if (now < from || now > to) return { interval: null, event: null, below: null, above: null };
  const under = places.filter((at) => at < now - near);
  const over = places.filter((at) => at > now + near);
  const isAtEvent = under.length + over.length < places.length;
  const last = under[under.length - 1];
  const next = over[0];
  return {
    interval: isAtEvent ? null : under.length,
    event: isAtEvent ? under.length : null,
    below: last === undefined ? null : now - last,
    above: next === undefined ? null : next - now,
  };
}
