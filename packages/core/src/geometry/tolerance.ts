/**
 * Points closer than this share of the extent are one point. Large against the rounding of coordinates
 * (about 1e-16 of the extent; 1e-12 where a part lies ten thousand times its size from the origin), small
 * against anything that a machine can cut or measure (a nanometre on a metre).
 */
const WELD_SHARE = 1e-9;

/** Rounding that a coordinate of size 1 may have picked up on its way here, with room for a few operations. */
const ROUNDING_SHARE = 1e-14;

/**
 * The distance under which two points are taken for one.
 * @param extent the larger side of the box round what is worked on
 * @param magnitude the largest absolute coordinate in use
 */
export function weldTolerance(extent: number, magnitude = extent): number {
  return Math.max(WELD_SHARE * extent, ROUNDING_SHARE * magnitude, Number.MIN_VALUE);
}
