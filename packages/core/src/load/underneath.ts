import type { Cut } from '../cut/cut.js';
import type { ToolKind } from '../cutting/tool.js';
import { drillPoint, type KeepOut, liesOver } from '../datum/keep-out.js';
import { checkNotNegative, checkOverZero } from '../geometry/checks.js';
import type { Region } from '../region/region.js';

/** A tool on its way down, and how far it goes. Lengths in the unit of the part. */
export interface GoesDown {
  readonly cut: Cut['kind'];
  /** Null where the job names no tool. */
  readonly tool: ToolKind | null;
  readonly diameter: number;
  /** Of the lowest full section, from the face that lies up; the thickness where it goes through. */
  readonly depth: number;
  readonly through: boolean;
  /** How deep a hollow cutter can go; null if that does not matter. */
  readonly reach: number | null;
  /** How far its full section is to go below the part where it goes through; by default the rest of its reach, or 0. */
  readonly breakThrough?: number;
}

/** A cut as its tool goes down for it. */
export function goesDown(cut: Cut, tool: ToolKind | null, diameter: number): GoesDown {
  const { kind, depth, through, breakThrough } = cut;
  const reach = kind === 'annular' ? cut.reach : null;
  const down = { cut: kind, tool, diameter, depth, through, reach };
  return breakThrough === undefined ? down : { ...down, breakThrough };
}

/** The lowest place that a tool comes to, over the face that the part lies on. */
export function lowestOf(down: GoesDown, thickness: number): number {
  return thickness - (down.through ? thickness : down.depth) - reachBeyond(down);
}

/** How far a tool comes out below the part, and the obstacle there. */
export interface Underneath {
  /** How far the tool comes out below the face that the part lies on; 0 where it does not. */
  readonly below: number;
  /** id of the nearest obstacle under it; null where there is none, or the tool does not come out. */
  readonly over: string | null;
  /** How far its top is below the lowest point of the tool; negative where the tool goes into it; null with `over`. */
  readonly margin: number | null;
}

/**
 * How far a tool reaches beyond its lowest full section: a twist drill by its point, a hollow cutter that goes through by
 * what its reach leaves; a mill or a boring head ends plain; each that goes through further by what it is to go below the part.
 * A bore that goes through without a tool being named is taken for drilled.
 *
 * Source: 118° point, common practice.
 */
export function reachBeyond(down: GoesDown): number {
  const { cut, tool, diameter, through } = down;
  const isDrill = tool === 'drill' || (tool === null && cut === 'bore' && through);
  return (isDrill ? drillPoint(diameter) : 0) + pastThrough(down);
}

/** How far the full section of a tool that goes through goes below the part; 0 of one that does not. */
export function pastThrough({ cut, depth, through, reach, breakThrough }: GoesDown): number {
  if (!through) return 0;
  const most = cut === 'annular' && reach !== null ? Math.max(0, reach - depth) : null;
  return breakThrough === undefined ? (most ?? 0) : Math.min(breakThrough, most ?? breakThrough);
}

/**
 * How far a tool comes out below the part, and its distance to the obstacle under its body, which is as wide as the
 * tool all the way down.
 * @param body the area of the tool, seen from above, on the part as drawn
 * @param keepOuts those of the setup; heights over the face that the part lies on
 * @throws RangeError if the diameter or thickness is not a finite number over 0, or the depth or reach not one of 0
 *   or more.
 */
export function underneath(
  tool: GoesDown,
  body: Region,
  thickness: number,
  keepOuts: readonly KeepOut[],
): Underneath {
  checkOverZero('underneath', 'diameter', tool.diameter);
  checkOverZero('underneath', 'thickness', thickness);
  checkNotNegative('underneath', 'depth', tool.depth);
  if (tool.reach !== null) checkNotNegative('underneath', 'reach', tool.reach);
  const deepest = (tool.through ? thickness : tool.depth) + reachBeyond(tool);
  const below = Math.max(0, deepest - thickness);
  if (!tool.through && below === 0) return { below, over: null, margin: null };
  let nearest: { over: string; margin: number } | null = null;
  for (const keepOut of keepOuts) {
    // What stands no lower than the tool comes is beside or over it, not under it.
    if (keepOut.from >= -below) continue;
    const margin = -below - keepOut.to + 0;
    if (nearest !== null && margin >= nearest.margin) continue;
    if (liesOver(body, keepOut)) nearest = { over: keepOut.id, margin };
  }
  return { below, over: nearest?.over ?? null, margin: nearest?.margin ?? null };
}
