import Flatbush from 'flatbush';
import { rawBands } from '../combine/offset.js';
import type { Cut } from '../cut/cut.js';
import type { JobIssue } from '../document/errors.js';
import { MAX_CROSSINGS, MAX_LOOKS } from '../document/limits.js';
import { ROW, writeRow } from '../geometry/curves.js';
import type { Edge } from '../geometry/edge.js';
import { edgeBounds } from '../geometry/measure.js';
import { meetRows } from '../geometry/meet.js';
import { circleLoop } from '../region/region.js';

/**
 * A fault if edges of cuts cross each other in so many places that the job could not be examined in reasonable time: each
 * of them is a corner of a piece of its own. Told before anything is cut; of a swept cut what bounds the tool's way along
 * each edge of its path counts, crossings with itself included.
 */
export function crossingIssues(cuts: readonly Cut[]): JobIssue[] {
  const edges = cuts.flatMap(edgesOf);
  if (edges.length < 2 || !areTooMany(edges)) return [];
  const message =
    `the edges of cuts cross each other in more than ${MAX_CROSSINGS} places; so many cuts on top of each other cannot be ` +
    'worked out in reasonable time: leave out those that are made again a little beside another';
  return [{ path: '/cuts', message }];
}

/** What bounds a cut before any overlay; of a ring both circles. */
function edgesOf(cut: Cut): readonly Edge[] {
  if (cut.kind === 'swept') return rawBands(cut.path, cut.diameter / 2).flat();
  const { center, diameter } = cut;
  const outer = circleLoop(center, diameter / 2);
  return cut.kind === 'bore' ? outer : [...outer, ...circleLoop(center, diameter / 2 - cut.wall)];
}

/** Whether edges cross in more places than the limit; stops counting past it. */
function areTooMany(edges: readonly Edge[]): boolean {
  const index = new Flatbush(edges.length);
  const rows = new Float64Array(edges.length * ROW);
  const { a: origin } = edges[0] as Edge;
  const boxes = edges.map(edgeBounds);
  edges.forEach((edge, k) => {
    writeRow(rows, k, edge, origin.x, origin.y);
    const { minX, minY, maxX, maxY } = boxes[k] as (typeof boxes)[number];
    index.add(minX, minY, maxX, maxY);
  });
  index.finish();
  const places = new Float64Array(5);
  let count = 0;
  let looks = 0;
  for (const [k, { minX, minY, maxX, maxY }] of boxes.entries()) {
    // Each pair once: from the edge that comes later.
    const near = index.search(minX, minY, maxX, maxY, (other) => other < k);
    for (const other of near) count += meetRows(rows, other, k, Number.MIN_VALUE, places);
    looks += near.length;
    if (count > MAX_CROSSINGS || looks > MAX_LOOKS) return true;
  }
  return false;
}
