/** Two sizes of tools and holes are one if they differ by less than this share: rounding of drawings. */
export const SAME_SIZE = 1e-9;

/** Whether a size is another, but for the rounding of drawings. */
export function isSameSize(size: number, other: number): boolean {
  return Math.abs(size - other) <= SAME_SIZE * other;
}
