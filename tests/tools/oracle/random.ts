/** Numbers drawn from a seed: the same seed draws the same case. */
export interface Draw {
  /** From 0 up to 1. */
  readonly unit: () => number;
  /** From `low` up to `high`. */
  readonly between: (low: number, high: number) => number;
  /** A whole number from `low` to `high`, both included. */
  readonly whole: (low: number, high: number) => number;
  readonly sign: () => 1 | -1;
  readonly pick: <T>(list: readonly T[]) => T;
}

/** A generator of 32 bits (mulberry32, by Tommy Ettinger, public domain). */
export function drawFrom(seed: number): Draw {
  let state = seed >>> 0;
  const unit = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const whole = (low: number, high: number) => low + Math.floor(unit() * (high - low + 1));
  return {
    unit,
    whole,
    between: (low, high) => low + unit() * (high - low),
    sign: () => (unit() < 0.5 ? -1 : 1),
    pick: (list) => list[whole(0, list.length - 1)] as (typeof list)[number],
  };
}
