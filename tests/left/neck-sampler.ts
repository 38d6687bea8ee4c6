import type { Edge, Point, Region } from '@edgebite/core';
import {
  type Chain,
  chainsOf,
  isPastEnd,
  mod,
  nameOf,
  type Piece,
  placeOn,
  shareAt,
  sharesOf,
  tipsOf,
} from './sampler-chains.js';
import {
  along,
  distanceTo,
  gap,
  type Obstacle,
  obstacleOf,
  ownRadius,
  toEdge,
  toPoint,
} from './sampler-edges.js';

/*
 * Webs found by another road than the library's. From a place on the boundary the largest disc of metal that touches
 * the boundary there is blown up until it touches anything else; its radius as a function of the place is sampled
 * along every loop. Where that function has a minimum, and the disc touches at the opposite end of its diameter too,
 * there is a neck; where it keeps its value with the disc moving on, there is a strip. (Shrinking-ball view of the
 * medial axis, from memory.) Nothing is shared with the code under test: no joints by index, no pairs of edges, no
 * closed form for a pair, no second derivatives.
 */

/** A disc that touches the boundary at `foot`. */
export interface Blown {
  readonly foot: Point;
  readonly normal: Point;
  readonly radius: number;
  readonly center: Point;
}

/** A neck or strip as sampled. */
export interface SampledNeck {
  readonly thickness: number;
  readonly center: Point;
  readonly foot: Point;
  /** How far the disc travels at the same thickness; 0 for a neck. */
  readonly strip: number;
}

/** A place on a chain: the whole part of `t` is the piece, the rest the share along it. */
export interface Spot {
  readonly chain: Chain;
  readonly t: number;
}

/** A strip as followed from a place in it: where its middle ends either way along the boundary. */
export interface StripSeen {
  readonly length: number;
  readonly looped: boolean;
  readonly back: Point;
  readonly ahead: Point;
}

/** Samples nearer than this share of the extent to their own foot see themselves. */
const SELF = 1e-6;

/** Golden sections find the lowest place of a flat bottom to about this share of the extent. */
const LOWEST = 3e-6;

/** At the top of a bulge discs keep their size but for rounding along about this share of the extent. */
const SHORTEST = 1e-4;

/** The boundary of a section, ready to be sampled. */
export class Boundary {
  readonly chains: readonly Chain[];
  readonly extent: number;
  /** What radii may be off by: a million millionth of the extent, more where coordinates are large. */
  readonly rounding: number;
  private readonly edges: readonly Edge[];
  /** By edge: those it goes over into without a tip of metal between. */
  private readonly kin: readonly ReadonlySet<number>[];
  private readonly obstacles: readonly Obstacle[];
  private readonly corners: readonly { readonly at: Point; readonly isTip: boolean }[];

  constructor(readonly region: Region) {
    const loops = region.flatMap((part) => [part.outer, ...part.holes]);
    this.edges = loops.flat();
    const xs = this.edges.flatMap(({ a, b }) => [a.x, b.x]);
    const ys = this.edges.flatMap(({ a, b }) => [a.y, b.y]);
    this.extent = Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
    const numberOf = new Map(this.edges.map((edge, k) => [edge, k]));
    const magnitude = Math.max(...xs.map(Math.abs), ...ys.map(Math.abs));
    this.rounding = Math.max(1e-12 * this.extent, 16 * Number.EPSILON * magnitude);
    const visits = new Map<string, number>();
    for (const { a } of this.edges) visits.set(nameOf(a), (visits.get(nameOf(a)) ?? 0) + 1);
    this.chains = loops.flatMap((loop) => chainsOf(loop, numberOf, (p) => (visits.get(nameOf(p)) ?? 0) > 1));
    const open = this.chains.filter(({ closed }) => !closed);
    const tips = new Set(open.flatMap((chain) => tipsOf(chain)).map(nameOf));
    this.obstacles = this.edges.map(obstacleOf);
    this.corners = this.edges.map(({ a }) => ({ at: a, isTip: tips.has(nameOf(a)) }));
    this.kin = this.edges.map((edge) => {
      const ends = [edge.a, edge.b].map(nameOf).filter((name) => !tips.has(name));
      const touches = (other: Edge) => [other.a, other.b].some((p) => ends.includes(nameOf(p)));
      return new Set(this.edges.flatMap((other, k) => (other !== edge && touches(other) ? [k] : [])));
    });
  }

  /** The disc blown up at a place of a chain: the whole part of `t` is the piece, the rest the share along it. */
  blown(chain: Chain, t: number): Blown {
    const { foot, normal, own } = placeOn(chain, t);
    const near = SELF * this.extent;
    let radius = own >= 0 ? ownRadius(this.edges[own] as Edge) : Infinity;
    for (const { at, isTip } of this.corners) {
      radius = Math.min(radius, toPoint(foot, normal, at, isTip ? 0 : near));
    }
    this.obstacles.forEach((edge, k) => {
      if (k === own) return;
      // Next to a joint the edge beyond it is the same boundary going on, except across a tip.
      const isKin = own >= 0 ? (this.kin[own] as ReadonlySet<number>).has(k) : touchesPoint(edge, foot);
      radius = Math.min(radius, toEdge(foot, normal, edge, isKin ? near : 0, radius));
    });
    return { foot, normal, radius, center: along(foot, normal, radius) };
  }

