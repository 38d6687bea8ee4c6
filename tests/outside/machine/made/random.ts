/** A stream of numbers that the same seed repeats. Source: mulberry32, public domain, T. Ettinger. */
export interface Dice {
  /** From 0 up to 1. */
  readonly next: () => number;
  /** Between two numbers, rounded to hundredths. */
  readonly length: (from: number, to: number) => number;
  /** A whole number from one to another, both included. */
  readonly whole: (from: number, to: number) => number;
  readonly chance: (share: number) => boolean;
  readonly pick: <T>(list: readonly T[]) => T;
}

export function diceOf(seed: number): Dice {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  const whole = (from: number, to: number) => from + Math.floor(next() * (to - from + 1));
  return {
    next,
    whole,
    length: (from, to) => Math.round((from + next() * (to - from)) * 100) / 100,
    chance: (share) => next() < share,
    pick: (list) => list[whole(0, list.length - 1)] as never,
  };
}
