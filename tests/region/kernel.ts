/* The code under test, in one place, so that every test names the same functions. */
import { intersect, subtract, union, xor } from '@edgebite/core';

export {
  type ArcEdge,
  arcEdge,
  area,
  circleLoop,
  disc,
  type Edge,
  type Loop,
  lineEdge,
  normalize,
  type Point,
  perimeter,
  type Region,
  type RegionPart,
  ring,
} from '@edgebite/core';
export { intersect, subtract, union, xor };

/** The kernel as the laws want it. */
export const kernel = { union, intersect, subtract, xor };
