import { boxAround } from '../geometry/bounds.js';
import type { Edge, Source } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import type { Loop, Region } from '../region/region.js';
import { Discs, type Zone } from './discs.js';
import { interiorAngle, outwardCurvature, TANGENT } from './interior-angle.js';
import { namesInOrder, wallsOf } from './walls.js';

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
  const walls = wallsOf(section);
  if (walls === null) return [];
  const discs = new Discs(walls, webLimit / 2);
  return zonedKnifeEdges(section, limit, discs).map(({ zone: _, ...edge }) => edge);
}

/** A knife edge, and what has a say in it: boundary that stays outside of its zone may change. */
export interface ZonedKnifeEdge extends KnifeEdge {
  readonly zone: Zone;
}

/**
 * As `knifeEdgesOf`.
 * @param discs those of this section that are as wide as the web limit
 */
export function zonedKnifeEdges(section: Region, limit: number, discs: Discs): ZonedKnifeEdge[] {
  const wedges = wedgesOf(section).filter(({ angle }) => angle < limit);
  if (wedges.length === 0) return [];
  const numberOf = new Map<Edge, number>();
  discs.walls.list.forEach((wall, k) => {
    if (wall.shape !== 'corner') numberOf.set(wall.edge, k);
  });
  return wedges
    .map((wedge) => ({
      angle: wedge.angle,
      at: wedge.at,
      between: sourcesOf(wedge),
      ...featherOf(discs, numberOf, wedge),
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

function featherOf(
  discs: Discs,
  numberOf: Map<Edge, number>,
  { at, leaving, arriving }: Wedge,
): { feather: number | null; zone: Zone } {
  const one = numberOf.get(leaving) as number;
  const other = numberOf.get(arriving) as number;
  const { center, zone } = discs.ahead(at, { wall: one, along: 0 }, { wall: other, along: Infinity });
  const feather = center === null ? null : Math.hypot(center.x - at.x, center.y - at.y);
  return { feather, zone: [boxAround(at, 0), ...zone] };
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
      if (isSooner({ angle, arriving }, best)) best = { angle, arriving };
    }
    return { at: leaving.a, leaving, part, ...best };
  });
}

/** Whether one arriving edge comes before another on the way counter-clockwise; of tangent ones the one to the right. */
function isSooner(a: Pick<Wedge, 'angle' | 'arriving'>, b: Pick<Wedge, 'angle' | 'arriving'>): boolean {
  if (Math.abs(a.angle - b.angle) > TANGENT) return a.angle < b.angle;
  return outwardCurvature(a.arriving) < outwardCurvature(b.arriving);
}