  /** Distance from a place to the boundary. */
  distance(p: Point): number {
    return this.obstacles.reduce((least, edge) => Math.min(least, distanceTo(edge, p)), Infinity);
  }

  /** Whether a disc touches, within a distance, at the end of the diameter opposite to its foot. */
  touchesOpposite({ foot, normal, radius }: Blown, within: number): boolean {
    return this.distance(along(foot, normal, 2 * radius)) <= within;
  }

  /** All necks and strips thinner than a limit, each seen from both of its sides. */
  necks(limit: number, step: number): SampledNeck[] {
    return this.chains.flatMap((chain) => this.necksOn(chain, limit, step));
  }

  private necksOn(chain: Chain, limit: number, step: number): SampledNeck[] {
    const ts = chain.pieces.flatMap((piece, k) => sharesOf(piece, step).map((share) => k + share));
    const discs = ts.map((t) => this.blown(chain, t));
    const groups = this.levels(chain, discs);
    const found: SampledNeck[] = [];
    groups.forEach((group, g) => {
      const disc = discs[group[0] as number] as Blown;
      if (2 * disc.radius >= limit * 1.5) return;
      const strip = this.stripIn(chain, ts, discs, group);
      if (strip !== null) {
        if (strip.thickness < limit) found.push(strip);
        return;
      }
      // A disc that touches all along a rounded end moves no further: the metal ends there.
      const second = discs[group[1] as number];
      if (
        second !== undefined &&
        gap(second.center, disc.center) < 1e-9 * this.extent &&
        gap(second.foot, disc.foot) > 0
      )
        return;
      const before = chain.closed ? groups[(g + groups.length - 1) % groups.length] : groups[g - 1];
      const after = chain.closed ? groups[(g + 1) % groups.length] : groups[g + 1];
      if (before === undefined || after === undefined || groups.length < 3) return;
      const radiusOf = (one: readonly number[]) => (discs[one[0] as number] as Blown).radius;
      if (radiusOf(before) < disc.radius || radiusOf(after) < disc.radius) return;
      const from = ts[before[before.length - 1] as number] as number;
      const to = ts[after[0] as number] as number;
      const end = to > from ? to : to + chain.pieces.length;
      const lowest = this.blown(chain, this.extreme(chain, from, end, 1));
      if (2 * lowest.radius < limit && this.touchesOpposite(lowest, LOWEST * this.extent)) {
        found.push({ thickness: 2 * lowest.radius, center: lowest.center, foot: lowest.foot, strip: 0 });
      }
    });
    return found;
  }

  /** Neighbouring samples with the same radius but for rounding, as groups of sample numbers. */
  private levels(chain: Chain, discs: readonly Blown[]): number[][] {
    const same = (i: number, j: number) =>
      Math.abs((discs[i] as Blown).radius - (discs[j] as Blown).radius) <= this.rounding;
    const groups: number[][] = [];
    discs.forEach((_, k) => {
      const last = groups[groups.length - 1];
      if (last !== undefined && same(last[0] as number, k)) last.push(k);
      else groups.push([k]);
    });
    const [first, last] = [groups[0], groups[groups.length - 1]];
    if (chain.closed && groups.length > 1 && first && last && same(first[0] as number, last[0] as number)) {
      groups.pop();
      groups[0] = [...last, ...first];
    }
    return groups;
  }

  private stripIn(
    chain: Chain,
    ts: readonly number[],
    discs: readonly Blown[],
    group: readonly number[],
  ): SampledNeck | null {
    const opposite = group.filter((k) => this.touchesOpposite(discs[k] as Blown, this.rounding));
    if (opposite.length < 2) return null;
    const centers = opposite.map((k) => (discs[k] as Blown).center);
    if (gap(centers[0] as Point, centers[1] as Point) <= SHORTEST * this.extent) return null;
    const k = opposite[Math.floor(opposite.length / 2)] as number;
    const { radius, center, foot } = discs[k] as Blown;
    const strip = this.stripAt(chain, ts[k] as number).length;
    return strip <= SHORTEST * this.extent ? null : { thickness: 2 * radius, center, foot, strip };
  }

  /** How far the disc at a place travels both ways without changing size, touching at both ends of a diameter. */
  stripAt(chain: Chain, t: number): StripSeen {
    const { radius } = this.blown(chain, t);
    const ahead = this.travel(chain, t, radius, 1);
    if (ahead.looped) return { length: ahead.length, looped: true, back: ahead.end, ahead: ahead.end };
    const back = this.travel(chain, t, radius, -1);
    return { length: ahead.length + back.length, looped: false, back: back.end, ahead: ahead.end };
  }

