import { type ArcEdge, arcEdge } from '../geometry/edge.js';
import { distance, midpoint, type Point } from '../geometry/point.js';

/**
 * A radius this close to half the chord, as a share of the numbers in it, makes a half circle. The distance
 * from the chord to the centre is a square root here, so that a last digit rounded away in the radius would
 * move the centre by 1e-8 of it.
 */
const HALF_CIRCLE_ROUNDING = 2 ** -49;

/**
 * The circular arc of an SVG arc command; its flags are read with y up, so that `sweep` is counter-clockwise.
 * A radius too small to reach is scaled up until it does. Source: W3C SVG 2, appendix B.2.4 and B.2.5.
 * @param radius over 0
 * @throws RangeError if the ends coincide or a number is not finite.
 */
export function svgArc(a: Point, b: Point, radius: number, large: boolean, sweep: boolean): ArcEdge {
  const half = distance(a, b) / 2;
  const middle = midpoint(a, b);
  const scale = Math.max(radius, Math.abs(a.x), Math.abs(a.y), Math.abs(b.x), Math.abs(b.y));
  if (radius - half <= HALF_CIRCLE_ROUNDING * scale) return arcEdge(a, b, middle, sweep);
  const off = Math.sqrt((radius - half) * (radius + half)) / half;
  const side = large === sweep ? -1 : 1;
  const center = {
    x: middle.x + side * off * ((a.y - b.y) / 2),
    y: middle.y - side * off * ((a.x - b.x) / 2),
  };
  return arcEdge(a, b, center, sweep);
}
