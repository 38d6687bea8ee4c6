import { grown } from '../geometry/bounds.js';
import type { Source } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import type { Region } from '../region/region.js';
import { discBetween } from './discs.js';
import { type Facing, neckBetween } from './necks.js';
import { type Strip, stripsBetween } from './strips.js';
import { boxOf, namesInOrder, type Wall, type Walls, wallsOf } from './walls.js';

/** A neck of metal thinner than the limit. */
export interface Web {
  /** Diameter of the largest disc of metal at its thinnest place, in the unit of the section. */
  readonly thickness: number;
  /** Middle of that disc, and the two places where it touches the boundary. */
  readonly at: Point;
  readonly ends: readonly [Point, Point];
  /** Sources of the touched edges, cuts before outlines; of a corner, that of the edge that arrives at it. */
  readonly between: readonly [Source | null, Source | null];
  /**
   * Length over which the metal stays under the limit: of the strip, and from each of its ends (or from the middle)
   * straight to the centre of the first disc as thick as the limit.
   */
  readonly length: number;
  /** Length over which the thickness is the same: between parallel or concentric faces; 0 for a single neck. */
  readonly strip: number;
  /** Which part of the section it is in. */
  readonly part: number;
}

/**
 * Every web of a section thinner than a limit, thinnest first.
 *
 * A web is a disc of metal that touches the boundary at both ends of a diameter and holds no boundary inside, where
 * the metal gets thicker to both sides or stays equal. Each is found in closed form, on the common normal of two
 * edges or reflex corners; a spatial index finds the pairs that are close enough.
 * @param limit thickness in the unit of the section, over 0
 */
export function websOf(section: Region, limit: number): Web[] {
  const walls = wallsOf(section);
  if (walls === null) return [];
  const strips: Strip[] = [];
  const necks: Facing[] = [];
  for (let i = 0; i < walls.list.length; i++) {
    for (const j of walls.near(grown(boxOf(walls.list[i] as Wall), limit))) {
      if (j <= i) continue;
      strips.push(...stripsBetween(walls, i, j, limit));
      const neck = neckBetween(walls, i, j, limit);
      if (neck !== null) necks.push(neck);
    }
  }
  const single = withoutRepeats(necks, 10 * walls.tolerance);
  return [
    ...strips.map((strip) => stripWeb(walls, strip, limit)),
    ...single.map((neck) => neckWeb(walls, neck, limit)),
  ].sort((a, b) => a.thickness - b.thickness);
}

/** One of each: where a neck ends on a joint it is found from both edges that share it. */
function withoutRepeats(necks: readonly Facing[], near: number): Facing[] {
  const sorted = [...necks].sort((a, b) => a.middle.x - b.middle.x);
  return sorted.filter((neck, k) => {
    for (let m = k - 1; m >= 0; m--) {
      const other = sorted[m] as Facing;
      if (neck.middle.x - other.middle.x > near) return true;
      if (Math.abs(neck.middle.y - other.middle.y) <= near) return false;
    }
    return true;
  });
}

function neckWeb(walls: Walls, neck: Facing, limit: number): Web {
  const length = flare(walls, neck, neck.middle, limit, true) + flare(walls, neck, neck.middle, limit, false);
  return webOf(walls, neck, length, 0);
}

function stripWeb(walls: Walls, strip: Strip, limit: number): Web {
  const back = flare(walls, strip, strip.start, limit, false);
  const ahead = flare(walls, strip, strip.end, limit, true);
  return webOf(walls, strip, back + strip.length + ahead, strip.length);
}

function webOf(walls: Walls, facing: Facing, length: number, strip: number): Web {
  const one = walls.list[facing.one] as Wall;
  const other = walls.list[facing.other] as Wall;
  const a = one.edge.source ?? null;
  const b = other.edge.source ?? null;
  const inOrder = namesInOrder(a, b);
  return {
    thickness: facing.thickness,
    at: facing.middle,
    ends: inOrder ? [facing.p, facing.q] : [facing.q, facing.p],
    between: inOrder ? [a, b] : [b, a],
    length,
    strip,
    part: one.part,
  };
}

/** How far it is from a place in a web to where the metal is as thick as the limit; 0 where it never is. */
function flare(
  walls: Walls,
  { one, other, p, q }: Facing,
  from: Point,
  limit: number,
  ahead: boolean,
): number {
  // To the right of the way from one wall to the other lies what is further along the first.
  const dx = q.y - p.y;
  const dy = -(q.x - p.x);
  const isAhead = (c: Point) => ((c.x - from.x) * dx + (c.y - from.y) * dy) * (ahead ? 1 : -1) >= 0;
  const center = ahead
    ? discBetween(walls, one, other, limit / 2, from, isAhead)
    : discBetween(walls, other, one, limit / 2, from, isAhead);
  return center === null ? 0 : Math.hypot(center.x - from.x, center.y - from.y);
}
