import type { RangeQuery } from '@edgebite/core';
import { snapped } from '../board/snap.js';
import type { JsonObject } from '../document/json.js';
import type { Worked } from '../worker/worked.js';

/** The number of a cut that is left free. */
export type Along = RangeQuery['along'];

/** Which numbers of a cut can be left free: the tool of a path stays as it is. */
export function alongsOf({ kind }: JsonObject): readonly Along[] {
  return kind === 'swept' ? ['x', 'y'] : ['x', 'y', 'diameter'];
}

/** Of the diameter as it is, what it may shrink and grow to. */
const SHARES = [0.5, 1.5] as const;

/** A cutter needs a core: twice its wall, and this share of it over that. */
const CORE = 1.05;

/** The range that suggests itself: a diameter to either side of its place, or half of it less and more. */
export function spanOf(
  along: Along,
  cut: JsonObject,
  worked: Worked,
  step: number,
): readonly [number, number] {
  const { diameter, center, start } = worked;
  if (along === 'diameter') {
    const wall = typeof cut.wall === 'number' ? cut.wall : 0;
    const [least, most] = SHARES.map((share) => share * diameter);
    return [snapped(Math.max(least ?? 0, CORE * 2 * wall), step), snapped(most ?? diameter, step)];
  }
  const now = (center ?? start ?? [0, 0])[along === 'x' ? 0 : 1];
  return [snapped(now - diameter, step), snapped(now + diameter, step)];
}
