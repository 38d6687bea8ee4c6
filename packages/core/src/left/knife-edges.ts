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
 * Every vertex of a section whose interior angle is under a limit, sharpest first, then by feather and names, so that it
 * does not matter how the drawing lies. Where loops of a part touch,
 * each wedge of metal between neighbouring edges counts for itself.
 * @param limit angle in radians
 * @param webLimit thickness that the feather is measured to
 */
export function knifeEdgesOf(section: Region, limit: number, webLimit: number): KnifeEdge[] {
  const walls = wallsOf(section);
  if (walls === null) return [];
  const discs = new Discs(walls, webLimit / 2);
  return zonedKnifeEdges(wedgesOf(section), limit, discs).map(
    ({ zone: _, wedge: __, disc: ___, ...edge }) => edge,
  );
}

/** A knife edge, and what has a say in it: boundary that stays outside of its zone may change. */
export interface ZonedKnifeEdge extends KnifeEdge {
  readonly zone: Zone;
  /** The two edges that meet there, as far as they go. */
  readonly wedge: Wedge;
  /** Centre of the disc that the feather is measured to; null where there is none. */
  readonly disc: Point | null;
}

/**
 * As `knifeEdgesOf`.
 * @param all wedges of the section
 * @param discs those of this section that are as wide as the web limit
 */
export function zonedKnifeEdges(all: readonly Wedge[], limit: number, discs: Discs): ZonedKnifeEdge[] {
  const wedges = all.filter(({ angle }) => angle < limit);
  if (wedges.length === 0) return [];
  const numberOf = edgeWalls(discs.walls);
  return wedges
    .map((wedge) => ({
      angle: wedge.angle,
      at: wedge.at,
      between: sourcesOf(wedge),
      ...featherOf(discs, numberOf, wedge),
      part: wedge.part,
      wedge,
    }))
    .sort(
      (a, b) =>
        sharperFirst(a, b) ||
        longerFirst(a, b, SAME_FEATHER * discs.walls.tolerance) ||
        inNames(a, b) ||
        a.at.x - b.at.x ||
        a.at.y - b.at.y,
    );
}

/** Angles that lie in one step of so many radians are one: a bite has the same at both its ends, but for rounding. */
const SAME_ANGLE = 1e-9;

/** Feathers that lie in one step of so many tolerances are one. */
const SAME_FEATHER = 64;

/** Which of two knife edges is sharper; 0 where rounding alone tells them apart. */
export function sharperFirst(a: Pick<KnifeEdge, 'angle'>, b: Pick<KnifeEdge, 'angle'>): number {
  return inSteps(a.angle, b.angle, SAME_ANGLE);
}

/** Which of two numbers is smaller, in steps; the same wherever a drawing lies, but for one in many millions. */
function inSteps(a: number, b: number, step: number): number {
  return Math.round(a / step) - Math.round(b / step);
}

/** Of two that are as sharp the one that is thin for longer, first of all the one that never gets thick. */
function longerFirst({ feather: a }: KnifeEdge, { feather: b }: KnifeEdge, step: number): number {
  if (a === null || b === null) return (a === null ? 0 : 1) - (b === null ? 0 : 1);
  return inSteps(b, a, step);
}

function inNames({ between: a }: KnifeEdge, { between: b }: KnifeEdge): number {
  const [one, other] = [a.join(' '), b.join(' ')];
  return one === other ? 0 : one < other ? -1 : 1;
}

function sourcesOf(wedge: Wedge): [Source | null, Source | null] {
  const [a, b] = [wedge.leaving.source ?? null, wedge.arriving.source ?? null];
  return isLeavingFirst(wedge) ? [a, b] : [b, a];
}

/** Whether the edge that leaves a tip is named before the one that arrives there. */
export function isLeavingFirst({ leaving, arriving }: Wedge): boolean {
  return namesInOrder(leaving.source ?? null, arriving.source ?? null);
}
