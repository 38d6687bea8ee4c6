import Flatbush from 'flatbush';
import { ROW } from '../geometry/curves.js';
import type { Curves } from './gather.js';

/** Up to this many pieces comparing all boxes beats building an index. */
const INDEX_FROM = 48;

/** Pieces of one loop that follow each other are looked up together, this many at a time: a whole hole, most often. */
const RUN = 4;

/** Boxes round the pieces: minX, minY, maxX, maxY each. */
export function boxesOf(rows: Float64Array, count: number): Float64Array {
  const boxes = new Float64Array(count * 4);
  for (let i = 0; i < count; i++) {
    const o = i * ROW;
    const ax = rows[o] as number;
    const ay = rows[o + 1] as number;
    const bx = rows[o + 2] as number;
    const by = rows[o + 3] as number;
    let minX = Math.min(ax, bx);
    let maxX = Math.max(ax, bx);
    const turn = rows[o + 7] as number;
    if (turn !== 0) {
      // A piece runs up or down all the way, so only its left or right extreme can leave the box of its ends.
      const cx = rows[o + 4] as number;
      const cy = rows[o + 5] as number;
      const r = rows[o + 6] as number;
      if (cy > ay !== cy > by || cy === ay || cy === by) {
        // Going up counter-clockwise is the right half of a circle.
        if (by > ay === turn > 0) maxX = Math.max(maxX, cx + r);
        else minX = Math.min(minX, cx - r);
      }
    }
    boxes[i * 4] = minX;
    boxes[i * 4 + 1] = Math.min(ay, by);
    boxes[i * 4 + 2] = maxX;
    boxes[i * 4 + 3] = Math.max(ay, by);
  }
  return boxes;
}

/** Calls `visit` once for each two pieces whose boxes come within the tolerance of each other. */
export function eachPair(curves: Curves, boxes: Float64Array, visit: (i: number, j: number) => void): void {
  const { count, tolerance } = curves;
  if (count < INDEX_FROM) {
    for (let i = 0; i < count; i++) {
      for (let j = i + 1; j < count; j++) if (near(boxes, i, j, tolerance)) visit(i, j);
    }
    return;
  }
  const runs = runsOf(curves, boxes);
  const index = new Flatbush(runs.count);
  for (let r = 0; r < runs.count; r++) {
    const o = r * 4;
    index.add(
      runs.boxes[o] as number,
      runs.boxes[o + 1] as number,
      runs.boxes[o + 2] as number,
      runs.boxes[o + 3] as number,
    );
  }
  index.finish();
  for (let r = 0; r < runs.count; r++) {
    const o = r * 4;
    const from = runs.start[r] as number;
    const to = runs.start[r + 1] as number;
    for (let i = from; i < to; i++) {
      for (let j = i + 1; j < to; j++) if (near(boxes, i, j, tolerance)) visit(i, j);
    }
    index.search(
      (runs.boxes[o] as number) - tolerance,
      (runs.boxes[o + 1] as number) - tolerance,
      (runs.boxes[o + 2] as number) + tolerance,
      (runs.boxes[o + 3] as number) + tolerance,
      (other) => {
        if (other <= r) return false;
        const end = runs.start[other + 1] as number;
        for (let i = from; i < to; i++) {
          for (let j = runs.start[other] as number; j < end; j++) {
            if (near(boxes, i, j, tolerance)) visit(i, j);
          }
        }
        return false;
      },
    );
  }
}

/** Runs of pieces: those of run r are from `start[r]` up to `start[r + 1]`; and the boxes round them. */
interface Runs {
  readonly count: number;
  readonly start: Int32Array;
  readonly boxes: Float64Array;
}

function runsOf(curves: Curves, pieces: Float64Array): Runs {
  const start = new Int32Array(curves.count + 1);
  const boxes = new Float64Array(curves.count * 4);
  let count = 0;
  let first = 0;
  for (let i = 0; i < curves.count; i++) {
    const o = count * 4;
    const p = i * 4;
    const isNew = i === first;
    boxes[o] = isNew ? (pieces[p] as number) : Math.min(boxes[o] as number, pieces[p] as number);
    boxes[o + 1] = isNew
      ? (pieces[p + 1] as number)
      : Math.min(boxes[o + 1] as number, pieces[p + 1] as number);
    boxes[o + 2] = isNew
      ? (pieces[p + 2] as number)
      : Math.max(boxes[o + 2] as number, pieces[p + 2] as number);
    boxes[o + 3] = isNew
      ? (pieces[p + 3] as number)
      : Math.max(boxes[o + 3] as number, pieces[p + 3] as number);
    const isLast = i + 1 === curves.count || curves.to[i] !== curves.from[i + 1];
    if (!isLast && i + 1 - first < RUN) continue;
    count++;
    first = i + 1;
    start[count] = first;
  }
  return { count, start, boxes };
}

function near(boxes: Float64Array, i: number, j: number, tolerance: number): boolean {
  const p = i * 4;
  const q = j * 4;
  return (
    (boxes[p] as number) - tolerance <= (boxes[q + 2] as number) &&
    (boxes[q] as number) - tolerance <= (boxes[p + 2] as number) &&
    (boxes[p + 1] as number) - tolerance <= (boxes[q + 3] as number) &&
    (boxes[q + 1] as number) - tolerance <= (boxes[p + 3] as number)
  );
}
