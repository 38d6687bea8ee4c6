import { boxAround } from '../geometry/bounds.js';
import { curvature, directionAtStart } from '../geometry/measure.js';
import type { Point } from '../geometry/point.js';
import { PointMap } from '../region/point-map.js';
import type { Discs, Zone, ZonedWeb } from './discs.js';
import { TANGENT } from './interior-angle.js';
import { namesInOrder, ROOM_SLACK } from './walls.js';
import { edgeWalls, featherOf, type Wedge } from './wedges.js';

/**
 * The webs of thickness 0: places where the boundary touches itself in a point, whatever the angles there. Between two
 * wedges of metal that meet in such a point lies a void to each side, and the web is between these two; where three or
 * more voids meet, there is one for each wedge.
 */
export function touchWebs(discs: Discs, wedges: readonly Wedge[]): ZonedWeb[] {
  const touches = touchesOf(wedges);
  if (touches.length === 0) return [];
  const numberOf = edgeWalls(discs.walls);
  return touches.flatMap((touching) => {
    const around = inOrder(touching);
    const flares = around.map((wedge) => featherOf(discs, numberOf, wedge));
    const between = around.map((wedge, k) =>
      voidBefore(around[(k + around.length - 1) % around.length] as Wedge, wedge),
    );
    const touch = (voids: readonly [Void, Void], own: readonly Flare[], part: number) =>
      webAt((around[0] as Wedge).at, voids, own, part, discs);
    if (around.length === 2) {
      return [
        touch([between[0] as Void, between[1] as Void], flares, Math.min(...around.map(({ part }) => part))),
      ];
    }
    return around.map(({ part }, k) =>
      touch([between[k] as Void, between[(k + 1) % around.length] as Void], [flares[k] as Flare], part),
    );
  });
}

type Flare = ReturnType<typeof featherOf>;
/** The source of a void next to a touch. */
type Void = ZonedWeb['between'][number];

/** Wedges by the point that they share, where two or more do. */
function touchesOf(wedges: readonly Wedge[]): Wedge[][] {
  const places = new PointMap<Wedge[]>();
  for (const wedge of wedges) places.at(wedge.at, () => []).push(wedge);
  return [...places.values()].filter((here) => here.length > 1);
}

/** Wedges counter-clockwise round their point; where two begin in one direction, the one that turns more to the left is later. */
function inOrder(wedges: readonly Wedge[]): Wedge[] {
  const start = ({ leaving }: Wedge) => {
    const { dx, dy } = directionAtStart(leaving);
    return { angle: Math.atan2(dy, dx), bend: curvature(leaving) };
  };
  return wedges
    .map((wedge) => ({ wedge, ...start(wedge) }))
    .sort((a, b) => (Math.abs(a.angle - b.angle) > TANGENT ? a.angle - b.angle : a.bend - b.bend))
    .map(({ wedge }) => wedge);
}

/** The void between the edge that arrives at the end of a wedge and the one that leaves at the start of the next. */
function voidBefore({ arriving }: Wedge, { leaving }: Wedge): Void {
  const [a, b] = [arriving.source ?? null, leaving.source ?? null];
  return namesInOrder(a, b) ? a : b;
}

function webAt(
  at: Point,
  [a, b]: readonly [Void, Void],
  flares: readonly Flare[],
  part: number,
  discs: Discs,
): ZonedWeb {
  const zone: Zone = [
    boxAround(at, 2 * ROOM_SLACK * discs.walls.tolerance),
    ...flares.flatMap(({ zone: own }) => own),
  ];
  return {
    thickness: 0,
    at,
    ends: [at, at],
    between: namesInOrder(a, b) ? [a, b] : [b, a],
    length: flares.reduce((sum, { feather }) => sum + (feather ?? 0), 0),
    strip: 0,
    part,
    zone,
  };
}
