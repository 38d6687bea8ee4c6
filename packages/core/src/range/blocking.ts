import { type Bounds, boxAround, boxesMeet, grown, joined } from '../geometry/bounds.js';
import { edgeBounds } from '../geometry/measure.js';
import { distance, type Point } from '../geometry/point.js';
import { away, type Curve, carried, isOn, sideOf } from './curves.js';
import {
  type Facing,
  facesMetal,
  facingsOf,
  gapBetween,
  nearestPlaces,
  type Time,
  timesAtGap,
} from './meetings.js';
import { rootsIn } from './roots.js';
import { type Scene, wallsIn } from './scene.js';

/**
 * Even pieces of a stretch of values in which a third boundary is looked for. The functions are those of a distance
 * from a place that moves evenly or nearly so: they turn once or twice at most.
 */
const PIECES = 8;

/**
 * Where a distance changes more slowly than this, rounding has a say in where it is 0. So it is where a neck comes to a
 * smooth joint: the edge past the joint only just touches its disc, and the neck slips off, see `slips`.
 */
const FLAT = 1e-5;

/** A neck between a rim and what stands still, as the free number takes it along. */
interface MovingNeck {
  readonly rim: Curve;
  readonly wall: Curve;
  readonly facing: Facing;
  /** The stretch of values in which it is thinner than the limit. */
  readonly from: number;
  readonly to: number;
}

/** When a third boundary gets in the way of a neck between a rim and a wall, or cuts off the place it touches. */
export function blockings(scene: Scene): Time[] {
  const walls = wallsIn(scene);
  const boxes = scene.curves.map(boundsOfCurve);
  return scene.rims.flatMap((rim) =>
    walls.flatMap((wall) =>
      facingsOf(rim, wall)
        .filter((facing) => facesMetal(rim, facing))
        .flatMap((facing) => stretchesOf(scene, rim, wall, facing))
        .flatMap((neck) => blockingsOf(scene, neck, boxes)),
    ),
  );
}

function boundsOfCurve(curve: Curve): Bounds {
  if (curve.edge !== null) return edgeBounds(curve.edge);
  const { center, radius } = curve as Extract<Curve, { shape: 'round' }>;
  return boxAround(center, radius);
}

function stretchesOf(
  { limits, motion, slack, low, high }: Scene,
  rim: Curve,
  wall: Curve,
  facing: Facing,
): MovingNeck[] {
  const times = [0, limits.web]
    .flatMap((gap) => timesAtGap(rim, wall, facing, gap, motion, slack).map(({ s }) => s))
    .filter((s) => s > low && s < high);
  const places = [low, ...times.sort((a, b) => a - b), high];
  return places.slice(1).flatMap((to, k): MovingNeck[] => {
    const from = places[k] as number;
    const gap = gapBetween(carried(rim, motion, (from + to) / 2), wall, facing);
    return gap > 0 && gap < limits.web && to > from ? [{ rim, wall, facing, from, to }] : [];
  });
}

interface Posture {
  readonly rim: Curve;
  readonly onRim: Point;
  readonly onWall: Point;
  readonly middle: Point;
  readonly radius: number;
}

function postureAt({ motion }: Scene, neck: MovingNeck, s: number): Posture | null {
  const rim = carried(neck.rim, motion, s);
  const places = nearestPlaces(rim, neck.wall, neck.facing);
  if (places === null) return null;
  const { onMoving: onRim, onFixed: onWall } = places;
  const middle = { x: (onRim.x + onWall.x) / 2, y: (onRim.y + onWall.y) / 2 };
  return { rim, onRim, onWall, middle, radius: distance(onRim, onWall) / 2 };
}

function blockingsOf(scene: Scene, neck: MovingNeck, boxes: readonly Bounds[]): Time[] {
  const { motion, curves, rims, slack, limits, standsAfter } = scene;
  const { from, to, wall } = neck;
  const samples = Array.from({ length: PIECES + 1 }, (_, k) =>
    postureAt(scene, neck, from + ((to - from) * k) / PIECES),
  ).filter((posture) => posture !== null);
  // Between samples a neck moves by about as much as from one to the next.
  const step =
    longestStep(samples.map(({ onWall }) => onWall)) + longestStep(samples.map(({ onRim }) => onRim));
  const mayStand = samples.some(
    ({ rim, onRim, onWall }) => isOn(wall, onWall, step + slack) && isOn(rim, onRim, step + slack),
  );
  if (!mayStand) return [];
  const box = grown(
    samples.map(({ middle }) => boxAround(middle)).reduce(joined),
    limits.web / 2 + step + slack,
  );
  const thirds = [
    ...curves
      .filter((curve, k) => curve !== wall && boxesMeet(boxes[k] as Bounds, box))
      .map((curve) => () => curve),
    ...rims
      .filter((curve) => curve !== neck.rim && curve.edge !== null)
      .map((curve) => (s: number) => carried(curve, motion, s)),
  ];
  const roots = (of: (posture: Posture, s: number) => number) => {
    const f = (s: number) => {
      const posture = postureAt(scene, neck, s);
      return posture === null ? Infinity : of(posture, s);
    };
    return rootsIn(f, from, to, PIECES)
      .map((s): Time & { readonly pace: number } => ({ s, isLong: false, pace: paceOf(f, s, slack) }))
      .filter(({ pace }) => pace > FLAT);
  };
  const holds = (s: number) => {
    const posture = postureAt(scene, neck, s);
    return (
      posture !== null &&
      isOn(wall, posture.onWall, slack) &&
      isOn(posture.rim, posture.onRim, slack) &&
      standsAfter(posture.middle)
    );
  };
  return thirds.flatMap((third) => [
    ...roots(({ middle, radius }, s) => away(third(s), middle) - radius).filter(({ s }) => holds(s)),
    ...roots(({ onRim }, s) => sideOf(third(s), onRim)).filter(
      ({ s }) => holds(s) && isOn(third(s), (postureAt(scene, neck, s) as Posture).onRim, slack),
    ),
  ]);
}

/** How fast a function changes about a place; 1 if that cannot be told. */
function paceOf(f: (s: number) => number, s: number, by: number): number {
  const pace = Math.abs(f(s + by) - f(s - by)) / (2 * by);
  return Number.isFinite(pace) ? pace : 1;
}

function longestStep(points: readonly Point[]): number {
  return points.slice(1).reduce((most, p, k) => Math.max(most, distance(p, points[k] as Point)), 0);
}
