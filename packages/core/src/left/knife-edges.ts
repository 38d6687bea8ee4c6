import type { Source } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import type { Region } from '../region/region.js';
import { Discs, type Zone } from './discs.js';
import { namesInOrder, wallsOf } from './walls.js';
import { edgeWalls, featherOf, type Wedge, wedgesOf } from './wedges.js';

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
  const numberOf = edgeWalls(discs.walls);
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

function sourcesOf({ leaving, arriving }: Wedge): [Source | null, Source | null] {
  const a = leaving.source ?? null;
  const b = arriving.source ?? null;
  return namesInOrder(a, b) ? [a, b] : [b, a];
}
