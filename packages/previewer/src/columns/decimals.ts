/** No readout shows more. */
const MOST_DECIMALS = 6;

/** Decimals that a readout of some step shows; the most where it is as odd as a converted one. */
export function decimalsOf(step: number): number {
  let decimals = 0;
  while (decimals < MOST_DECIMALS && Number(step.toFixed(decimals)) !== step) decimals++;
  return decimals;
}
