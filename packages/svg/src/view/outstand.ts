import type { Report } from '@edgebite/core';
import { boundsOfRegion } from './scan.js';
import { type Box, onSheet, type View } from './view.js';

/** Lengths at the four sides of the part on the sheet, mm. */
export interface Sides {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** What dimensions and letters at a side need beyond what stands out there, mm. */
const KEPT_FREE: Sides = { left: 28, right: 16, top: 16, bottom: 23 };

/**
 * How far cuts stand out from the part at each side of it, on the sheet; no farther than leaves room there for
 * dimensions and letters. Null for a part without area.
 */
export function outstandOf(report: Report, plan: Box, view: View): Sides | null {
  const part = boundsOfRegion(report.outline);
  if (part === null) return null;
  const [left, bottom] = onSheet(view, [part.minX, part.minY]);
  const [right, top] = onSheet(view, [part.maxX, part.maxY]);
  const cuts = report.cuts
    .filter((cut) => cut.relation !== 'clear')
    .map((cut) => boundsOfRegion(cut.footprint))
    .filter((box) => box !== null);
  const most = (lengths: readonly number[], room: number): number =>
    Math.max(Math.min(Math.max(...lengths, 0) * view.factor, room), 0);
  return {
    left: most(
      cuts.map((box) => part.minX - box.minX),
      left - plan.x - KEPT_FREE.left,
    ),
    right: most(
      cuts.map((box) => box.maxX - part.maxX),
      plan.x + plan.width - right - KEPT_FREE.right,
    ),
    top: most(
      cuts.map((box) => box.maxY - part.maxY),
      top - plan.y - KEPT_FREE.top,
    ),
    bottom: most(
      cuts.map((box) => part.minY - box.minY),
      plan.y + plan.height - bottom - KEPT_FREE.bottom,
    ),
  };
}
