import { FINISHED } from '../aim/layers.js';
import { intersect } from '../combine/boolean.js';
import { subtract } from '../combine/subtract.js';
import { sweptRegion } from '../cut/swept.js';
import type { Edge, LineEdge } from '../geometry/edge.js';
import { distance, moved, type Point, type Vector } from '../geometry/point.js';
import { area, boundsOf, loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';

/** A circle of a hollow arc. */
export interface ArcCircle {
  readonly center: Point;
  readonly radius: number;
}

/** A stretch, straight or round, that a tool of one width sweeps. */
export interface Slot {
  readonly path: readonly [Edge, ...Edge[]];
  readonly width: number;
  readonly swept: Region;
  /** Of a round one: the circle that the tool's centre goes along. */
  readonly ring?: { readonly center: Point; readonly radius: number; readonly width: number };
}

/** A line along which a tool of one width may have gone. */
interface Track {
  readonly at: Point;
  readonly along: Vector;
  readonly width: number;
}

/** Two lengths or directions are the same where they differ by less than this share: rounding of drawings. */
export const SAME = 1e-7;

/**
 * Straight slots of a piece that is to go, each as long as can be: between two walls that face each other, or beside a
 * wall that a hollow arc runs into.
 * @param clear whether a tool leaves alone what is to stay
 */
export function slotsIn(
  region: Region,
  circles: readonly ArcCircle[],
  blank: Region,
  clear: (tool: Region) => boolean,
): Slot[] {
  const walls = straightWalls(region);
  const found: Slot[] = [];
  for (const track of tracksOf(walls, circles)) {
    const slot = longest(track, walls, circles, blank, clear);
    const isKnown = slot === null || found.some((one) => isSame(one, slot));
    if (!isKnown) found.push(slot);
  }
  return found;
}

/** From one run to the next one further off its wall, of the diameter: what is between two stays under the tool. */
const STEP_SHARE = 0.8;

/** More runs than this for one piece are no sensible way to make it. */
const MOST_RUNS = 20;

/**
 * Straight runs of a mill that clear a piece, each along one of its walls and as long as can be, those further from the walls
 * first; null where they leave something.
 * @param nothing areas smaller than this are rounding
 */
export function straightRuns(
  region: Region,
  diameter: number,
  blank: Region,
  clear: (tool: Region) => boolean,
  nothing: number,
): readonly Slot['path'][] | null {
  const walls = straightWalls(region);
  const circles = loopsOf(region)
    .flat()
    .flatMap((edge): ArcCircle[] =>
      edge.kind === 'arc' && edge.ccw && edge.source === FINISHED ? [edge] : [],
    );
  const found: Slot[] = [];
  let left: Region = region;
  for (let k = 0; left.length > 0 && k < MOST_RUNS; k++) {
    const before = found.length;
    for (const wall of walls) {
      const along = directionOf(wall);
      const off = (1 / 2 + k * STEP_SHARE) * diameter;
      const at = moved(wall.a, { dx: -along.dy, dy: along.dx }, off);
      const run = longest({ at, along, width: diameter }, walls, circles, blank, clear, wall);
      if (run === null || area(intersect([left, run.swept])) <= nothing) continue;
      found.push(run);
      left = subtract(left, [run.swept]);
      if (found.length > MOST_RUNS) return null;
    }
    if (found.length === before && k > 0) break;
  }
  return area(left) <= nothing ? found.reverse().map(({ path }) => path) : null;
}

function straightWalls(region: Region): LineEdge[] {
  return loopsOf(region)
    .flat()
    .filter((edge): edge is LineEdge => edge.kind === 'line' && edge.source === FINISHED);
}

function isSame(one: Slot, other: Slot): boolean {
  const near = SAME * one.width;
  const [p, q] = [one.path[0], other.path[0]];
  const straight = distance(p.a, q.a) <= near && distance(p.b, q.b) <= near;
  const turned = distance(p.a, q.b) <= near && distance(p.b, q.a) <= near;
  return Math.abs(one.width - other.width) <= near && (straight || turned);
}

function directionOf({ a, b }: LineEdge): Vector {
  const length = distance(a, b);
  return { dx: (b.x - a.x) / length, dy: (b.y - a.y) / length };
}

/** How far a place lies to the left of a wall: what is to go lies there. */
function leftOf({ a }: LineEdge, { dx, dy }: Vector, p: Point): number {
  return dx * (p.y - a.y) - dy * (p.x - a.x);
}

function tracksOf(walls: readonly LineEdge[], circles: readonly ArcCircle[]): Track[] {
  return walls.flatMap((wall, k) => {
    const along = directionOf(wall);
    const inward = { dx: -along.dy, dy: along.dx };
    const facing = walls.slice(k + 1).flatMap((other): Track[] => {
      const way = directionOf(other);
      const isFacing =
        Math.abs(way.dx * along.dy - way.dy * along.dx) <= SAME && way.dx * along.dx + way.dy * along.dy < 0;
      const width = leftOf(wall, along, other.a);
      return isFacing && width > 0 ? [{ at: moved(wall.a, inward, width / 2), along, width }] : [];
    });
    const besideArc = circles.flatMap(({ center, radius }): Track[] => {
      const isTouching = Math.abs(leftOf(wall, along, center) - radius) <= SAME * radius;
      return isTouching ? [{ at: center, along, width: 2 * radius }] : [];
    });
    return [...facing, ...besideArc];
  });
}

/**
 * The longest stretch of a track that leaves alone what is to stay; null if there is none.
 * @param own the wall that it goes along, where it lies off it
 */
function longest(
  { at, along, width }: Track,
  walls: readonly LineEdge[],
  circles: readonly ArcCircle[],
  blank: Region,
  clear: (tool: Region) => boolean,
  own?: LineEdge,
): Slot | null {
  const box = boundsOf(blank);
  if (box === null) return null;
  const placeOf = (p: Point) => (p.x - at.x) * along.dx + (p.y - at.y) * along.dy;
  const isOn = (p: Point, off: number) =>
    Math.abs(Math.abs((p.y - at.y) * along.dx - (p.x - at.x) * along.dy) - off) <= SAME * width;
  const caps = circles.filter(
    ({ center, radius }) => isOn(center, 0) && Math.abs(2 * radius - width) <= SAME * width,
  );
  const beside = walls.filter((wall) => wall === own || (isOn(wall.a, width / 2) && isOn(wall.b, width / 2)));
  const known = [...caps.map(({ center }) => center), ...beside.flatMap(({ a, b }) => [a, b])].map(placeOf);
  if (known.length === 0) return null;
  const far = [box.minX, box.maxX].flatMap((x) => [box.minY, box.maxY].map((y) => placeOf({ x, y })));
  const middle = (Math.min(...known) + Math.max(...known)) / 2;
  const lows = [Math.min(...far) - width, ...known.filter((t) => t <= middle).sort((a, b) => a - b)];
  const highs = [Math.max(...far) + width, ...known.filter((t) => t >= middle).sort((a, b) => b - a)];
  for (const low of lows) {
    for (const high of highs) {
      if (high - low <= SAME * width) continue;
      const path = [{ kind: 'line', a: moved(at, along, low), b: moved(at, along, high) }] as const;
      const swept = sweptRegion(path, width / 2);
      if (area(swept) > 0 && clear(swept)) return { path, width, swept };
    }
  }
  return null;
}
