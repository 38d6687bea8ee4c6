/** Decimals that rounding to a multiple may need: a millionth of the unit is the smallest size in a job. */
const DECIMALS = 9;

/** A number without the dust that binary arithmetic leaves. */
export function tidied(value: number): number {
  return Number(value.toFixed(DECIMALS)) + 0;
}

/** The multiple of a step that is nearest to a value, without that dust. */
export function snapped(value: number, step: number): number {
  return tidied(Math.round(value / step) * step);
}

/**
 * The step in which a centre is dragged: the readout's resolution times 1, 2, 5, 10, 20 and so on, as large as what
 * one pixel stands for. A hand cannot point finer than that, and round numbers are easier to set.
 */
export function dragStep(resolution: number, perPixel: number): number {
  let tens = resolution;
  while (tens * 10 <= perPixel) tens *= 10;
  for (const factor of [1, 2, 5, 10]) {
    if (tens * factor >= perPixel) return Number((tens * factor).toPrecision(DECIMALS));
  }
  return Number((tens * 10).toPrecision(DECIMALS));
}
