import Flatbush from 'flatbush';
import type { Cut } from '../cut/cut.js';
import type { JobIssue } from '../document/errors.js';
import { MAX_CROSSINGS } from '../document/limits.js';
import type { Point } from '../geometry/point.js';

interface Circle {
  readonly center: Point;
  readonly radius: number;
}

/**
 * A fault if so many circles of cuts cross each other that the job could not be examined in reasonable time: each
 * crossing is a corner of a piece of its own, and all of them lie in the same place.
 */
export function crossingIssues(cuts: readonly Cut[]): JobIssue[] {
  const circles = cuts.flatMap(circlesOf);
  if (circles.length < 2 || pairsThatCross(circles) <= MAX_CROSSINGS) return [];
  const message =
    `more than ${MAX_CROSSINGS} pairs of circles cross each other; so many cuts on top of each other cannot be ` +
    'worked out in reasonable time: leave out those that are made again a little beside another';
  return [{ path: '/cuts', message }];
}

function circlesOf(cut: Cut): Circle[] {
  if (cut.kind === 'swept') return [];
  const { center, diameter } = cut;
  const outer = { center, radius: diameter / 2 };
  return cut.kind === 'bore' ? [outer] : [outer, { center, radius: diameter / 2 - cut.wall }];
}

/** How many pairs of circles cross; stops counting past the limit. */
function pairsThatCross(circles: readonly Circle[]): number {
  const index = new Flatbush(circles.length);
  for (const { center, radius } of circles) {
    index.add(center.x - radius, center.y - radius, center.x + radius, center.y + radius);
  }
  index.finish();
  let count = 0;
  for (const [k, { center, radius }] of circles.entries()) {
    const { x, y } = center;
    // Each pair once: from the circle that comes later.
    const near = index.search(x - radius, y - radius, x + radius, y + radius, (other) => other < k);
    for (const other of near) if (cross(circles[other] as Circle, { center, radius })) count++;
    if (count > MAX_CROSSINGS) break;
  }
  return count;
}

function cross(one: Circle, other: Circle): boolean {
  const apart = Math.hypot(one.center.x - other.center.x, one.center.y - other.center.y);
  return apart > Math.abs(one.radius - other.radius) && apart < one.radius + other.radius;
}
