import {
  area,
  type CenterPass,
  type CenterPath,
  centerPath,
  contains,
  type Edge,
  edgesOfPass,
  gouges,
  intersect,
  nearestOnEdge,
  offset,
  type Point,
  perimeter,
  pointAlong,
  type Region,
  subtract,
  sweptRegion,
  type Unreached,
  union,
  unreached,
  xor,
} from '@edgebite/core';
import { edgesOf } from '@edgebite/core/testing';
import { type PathCase, sizeOf } from './path-cases.js';

/** Places along every edge at which distances are taken. */
const SHARES = [0, 0.13, 0.29, 0.5, 0.71, 0.83, 1];

/** What the check has measured, lengths as shares of the size. */
export interface PathMeasures {
  /** How far the path is at most from its distance to the outline. */
  readonly off: number;
  /** How far a lead comes too near at most. */
  readonly leadOff: number;
  /** Mean thickness of what is between what is left and what should be. */
  readonly leftOff: number;
  readonly passes: number;
  readonly places: number;
  readonly unreached: number;
}

/** Most that the path may be off its distance from the outline, as a share of the size. */
const OFF = 1e-9;

/** Most that what is left may differ from what should be left, as mean thickness along all its edges. */
const LEFT_OFF = 1e-9;

/** What the library makes of a case. */
export interface PathAnswer {
  /** With leads where these fit; null where the tool fits nowhere. */
  readonly path: CenterPath | null;
  readonly bare: CenterPath | null;
  readonly left: readonly Unreached[];
}

/** Asks the library. */
export function answerTo(one: PathCase): PathAnswer {
  const path = pathOf(one);
  const bare = path === null ? null : centerPath(one.region, { ...one, lead: 'none' });
  return { path, bare, left: unreached(one.region, one.radius, one) };
}

/**
 * Puts the paths of a case to the test with distances to the given edges, and with regions for what is left.
 * @returns null where there is no path, and rightly so
 * @throws Error that says what is wrong.
 */
export function checkPath(
  one: PathCase,
  { path, bare, left }: PathAnswer = answerTo(one),
): PathMeasures | null {
  if (path === null || bare === null) {
    checkNowhere(one, left);
    return null;
  }
  const size = sizeOf(one);
  let off = 0;
  let leadOff = 0;
  for (const pass of [...path.passes, ...bare.passes]) {
    checkChain(pass);
    off = Math.max(off, checkDistance(one, pass) / size);
    leadOff = Math.max(leadOff, checkLeads(one, pass) / size);
  }
  return {
    off,
    leadOff,
    leftOff: checkLeft(one, bare, left) / size,
    passes: bare.passes.length,
    places: checkTouched(one, bare, left),
    unreached: left.length,
  };
}

/** Outside of a part there is always a path; inside, there is none if nothing can be reached. */
function checkNowhere({ region, allowance, side }: PathCase, left: readonly Unreached[]): void {
  const reachable = area(offset(region, -allowance)) - left.reduce((sum, place) => sum + place.area, 0);
  if (side === 'outside' || reachable > 1e-3 * area(region)) {
    throw new Error(`there is no path, and yet the tool would reach ${reachable}`);
  }
}

/** The paths of a case, with leads where these fit; null where the tool fits nowhere. */
export function pathOf(one: PathCase): CenterPath | null {
  for (const lead of ['largest', 'none'] as const) {
    try {
      return centerPath(one.region, { ...one, lead });
    } catch (error) {
      const known = error instanceof Error && error.name === 'LeadError';
      if (known) continue;
      if (error instanceof RangeError && error.message.includes('fits nowhere')) return null;
      throw error;
    }
  }
  throw new Error('no path even without leads');
}

function checkChain(pass: CenterPass): void {
  const edges = edgesOfPass(pass);
  edges.forEach((edge, k) => {
    const next = edges[k + 1];
    if (next !== undefined && (next.a.x !== edge.b.x || next.a.y !== edge.b.y))
      throw new Error(`a gap after edge ${k}`);
  });
  const [first, last] = [pass.cut[0] as Edge, pass.cut[pass.cut.length - 1] as Edge];
  const closes = first.a.x === last.b.x && first.a.y === last.b.y;
  if (closes !== pass.closed) throw new Error('closed is wrong');
}

/** Every place of the cut is as far from the outline as it should be, on the right side, what stays on the right hand. */
function checkDistance(one: PathCase, { cut }: CenterPass): number {
  const size = sizeOf(one);
  const wanted = one.radius + one.allowance;
  const edges = edgesOf(one.region);
  let off = 0;
  for (const edge of cut) {
    for (const share of SHARES) {
      const p = pointAlong(edge, share);
      const nearest = nearestOf(edges, p);
      const error = Math.abs(nearest.distance - wanted);
      off = Math.max(off, error);
      if (error > OFF * size)
        throw new Error(`(${p.x}, ${p.y}) of the path is off by ${error / size} of the size`);
    }
    const p = pointAlong(edge, 0.5);
    if (wanted > 1e-7 * size && contains(one.region, p) !== one.side) {
      throw new Error(`(${p.x}, ${p.y}) of the path is on the wrong side`);
    }
    const ahead = pointAlong(edge, 0.500001);
    const { at } = nearestOf(edges, p);
    const turn = (ahead.x - p.x) * (at.y - p.y) - (ahead.y - p.y) * (at.x - p.x);
    const straight = Math.hypot(ahead.x - p.x, ahead.y - p.y) * wanted;
    if (Math.hypot(ahead.x - p.x, ahead.y - p.y) < 1e-9 * size) continue;
    // Climbing, with a spindle that turns clockwise: the metal on the right hand.
    if (Math.abs(turn) > 0.5 * straight && turn < 0 !== (one.milling === 'climb')) {
      throw new Error(`(${p.x}, ${p.y}) of the path runs the wrong way`);
    }
  }
  return off;
}

