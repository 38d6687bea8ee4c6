import { intersect } from '../combine/boolean.js';
import { subtract } from '../combine/subtract.js';
import type { Edge } from '../geometry/edge.js';
import { pointAlong } from '../geometry/measure.js';
import { distance, type Point } from '../geometry/point.js';
import { area, loopsOf } from '../region/measure.js';
import { disc, type Region, type RegionPart } from '../region/region.js';
import { type Aim, SAME_SHARE } from './aim.js';
import { FINISHED } from './read-aim.js';

/** A round place of the finished part: a hole, or an arc that opens a side. Lengths in the unit of the aim. */
export interface RoundFeature {
  /** `hole-1`, `arc-2`. */
  readonly id: string;
  readonly center: Point;
  readonly radius: number;
  /** Whether its circle leaves the blank. */
  readonly isOpen: boolean;
}

/** A connected piece of what is to go, with the round places that make it up. */
export interface Patch {
  readonly region: Region;
  readonly rounds: readonly RoundFeature[];
  /** What no round place covers; empty where they make all of it. */
  readonly bare: Region;
  /** A place on its wall that no round place makes. */
  readonly bareAt: Point | null;
}

/** The pieces of what is to go, each with the circles of its hollow arcs that lie clear of what is to stay. */
export function patchesOf(aim: Aim): Patch[] {
  const counts = { hole: 0, arc: 0 };
  const nothing = SAME_SHARE * area(aim.job.outline);
  return aim.rest.map((part) => {
    const rounds = circlesOf(part)
      .filter(({ center, radius }) => area(intersect([aim.finished, disc(center, radius)])) <= nothing)
      .map(({ center, radius }): RoundFeature => {
        const isOpen = area(subtract(disc(center, radius), [aim.job.outline])) > nothing;
        const word = isOpen ? 'arc' : 'hole';
        counts[word]++;
        return { id: `${word}-${counts[word]}`, center, radius, isOpen };
      });
    const left = subtract(
      [part],
      rounds.map(({ center, radius }) => disc(center, radius)),
    );
    const bare = area(left) <= nothing ? [] : left;
    return { region: [part], rounds, bare, bareAt: bare.length === 0 ? null : wallIn(bare) };
  });
}

/** The circles that the hollow arcs of a piece's made walls lie on, each once. */
function circlesOf(part: RegionPart): { readonly center: Point; readonly radius: number }[] {
  const found: { readonly center: Point; readonly radius: number }[] = [];
  for (const edge of [part.outer, ...part.holes].flat()) {
    if (edge.kind !== 'arc' || !edge.ccw || edge.source !== FINISHED) continue;
    const { center, radius } = edge;
    const near = SAME_CIRCLE * radius;
    const isKnown = found.some(
      (one) => distance(one.center, center) <= near && Math.abs(one.radius - radius) <= near,
    );
    if (!isKnown) found.push({ center, radius });
  }
  return found;
}

/** Circles closer than this share of their radius are one: rounding of drawings. */
const SAME_CIRCLE = 1e-7;

/** The middle of the longest made wall of a region, or a corner of it where it has none. */
function wallIn(region: Region): Point | null {
  const edges = loopsOf(region).flat();
  const walls = edges.filter(({ source }) => source === FINISHED);
  const lengthOf = ({ a, b }: Edge) => distance(a, b);
  const longest = (walls.length > 0 ? walls : edges).reduce<Edge | null>(
    (most, edge) => (most === null || lengthOf(edge) > lengthOf(most) ? edge : most),
    null,
  );
  return longest === null ? null : pointAlong(longest, 1 / 2);
}
