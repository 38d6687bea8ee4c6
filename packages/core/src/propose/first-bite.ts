import type { Aim } from '../aim/aim.js';
import { subtract } from '../combine/subtract.js';
import type { Method, PlannedCut } from '../feature/cut-plan.js';
import { type Point, samePoint } from '../geometry/point.js';
import { distanceTo } from '../load/touch.js';
import { disc } from '../region/region.js';

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
    const gone = cuts.slice(0, k).flatMap(({ document }) => roundOf(document));
    if (gone.some((round) => samePoint(round.center, center) && round.radius >= radius - bite)) return true;
    const left = gone.length === 0 ? job.outline : subtract(job.outline, gone.map(discAt));
    return left.length === 0 || radius - distanceTo(left, center) <= bite * (1 + CLEARLY);
  });
}

interface Round {
  readonly center: Point;
  readonly radius: number;
}

function discAt({ center, radius }: Round) {
  return disc(center, radius);
}

/** A tool at its smallest, and its deepest bite; null for a cut that is not opened out. */
function startOf({ document }: PlannedCut): (Round & { readonly bite: number }) | null {
  if (document.kind !== 'bore' || document.passes?.kind !== 'open out') return null;
  const [round] = roundOf(document);
  const { bite, smallest } = document.passes;
  if (round === undefined || smallest === undefined) return null;
  return { center: round.center, radius: smallest / 2, bite };
}

function roundOf(document: PlannedCut['document']): Round[] {
  if (document.kind === 'swept' || !Array.isArray(document.center) || document.diameter === undefined)
    return [];
  const [x, y] = document.center as readonly [number, number];
  return [{ center: { x, y }, radius: document.diameter / 2 }];
}
