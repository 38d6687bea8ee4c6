import { intersect } from '../combine/boolean.js';
import type { Cut } from '../cut/cut.js';
import { sweptRegion } from '../cut/swept.js';
import { boxesMeet } from '../geometry/bounds.js';
import { area, boundsOf } from '../region/measure.js';
import { disc, type Region } from '../region/region.js';

/** A jaw, stop, parallel or clamp: where no cutter may go. */
export interface KeepOut {
  readonly id: string;
  readonly kind: 'jaw' | 'stop' | 'parallel' | 'clamp';
  /** id of the setup that it is in; null for all. */
  readonly setup: string | null;
  /** Seen from above, on the part as drawn. */
  readonly region: Region;
  /** Heights of its lower and upper face over the face that the part lies on. */
  readonly from: number;
  readonly to: number;
}

/** Whether something is there while the part lies in a setup; what names none is there in all, `null` stands for no setup. */
export function isThereIn({ setup }: Pick<KeepOut, 'setup'>, id: string | null): boolean {
  return setup === null || setup === id;
}

/** Height of the point of a drill over its diameter. Source: 118° point, common practice: 1 / (2 tan 59°). */
export const POINT_SHARE = 1 / (2 * Math.tan((59 * Math.PI) / 180));

/** How far the point of a twist drill reaches below its full diameter; a 118° point. */
export function drillPoint(diameter: number): number {
  return POINT_SHARE * diameter;
}

/**
 * What a cutter takes up at its lowest, seen from above: the whole disc, also of a hollow cutter, whose body stands
 * over its core. It is as wide as it is there all the way up.
 * @param by how much further out than drawn it may go
 * @throws RangeError if a size is not a finite number over 0.
 */
export function bodyOf(cut: Cut, by = 0): Region {
  const radius = cut.diameter / 2 + by;
  return cut.kind === 'swept' ? sweptRegion(cut.path, radius) : disc(cut.center, radius);
}

/**
 * Whether a cutter that goes no lower than `lowest` gets into something: at its height and in its area. What only
 * touches is not in the way, but for what lies right under a cut that goes through.
 */
export function runsInto(body: Region, lowest: number, isThrough: boolean, keepOut: KeepOut): boolean {
  return isInReach(lowest, isThrough, keepOut) && liesOver(body, keepOut);
}

/** Whether a cutter that goes no lower than `lowest` comes down to something, beside it or over it. */
export function isInReach(lowest: number, isThrough: boolean, { to }: KeepOut): boolean {
  return isThrough ? to >= lowest : to > lowest;
}

/** Whether a cutter's body and something share an area, seen from above, at whatever heights. */
export function liesOver(body: Region, keepOut: KeepOut): boolean {
  return overlap(body, keepOut.region);
}

/** Whether two regions share an area. What lies far away is told by its box: an overlay would be coarse for it. */
function overlap(a: Region, b: Region): boolean {
  const [p, q] = [boundsOf(a), boundsOf(b)];
  return p !== null && q !== null && boxesMeet(p, q) && area(intersect([a, b])) > 0;
}
