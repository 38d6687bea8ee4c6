import { BoxTree } from '../geometry/box-tree.js';

/** Pieces that follow each other are looked up together, this many at a time: a whole hole, most often. */
const RUN = 4;

/** A piece longer than this share of everything is looked up alone: the box of a run of such would hold all the others. */
const LONG = 1 / 8;

/** Runs of pieces: those of run r are from `start[r]` up to `start[r + 1]`; and the boxes round them. */
export interface Runs {
  readonly count: number;
  readonly start: Int32Array;
  readonly boxes: Float64Array;
}

/**
 * Puts neighbouring pieces together.
 * @param pieces minX, minY, maxX, maxY of each
 * @param from where each piece starts, `to` where it ends; a run goes on where one starts where the last has ended
 */
function runsOf(pieces: Float64Array, count: number, from: Int32Array, to: Int32Array): Runs {
  const long = LONG * extentOf(pieces, count);
  const start = new Int32Array(count + 1);
  const boxes = new Float64Array(4 * count);
  let run = -1;
  let isOpen = false;
  for (let i = 0; i < count; i++) {
    const p = 4 * i;
    const minX = pieces[p] as number;
    const minY = pieces[p + 1] as number;
    const maxX = pieces[p + 2] as number;
    const maxY = pieces[p + 3] as number;
    const isLong = maxX - minX > long || maxY - minY > long;
    if (isOpen && !isLong && from[i] === to[i - 1] && i - (start[run] as number) < RUN) {
      const o = 4 * run;
      if (minX < (boxes[o] as number)) boxes[o] = minX;
      if (minY < (boxes[o + 1] as number)) boxes[o + 1] = minY;
      if (maxX > (boxes[o + 2] as number)) boxes[o + 2] = maxX;
      if (maxY > (boxes[o + 3] as number)) boxes[o + 3] = maxY;
      continue;
    }
    isOpen = !isLong;
    const o = 4 * ++run;
    start[run] = i;
    boxes[o] = minX;
    boxes[o + 1] = minY;
    boxes[o + 2] = maxX;
    boxes[o + 3] = maxY;
  }
  start[run + 1] = count;
  return { count: run + 1, start, boxes };
}

/** Runs of pieces, and the tree of their boxes. */
export interface RunIndex {
  readonly runs: Runs;
  readonly tree: BoxTree;
}

/** Puts neighbouring pieces together, and the runs into a tree. */
export function indexOf(pieces: Float64Array, count: number, from: Int32Array, to: Int32Array): RunIndex {
  const runs = runsOf(pieces, count, from, to);
  return { runs, tree: new BoxTree(runs.boxes, runs.count) };
}

function extentOf(boxes: Float64Array, count: number): number {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (let o = 0; o < 4 * count; o += 4) {
    minX = Math.min(minX, boxes[o] as number);
    minY = Math.min(minY, boxes[o + 1] as number);
    maxX = Math.max(maxX, boxes[o + 2] as number);
    maxY = Math.max(maxY, boxes[o + 3] as number);
  }
  return Math.max(maxX - minX, maxY - minY);
}