function nearestOf(edges: readonly Edge[], p: Point): { at: Point; distance: number } {
  let best = { at: p, distance: Infinity };
  for (const edge of edges) {
    const nearest = nearestOnEdge(edge, p);
    if (nearest.distance < best.distance) best = nearest;
  }
  return best;
}

/** No lead comes nearer than the cut does; by sampled places, and by the check of the library. */
function checkLeads(one: PathCase, pass: CenterPass): number {
  const size = sizeOf(one);
  const edges = edgesOf(one.region);
  const wanted = one.radius + one.allowance;
  let off = 0;
  for (const edge of [...pass.leadIn, ...pass.leadOut]) {
    for (let k = 0; k <= 40; k += 1) {
      const p = pointAlong(edge, k / 40);
      const short = wanted - nearestOf(edges, p).distance;
      off = Math.max(off, short);
      if (short > 4 * OFF * size) throw new Error(`(${p.x}, ${p.y}) of a lead is ${short} too near`);
    }
  }
  const found = gouges(edgesOfPass(pass), wanted, one.region, { side: one.side });
  if (found.length > 0)
    throw new Error(`a pass gouges ${found[0]?.depth} deep at ${JSON.stringify(found[0]?.at)}`);
  return off;
}

/** Every place of the outline is touched by the path, or named among the stretches that are not. */
function checkTouched(one: PathCase, { passes }: CenterPath, left: readonly Unreached[]): number {
  const size = sizeOf(one);
  const wanted = one.radius + one.allowance;
  const edges = edgesOf(one.region);
  const path = passes.flatMap(({ cut }) => cut);
  const untouched = left.flatMap(({ along }) => along);
  let places = 0;
  for (const edge of edges) {
    for (const share of [0.11, 0.37, 0.5, 0.73]) {
      const p = pointAlong(edge, share);
      const center = beside(edge, p, one.side === 'outside' ? wanted : -wanted);
      const near = nearestOf(edges, center).distance;
      const room = contains(one.region, center) === one.side ? near - wanted : -near - wanted;
      // So near to touching, rounding decides; a tool that only just fits in is taken not to.
      if (Math.abs(room) < 1e-7 * size) continue;
      places += 1;
      if (room > 0) {
        const away = nearestOf(path, center).distance;
        if (away > 4 * OFF * size)
          throw new Error(`(${p.x}, ${p.y}) of the outline is ${away} from being touched`);
        continue;
      }
      const out = one.side === 'outside' ? 1 : -1;
      const grown = beside(edge, p, out * one.allowance);
      // Just beyond, so that a gap as wide as both allowances counts as closed.
      const beyond = beside(edge, p, out * (one.allowance + 1e-8 * size));
      const isKept =
        one.allowance === 0 ||
        (contains(one.region, beyond) === one.side && nearestOf(edges, beyond).distance > one.allowance);
      const away = nearestOf(untouched, grown).distance;
      if (isKept && away > 1e-8 * size)
        throw new Error(`(${p.x}, ${p.y}) is not touched, and not named (${away})`);
    }
  }
  return places;
}

/** The place to the right of an edge, out of the metal, if the distance is over 0. */
function beside(edge: Edge, p: Point, distance: number): Point {
  if (edge.kind === 'arc') {
    const scale = (edge.ccw ? distance : -distance) / edge.radius;
    return { x: p.x + (p.x - edge.center.x) * scale, y: p.y + (p.y - edge.center.y) * scale };
  }
  const length = Math.hypot(edge.b.x - edge.a.x, edge.b.y - edge.a.y);
  return {
    x: p.x + ((edge.b.y - edge.a.y) / length) * distance,
    y: p.y - ((edge.b.x - edge.a.x) / length) * distance,
  };
}

/** What the tool leaves of a stock that it can cut in one go is the outline and what it cannot reach. */
function checkLeft(one: PathCase, { passes }: CenterPath, left: readonly Unreached[]): number {
  const swept = passes.map(({ cut }) => sweptRegion(cut, one.radius));
  const places = left.map(({ region }) => region);
  const out = one.side === 'outside' ? 1 : -1;
  const kept = one.allowance > 0 ? offset(one.region, out * one.allowance) : one.region;
  const band = offset(one.region, out * (one.allowance + 1.9 * one.radius));
  const [got, wanted]: [Region, Region] =
    one.side === 'outside'
      ? [subtract(band, swept), union([kept, ...places])]
      : [subtract(kept, [band, ...swept]), union(places)];
  const wrong = xor([got, wanted]);
  const gouged = one.side === 'outside' ? intersect([kept, union(swept)]) : subtract(union(swept), [kept]);
  const length = perimeter(kept) + perimeter(got);
  const off = Math.max(area(wrong), area(gouged)) / length;
  if (off > LEFT_OFF * sizeOf(one)) {
    throw new Error(
      `left over: ${area(wrong)} wrong, ${area(gouged)} gouged, ${off / sizeOf(one)} thick on average`,
    );
  }
  return off;
}
