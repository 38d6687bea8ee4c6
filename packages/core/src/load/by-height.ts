/*
 * Room: what a tool meets at one place: engagement, side load, bite, the way to back off.
 * In: the metal at each height, the circle of the tool.
 * Out: loads height by height; facts on how the tool stands, and remarks on them.
 */

import { intersect } from '../combine/boolean.js';
import type { Side } from '../cut/cut.js';
import { boxAround } from '../geometry/bounds.js';
import { checkOverZero, checkPlace } from '../geometry/checks.js';
import type { Point, Vector } from '../geometry/point.js';
import { disc, type Region } from '../region/region.js';
import { engagementAt, type SideLoad } from './engagement.js';
import { metalNear, plainIn } from './near-tool.js';
import { rimNear } from './rim.js';
import { ringEngagementOf } from './ring-engagement.js';

/** What of a tool that goes straight down is in metal: the circle of its radius, or the ring of its teeth. */
export type RoundTool =
  | { readonly kind: 'circle'; readonly center: Point; readonly radius: number }
  | { readonly kind: 'ring'; readonly center: Point; readonly radius: number; readonly inner: number };

/** Metal that is the same between two depths of a tool, counted from where it starts. */
export interface Layer {
  readonly from: number;
  readonly to: number;
  readonly metal: Region;
}

/** The load of a tool while it goes from one depth to another. */
export interface LoadAt {
  readonly from: number;
  readonly to: number;
  /** Whether there is any metal under it, be it within its circle only. */
  readonly meets: boolean;
  /** Of a turn that a tooth is in metal, from 0 to 1. */
  readonly share: number;
  /** How often a tooth strikes metal in a turn; 0 if it never leaves it, and if it never meets any. */
  readonly strikes: number;
  /** From 0, where all directions of cutting balance, to 1, where all are the same. */
  readonly sideLoad: number;
  /** Unit vector, on the drawing, of the way the part is pushed; null where the side load is 0. */
  readonly push: Vector | null;
}

/** The load of a tool on its way down. */
export interface LoadByHeight {
  /** From its start on, one for each layer. */
  readonly heights: readonly LoadAt[];
  /** The first height at which it meets metal; null if it meets none. */
  readonly entry: LoadAt | null;
  /** The one with the largest side load; of equal ones that with the larger share, then the upper one. */
  readonly worst: LoadAt | null;
  /** The last height with metal, where the tool comes out below it; null where it stops in metal or meets none. */
  readonly breakThrough: LoadAt | null;
  /** Whether there is metal under the tool where it starts. */
  readonly starts: 'metal' | 'air';
}

/** A side load under this is told as none, and loads and shares closer than this are equal: rounding of an overlay. */
const EQUAL = 1e-9;

/**
 * The load of a tool at each height that it passes, and the three that matter: where it enters metal, where it is
 * pushed to one side the most, and where it breaks through. The spindle turns clockwise seen from above as the part
 * lies, so that a cut from the bottom, told on the drawing, goes round the other way.
 *
 * Source: `engagementOf` of a circle, `ringEngagementOf` of a ring.
 * @param layers from the tool's start on down, each from where the one before it ends
 * @param from the side of the drawn part that the tool starts from
 * @param isThrough whether the tool comes out below the last layer
 * @throws RangeError if a radius is not a finite number over 0, the inner one is not under the outer one, a coordinate
 *   or depth is not finite, or the layers are none, or not in order.
 */
export function loadByHeight(
  tool: RoundTool,
  layers: readonly Layer[],
  from: Side,
  isThrough: boolean,
): LoadByHeight {
  checkPlace('loadByHeight', 'center', tool.center);
  checkOverZero('loadByHeight', 'radius', tool.radius);
  checkLayers('loadByHeight', layers);
  const known = new Map<Region, Load>();
  const heights = layers.map((layer): LoadAt => {
    // Most tools pass through metal that is the same all the way.
    const load = known.get(layer.metal) ?? loadIn(tool, layer.metal, from);
    known.set(layer.metal, load);
    return { from: layer.from, to: layer.to, ...load };
  });
  const met = heights.filter(({ meets }) => meets);
  const last = met[met.length - 1] ?? null;
  return {
    heights,
    entry: met[0] ?? null,
    worst: met.reduce<LoadAt | null>((best, one) => (best === null || isWorse(one, best) ? one : best), null),
    breakThrough: isThrough || last !== heights[heights.length - 1] ? last : null,
    starts: heights[0]?.meets === true ? 'metal' : 'air',
  };
}

/** Refuses layers that are none, of no height, or not one on the other. */
export function checkLayers(where: string, layers: readonly Layer[]): void {
  if (layers.length === 0) throw new RangeError(`${where}: there are no layers; give at least one`);
  layers.forEach(({ from, to }, k) => {
    if (!Number.isFinite(from) || !Number.isFinite(to) || !(from < to)) {
      throw new RangeError(`${where}: layer ${k} goes from ${from} to ${to}; it must go down`);
    }
    const before = layers[k - 1];
    if (before !== undefined && before.to !== from) {
      throw new RangeError(`${where}: layer ${k} starts at ${from}; the one before it ends at ${before.to}`);
    }
  });
}

type Load = Omit<LoadAt, 'from' | 'to'>;

const NONE: Load = { meets: false, share: 0, strikes: 0, sideLoad: 0, push: null };
const ALL_ROUND: Load = { ...NONE, meets: true, share: 1 };

function loadIn(tool: RoundTool, metal: Region, from: Side): Load {
  const plain = plainIn(metal, boxAround(tool.center, tool.radius));
  if (plain !== null) return plain === 'metal' ? ALL_ROUND : NONE;
  return tool.kind === 'ring' ? ringLoad(tool, metal, from) : circleLoad(tool, metal, from);
}

function ringLoad(tool: RoundTool & { kind: 'ring' }, metal: Region, from: Side): Load {
  const { center, radius, inner } = tool;
  const { share, strikes, sideLoad } = ringEngagementOf(metal, center, radius, inner);
  return { meets: share > 0, share, strikes, ...pushOf(sideLoad, from) };
}

function circleLoad({ center, radius }: RoundTool, metal: Region, from: Side): Load {
  const rim = rimNear(metal, center, radius);
  const { share, entries, sideLoad } = engagementAt(rim, radius);
  const meets =
    rim.steps.some(({ inner }) => inner) ||
    intersect([metalNear(metal, center, radius), disc(center, radius)]).length > 0;
  return { meets, share: Math.min(1, share), strikes: entries, ...pushOf(sideLoad, from) };
}

function pushOf({ size, direction }: SideLoad, from: Side): Pick<Load, 'sideLoad' | 'push'> {
  if (direction === null || size <= EQUAL) return { sideLoad: 0, push: null };
  const { dx, dy } = direction;
  return { sideLoad: Math.min(1, size), push: from === 'top' ? { dx, dy } : { dx: -dx + 0, dy: -dy + 0 } };
}

function isWorse(one: LoadAt, best: LoadAt): boolean {
  if (Math.abs(one.sideLoad - best.sideLoad) > EQUAL) return one.sideLoad > best.sideLoad;
  return one.share > best.share + EQUAL;
}
