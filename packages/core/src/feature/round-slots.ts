import { FINISHED } from '../aim/layers.js';
import { sweptRegion } from '../cut/swept.js';
import { TURN } from '../geometry/angle.js';
import { type ArcEdge, arcEdge, type Edge } from '../geometry/edge.js';
import { distance, type Point } from '../geometry/point.js';
import { area, loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';
import { type ArcCircle, SAME, type Slot } from './slots.js';

/** A circle along which a tool of one width may have gone. */
interface Ring {
  readonly center: Point;
  readonly radius: number;
  readonly width: number;
}

/**
 * Slots along arcs of a piece that is to go, each as long as can be: between two walls round one centre, or beside a wall
 * round it that a smaller hollow arc runs into.
 * @param clear whether a tool leaves alone what is to stay
 */
export function roundSlotsIn(
  region: Region,
  circles: readonly ArcCircle[],
  clear: (tool: Region) => boolean,
): Slot[] {
  const walls = loopsOf(region)
    .flat()
    .filter((edge): edge is ArcEdge => edge.kind === 'arc' && edge.source === FINISHED);
  const found: Slot[] = [];
  for (const ring of ringsOf(walls, circles)) {
    const isKnown = found.some(({ ring: one }) => one !== undefined && isSame(one, ring));
    const slot = isKnown ? null : longest(ring, walls, circles, clear);
    if (slot !== null) found.push(slot);
  }
  return found;
}

function isSame(one: Ring, other: Ring): boolean {
  const near = SAME * other.radius;
  return (
    distance(one.center, other.center) <= near &&
    Math.abs(one.radius - other.radius) <= near &&
    Math.abs(one.width - other.width) <= near
  );
}

/** What is to go lies within a hollow wall, and without a wall that is round the other way. */
function ringsOf(walls: readonly ArcEdge[], circles: readonly ArcCircle[]): Ring[] {
  return walls.flatMap((wall): Ring[] => {
    const { center, radius, ccw } = wall;
    const near = SAME * radius;
    const inner = walls.filter(
      (one) => ccw && !one.ccw && distance(one.center, center) <= near && one.radius < radius - near,
    );
    const between = inner.map((one) => ({
      center,
      radius: (radius + one.radius) / 2,
      width: radius - one.radius,
    }));
    const besideEnd = circles.flatMap((end): Ring[] => {
      const far = distance(end.center, center);
      const isTouching = Math.abs(ccw ? far + end.radius - radius : far - end.radius - radius) <= near;
      return isTouching && far > near ? [{ center, radius: far, width: 2 * end.radius }] : [];
    });
    return [...between, ...besideEnd];
  });
}

/** The longest stretch of a ring that leaves alone what is to stay; null if there is none. */
function longest(
  ring: Ring,
  walls: readonly ArcEdge[],
  circles: readonly ArcCircle[],
  clear: (tool: Region) => boolean,
): Slot | null {
  const { center, radius, width } = ring;
  const made = (path: readonly [Edge, ...Edge[]]): Slot | null => {
    const swept = sweptRegion(path, width / 2);
    return area(swept) > 0 && clear(swept) ? { path, width, swept, ring } : null;
  };
  const near = SAME * radius;
  const angleOf = ({ x, y }: Point) => Math.atan2(y - center.y, x - center.x);
  const caps = circles.filter(
    (one) =>
      Math.abs(2 * one.radius - width) <= near && Math.abs(distance(one.center, center) - radius) <= near,
  );
  const beside = walls.filter(
    (wall) =>
      distance(wall.center, center) <= near && Math.abs(Math.abs(wall.radius - radius) - width / 2) <= near,
  );
  const ends = [
    ...caps.map((cap) => angleOf(cap.center)),
    ...beside.flatMap(({ a, b }) => [angleOf(a), angleOf(b)]),
  ];
  // A tool goes on into the air by its own width where nothing is in the way.
  const over = width / radius;
  const starts = [...ends.map((angle) => angle - over), ...ends];
  const stops = [...ends.map((angle) => angle + over), ...ends];
  const spans = starts
    .flatMap((from) => stops.map((to) => ({ from, span: (((to - from) % TURN) + TURN) % TURN })))
    .filter(({ span }) => span > SAME && span < TURN - SAME)
    .sort((a, b) => b.span - a.span);
  for (const { from, span } of spans) {
    const slot = made([arcEdge(placeOn(ring, from), placeOn(ring, from + span), center, true)]);
    if (slot !== null) return slot;
  }
  return null;
}

function placeOn({ center, radius }: Ring, angle: number): Point {
  return { x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) };
}
