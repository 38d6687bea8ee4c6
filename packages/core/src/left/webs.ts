import { type Bounds, grown } from '../geometry/bounds.js';
import type { Source } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import type { Region } from '../region/region.js';
import { discAhead } from './discs.js';
import { type Facing, neckBetween } from './necks.js';
import { type StripRun, stripRuns } from './strip-runs.js';
import { type Strip, stripsBetween } from './strips.js';
import { alongWall, namesInOrder, nearestOnWall, type Wall, type Walls, wallsOf } from './walls.js';

/** A neck of metal thinner than the limit. */
export interface Web {
  /** Diameter of the largest disc of metal at its thinnest place, in the unit of the section. */
  readonly thickness: number;
  /** Middle of that disc, and the two places where it touches the boundary. */
  readonly at: Point;
  readonly ends: readonly [Point, Point];
  /** Sources of the touched edges, cuts before outlines; a corner has that of the first of its edges in that order. */
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
    for (const j of walls.near(grown(walls.boxes[i] as Bounds, limit))) {
      if (j <= i) continue;
      strips.push(...stripsBetween(walls, i, j, limit));
      const neck = neckBetween(walls, i, j, limit);
      if (neck !== null) necks.push(neck);
    }
  }
  const single = withoutRepeats(necks, 10 * walls.tolerance);
  return [
    ...stripRuns(walls, strips).map((run) => stripWeb(walls, run, limit)),
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
  return webOf(walls, neck, flare(walls, neck, limit, true) + flare(walls, neck, limit, false), 0);
}

function stripWeb(walls: Walls, run: StripRun, limit: number): Web {
  const middle = middleOf(walls, run);
  if (run.closed) return webOf(walls, middle, run.length, run.length);
  const first = run.strips[0] as Strip;
  const last = run.strips[run.strips.length - 1] as Strip;
  const back = flare(walls, facingAt(walls, first, 0), limit, false);
  const ahead = flare(walls, facingAt(walls, last, last.length), limit, true);
  return webOf(walls, middle, back + run.length + ahead, run.length);
}

/** Halfway along a run of strips. */
function middleOf(walls: Walls, run: StripRun): Facing {
  let rest = run.length / 2;
  for (const strip of run.strips) {
    if (rest <= strip.length) return facingAt(walls, strip, rest);
    rest -= strip.length;
  }
  const last = run.strips[run.strips.length - 1] as Strip;
  return facingAt(walls, last, last.length);
}

function facingAt(walls: Walls, { one, other, thickness, at }: Strip, s: number): Facing {
  const middle = at(s);
  const p = nearestOnWall(walls.list[one] as Wall, middle).at;
  const q = nearestOnWall(walls.list[other] as Wall, middle).at;
  return { one, other, p, q, middle, thickness };
}

function webOf(walls: Walls, facing: Facing, length: number, strip: number): Web {
  const one = walls.list[facing.one] as Wall;
  const other = walls.list[facing.other] as Wall;
  const a = sourceOf(walls, one);
  const b = sourceOf(walls, other);
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

/** What a wall came from; a corner is named after the one of its two edges that comes first. */
function sourceOf(walls: Walls, wall: Wall): Source | null {
  const arriving = wall.edge.source ?? null;
  if (wall.shape !== 'corner') return arriving;
  const leaving = (walls.list[wall.after] as Wall).edge.source ?? null;
  return namesInOrder(arriving, leaving) ? arriving : leaving;
}

/** How far it is from a place in a web to where the metal is as thick as the limit; 0 where it never is. */
function flare(walls: Walls, { one, other, middle }: Facing, limit: number, ahead: boolean): number {
  const p = { wall: one, along: alongWall(walls.list[one] as Wall, middle) };
  const q = { wall: other, along: alongWall(walls.list[other] as Wall, middle) };
  const center = ahead
    ? discAhead(walls, middle, p, q, limit / 2)
    : discAhead(walls, middle, q, p, limit / 2);
  return center === null ? 0 : Math.hypot(center.x - middle.x, center.y - middle.y);
}
