import { type Bounds, boxAround, grown } from '../geometry/bounds.js';
import type { Source } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import { type Tick, ticking, unwatched, type Watch } from '../geometry/watch.js';
import type { Region } from '../region/region.js';
import { Discs, type Web, type Zone, type ZonedWeb } from './discs.js';
import { type Facing, neckBetween } from './necks.js';
import { type StripRun, stripRuns } from './strip-runs.js';
import { type Strip, stripsBetween } from './strips.js';
import { touchWebs } from './touches.js';
import {
  alongWall,
  NEAR_JOINT,
  namesInOrder,
  nearestOnWall,
  ROOM_SLACK,
  type Wall,
  type Walls,
  wallsOf,
} from './walls.js';
import { type Wedge, wedgesOf } from './wedges.js';

/**
 * Every web of a section thinner than a limit, thinnest first.
 *
 * A web is a disc of metal that touches the boundary at both ends of a diameter and holds no boundary inside, where
 * the metal gets thicker to both sides or stays equal. Each is found in closed form, on the common normal of two
 * edges or reflex corners; a spatial index finds the pairs that are close enough. Where the boundary touches itself in a
 * point, that point is a web of thickness 0.
 * @param limit thickness in the unit of the section, over 0
 * @param watch told how much is done; ends the call where its signal is aborted, with the reason of that
 */
export function websOf(section: Region, limit: number, watch?: Watch): Web[] {
  const walls = wallsOf(section);
  if (walls === null) return [];
  const tick = ticking(watch);
  const webs = zonedWebs(new Discs(walls, limit / 2), wedgesOf(section), tick).map(
    ({ zone: _, ...web }) => web,
  );
  tick(1);
  return webs;
}

/**
 * As `websOf`. Webs of one thickness come in the order of their places.
 * @param discs those of the section that are as wide as the limit
 * @param wedges those of the section
 */
export function zonedWebs(discs: Discs, wedges: readonly Wedge[], tick: Tick = unwatched): ZonedWeb[] {
  const { walls } = discs;
  const limit = 2 * discs.radius;
  const strips: Strip[] = [];
  const necks: Facing[] = [];
  for (let i = 0; i < walls.list.length; i++) {
    tick(i / walls.list.length);
    const later = walls.near(grown(walls.boxes[i] as Bounds, limit)).filter((j) => j > i);
    for (const j of later.sort((a, b) => a - b)) {
      strips.push(...stripsBetween(walls, i, j, limit));
      const neck = neckBetween(walls, i, j, limit);
      if (neck !== null) necks.push(neck);
    }
  }
  const single = withoutRepeats(walls, necks, limit);
  return [
    ...stripRuns(walls, strips).map((run) => stripWeb(walls, discs, run)),
    ...single.map((neck) => neckWeb(walls, discs, neck)),
    ...touchWebs(discs, wedges),
  ].sort((a, b) => a.thickness - b.thickness || a.at.x - b.at.x || a.at.y - b.at.y);
}

/**
 * One of each: where a neck ends on a joint it is found from both edges that share it, the one that comes first is taken.
 * Between walls of nearly one bend rounding moves a neck by far more than a tolerance, until its thickness differs by
 * one; in any bend of the size of its thickness that is the root of both.
 */
function withoutRepeats(walls: Walls, necks: readonly Facing[], limit: number): Facing[] {
  const near = (thickness: number) => Math.max(10 * walls.tolerance, Math.sqrt(walls.tolerance * thickness));
  const isAlike = (one: Facing, other: Facing): boolean => {
    const by = near(Math.min(one.thickness, other.thickness));
    return (
      Math.abs(one.middle.x - other.middle.x) <= by &&
      Math.abs(one.middle.y - other.middle.y) <= by &&
      Math.abs(one.thickness - other.thickness) <= 20 * walls.tolerance
    );
  };
  const order = necks.map((_, k) => k);
  order.sort((k, m) => (necks[k] as Facing).middle.x - (necks[m] as Facing).middle.x);
  const isRepeat = necks.map(() => false);
  order.forEach((k, at) => {
    const neck = necks[k] as Facing;
    for (let next = at + 1; next < order.length; next++) {
      const m = order[next] as number;
      const other = necks[m] as Facing;
      if (other.middle.x - neck.middle.x > near(limit)) break;
      if (isAlike(neck, other)) isRepeat[Math.max(k, m)] = true;
    }
  });
  return necks.filter((_, k) => !isRepeat[k]);
}

