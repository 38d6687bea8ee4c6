import type { Edge, Source } from '../geometry/edge.js';
import { curvature, directionAtEnd, directionAtStart } from '../geometry/measure.js';
import type { Point, Vector } from '../geometry/point.js';
import type { Loop, Region } from '../region/region.js';
import { discBetween } from './discs.js';
import { namesInOrder, turnBetween, type Walls, wallsOf } from './walls.js';

/** A corner of metal sharper than the limit. */
export interface KnifeEdge {
  /** Interior angle through the metal between the tangents, radians; 0 where two edges touch. */
  readonly angle: number;
  readonly at: Point;
  /** Sources of the two edges that meet at the tip, cuts before outlines. */
  readonly between: readonly [Source | null, Source | null];
  /**
   * The feather: distance from the tip to the centre of the first disc of metal as thick as the web limit; null
   * where the metal never is. Between two lines it is (t/2) / sin(angle/2).
   */
  readonly feather: number | null;
  /** Which part of the section it is on. */
  readonly part: number;
}

/** Tangents closer than this (radians) are one direction: then curvature says on which side the metal lies. */
const TANGENT = 1e-6;

/** One wedge of metal at a vertex. */
interface Wedge {
  readonly at: Point;
  readonly leaving: Edge;
  readonly arriving: Edge;
  readonly part: number;
  readonly angle: number;
}

/**
 * Every vertex of a section whose interior angle is under a limit, sharpest first. Where loops of a part touch,
 * each wedge of metal between neighbouring edges counts for itself.
 * @param limit angle in radians
 * @param webLimit thickness that the feather is measured to
 */
export function knifeEdgesOf(section: Region, limit: number, webLimit: number): KnifeEdge[] {
  const wedges = wedgesOf(section).filter(({ angle }) => angle < limit);
  if (wedges.length === 0) return [];
  const walls = wallsOf(section) as Walls;
  const numberOf = new Map<Edge, number>();
  walls.list.forEach((wall, k) => {
    if (wall.shape !== 'corner') numberOf.set(wall.edge, k);
  });
  return wedges
    .map((wedge) => ({
      angle: wedge.angle,
      at: wedge.at,
      between: sourcesOf(wedge),
      feather: featherOf(walls, numberOf, wedge, webLimit),
      part: wedge.part,
    }))
    .sort((a, b) => a.angle - b.angle || a.at.x - b.at.x || a.at.y - b.at.y);
}

/** The interior angles at all vertices of a section, in radians, smooth ones included. */
export function interiorAngles(section: Region): number[] {
  return wedgesOf(section).map(({ angle }) => angle);
}

function sourcesOf({ leaving, arriving }: Wedge): [Source | null, Source | null] {
  const a = leaving.source ?? null;
  const b = arriving.source ?? null;
  return namesInOrder(a, b) ? [a, b] : [b, a];
}

function featherOf(walls: Walls, numberOf: Map<Edge, number>, wedge: Wedge, webLimit: number): number | null {
  const one = numberOf.get(wedge.leaving) as number;
  const other = numberOf.get(wedge.arriving) as number;
  const center = discBetween(walls, one, other, webLimit / 2, wedge.at, () => true);
  return center === null ? null : Math.hypot(center.x - wedge.at.x, center.y - wedge.at.y);
}

function wedgesOf(section: Region): Wedge[] {
  const wedges: Wedge[] = [];
  section.forEach((part, number) => {
    const joints = new Map<string, { arriving: Edge; leaving: Edge }[]>();
    for (const loop of [part.outer, ...part.holes]) collectJoints(joints, loop);
    for (const here of joints.values()) wedges.push(...wedgesAt(here, number));
  });
  return wedges;
}

function collectJoints(joints: Map<string, { arriving: Edge; leaving: Edge }[]>, loop: Loop): void {
  loop.forEach((leaving, k) => {
    const arriving = loop[(k + loop.length - 1) % loop.length] as Edge;
    // Joints are shared to the last bit, so their numbers are a name for them.
    const key = `${leaving.a.x},${leaving.a.y}`;
    const list = joints.get(key);
    if (list === undefined) joints.set(key, [{ arriving, leaving }]);
    else list.push({ arriving, leaving });
  });
}

function wedgesAt(joints: readonly { arriving: Edge; leaving: Edge }[], part: number): Wedge[] {
  const arrivals = joints.map(({ arriving }) => arriving);
  return joints.map(({ leaving, arriving: own }) => {
    // Counter-clockwise from an edge that leaves comes metal, up to the next edge that arrives.
    let best = { angle: interiorAngle(leaving, own), arriving: own };
    for (const arriving of arrivals) {
      const angle = interiorAngle(leaving, arriving);
      if (angle < best.angle) best = { angle, arriving };
    }
    return { at: leaving.a, leaving, part, ...best };
  });
}

/** Angle counter-clockwise from the edge that leaves a vertex to the edge that arrives at it, from 0 to 2 pi. */
function interiorAngle(leaving: Edge, arriving: Edge): number {
  const out = directionAtStart(leaving);
  const back = opposite(directionAtEnd(arriving));
  const angle = turnBetween(out, back);
  if (Math.abs(angle) > TANGENT) return angle < 0 ? angle + 2 * Math.PI : angle;
  // Same direction: seen along it, the edge that curves more to the left lies to the left.
  const thin = -curvature(arriving) > curvature(leaving);
  return thin ? Math.max(0, angle) : 2 * Math.PI - Math.max(0, -angle);
}

function opposite({ dx, dy }: Vector): Vector {
  return { dx: -dx, dy: -dy };
}
