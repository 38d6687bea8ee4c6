import type { ArcEdge, Edge } from '../geometry/edge.js';
import { pointAlong, sweep } from '../geometry/measure.js';
import { distance, type Point, samePoint } from '../geometry/point.js';
import { shownNumber, shownPoint } from '../geometry/shown.js';

/** The grid that written numbers lie on. */
export interface Grid {
  readonly decimals: number;
  /** Steps of the grid to one unit. */
  readonly perUnit: number;
  /** How far the ends of an arc may differ in their distance from its centre, in steps. */
  readonly tolerance: number;
}

/** One block: to a place on the grid, in whole steps; for an arc with the steps from its start to its centre. */
export type Move =
  | { readonly kind: 'line'; readonly to: Point }
  | {
      readonly kind: 'arc';
      readonly to: Point;
      readonly i: number;
      readonly j: number;
      readonly ccw: boolean;
      /** Difference between the distances of its ends from its centre, in steps. */
      readonly error: number;
    };

/** The grid of so many decimals. */
export function gridOf(decimals: number, tolerance: number | undefined): Grid {
  const perUnit = 10 ** decimals;
  return { decimals, perUnit, tolerance: tolerance === undefined ? 1 : tolerance * perUnit };
}

/**
 * A number in whole steps of a grid.
 * @throws RangeError if it is not finite, or has more steps than a number can count.
 */
export function onGrid(value: number, { perUnit, decimals }: Grid): number {
  const steps = Math.round(value * perUnit);
  if (Number.isSafeInteger(steps)) return steps + 0;
  throw new RangeError(
    `isoWords: ${value} cannot be written with ${decimals} decimals; use fewer, or larger units`,
  );
}

function placeOnGrid(p: Point, grid: Grid): Point {
  return { x: onGrid(p.x, grid), y: onGrid(p.y, grid) };
}

/**
 * The blocks of a chain of edges.
 * @param where names the chain in errors
 * @throws RangeError if an arc cannot be written as exactly as asked for.
 */
export function movesFor(
  path: readonly Edge[],
  grid: Grid,
  splits: boolean,
  where: string,
): { start: Point; moves: Move[] } {
  const start = placeOnGrid((path[0] as Edge).a, grid);
  const moves: Move[] = [];
  let from = start;
  for (const [k, edge] of path.entries()) {
    for (const part of edge.kind === 'arc' && splits ? halves(edge) : [edge]) {
      const to = placeOnGrid(part.b, grid);
      const pieces =
        part.kind === 'arc' ? arcMoves(part, from, to, grid, `${where}: edge ${k}`) : lineMoves(from, to);
      moves.push(...pieces);
      from = to;
    }
  }
  return { start, moves };
}

function lineMoves(from: Point, to: Point): Move[] {
  return samePoint(from, to) ? [] : [{ kind: 'line', to }];
}

/** An arc over half a turn as two. */
function halves(arc: ArcEdge): ArcEdge[] {
  if (sweep(arc) <= Math.PI) return [arc];
  const middle = pointAlong(arc, 0.5);
  return [
    { ...arc, b: middle },
    { ...arc, a: middle },
  ];
}

/** Steps by which a written arc may be longer or shorter than the edge: its ends and its centre are all rounded. */
const LENGTH_OFF = 8;

/** Radians by which its turn may be off; what is further off has become another arc, or a full turn. */
const TURN_OFF = 1;

/** Radians from which on a reader may take a turn for none: both ends lie in one direction from the centre. */
const NO_TURN = 2 * Math.PI - 1e-9;

/** Steps by which the middle of a written arc over half a turn may be moved; beyond, it is written as two. */
const MOST_MOVED = 3;

/** An arc that rises above its chord by less than these steps may be written as the chord. */
const FLAT = 1;

function arcMoves(arc: ArcEdge, from: Point, to: Point, grid: Grid, where: string): Move[] {
  const turn = sweep(arc);
  if (samePoint(from, to)) {
    // Short of a full turn by less than a step: two arcs, since one to its own start would be all or nothing.
    if (turn > Math.PI) return splitInTwo(arc, from, to, grid, where);
    return [];
  }
  const written = centerFor(arc, from, to, grid);
  const writtenTurn = turnOf(arc.ccw, from, to, written);
  const off = Math.abs(writtenTurn - turn);
  const isAlike = off <= TURN_OFF && off * arc.radius * grid.perUnit <= LENGTH_OFF;
  // The far side of an arc over half a turn moves by more than its centre; in two it stays where it is.
  const strays =
    turn > Math.PI && (writtenTurn >= NO_TURN || middleMovedBy(arc, from, to, written, grid) > MOST_MOVED);
  if (written.error <= grid.tolerance && isAlike && !strays) {
    return [
      { kind: 'arc', to, i: written.x - from.x, j: written.y - from.y, ccw: arc.ccw, error: written.error },
    ];
  }
  const rise = arc.radius * grid.perUnit * (1 - Math.cos(Math.min(turn, Math.PI) / 2));
  if (rise < FLAT) return lineMoves(from, to);
  // A gap of a few steps leaves a nearly full turn no even centre; each half of it has one.
  if (turn > Math.PI) return splitInTwo(arc, from, to, grid, where);
  throw new RangeError(
    `isoWords: ${where}, an arc of radius ${shownNumber(arc.radius)} from ${shownPoint(arc.a)}, cannot be written ` +
      `with ${grid.decimals} decimals so that its ends are equally far from its centre to ` +
      `${shownNumber(grid.tolerance / grid.perUnit)}; use more decimals or a larger tolerance`,
  );
}

