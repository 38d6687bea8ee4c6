import { DEGREE } from '../geometry/angle.js';
import { pointAlong } from '../geometry/measure.js';
import { distance, type Point, type Vector } from '../geometry/point.js';
import { blockings } from './blocking.js';
import { away, type Curve, carried, circle, type Round, widened } from './curves.js';
import type { Corner } from './drawn.js';
import {
  contacts,
  crossingsAt,
  type Facing,
  facesMetal,
  type Moment,
  type Time,
  timesSquareToEnd,
} from './meetings.js';
import type { StillNeck } from './necks.js';
import { type Scene, wallsIn } from './scene.js';

/**
 * Every value of the free number, counted from where the scene was drawn, at which the outcome can change; sorted,
 * some of them more than once. In closed form but for what three curves have to do with, which is bracketed.
 *
 * - The rims touch another boundary, pass a corner or a crossing of boundaries, or a place that matters. In between
 *   the cut divides the part in one and the same way, so pieces and their names stay.
 * - Moved in or out by the shop's resolution, they touch the outline: where a cut begins to graze.
 * - They cross another boundary at the limit angle.
 * - They are one web limit away from another boundary, or from a corner that points into metal.
 * - A neck between a rim and a boundary slips off the end of one of them, or a third boundary gets in its way.
 * - The rims get in the way of a neck between others.
 * @param still necks between curves that stand still
 * @param own necks between the rims themselves, drawn with them
 */
export function candidates(scene: Scene, still: readonly StillNeck[], own: readonly StillNeck[]): Time[] {
  const all: Time[] = [
    ...blurred(touches(scene), scene),
    ...blurred(grazes(scene), scene),
    ...knifeEdges(scene),
    ...webLimits(scene),
    ...concentric(scene),
    ...slips(scene),
    ...blurred(blockings(scene), scene),
    ...blurred(
      still.flatMap((neck) => scene.rims.flatMap((rim) => barred(scene, rim, neck))),
      scene,
    ),
    ...blurred(
      own.flatMap((neck) => ownBarred(scene, neck)),
      scene,
    ),
  ];
  return all
    .map(({ s, isLong, blur = 0 }): Time => ({ s, isLong, blur }))
    .filter(({ s }) => s > scene.low && s < scene.high)
    .sort((a, b) => a.s - b.s);
}

/** Times of touching: where boundaries come together at a slant, they are nearly touching for longer. */
function blurred(times: readonly Time[], { blur }: Scene): Time[] {
  return times.map(({ s, isLong, pace = 1 }) => ({ s, isLong, blur: blur / pace }));
}

/** Moments of which some place satisfies a condition, or that have none. */
function timesWhere(moments: readonly Moment[], isGood: (p: Point) => boolean): Moment[] {
  return moments.filter(({ at }) => at.length === 0 || at.some(isGood));
}

function touches(scene: Scene): Time[] {
  const { rims, rimCorners, pin, curves, corners, places, motion, slack, standsBefore } = scene;
  const points = [...corners.map(({ at }) => at), ...places].map((p) => circle(p, 0));
  const ownPoints = [...rimCorners.map(({ at }) => at), ...(pin === null ? [] : [pin])].map((p) =>
    circle(p, 0),
  );
  const pairs = [
    ...rims.flatMap((m) => [...curves, ...points].map((f) => [m, f] as const)),
    ...ownPoints.flatMap((m) => curves.map((f) => [m, f] as const)),
  ];
  return pairs.flatMap(([m, f]) => timesWhere(contacts(m, f, 0, motion, slack), standsBefore));
}

function grazes(scene: Scene): Time[] {
  const { rims, outline, outlineCorners, resolution, motion, slack } = scene;
  const others = [...outline, ...outlineCorners.map(({ at }) => circle(at, 0))];
  const near = slack + 2 * resolution;
  return [resolution, -resolution].flatMap((by) =>
    rims.flatMap((rim) =>
      others.flatMap((f) =>
        contacts(widened(rim, by), f, 0, motion, near).filter(({ s }) => !isDeep(scene, s, 3 * resolution)),
      ),
    ),
  );
}

/** Whether some place of the rims lies so deep in the part that the cut does more than graze it. */
function isDeep({ rims, motion, isWithin }: Scene, s: number, depth: number): boolean {
  return rims.some((rim) => samplesOf(carried(rim, motion, s)).some((p) => isWithin(p, depth)));
}

/** Places of a round rim that are looked at to see whether it is deep in the part. */
const SAMPLES = 8;

function samplesOf(rim: Curve): Point[] {
  if (rim.edge !== null) return [rim.edge.a, pointAlong(rim.edge, 0.5)];
  const { center, radius } = rim as Round;
  return Array.from({ length: SAMPLES }, (_, k) => {
    const angle = (2 * Math.PI * k) / SAMPLES;
    return { x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) };
  });
}

