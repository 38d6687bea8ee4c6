/** Halvings that take a step of a range in ten thousand steps to a share of 1e-13 of the range and below. */
const HALVINGS = 44;

/** Even steps of a range. */
export interface Steps {
  readonly from: number;
  readonly step: number;
  readonly count: number;
}

/**
 * Where a function of one number comes to 0: between steps of unlike signs by halving; where it turns between steps,
 * close to 0 or past it, by the place at which it turns as well. A function that stays at 0 has no such place.
 * @param slack what counts as 0 where the function turns
 * @param pace how fast the function changes at most, per unit of the number, so that steps where it is too far from 0
 *   need not be looked at; infinite if that is not known
 */
export function rootsOf(f: (v: number) => number, steps: Steps, slack: number, pace: number): number[] {
  const known = samplesOf(f, steps, pace);
  if (known.every(({ value }) => Math.abs(value) <= slack)) return [];
  return known.flatMap(({ k, v, value }, n): number[] => {
    if (value === 0) return [v];
    const roots: number[] = [];
    const before = known[n - 1];
    if (before?.k !== k - 1) return roots;
    if (before.value * value < 0) roots.push(halved(f, before.v, v));
    const after = known[n + 1];
    if (after?.k !== k + 1 || before.value * value < 0 || value * after.value < 0) return roots;
    if (Math.abs(value) > Math.abs(before.value) || Math.abs(value) > Math.abs(after.value)) return roots;
    const at = turning(f, before.v, after.v);
    const there = f(at);
    if (Math.abs(there) <= slack) roots.push(at);
    if (there * before.value < 0) roots.push(halved(f, before.v, at), halved(f, at, after.v));
    return roots;
  });
}

interface Sample {
  readonly k: number;
  readonly v: number;
  readonly value: number;
}

/** The function at all steps but those at which it is at least two steps' worth from 0. */
function samplesOf(f: (v: number) => number, { from, step, count }: Steps, pace: number): Sample[] {
  const samples: Sample[] = [];
  for (let k = 0; k <= count; ) {
    const v = from + k * step;
    const value = f(v);
    samples.push({ k, v, value });
    const free = Math.floor(Math.abs(value) / (pace * step)) - 2;
    k += Math.max(1, Number.isFinite(free) ? free : 1);
  }
  return samples;
}

/**
 * Where a function turns between two values: as far up as down on both sides. Its least value alone would tell no more
 * than half of the digits; distances from what moves along a line are even about the place where they turn.
 */
function turning(f: (v: number) => number, from: number, to: number): number {
  const reach = (to - from) / 2;
  return halved((v) => f(v + reach) - f(v - reach), from, to);
}

function halved(f: (v: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  const below = f(low) < 0;
  for (let n = 0; n < HALVINGS; n++) {
    const middle = low + (high - low) / 2;
    if (f(middle) < 0 === below) low = middle;
    else high = middle;
  }
  return low + (high - low) / 2;
}
