import type { Edge } from '../geometry/edge.js';
import { gapBetween } from '../geometry/edge-gap.js';
import { distance, midpoint, type Point, type Vector } from '../geometry/point.js';
import type { Region } from '../region/region.js';
import type { Timeline } from './timeline.js';
import { type Facing, partedOff, Walls } from './walls-over-time.js';

/** A place where metal is narrow in plan: the middle between two walls that face each other, and the way across. */
export interface NarrowPlace {
  readonly at: Point;
  readonly across: Vector;
  readonly thickness: number;
}

/** More of them make a lattice, of which nothing hangs by itself; and looking at each would take long. */
const MOST = 256;

/**
 * Where metal of some slab is narrower in plan than `hold` after some step, between walls of which a cut has made one at
 * least, and something may hang by it. Metal never grows, so what is narrow once stays so. Empty where there are more of
 * them than bodies can hang by.
 */
export function narrowPlaces(timeline: Timeline, hold: number): NarrowPlace[] {
  const walls = new Walls(timeline);
  const { tolerance } = timeline.cells.subdivision.graph.curves;
  const found: (NarrowPlace & { readonly parts: Parts })[] = [];
  let isLattice = false;
  walls.tree.eachPair(hold, (i, j) => {
    if (isLattice || !walls.standTogether(i, j) || walls.share(i, j)) return;
    const [one, other] = [walls.edges[i] as Edge, walls.edges[j] as Edge];
    const { onFirst: p, onSecond: q, distance: thickness } = gapBetween(one, other, tolerance);
    if (!(thickness > tolerance) || thickness >= hold) return;
    const parts = partsOf(timeline, walls.facing(i, p, j, q), hold);
    if (parts === 'nothing') return;
    const at = midpoint(p, q);
    const isKnown = found.some((place) => distance(place.at, at) <= 10 * tolerance);
    if (isKnown) return;
    found.push({
      at,
      across: { dx: (q.x - p.x) / thickness, dy: (q.y - p.y) / thickness },
      thickness,
      parts,
    });
    isLattice = found.length > MOST;
  });
  // Something hangs by two ways across to another wall, but not by one.
  const [first] = found;
  if (isLattice || (found.length === 1 && first?.parts === 'with others')) return [];
  return found
    .map(({ at, across, thickness }) => ({ at, across, thickness }))
    .sort((a, b) => a.thickness - b.thickness || a.at.x - b.at.x || a.at.y - b.at.y);
}

/** Whether cutting across parts metal by itself, with other such cuts, or nothing that could count as a body. */
type Parts = 'by itself' | 'with others' | 'nothing';

function partsOf(timeline: Timeline, facings: readonly Facing[], hold: number): Parts {
  const disc = (Math.PI * hold * hold) / 4;
  let parts: Parts = 'nothing';
  for (const facing of facings) {
    const [one, other] = facing.halves;
    const side = partedOff(timeline, facing);
    if (side === null) {
      // Two loops of the boundary now; they may be one by a later cut.
      const last = { ...facing, from: lastBefore(timeline, facing) };
      if (partedOff(timeline, last) !== null) return 'by itself';
      parts = 'with others';
      continue;
    }
    const [p, q] = facing.ends;
    const rest = partedOff(timeline, { ...facing, halves: [other, one], ends: [q, p] });
    const isSmall = (area: number | null) => area !== null && area >= 0 && area < disc;
    if (!isSmall(side) && !isSmall(rest)) return 'by itself';
  }
  return parts;
}

/** The last moment of a facing. */
function lastBefore({ takings, cells }: Timeline, { to }: Facing): number {
  return to === Infinity ? takings.length * cells.slabs.length : to - 1;
}

/** Half as wide as this share of `hold` is what is taken as cut across a narrow place. */
export const KERF = 1 / 4096;

/** What is taken as cut across a narrow place: long enough for all metal round its middle that is narrower than `hold`. */
export function kerfAcross({ at, across: { dx, dy } }: NarrowPlace, hold: number): Region {
  const wide = hold * KERF;
  const corner = (along: number, aside: number): Point => ({
    x: at.x + along * dx - aside * dy,
    y: at.y + along * dy + aside * dx,
  });
  const places = [corner(-hold, -wide), corner(hold, -wide), corner(hold, wide), corner(-hold, wide)];
  const outer = places.map((a, k): Edge => ({ kind: 'line', a, b: places[(k + 1) % 4] as Point }));
  return [{ outer, holes: [] }];
}
