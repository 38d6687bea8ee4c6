import { intersect } from '../combine/boolean.js';
import { offsetPath } from '../combine/offset.js';
import { subtract } from '../combine/subtract.js';
import { joined } from '../geometry/bounds.js';
import { checkNotNegative, checkOverZero } from '../geometry/checks.js';
import type { Edge, Source } from '../geometry/edge.js';
import { type Gap, NearEdges } from '../geometry/edge-gap.js';
import { edgeBounds } from '../geometry/measure.js';
import { type Point, samePoint } from '../geometry/point.js';
import { contains } from '../region/contains.js';
import { area, boundsOf, loopsOf } from '../region/measure.js';
import type { Region, RegionPart } from '../region/region.js';
import { centerDepth, type Work } from './gouge-depth.js';
import type { ToolSide } from './path-curve.js';
import { slackIn } from './path-slack.js';
import { nameless, outlineEdgeOf, tagged, untagged } from './path-tags.js';

/** What a path is checked against. */
export interface GougeOptions {
  /** `outside` unless given: the region is what must stay. `inside`: all but the region must stay. */
  readonly side?: ToolSide | undefined;
  /** Depths up to this are none; four billionths of the size of the work unless given. */
  readonly tolerance?: number | undefined;
}

/** A place where a tool cuts what must stay. */
export interface Gouge {
  /** What it cuts away there: one part, or nothing where that is thinner than a region can be. */
  readonly cut: Region;
  readonly area: number;
  /**
   * How far the tool goes under the surface: its radius less the least distance of its centre from the outline; if
   * the centre itself goes under the surface, its radius and how far that is. On a flat wall, how far the wall is
   * cut back.
   */
  readonly depth: number;
  /** Where the centre is at the deepest, and the place of the outline nearest to it. */
  readonly center: Point;
  readonly at: Point;
  /** Number of the path's edge that it happens on. */
  readonly edge: number;
  /** Sources of the outline edges that are cut into. */
  readonly sources: readonly Source[];
}

/**
 * All places where a round tool whose centre is driven along a path cuts what must stay, deepest first; none for a
 * good path. By regions: what the tool sweeps over, and what of that must stay. Depths are exact where the centre
 * stays outside of what must stay; else they are found by bisection, to a billionth of the size of the work.
 * Lengths in the unit of the path.
 * @param path lines and arcs in any order; edges need not be connected
 * @throws RangeError if a length is out of range, or the side is `inside` of an empty region.
 */
export function gouges(
  path: readonly Edge[],
  radius: number,
  region: Region,
  options: GougeOptions = {},
): Gouge[] {
  checkOverZero('gouges', 'radius', radius);
  const { side = 'outside' } = options;
  if (options.tolerance !== undefined) checkNotNegative('gouges', 'tolerance', options.tolerance);
  if (region.length === 0 && side === 'inside') {
    throw new RangeError(
      'gouges: the region is empty and everything else must stay, so no depth can be told',
    );
  }
  const work: Work = { path, radius, region, side, ...measured(path, radius, region) };
  const tolerance = options.tolerance ?? work.slack;
  const worst = worstApproach(work);
  const reaches = worst !== null && radius - worst.gap.distance > tolerance;
  if (path.length === 0 || !(reaches || startsUnder(work))) return [];
  const places = placesOf(work).filter(({ depth }) => depth > tolerance);
  const deepest = places.reduce((most, { depth }) => Math.max(most, depth), 0);
  // What is barely deeper than the tolerance may be too thin for an overlay.
  if (reaches && radius - worst.gap.distance > deepest + tolerance) places.push(thinPlace(work, worst));
  return places.sort((p, q) => q.depth - p.depth);
}

function measured(
  path: readonly Edge[],
  radius: number,
  region: Region,
): Omit<Work, 'path' | 'radius' | 'region' | 'side'> {
  const tags = tagged(region);
  const boxes = [...path.map(edgeBounds), boundsOf(region)].filter((box) => box !== null);
  const slack = boxes.length === 0 ? 0 : slackIn(boxes.reduce(joined), radius);
  return { tags, outline: new NearEdges(loopsOf(tags.region).flat()), slack };
}

/** Where some edges of a path come nearest to some edges of the outline. */
interface Approach {
  readonly gap: Gap;
  readonly edge: number;
}

/** Null where the path keeps more than the radius away. */
function worstApproach({ path, radius, outline, slack }: Work): Approach | null {
  let worst: Approach | null = null;
  for (const [edge, one] of path.entries()) {
    const gap = outline.nearestTo(one, worst?.gap.distance ?? radius, slack);
    if (gap !== null) worst = { gap, edge };
  }
  return worst;
}

/** Whether a connected piece of the path starts under the surface: one that never meets it stays there. */
function startsUnder({ path, region, side }: Work): boolean {
  const forbidden = side === 'outside' ? 'inside' : 'outside';
  return path.some((edge, k) => {
    const before = path[k - 1];
    if (before !== undefined && samePoint(before.b, edge.a)) return false;
    return contains(region, edge.a) === forbidden;
  });
}

function placesOf(work: Work): Gouge[] {
  const { path, radius, tags, side } = work;
  const swept = offsetPath(nameless(path), radius);
  const cut = side === 'outside' ? intersect([tags.region, swept]) : subtract(swept, [tags.region]);
  return cut.flatMap((part) => gougesIn(work, part));
}

function gougesIn(work: Work, part: RegionPart): Gouge[] {
  const { radius, tags, slack } = work;
  const loops = loopsOf([part]);
  const walls = loops.flat().filter((edge) => outlineEdgeOf(tags, edge) !== null);
  const near = worstApproach({ ...work, outline: new NearEdges(walls), radius: radius + slack });
  const under = centerDepth(work, part);
  if (near === null && under === null) return [];
  const deepest =
    under !== null
      ? { depth: radius + under.depth, center: under.center, at: under.at, edge: under.edge }
      : fromApproach(radius, near as Approach);
  return [{ cut: [plainPart(work, part)], area: area([part]), ...deepest, sources: sourcesOf(work, walls) }];
}

function fromApproach(
  radius: number,
  { gap, edge }: Approach,
): Pick<Gouge, 'depth' | 'center' | 'at' | 'edge'> {
  return { depth: radius - gap.distance, center: gap.onFirst, at: gap.onSecond, edge };
}

function thinPlace(work: Work, worst: Approach): Gouge {
  const { outline, radius, slack } = work;
  const edge = work.path[worst.edge] as Edge;
  const walls = outline.within(edgeBounds(edge), radius).filter((wall) => {
    const gap = new NearEdges([wall]).nearestTo(edge, radius, slack);
    return gap !== null && gap.distance <= worst.gap.distance + slack;
  });
  return { cut: [], area: 0, ...fromApproach(radius, worst), sources: sourcesOf(work, walls) };
}

function sourcesOf({ tags }: Work, walls: readonly Edge[]): Source[] {
  const sources = walls.map((wall) => outlineEdgeOf(tags, wall)?.edge.source);
  return [...new Set(sources.filter((source) => source !== undefined))];
}

function plainPart({ tags }: Work, { outer, holes }: RegionPart): RegionPart {
  const plain = (loop: readonly Edge[]) => loop.map((edge) => untagged(tags, edge));
  return { outer: plain(outer), holes: holes.map(plain) };
}
