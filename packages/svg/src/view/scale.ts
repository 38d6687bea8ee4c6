/** A drawing scale: so many lengths on the sheet for so many of the part. One of the two is 1. */
export interface Scale {
  readonly sheet: number;
  readonly part: number;
}

/** The steps of ISO 5455 within a power of ten; the standard extends them by whole powers of ten both ways. */
const STEPS = [1, 2, 5];

/** Powers of ten looked at: past a part of ten kilometres, and past one of a nanometre. */
const POWERS = 8;

/** All scales of ISO 5455 that are looked at, largest first: 50:1, 20:1, 10:1, 5:1, 2:1, 1:1, 1:2, 1:5 ... */
export const SCALES: readonly Scale[] = scales();

/** Lengths on the sheet for one of the part. */
export function factorOf(scale: Scale): number {
  return scale.sheet / scale.part;
}

/** The largest scale of ISO 5455 that `fits`; the smallest of all if none does. */
export function largestScale(fits: (factor: number) => boolean): Scale {
  return SCALES.find((scale) => fits(factorOf(scale))) ?? (SCALES[SCALES.length - 1] as Scale);
}

/** The scale as ISO 5455 writes it: `1:2`. */
export function scaleText(scale: Scale): string {
  return `${scale.sheet}:${scale.part}`;
}

/** The largest length of the form 1, 2 or 5 times a power of ten that is at most `limit`. */
export function roundLength(limit: number): number {
  const power = 10 ** Math.floor(Math.log10(limit));
  const step = [...STEPS, 10].findLast((s) => s * power <= limit * (1 + 1e-12)) ?? 1;
  return step * power;
}

function scales(): Scale[] {
  const sizes: number[] = [];
  for (let power = 0; power <= POWERS; power++) sizes.push(...STEPS.map((step) => step * 10 ** power));
  const enlarging = sizes.slice(1).map((size) => ({ sheet: size, part: 1 }));
  return [...enlarging.reverse(), ...sizes.map((size) => ({ sheet: 1, part: size }))];
}
