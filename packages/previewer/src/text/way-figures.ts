import type { WayRow } from '@edgebite/core';
import { lengthText, type Units } from '@edgebite/svg';
import { rangeText } from './figures.js';

/** A line of the table of ways: what it tells, and that of one way. */
export type WayLine = readonly [string, (row: WayRow) => string];

/** In which order ways stand, in words. */
export function orderWords(rows: readonly WayRow[]): string {
  const stops = rows.some(({ pushes }) => pushes !== null) ? ', then fewest against a stop' : '';
  return `the fewest dangers first${stops}, then the quickest`;
}

/**
 * The lines of the table of ways.
 * @param hasStops whether it is known what goes against a stop
 */
export function wayLines(units: Units, hasStops: boolean): readonly WayLine[] {
  return [
    ['dangers', ({ dangers }) => String(dangers.length)],
    ['of them slugs', ({ slugs }) => String(slugs)],
    ['checks', ({ checks }) => String(checks.length)],
    ...(hasStops ? [['against a stop', ({ pushes }: WayRow) => String(pushes ?? '-')] as const] : []),
    ['minutes', ({ minutes }) => rangeText(minutes)],
    ['steps', ({ steps }) => String(steps)],
    ['tools', ({ tools }) => String(tools.length)],
    ['changes of tool', ({ toolChanges }) => String(toolChanges)],
    ['setups', ({ setups }) => String(setups)],
    ['worst side load', ({ worstLoad }) => (worstLoad === null ? '-' : worstLoad.size.toFixed(2))],
    ['to be sawn off', ({ saw }) => String(saw.length)],
    ['walls off by up to', ({ uncertainty }) => lengthText(uncertainty, units)],
  ];
}
