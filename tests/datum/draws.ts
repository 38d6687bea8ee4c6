import { type Draw, seeded } from './drawn-errors.js';

/** Draws each cause once, evenly from -1 to 1. */
export function drawer(random: () => number): { draw: Draw; again: () => void } {
  const drawn = new Map<string, number>();
  return {
    draw: (cause) => {
      let value = drawn.get(cause);
      if (value === undefined) {
        value = 2 * random() - 1;
        drawn.set(cause, value);
      }
      return value;
    },
    again: () => drawn.clear(),
  };
}

/**
 * The figure with every cause at the end that makes it larger, or smaller, found one by one until nothing helps, from some starts:
 * of two causes whose product counts neither may help alone.
 */
export function atTheEnds(figure: (draw: Draw) => number, sign: 1 | -1, starts = 1): number {
  const random = seeded(17);
  const best = Array.from({ length: starts }, (_, k) =>
    fromStart(figure, sign, () => (k === 0 || random() < 0.5 ? 1 : -1)),
  );
  return sign * Math.max(...best);
}

function fromStart(figure: (draw: Draw) => number, sign: 1 | -1, start: () => 1 | -1): number {
  const ends = new Map<string, number>();
  const draw: Draw = (cause) => {
    if (!ends.has(cause)) ends.set(cause, start());
    return ends.get(cause) as number;
  };
  let best = sign * figure(draw);
  for (let hasGrown = true; hasGrown; ) {
    hasGrown = false;
    for (const [cause, end] of ends) {
      ends.set(cause, -end);
      const value = sign * figure(draw);
      if (value > best) {
        best = value;
        hasGrown = true;
      } else ends.set(cause, end);
    }
  }
  return best;
}
