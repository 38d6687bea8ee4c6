import { intersect } from '../combine/boolean.js';
import { subtract } from '../combine/subtract.js';
import { extentOf, joined } from '../geometry/bounds.js';
import { nearestOnEdge } from '../geometry/distance.js';
import type { Edge, Source } from '../geometry/edge.js';
import { type Gap, NearEdges } from '../geometry/edge-gap.js';
import type { Point } from '../geometry/point.js';
import { weldTolerance } from '../geometry/tolerance.js';
import { contains } from '../region/contains.js';
import { area, boundsOf, loopsOf, perimeter } from '../region/measure.js';
import type { Region } from '../region/region.js';

/** The place of a boundary that is nearest to a point. */
export interface NearestPlace {
  readonly at: Point;
  /** From the point to it; 0 on the boundary. */
  readonly distance: number;
  /** Where the point lies. */
  readonly where: 'inside' | 'boundary' | 'outside';
  /** Name of the edge that it is on. */
  readonly source: Source | null;
}

/** The place of the boundary of a region that is nearest to a point, from inside too; null for an empty region. */
export function nearestOnRegion(region: Region, p: Point): NearestPlace | null {
  let best: (NearestPlace & { readonly edge: Edge }) | null = null;
  const where = contains(region, p);
  for (const edge of loopsOf(region).flat()) {
    const nearest = nearestOnEdge(edge, p);
    if (best !== null && nearest.distance >= best.distance) continue;
    best = { at: nearest.at, distance: nearest.distance, where, source: edge.source ?? null, edge };
  }
  if (best === null) return null;
  const { edge: _, ...place } = best;
  return place;
}

/** The shortest way between two regions. */
export interface RegionGap {
  /** 0 where they touch or overlap. */
  readonly distance: number;
  /** Its ends; the same place where they touch or overlap. */
  readonly onFirst: Point;
  readonly onSecond: Point;
}

/**
 * The shortest way between two regions, 0 where they touch or overlap; null if one is empty. What is closer than a
 * billionth of their extent touches. Exact for lines and arcs.
 */
export function gapBetweenRegions(first: Region, second: Region): RegionGap | null {
  const box = boundsOf(first);
  const other = boundsOf(second);
  if (box === null || other === null) return null;
  const shared = holdsOneOf(first, second) ?? holdsOneOf(second, first);
  if (shared !== null) return { distance: 0, onFirst: shared, onSecond: shared };
  const weld = weldTolerance(extentOf(joined(box, other)));
  const near = new NearEdges(loopsOf(second).flat());
  let best: Gap | null = null;
  for (const edge of loopsOf(first).flat()) {
    const gap = near.nearestTo(edge, (best as Gap | null)?.distance ?? Infinity, weld);
    if (gap !== null) best = gap;
    if (best?.distance === 0) break;
  }
  return best;
}

/** A place of a part of one region that lies in another; boundaries tell of all that has none. */
function holdsOneOf(region: Region, parts: Region): Point | null {
  const starts = parts.map(({ outer }) => (outer[0] as Edge).a);
  return starts.find((p) => contains(region, p) !== 'outside') ?? null;
}

/**
 * How two regions lie to each other: `same`; `inside` (all of the first is in the second) or `around` (the other way);
 * `overlap`; `touch` (they share boundary only); `apart`. An empty region is apart from all, and the same as another.
 */
export type RegionRelation = 'same' | 'inside' | 'around' | 'overlap' | 'touch' | 'apart';

/** How many weld tolerances wide a strip along a boundary may be that is nothing but rounding. */
const STRIP = 8;

/**
 * How two regions lie to each other. What the one has and the other has not counts from a strip of a few billionths of
 * their extent along the boundary on.
 */
export function relationOfRegions(first: Region, second: Region): RegionRelation {
  const gap = gapBetweenRegions(first, second);
  if (gap === null) return first.length === second.length ? 'same' : 'apart';
  if (gap.distance > 0) return 'apart';
  const extent = extentOf(joined(boundsOf(first) as Box, boundsOf(second) as Box));
  const nothing = STRIP * weldTolerance(extent) * (perimeter(first) + perimeter(second));
  const hasMore = (one: Region, other: Region) => area(subtract(one, [other])) > nothing;
  const [firstMore, secondMore] = [hasMore(first, second), hasMore(second, first)];
  if (!firstMore) return secondMore ? 'inside' : 'same';
  if (!secondMore) return 'around';
  return area(intersect([first, second])) > nothing ? 'overlap' : 'touch';
}

type Box = NonNullable<ReturnType<typeof boundsOf>>;