  private travel(
    chain: Chain,
    start: number,
    radius: number,
    way: 1 | -1,
  ): { length: number; looped: boolean; end: Point } {
    const count = chain.pieces.length;
    const holds = (t: number) => {
      if (isPastEnd(chain, t)) return false;
      const disc = this.blown(chain, t);
      return Math.abs(disc.radius - radius) <= this.rounding && this.touchesOpposite(disc, this.rounding);
    };
    const strides = 64;
    let length = 0;
    let center = this.blown(chain, start).center;
    for (let k = 1; k <= strides * count; k++) {
      const from = start + (way * (k - 1)) / strides;
      const to = start + (way * k) / strides;
      const holding = holds(to);
      const end = holding ? to : bisected(from, to, holds);
      const reached = this.blown(chain, end).center;
      const halfway = this.blown(chain, (from + end) / 2).center;
      // Of a short arc, the half chords fall short by a quarter of what the chord does.
      const [chord, halves] = [gap(center, reached), gap(center, halfway) + gap(halfway, reached)];
      length += halves + (halves - chord) / 3;
      if (!holding) return { length, looped: false, end: reached };
      center = reached;
    }
    return { length, looped: chain.closed, end: center };
  }

  /**
   * The centre of the first disc of a radius further along the boundary; null if none comes before the chain ends,
   * has been gone round, or comes to the place that faces the one where the walk began.
   */
  reachOf({ chain, t }: Spot, radius: number, way: 1 | -1, facing: Spot): Point | null {
    const count = chain.pieces.length;
    const strides = 128;
    const wide = (at: number) => this.blown(chain, at).radius >= radius;
    const most = facing.chain === chain ? mod(way * (facing.t - t), count) : count;
    const at = (k: number) => t + way * Math.min(most, Math.max(0, k / strides));
    let [before, here] = [0, this.blown(chain, t).radius];
    for (let k = 1; k <= Math.ceil(strides * most); k++) {
      const to = at(k);
      if (isPastEnd(chain, to)) return null;
      const next = this.blown(chain, to).radius;
      if (next >= radius) return this.blown(chain, bisected(to, at(k - 1), wide)).center;
      if (here >= before && here >= next && here > 0.9 * radius) {
        // A bulge between two samples may be as wide.
        const top = this.extreme(chain, at(k - 2), to, -1);
        if (wide(top)) return this.blown(chain, bisected(top, at(k - 2), wide)).center;
      }
      [before, here] = [here, next];
    }
    return null;
  }

  /** Where between two places the disc is smallest (largest for a sign of -1), by golden sections. */
  private extreme(chain: Chain, from: number, to: number, sign: 1 | -1): number {
    const size = (t: number) => sign * this.blown(chain, t).radius;
    const share = (Math.sqrt(5) - 1) / 2;
    let [a, b] = [from, to];
    let [c, d] = [b - share * (b - a), a + share * (b - a)];
    let [fc, fd] = [size(c), size(d)];
    for (let k = 0; k < 48; k++) {
      if (fc < fd) {
        [b, d, fd] = [d, c, fc];
        c = b - share * (b - a);
        fc = size(c);
      } else {
        [a, c, fc] = [c, d, fd];
        d = a + share * (b - a);
        fd = size(d);
      }
    }
    return (a + b) / 2;
  }

  /** The place on a chain nearest to a point of the boundary, with a normal nearest to a direction. */
  locate(p: Point, normal: Point): Spot | null {
    let best: Spot | null = null;
    let worth = 1e-4;
    for (const chain of this.chains) {
      chain.pieces.forEach((piece, k) => {
        const share = shareAt(piece, p, normal);
        if (share === null) return;
        const there = placeOn(chain, k + share);
        const off = gap(there.foot, p) / this.extent + gap(there.normal, normal);
        if (off >= worth) return;
        worth = off;
        best = { chain, t: k + share };
      });
    }
    return best;
  }

  /** The place reached by going a distance along the boundary; null past the end of the chain. */
  onward(chain: Chain, t: number, distance: number): number | null {
    let k = Math.floor(t);
    let share = t - k;
    let rest = distance;
    for (let guard = 0; guard < 4 * chain.pieces.length + 4; guard++) {
      const piece = chain.pieces[mod(k, chain.pieces.length)] as Piece;
      // A fan has no length; it is gone round as if on a circle of a hundredth of the extent.
      const length = piece.kind === 'edge' ? piece.length : Math.abs(piece.turn) * this.extent * 0.01;
      const there = share + rest / length;
      if (there >= 0 && there < 1) return k + there;
      rest -= ((there >= 1 ? 1 : 0) - share) * length;
      k += there >= 1 ? 1 : -1;
      if (!chain.closed && (k < 0 || k >= chain.pieces.length)) return null;
      share = there >= 1 ? 0 : 1 - 1e-12;
    }
    return null;
  }
}

function touchesPoint({ a, b }: Obstacle, p: Point): boolean {
  return gap(a, p) === 0 || gap(b, p) === 0;
}

function bisected(good: number, bad: number, holds: (t: number) => boolean): number {
  let [a, b] = [good, bad];
  for (let k = 0; k < 45; k++) {
    const m = (a + b) / 2;
    if (holds(m)) a = m;
    else b = m;
  }
  return a;
}