function splitInTwo(arc: ArcEdge, from: Point, to: Point, grid: Grid, where: string): Move[] {
  const middle = pointAlong(arc, 0.5);
  const far = placeOnGrid(middle, grid);
  if (samePoint(far, from)) return [];
  return [
    ...arcMoves({ ...arc, b: middle }, from, far, grid, where),
    ...arcMoves({ ...arc, a: middle }, far, to, grid, where),
  ];
}

/** A centre on the grid, and by how many steps it is nearer to one end than to the other. */
interface GridCenter extends Point {
  readonly error: number;
}

/** How far around a place the grid is searched, in steps either way. */
const AROUND = 2;

/**
 * A place of the grid that is as nearly as possible as far from one end as from the other: near the true centre; if
 * none there is even enough, near the place where the rounded ends would have it. On a short arc of a large radius
 * that is many steps off along the chord, which moves no place of the arc by more than half the difference of the radii.
 * A longer arc would be moved as a whole.
 */
function centerFor(arc: ArcEdge, from: Point, to: Point, grid: Grid): GridCenter {
  const strayOf = (center: Point) => strayAt(arc, from, to, center, grid);
  const near = mostEven(placeOnGrid(arc.center, grid), from, to, strayOf);
  if (near.error <= grid.tolerance || sweep(arc) > Math.PI) return near;
  const even = mostEven(onBisector(near, from, to), from, to, strayOf);
  return even.error < near.error ? even : near;
}

/** The whole place that lies nearest to a centre among those that are as far from one end as from the other. */
function onBisector(center: Point, from: Point, to: Point): Point {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const along = dx * (from.x + to.x - 2 * center.x) + dy * (from.y + to.y - 2 * center.y);
  const by = along / (2 * (dx * dx + dy * dy));
  return { x: Math.round(center.x + by * dx), y: Math.round(center.y + by * dy) };
}

/** The best place within a few steps of one on the grid. */
function mostEven({ x, y }: Point, from: Point, to: Point, strayOf: (center: Point) => number): GridCenter {
  let best: (GridCenter & { readonly cost: number }) | null = null;
  for (let dx = -AROUND; dx <= AROUND; dx++) {
    for (let dy = -AROUND; dy <= AROUND; dy++) {
      const center = { x: x + dx, y: y + dy };
      const error = unevenness(center.x, center.y, from, to);
      const least = error + CLOSER * Math.hypot(dx, dy);
      if (best !== null && least >= best.cost) continue;
      const cost = least + Math.max(0, strayOf(center) - STRAY);
      if (best === null || cost < best.cost) best = { ...center, error, cost };
    }
  }
  return best as GridCenter;
}

/** What a step away from that place weighs against a step of difference between the radii. */
const CLOSER = 0.1;

/**
 * Steps by which a written arc may stray from the edge at no cost: its ends are rounded by up to 0.7 each, and so is
 * its centre. Beyond, a step weighs as much as one of difference between the radii: a long arc moves by up to twice as
 * much as its centre.
 */
const STRAY = 1.5;

/** Shares of an arc at which it is looked at, besides its ends. */
const LOOKED_AT = [0.25, 0.5, 0.75];

/** How far an arc with a written centre strays from the edge between its ends, in steps. */
function strayAt(arc: ArcEdge, from: Point, to: Point, center: Point, { perUnit }: Grid): number {
  const turn = turnOf(arc.ccw, from, to, center) * (arc.ccw ? 1 : -1);
  const start = Math.atan2(from.y - center.y, from.x - center.x);
  const first = Math.hypot(from.x - center.x, from.y - center.y);
  const last = Math.hypot(to.x - center.x, to.y - center.y);
  const strays = LOOKED_AT.map((share) => {
    const radius = first + share * (last - first);
    const x = center.x + radius * Math.cos(start + share * turn);
    const y = center.y + radius * Math.sin(start + share * turn);
    const away = Math.hypot(x - arc.center.x * perUnit, y - arc.center.y * perUnit);
    return Math.abs(away - arc.radius * perUnit);
  });
  return Math.max(...strays);
}

/** How far the middle of an arc is moved where it is written with a centre of the grid, in steps. */
function middleMovedBy(arc: ArcEdge, from: Point, to: Point, center: Point, { perUnit }: Grid): number {
  const half = (turnOf(arc.ccw, from, to, center) / 2) * (arc.ccw ? 1 : -1);
  const angle = Math.atan2(from.y - center.y, from.x - center.x) + half;
  const radius = (distance(center, from) + distance(center, to)) / 2;
  const middle = pointAlong(arc, 0.5);
  const dx = center.x + radius * Math.cos(angle) - middle.x * perUnit;
  const dy = center.y + radius * Math.sin(angle) - middle.y * perUnit;
  return Math.hypot(dx, dy);
}

function unevenness(x: number, y: number, from: Point, to: Point): number {
  const near = Math.hypot(from.x - x, from.y - y);
  const far = Math.hypot(to.x - x, to.y - y);
  // The difference of the squares is exact in whole numbers, that of large roots is not.
  const squares = (from.x - to.x) * (from.x + to.x - 2 * x) + (from.y - to.y) * (from.y + to.y - 2 * y);
  return near + far === 0 ? 0 : Math.abs(squares / (near + far));
}

/** The turn from one place to another round a centre, as a reader of the block takes it; radians. */
function turnOf(ccw: boolean, from: Point, to: Point, center: Point): number {
  const ux = from.x - center.x;
  const uy = from.y - center.y;
  const vx = to.x - center.x;
  const vy = to.y - center.y;
  const angle = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy) * (ccw ? 1 : -1);
  return angle > 0 ? angle : angle + 2 * Math.PI;
}
