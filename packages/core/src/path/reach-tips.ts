import { distance, type Point } from '../geometry/point.js';

/** What lies between three tips, and the largest disc that gets at all of it. */
export interface BetweenTips {
  readonly radius: number;
  /** The place that no larger disc gets at. */
  readonly at: Point;
}

/** A right angle counts as one, but for this share of the squared sides. */
const RIGHT = 1e-9;

/**
 * The least radius of the circles through three tips each, among those that limit what a disc reaches between them.
 *
 * A larger disc gets in between each two tips only so far. In a triangle without an obtuse angle the three discs
 * through two tips each, of the radius of the circle through all three, meet in one point, the meeting point of its
 * heights; so no larger disc reaches that point.
 * Source: R. A. Johnson, "A circle theorem", American Mathematical Monthly 23 (1916).
 * @param below only circles of a smaller radius count
 * @param reaches whether a place belongs to what is to be reached
 */
export function limitBetweenTips(
  tips: readonly Point[],
  below: number,
  reaches: (p: Point) => boolean,
): BetweenTips | null {
  const sorted = [...tips].sort((p, q) => p.x - q.x);
  let best: BetweenTips | null = null;
  const widest = () => 2 * (best?.radius ?? below);
  const near = (p: Point, q: Point) => distance(p, q) < widest();
  for (const [i, a] of sorted.entries()) {
    for (let j = i + 1; j < sorted.length && (sorted[j] as Point).x - a.x < widest(); j++) {
      const b = sorted[j] as Point;
      if (!near(a, b)) continue;
      for (let k = j + 1; k < sorted.length && (sorted[k] as Point).x - a.x < widest(); k++) {
        const c = sorted[k] as Point;
        if (!near(a, c) || !near(b, c)) continue;
        const circle = throughThree(a, b, c);
        if (circle === null || circle.radius >= (best?.radius ?? below)) continue;
        const { center } = circle;
        const at = { x: a.x + b.x + c.x - 2 * center.x, y: a.y + b.y + c.y - 2 * center.y };
        if (reaches(at)) best = { radius: circle.radius, at };
      }
    }
  }
  return best;
}

/** The circle through three places, if no angle of their triangle is obtuse. */
function throughThree(a: Point, b: Point, c: Point): { center: Point; radius: number } | null {
  const bx = b.x - a.x;
  const by = b.y - a.y;
  const cx = c.x - a.x;
  const cy = c.y - a.y;
  const ab = bx * bx + by * by;
  const ac = cx * cx + cy * cy;
  const bc = (cx - bx) ** 2 + (cy - by) ** 2;
  if (2 * Math.max(ab, ac, bc) > (1 + RIGHT) * (ab + ac + bc)) return null;
  const twice = 2 * (bx * cy - by * cx);
  const dx = (cy * ab - by * ac) / twice;
  const dy = (bx * ac - cx * ab) / twice;
  const radius = Math.hypot(dx, dy);
  return Number.isFinite(radius) ? { center: { x: a.x + dx, y: a.y + dy }, radius } : null;
}
