import type { Bounds } from '../geometry/bounds.js';
import { middleOf } from '../geometry/bounds.js';
import type { Point } from '../geometry/point.js';
import { type Cells, eachNeighbours } from '../left/cells.js';
import { boundsOf } from '../region/measure.js';
import { regionOfFaces } from './metal.js';
import type { Timeline } from './timeline.js';

/** Two cuts that have taken the land between them, by number, and the step that takes the last of it. */
export interface Merge {
  readonly step: number;
  readonly cuts: readonly [number, number];
  /** The middle of the box round what both cover. */
  readonly at: Point;
}

/**
 * Cuts that open into each other side by side: each takes metal next to what the other has taken at the same height, and
 * neither lies within the other, as the hole of a cutter does within that of the head which finishes it.
 */
export function mergesOver(timeline: Timeline): Merge[] {
  const { cells, stepOf } = timeline;
  const n = cells.slabs.length;
  const first = new Map<string, { step: number; a: number; b: number }>();
  eachNeighbours(cells, (left, right) => {
    for (let s = 0; s < n; s++) {
      const [p, q] = [stepOf[left * n + s] as number, stepOf[right * n + s] as number];
      if (p < 0 || q < 0) continue;
      const [one, other] = [timeline.takings[p]?.cut as number, timeline.takings[q]?.cut as number];
      if (one === other) continue;
      const [a, b] = one < other ? [one, other] : [other, one];
      const step = Math.max(p, q);
      const known = first.get(`${a} ${b}`);
      if (known === undefined || step < known.step) first.set(`${a} ${b}`, { step, a, b });
    }
  });
  const facesOf = facesByCut(cells);
  return [...first.values()]
    .flatMap(({ step, a, b }): Merge[] => {
      const [own, other] = [facesOf[a] as ReadonlySet<number>, facesOf[b] as ReadonlySet<number>];
      const both = [...own].filter((face) => other.has(face));
      if (both.length === 0 || both.length === own.size || both.length === other.size) return [];
      const box = boundsOf(regionOfFaces(timeline, both, () => true));
      return box === null ? [] : [{ step, cuts: [a, b], at: middleOf(box as Bounds) }];
    })
    .sort((a, b) => a.step - b.step);
}

/** By cut: the faces that it covers, those of its core among them. */
function facesByCut({ covers, cutOf, cores, removals }: Cells): Set<number>[] {
  const faces = removals.map(() => new Set<number>());
  covers.forEach((cover, face) => {
    for (const operand of cover) faces[cutOf[operand] as number]?.add(face);
    for (const cut of cores[face] as readonly number[]) faces[cut]?.add(face);
  });
  return faces;
}
