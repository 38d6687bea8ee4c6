import type { Cut } from '../cut/cut.js';
import { footprint } from '../cut/footprint.js';
import { type Bounds, boxAround, boxesMeet, grown, middleOf } from '../geometry/bounds.js';
import { nearestOnEdge } from '../geometry/distance.js';
import { edgeBounds } from '../geometry/measure.js';
import type { Point } from '../geometry/point.js';
import type { JobCut } from '../job/plan.js';
import { boundsOf, loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';

/** The box round what a cut can cut. */
export function boxOfCut(cut: Cut): Bounds {
  if (cut.kind === 'swept') return boundsOf(footprint(cut)) as Bounds;
  return boxAround(cut.center, cut.diameter / 2);
}

/** A place within the box of a cut, to tell by which side of a boundary that stays out of the box it is on. */
export function placeOfCut(cut: JobCut): Point {
  return cut.kind === 'swept' ? (cut.path[0] as { a: Point }).a : cut.center;
}

/** Adds to some cuts all that hang together with them: whose boxes meet theirs, or those of such cuts. */
export function hangingTogether(boxes: readonly Bounds[], from: Iterable<number>, gap: number): Set<number> {
  const all = new Set(from);
  // A set is walked in the order of adding, what is added on the way included.
  for (const k of all) {
    const box = grown(boxes[k] as Bounds, gap);
    for (let m = 0; m < boxes.length; m++) {
      if (boxesMeet(boxes[m] as Bounds, box)) all.add(m);
    }
  }
  return all;
}

/** Numbers of the boxes that meet one of some others. */
export function meetingAny(boxes: readonly Bounds[], others: readonly Bounds[]): number[] {
  const found: number[] = [];
  boxes.forEach((box, k) => {
    if (others.some((other) => boxesMeet(box, other))) found.push(k);
  });
  return found;
}

/** Whether a cut stays clear of all edges of an outline by more than a gap. */
export function isClearOf(outline: Region, cut: JobCut, box: Bounds, gap: number): boolean {
  const middle = cut.kind === 'swept' ? middleOf(box) : cut.center;
  const reach =
    cut.kind === 'swept' ? Math.hypot(box.maxX - middle.x, box.maxY - middle.y) : cut.diameter / 2;
  const near = grown(box, gap);
  return loopsOf(outline).every((loop) =>
    loop.every(
      (edge) => !boxesMeet(edgeBounds(edge), near) || nearestOnEdge(edge, middle).distance > reach + gap,
    ),
  );
}
