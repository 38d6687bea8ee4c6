/*
 * Room: the part before and after each step.
 * In: cells of the arrangement, and which step takes each.
 * Out: metal, bodies, where they let go, what holds them, which bites merge.
 */

import type { Cells } from '../left/cells.js';

/**
 * The part before and after each step. A step is one approach of one tool: a cut, or one pass of it. All states come
 * out of the one overlay of a job's cuts: which cell is taken by which step, and at which depth of its tool.
 */

/** What a step takes: a pass of a cut, and the side of the drawn part that its tool comes from. */
export interface Taking {
  /** Number of the cut. */
  readonly cut: number;
  /** Number of the pass, from 0. */
  readonly pass: number;
  /** How many passes the cut has. */
  readonly passes: number;
  readonly fromTop: boolean;
}

/** When each cell is taken: by which step, and in which layer on its tool's way down. */
export interface Timeline {
  readonly cells: Cells;
  readonly takings: readonly Taking[];
  /** By cell: number of the step that takes it; `NEVER` where it stands in the end, `NOWHERE` where it never was. */
  readonly stepOf: Int32Array;
  /** By cell: its moment, `step * slabs + layer` counted from where the tool starts; as `stepOf` where there is none. */
  readonly momentOf: Int32Array;
  /** By cut and pass: the step that makes it. */
  readonly stepsOf: readonly (readonly number[])[];
}

/** Of a cell that stands in the end. */
export const NEVER = -1;
/** Of a cell that was never part of the outline. */
export const NOWHERE = -2;

/**
 * Says of each cell when it is taken.
 * @param takings in the order in which they are made; of one cut and pass, the first takes all
 */
export function timelineOf(cells: Cells, takings: readonly Taking[]): Timeline {
  const n = cells.slabs.length;
  const stepsOf: number[][] = cells.removals.map(() => []);
  takings.forEach(({ cut, pass }, step) => {
    const ofCut = stepsOf[cut] as number[];
    ofCut[pass] ??= step;
  });
  const stepOf = Int32Array.from(cells.taker);
  const momentOf = Int32Array.from(cells.taker);
  for (let cell = 0; cell < stepOf.length; cell++) {
    const cut = cells.taker[cell] as number;
    if (cut < 0) continue;
    const step = stepsOf[cut]?.[passOver(cells, Math.floor(cell / n), cut)] as number;
    const { fromTop } = takings[step] as Taking;
    stepOf[cell] = step;
    momentOf[cell] = step * n + (fromTop ? n - 1 - (cell % n) : cell % n);
  }
  return { cells, takings, stepOf, momentOf, stepsOf };
}

/** The first pass of a cut that covers a face; the last takes what the others leave. */
function passOver(cells: Cells, face: number, cut: number): number {
  const passes = cells.removals[cut]?.passes?.length ?? 0;
  let first = Math.max(0, passes - 1);
  if (passes === 0) return first;
  for (const operand of cells.covers[face] as readonly number[]) {
    const one = cells.passOf.get(operand);
    if (one !== undefined && one.cut === cut && one.pass < first) first = one.pass;
  }
  return first;
}

/** The step of a moment. */
export function stepAt({ cells }: Timeline, moment: number): number {
  return Math.floor(moment / cells.slabs.length);
}

/** How deep the tool is below the face that it starts from when it has taken the layer of a moment. */
export function depthAt({ cells, takings }: Timeline, moment: number): number {
  const n = cells.slabs.length;
  const layer = moment % n;
  const { fromTop } = takings[Math.floor(moment / n)] as Taking;
  const top = cells.slabs[n - 1]?.to ?? 0;
  return fromTop ? top - (cells.slabs[n - 1 - layer]?.from ?? 0) : (cells.slabs[layer]?.to ?? 0);
}

/** Cells by moment, the last moment first. */
export function momentsBackwards({ momentOf }: Timeline): { moment: number; cells: number[] }[] {
  const byMoment = new Map<number, number[]>();
  momentOf.forEach((moment, cell) => {
    if (moment < 0) return;
    const list = byMoment.get(moment);
    if (list === undefined) byMoment.set(moment, [cell]);
    else list.push(cell);
  });
  return [...byMoment].map(([moment, cells]) => ({ moment, cells })).sort((a, b) => b.moment - a.moment);
}

/** Calls `visit` for each cell in another face that shares a wall with a cell, with that wall. */
export function eachBeside(cells: Cells, cell: number, visit: (other: number, edge: number) => void): void {
  const n = cells.slabs.length;
  const face = Math.floor(cell / n);
  const { start, half } = cells.borders;
  for (let k = start[face] as number; k < (start[face + 1] as number); k++) {
    const across = (half[k] as number) ^ 1;
    visit((cells.subdivision.faceOf[across] as number) * n + (cell % n), across >> 1);
  }
}
