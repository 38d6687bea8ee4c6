import { offset } from '../combine/offset.js';
import { subtract } from '../combine/subtract.js';
import { checkNotNegative, checkOverZero } from '../geometry/checks.js';
import type { Edge } from '../geometry/edge.js';
import { NearEdges } from '../geometry/edge-gap.js';
import { area, loopsOf, perimeter } from '../region/measure.js';
import type { Region, RegionPart } from '../region/region.js';
import type { ToolSide } from './path-curve.js';
import { slackFor } from './path-slack.js';
import { nameless, outlineEdgeOf, type Tagged, tagged, untagged } from './path-tags.js';
import { limitOf, type NarrowPlace, type ReachLimit, type Walls } from './reach-limit.js';

/** On which side of an outline a tool works, and how exact the answer is to be. */
export interface ReachOptions {
  /** `outside` unless given: the region is metal that stays. `inside`: it is what is to be cut away. */
  readonly side?: ToolSide | undefined;
  /** What the tool leaves on the outline anyway; this is not counted. None unless given. */
  readonly allowance?: number | undefined;
  /**
   * What is thinner than this is not seen; a kink of the outline in which the tool leaves no more than this is not
   * taken for a corner. Give the shop's resolution for an outline with rounded numbers; four billionths of the size
   * of the work unless given.
   */
  readonly tolerance?: number | undefined;
}

/** One place that a tool cannot reach. */
export interface Unreached {
  /** What it leaves there: one part. Edges along the outline have its sources, those along the tool have none. */
  readonly region: Region;
  readonly area: number;
  /** The stretches of the outline that stay untouched, run with the place to the left. */
  readonly along: readonly Edge[];
  /** The largest radius of a tool that leaves nothing of it, and what sets it; see `ReachLimit`. */
  readonly limit: ReachLimit;
  /**
   * Half the narrowest gap between two walls in it; a larger tool does not get through there. Null where no two
   * walls face each other closer than the diameter of the tool.
   */
  readonly narrowest: NarrowPlace | null;
}

/**
 * What a round tool cannot reach, largest area first: all places of the air outside of a part (or of a pocket, with
 * side `inside`) that no disc of its radius covers that keeps clear of the metal which stays. That is the air less
 * its opening by the disc. A tool that fits into a slot with no play at all is taken not to fit. Lengths in the unit
 * of the region.
 *
 * Source: morphological opening, J. Serra, "Image Analysis and Mathematical Morphology" (1982): shrunk by the radius,
 * where the centre can be, then grown by it again.
 * @throws RangeError if a length is out of range.
 */
export function unreached(region: Region, radius: number, options: ReachOptions = {}): Unreached[] {
  const { side = 'outside', allowance = 0 } = options;
  checkOverZero('unreached', 'radius', radius);
  checkNotNegative('unreached', 'allowance', allowance);
  if (options.tolerance !== undefined) checkNotNegative('unreached', 'tolerance', options.tolerance);
  const out = side === 'outside' ? 1 : -1;
  const kept = allowance > 0 ? offset(region, out * allowance) : region;
  const tags = tagged(kept);
  const tolerance = Math.max(options.tolerance ?? 0, slackFor(kept, 2 * radius));
  const reached = withoutNames(offset(offset(kept, out * radius), -out * radius));
  const left = side === 'outside' ? subtract(reached, [tags.region]) : subtract(tags.region, [reached]);
  const walls: Walls = { edges: new NearEdges(loopsOf(tags.region).flat()), radius, tolerance };
  return left
    .filter((part) => thickness(part) > tolerance)
    .map((part) => unreachedIn(tags, walls, part))
    .sort((p, q) => q.area - p.area);
}

function unreachedIn(tags: Tagged, walls: Walls, part: RegionPart): Unreached {
  const loops = loopsOf([part]);
  const isWall = (edge: Edge) => outlineEdgeOf(tags, edge) !== null;
  const named = (loop: readonly Edge[]) => loop.map((edge) => untagged(tags, edge));
  return {
    region: [{ outer: named(part.outer), holes: part.holes.map(named) }],
    area: area([part]),
    along: named(loops.flat().filter(isWall)),
    ...limitOf(walls, part, isWall),
  };
}

/** Twice the area over the perimeter: that of a long strip is its width. */
function thickness(part: RegionPart): number {
  return (2 * area([part])) / perimeter([part]);
}

function withoutNames(region: Region): Region {
  return region.map(({ outer, holes }) => ({ outer: nameless(outer), holes: holes.map(nameless) }));
}
