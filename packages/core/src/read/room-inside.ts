import { offset } from '../combine/offset.js';
import { shownNumber } from '../geometry/shown.js';
import { boundsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';

/** Halvings until the room is known to a thousandth of itself, and a few more. */
const HALVINGS = 20;

/**
 * Of the deepest place in an outline, how far the outline is from it, rounded down to four digits: a tool's radius and
 * what it leaves may be no more together. 0 if there is no place.
 * @throws OverlayError where an overlay fails, which is a fault of this library
 */
export function roomInside(outline: Region): number {
  const box = boundsOf(outline);
  if (box === null) return 0;
  let low = 0;
  let high = Math.min(box.maxX - box.minX, box.maxY - box.minY);
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (low + high) / 2;
    if (offset(outline, -middle).length > 0) low = middle;
    else high = middle;
  }
  return roundedDown(low);
}

const DIGITS = 4;

function roundedDown(value: number): number {
  if (value === 0) return 0;
  const step = 10 ** (Math.floor(Math.log10(value)) - DIGITS + 1);
  return Number((Math.floor(value / step + 1e-9) * step).toPrecision(DIGITS));
}

/** What would fit inside of an outline in place of a tool and an allowance that do not. */
export function whatFits(outline: Region, radius: number): string {
  const room = roomInside(outline);
  const rest = roundedDown(Math.max(0, room - radius));
  return rest > 0
    ? `with this tool the allowance may be ${shownNumber(rest)} at most`
    : `no tool of more than ${shownNumber(2 * room)} across does`;
}
