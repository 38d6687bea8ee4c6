import type { Aim } from '../aim/aim.js';
import { subtract } from '../combine/subtract.js';
import type { Method, PlannedCut } from '../feature/cut-plan.js';
import { samePoint } from '../geometry/point.js';
import { discOf, type ToolCircle } from '../load/tool-circle.js';
import { distanceTo } from '../load/touch.js';

/** A bite over its limit by less than this share of it is left to the examination to tell. */
const CLEARLY = 1e-6;

/**
 * Whether the first pass of each tool that opens out bites no deeper than it may, where nothing else is cut near it: at
 * its smallest it reaches into the metal by its radius less the distance of the metal from its centre.
 */
export function bitesFirst({ job }: Aim, { cuts }: Method): boolean {
  return cuts.every((cut, k) => {
    const start = startOf(cut);
    if (start === null) return true;
    const { center, radius, bite } = start;
    const gone = cuts.slice(0, k).flatMap(({ document }) => circleOfPlan(document) ?? []);
    if (gone.some((round) => samePoint(round.center, center) && round.radius >= radius - bite)) return true;
    const left = gone.length === 0 ? job.outline : subtract(job.outline, gone.map(discOf));
    return left.length === 0 || radius - distanceTo(left, center) <= bite * (1 + CLEARLY);
  });
}

/** A tool at its smallest, and its deepest bite; null for a cut that is not opened out. */
function startOf({ document }: PlannedCut): (ToolCircle & { readonly bite: number }) | null {
  if (document.kind !== 'bore' || document.passes?.kind !== 'open out') return null;
  const round = circleOfPlan(document);
  const { bite, smallest } = document.passes;
  if (round === null || smallest === undefined) return null;
  return { center: round.center, radius: smallest / 2, bite };
}

/** The circle of a planned cut about a point; null for a path, and where the size or the point is not written out. */
export function circleOfPlan(document: PlannedCut['document']): ToolCircle | null {
  if (document.kind === 'swept' || !Array.isArray(document.center) || document.diameter === undefined)
    return null;
  const [x, y] = document.center as readonly [number, number];
  return { center: { x, y }, radius: document.diameter / 2 };
}