function neckWeb(walls: Walls, discs: Discs, neck: Facing): ZonedWeb {
  const ahead = flare(walls, discs, neck, true);
  const back = flare(walls, discs, neck, false);
  const zone = [discOf(walls, neck), ...ahead.zone, ...back.zone];
  return webOf(walls, neck, ahead.length + back.length, 0, zone);
}

function stripWeb(walls: Walls, discs: Discs, run: StripRun): ZonedWeb {
  const own = run.strips.map(({ zone }) => zone);
  if (run.closed) return webOf(walls, firstNamed(walls, run), run.length, run.length, own);
  const middle = middleFacing(walls, run);
  const first = run.strips[0] as Strip;
  const last = run.strips[run.strips.length - 1] as Strip;
  const back = flare(walls, discs, facingAt(walls, first, 0), false);
  const ahead = flare(walls, discs, facingAt(walls, last, last.length), true);
  const zone = [...own, ...ahead.zone, ...back.zone];
  return webOf(walls, middle, back.length + run.length + ahead.length, run.length, zone);
}

/** The box round all that may enter the disc across a neck. */
function discOf(walls: Walls, { middle, thickness }: Facing): Bounds {
  return boxAround(middle, thickness / 2 + 2 * ROOM_SLACK * walls.tolerance);
}

/** The middle of the strip whose names come first: a run that closes has no middle of its own. */
function firstNamed(walls: Walls, { strips }: StripRun): Facing {
  const named = strips.map((strip) => {
    const facing = facingAt(walls, strip, strip.length / 2);
    const { between } = webOf(walls, facing, 0, 0, []);
    return { facing, name: between.join(' ') };
  });
  return named.reduce((first, next) => (next.name < first.name ? next : first)).facing;
}

/** Halfway along a run of strips. */
function middleFacing(walls: Walls, run: StripRun): Facing {
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

function webOf(walls: Walls, facing: Facing, length: number, strip: number, zone: Zone): ZonedWeb {
  const one = walls.list[facing.one] as Wall;
  const other = walls.list[facing.other] as Wall;
  const a = sourceAt(walls, one, facing.p);
  const b = sourceAt(walls, other, facing.q);
  const inOrder = namesInOrder(a, b);
  return {
    thickness: facing.thickness,
    at: facing.middle,
    ends: inOrder ? [facing.p, facing.q] : [facing.q, facing.p],
    between: inOrder ? [a, b] : [b, a],
    length,
    strip,
    part: one.part,
    zone,
  };
}

/**
 * What a disc touches at a place of a wall. On a joint, a corner or a smooth one, that is both of its edges, and the
 * one that comes first is named: which of them was found is a matter of rounding.
 */
function sourceAt(walls: Walls, wall: Wall, foot: Point): Source | null {
  const near = NEAR_JOINT * walls.tolerance;
  const isAt = (p: Point) => Math.hypot(p.x - foot.x, p.y - foot.y) <= near;
  const source = (k: number) => (walls.list[k] as Wall).edge.source ?? null;
  // The edge of a corner is the one that arrives at it.
  const others = [
    ...(wall.shape === 'corner' || isAt(wall.edge.b) ? [source(leavingAt(walls, wall))] : []),
    ...(wall.shape !== 'corner' && isAt(wall.edge.a) ? [source(wall.before)] : []),
  ];
  const own = wall.edge.source ?? null;
  return others.reduce((first, other) => (namesInOrder(first, other) ? first : other), own);
}

/** The wall of the edge that leaves the joint at the end of a wall: the next one that is no corner. */
function leavingAt(walls: Walls, { after }: Wall): number {
  const next = walls.list[after] as Wall;
  return next.shape === 'corner' ? next.after : after;
}

/** How far it is from a place in a web to where the metal is as thick as the limit; 0 where it never is. */
function flare(
  walls: Walls,
  discs: Discs,
  { one, other, middle }: Facing,
  ahead: boolean,
): { length: number; zone: Zone } {
  const p = { wall: one, along: alongWall(walls.list[one] as Wall, middle) };
  const q = { wall: other, along: alongWall(walls.list[other] as Wall, middle) };
  const { center, zone } = ahead ? discs.ahead(middle, p, q) : discs.ahead(middle, q, p);
  return { length: center === null ? 0 : Math.hypot(center.x - middle.x, center.y - middle.y), zone };
}
