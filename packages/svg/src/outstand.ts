import type { Report } from '@edgebite/core';
import type { Layout } from './layout.js';
import { boundsOfRegion } from './scan.js';
import { onSheet } from './view.js';

/** Lengths at the four sides of the part on the sheet, mm. */
export interface Sides {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** What dimensions and letters at a side need beyond what stands out there, mm. */
const KEPT_FREE = 17;

/**
 * How far cuts stand out from the part at each side of it, on the sheet; no farther than leaves room there for
 * dimensions and letters. Null for a part without area.
 */
export function outstandOf(report: Report, { plan, view }: Layout): Sides | null {
  const part = boundsOfRegion(report.outline);
  if (part === null) return null;
  const [left, bottom] = onSheet(view, [part.minX, part.minY]);
  const [right, top] = onSheet(view, [part.maxX, part.maxY]);
  const cuts = report.cuts
    .filter((cut) => cut.relation !== 'clear')
    .map((cut) => boundsOfRegion(cut.footprint))
    .filter((box) => box !== null);
  const most = (lengths: readonly number[], room: number): number =>
    Math.max(Math.min(Math.max(...lengths, 0) * view.factor, room - KEPT_FREE), 0);
  return {
    left: most(
      cuts.map((box) => part.minX - box.minX),
      left - plan.x,
    ),
    right: most(
      cuts.map((box) => box.maxX - part.maxX),
      plan.x + plan.width - right,
    ),
    top: most(
      cuts.map((box) => box.maxY - part.maxY),
      top - plan.y,
    ),
    bottom: most(
      cuts.map((box) => part.minY - box.minY),
      plan.y + plan.height - bottom,
    ),
  };
}