function knifeEdges({ rims, curves, limits, motion, slack, standsAfter }: Scene): Time[] {
  return rims.flatMap((m) =>
    curves.flatMap((f) =>
      timesWhere(crossingsAt(m, f, limits.knifeEdge * DEGREE, motion, slack), standsAfter),
    ),
  );
}

function webLimits(scene: Scene): Time[] {
  const { rims, limits, motion, slack, standsAfter } = scene;
  const walls = wallsIn(scene);
  return rims.flatMap((m) =>
    walls.flatMap((f) =>
      timesWhere(
        contacts(m, f, limits.web, motion, slack).filter(({ facing }) => facesMetal(m, facing)),
        standsAfter,
      ),
    ),
  );
}

/** Centres nearer to each other than this share of the radii make a strip of what else is a neck. */
const CONCENTRIC = 1e-6;

function concentric({ rims, curves, limits, motion: { velocity, growth }, slack }: Scene): Time[] {
  if (growth !== 0) return [];
  return rims.flatMap((m) =>
    curves.flatMap((f) => {
      if (m.shape !== 'round' || f.shape !== 'round') return [];
      if (Math.abs(f.radius - m.radius) > limits.web + slack) return [];
      const [wx, wy] = [m.center.x - f.center.x, m.center.y - f.center.y];
      const aside = Math.abs(wx * velocity.dy - wy * velocity.dx);
      if (aside > CONCENTRIC * (m.radius + f.radius)) return [];
      return [{ s: -(wx * velocity.dx + wy * velocity.dy), isLong: true }];
    }),
  );
}

/** When the place of a boundary nearest to another one comes to its end. */
function slips(scene: Scene): Time[] {
  const { rims, rimCorners, curves, corners, motion, limits, slack, standsAfter } = scene;
  if (motion.growth !== 0) return [];
  const { velocity } = motion;
  const back = { dx: -velocity.dx, dy: -velocity.dy };
  const isThin = (gap: number) => gap < limits.web + slack;
  const offStill = corners.flatMap((corner) =>
    rims.flatMap((m) =>
      m.shape !== 'round'
        ? []
        : timesOff(corner, m.center, velocity).filter(
            ({ s }) =>
              isThin(Math.abs(distance(carriedPoint(m.center, velocity, s), corner.at) - m.radius)) &&
              standsAfter(corner.at),
          ),
    ),
  );
  const others = [
    ...curves.flatMap((f) => (f.shape === 'round' ? [{ center: f.center, f: f as Curve }] : [])),
    ...corners.map(({ at }) => ({ center: at, f: circle(at, 0) as Curve })),
  ];
  const offOwn = rimCorners.flatMap((corner) =>
    others.flatMap(({ center, f }) =>
      timesOff(corner, center, back).filter(({ s }) => {
        const at = carriedPoint(corner.at, velocity, s);
        return isThin(away(f, at)) && standsAfter(at);
      }),
    ),
  );
  return [...offStill, ...offOwn];
}

function timesOff(corner: Corner, other: Point, velocity: Vector): Time[] {
  return corner.curves.flatMap((curve) => timesSquareToEnd(curve, corner.at, other, velocity));
}

function carriedPoint(p: Point, { dx, dy }: Vector, s: number): Point {
  return { x: p.x + dx * s, y: p.y + dy * s };
}

/** When a rim gets in the way of a neck between others, or leaves it. */
function barred({ motion, slack }: Scene, rim: Curve, { line, half, ends, feet }: StillNeck): Time[] {
  const metalSide = ({ facing }: { readonly facing: Facing }) => facesMetal(rim, facing);
  return [
    ...contacts(rim, line, half, motion, slack).filter(metalSide),
    ...ends.flatMap((end) => contacts(rim, circle(end, 0), half, motion, slack)).filter(metalSide),
    ...feet.flatMap((foot) => contacts(rim, circle(foot, 0), 0, motion, slack)),
  ];
}

/** When a neck between the rims themselves comes upon what stands still. */
function ownBarred({ curves, corners, motion, slack }: Scene, { line, half, ends, feet }: StillNeck): Time[] {
  const points = corners.map(({ at }) => circle(at, 0));
  return [
    ...[line, ...ends.map((end) => circle(end, 0))].flatMap((m) =>
      [...curves, ...points].flatMap((f) => contacts(m, f, half, motion, slack)),
    ),
    ...feet.flatMap((foot) => curves.flatMap((f) => contacts(circle(foot, 0), f, 0, motion, slack))),
  ];
}
