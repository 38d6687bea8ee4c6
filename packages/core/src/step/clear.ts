import { isInReach, type KeepOut } from '../datum/keep-out.js';
import type { Point } from '../geometry/point.js';
import type { Layer } from '../load/by-height.js';
import { aroundOf, type ClearStand, clearBehind, clearWithin } from '../passes/clear-stand.js';
import type { PassesStart } from '../result/passes-row.js';

/** What a tool finds round it before its first pass. */
export interface BeforePasses {
  readonly start: PassesStart;
  /** Of the finished bore. */
  readonly center: Point;
  readonly radius: number;
  /** The metal at every height that the tool passes on its way down. */
  readonly layers: readonly Layer[];
  readonly gap: number;
  readonly keepOuts: readonly KeepOut[];
  /** The lowest place that the tool comes to, and whether it goes through. */
  readonly lowest: number;
  readonly through: boolean;
}

/** Where a tool is lowered first, before it cuts anything: to see that it touches nothing, and that all is set as it should be. */
export function clearBefore(before: BeforePasses): ClearStand {
  const { start, center, radius, layers, gap, lowest, through } = before;
  const metal = [...new Set(layers.map((layer) => layer.metal))];
  const keepOuts = before.keepOuts.filter((one) => isInReach(lowest, through, one));
  const around = aroundOf(metal, gap, keepOuts);
  return start.kind === 'step in'
    ? clearBehind(start.touch, start.approach, radius, around)
    : clearWithin(center, { final: radius, smallest: start.smallest, mark: start.mark }, around);
}
