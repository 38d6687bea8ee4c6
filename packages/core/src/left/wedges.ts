import { boxAround } from '../geometry/bounds.js';
import type { Edge } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import { PointMap } from '../region/point-map.js';
import type { Loop, Region } from '../region/region.js';
import type { Discs, Zone } from './discs.js';
import { interiorAngle, outwardCurvature, TANGENT } from './interior-angle.js';
import type { Walls } from './walls.js';

/** One wedge of metal at a vertex. */
export interface Wedge {
  readonly at: Point;
  readonly leaving: Edge;
  readonly arriving: Edge;
  readonly part: number;
  readonly angle: number;
}

/** The interior angles at all vertices of a section, in radians, smooth ones included. */
export function interiorAngles(section: Region): number[] {
  return wedgesOf(section).map(({ angle }) => angle);
}

/** By edge, its number among the walls. */
export function edgeWalls(walls: Walls): Map<Edge, number> {
  const numberOf = new Map<Edge, number>();
  walls.list.forEach((wall, k) => {
    if (wall.shape !== 'corner') numberOf.set(wall.edge, k);
  });
  return numberOf;
}

/** How far it is from the tip of a wedge to the first disc of metal; null where the metal is never that thick. */
export function featherOf(
  discs: Discs,
  numberOf: ReadonlyMap<Edge, number>,
  { at, leaving, arriving }: Wedge,
): { feather: number | null; disc: Point | null; zone: Zone } {
  const one = numberOf.get(leaving) as number;
  const other = numberOf.get(arriving) as number;
  const { center, zone } = discs.ahead(at, { wall: one, along: 0 }, { wall: other, along: Infinity });
  const feather = center === null ? null : Math.hypot(center.x - at.x, center.y - at.y);
  return { feather, disc: center, zone: [boxAround(at, 0), ...zone] };
}

/** All wedges of metal, one for each vertex of each loop. */
export function wedgesOf(section: Region): Wedge[] {
  const wedges: Wedge[] = [];
  section.forEach((part, number) => {
    const joints = new PointMap<Joint[]>();
    for (const loop of [part.outer, ...part.holes]) collectJoints(joints, loop);
    for (const here of joints.values()) addWedgesAt(wedges, here, number);
  });
  return wedges;
}

/** Where two edges of a loop meet. */
interface Joint {
  readonly arriving: Edge;
  readonly leaving: Edge;
}

function collectJoints(joints: PointMap<Joint[]>, loop: Loop): void {
  loop.forEach((leaving, k) => {
    const arriving = loop[(k + loop.length - 1) % loop.length] as Edge;
    joints.at(leaving.a, () => []).push({ arriving, leaving });
  });
}

function addWedgesAt(wedges: Wedge[], joints: readonly Joint[], part: number): void {
  for (const { leaving, arriving: own } of joints) {
    // Counter-clockwise from an edge that leaves comes metal, up to the next edge that arrives.
    let best = { angle: interiorAngle(leaving, own), arriving: own };
    for (const { arriving } of joints) {
      if (arriving === own) continue;
      const angle = interiorAngle(leaving, arriving);
      if (isSooner({ angle, arriving }, best)) best = { angle, arriving };
    }
    wedges.push({ at: leaving.a, leaving, arriving: best.arriving, part, angle: best.angle });
  }
}

/** Whether one arriving edge comes before another on the way counter-clockwise; of tangent ones the one to the right. */
function isSooner(a: Pick<Wedge, 'angle' | 'arriving'>, b: Pick<Wedge, 'angle' | 'arriving'>): boolean {
  if (Math.abs(a.angle - b.angle) > TANGENT) return a.angle < b.angle;
  return outwardCurvature(a.arriving) < outwardCurvature(b.arriving);
}
