/** A half-width of the sum is looked for on so many steps to either side of 0. */
const STEPS = 1024;

/**
 * Half-width of the interval about 0 that holds a share of all sums of independent values, each spread evenly over so much to
 * either side of 0. The root of the squares of their standard deviations, w / sqrt(3) each, times a coverage factor: 1.65 of one
 * value, 1.90 of two like ones, and near 1.96 of many.
 *
 * Source: a value of which only its limits are known is taken as spread evenly between them, JCGM 100:2008, 4.3.7; the
 * interval is taken from the distribution of the sum and not from a normal one, JCGM 101:2008, 5 and 9.2 (from memory).
 * The distribution function of a sum is that of one less, averaged over the width of the last; here piecewise linear.
 * @param widths half of each interval, finite and not under 0
 * @param share over 0 and under 1
 */
export function coverageOf(widths: readonly number[], share: number): number {
  const sorted = [...widths].sort((a, b) => b - a);
  const whole = sorted.reduce((sum, width) => sum + width, 0);
  if (!(whole > 0)) return 0;
  const step = whole / STEPS;
  const [first = 0, ...rest] = sorted;
  let below = Array.from({ length: 2 * STEPS + 1 }, (_, k) =>
    Math.min(1, Math.max(0, ((k - STEPS) * step + first) / (2 * first))),
  );
  // What is narrower than a step moves nothing that the steps could show.
  for (const width of rest) if (width > step / 2) below = averaged(below, step, width);
  const wanted = (1 + share) / 2;
  const k = below.findIndex((value) => value >= wanted);
  const [low, high] = [below[k - 1] as number, below[k] as number];
  return (k - 1 - STEPS + (wanted - low) / (high - low)) * step;
}

/** A function on steps about 0, 0 before them and 1 after, averaged over a width to either side. */
function averaged(values: readonly number[], step: number, width: number): number[] {
  const sums = [0];
  for (let k = 1; k < values.length; k++) {
    sums.push((sums[k - 1] as number) + ((values[k - 1] as number) + (values[k] as number)) * (step / 2));
  }
  const last = values.length - 1;
  /** Integral up to a place, counted in steps from the first. */
  const upTo = (place: number): number => {
    if (place <= 0) return 0;
    if (place >= last) return (sums[last] as number) + (place - last) * step;
    const k = Math.floor(place);
    const [a, b] = [values[k] as number, values[k + 1] as number];
    const rest = place - k;
    return (sums[k] as number) + step * rest * (a + ((b - a) * rest) / 2);
  };
  const by = width / step;
  return values.map((_, k) => (upTo(k + by) - upTo(k - by)) / (2 * width));
}
