import type { Bounds } from './bounds.js';

/** Up to this many boxes are kept together at the end of a branch. */
const LEAF = 4;

/**
 * Boxes in a balanced tree: halved by height down to strips of so many boxes as there are strips, and these from left to
 * right. Takes n log n steps wherever the boxes lie, and finds what overlaps all at once and what a ray to the left
 * meets from near to far, which the overlay asks for most.
 * Source: Leutenegger, Lopez, Edgington, "STR: a simple and efficient algorithm for R-tree packing", ICDE 1997, for the
 * strips.
 */
export class BoxTree {
  /** Items, those of one branch side by side. */
  private readonly item: Int32Array;
  /** Branches, each before those that it parts into: which items it has, and the number of its second half, 0 at an end. */
  private readonly low: Int32Array;
  private readonly high: Int32Array;
  private readonly second: Int32Array;
  /** minX, minY, maxX, maxY of each branch. */
  private readonly around: Float64Array;
  /** Branches that a ray has still to look at; halving leaves few at a time. */
  private readonly waiting = new Int32Array(64);

  /** @param boxes minX, minY, maxX, maxY of each item */
  constructor(
    private readonly boxes: Float64Array,
    count: number,
  ) {
    const most = Math.max(1, Math.ceil((4 * count) / LEAF));
    this.item = inOrder(boxes, count);
    this.low = new Int32Array(most);
    this.high = new Int32Array(most);
    this.second = new Int32Array(most);
    this.around = new Float64Array(4 * most);
    this.grow(count);
  }

  private grow(count: number): void {
    const { low, high, second } = this;
    /** Branches still to be made: first and last item, and the one whose second half it is, or -1. */
    const waiting = [0, count, -1];
    let branches = 0;
    while (waiting.length > 0) {
      const parent = waiting.pop() as number;
      const hi = waiting.pop() as number;
      const lo = waiting.pop() as number;
      const branch = branches++;
      low[branch] = lo;
      high[branch] = hi;
      if (parent >= 0) second[parent] = branch;
      if (hi - lo <= LEAF) continue;
      const middle = (lo + hi) >> 1;
      waiting.push(middle, hi, branch, lo, middle, -1);
    }
    for (let branch = branches - 1; branch >= 0; branch--) this.enclose(branch);
  }

  /** Makes the box of a branch of those of its halves, or of its items. */
  private enclose(branch: number): void {
    const { around, boxes, item, second } = this;
    const other = second[branch] as number;
    let minX = Infinity;
    let minY = Infinity;
    let maxX = -Infinity;
    let maxY = -Infinity;
    const from = other > 0 ? around : boxes;
    const n = other > 0 ? 2 : (this.high[branch] as number) - (this.low[branch] as number);
    for (let k = 0; k < n; k++) {
      const o =
        4 * (other > 0 ? (k === 0 ? branch + 1 : other) : (item[(this.low[branch] as number) + k] as number));
      minX = Math.min(minX, from[o] as number);
      minY = Math.min(minY, from[o + 1] as number);
      maxX = Math.max(maxX, from[o + 2] as number);
      maxY = Math.max(maxY, from[o + 3] as number);
    }
    around[4 * branch] = minX;
    around[4 * branch + 1] = minY;
    around[4 * branch + 2] = maxX;
    around[4 * branch + 3] = maxY;
  }

  /** Calls `visit` once for each two items whose boxes come within a distance of each other. */
  eachPair(by: number, visit: (one: number, other: number) => void): void {
    const { around, boxes, item, low, high, second } = this;
    const waiting = [0, 0];
    while (waiting.length > 0) {
      const q = waiting.pop() as number;
      const p = waiting.pop() as number;
      if (!areNear(around, p, q, by)) continue;
      const p2 = second[p] as number;
      const q2 = second[q] as number;
      if (p2 === 0 && q2 === 0) {
        for (let i = low[p] as number; i < (high[p] as number); i++) {
          const one = item[i] as number;
          for (let j = p === q ? i + 1 : (low[q] as number); j < (high[q] as number); j++) {
            const other = item[j] as number;
            if (areNear(boxes, one, other, by)) visit(one, other);
          }
        }
      } else if (p === q) waiting.push(p + 1, p + 1, p2, p2, p + 1, p2);
      // The larger one is parted; a leaf is never that beside a branch.
      else if ((high[p] as number) - (low[p] as number) > (high[q] as number) - (low[q] as number))
        waiting.push(p + 1, q, p2, q);
      else waiting.push(p, q + 1, p, q2);
    }
  }

  /**
   * Calls `visit` for the items whose boxes a ray to the left comes to, a hair below a place; roughly from near to far.
   * @param stop how far to look
   * @param visit returns how far to look from then on
   */
  toTheLeft(x: number, y: number, stop: number, visit: (item: number) => number): void {
    const { around, boxes, item, low, high, second, waiting } = this;
    let end = stop;
    let depth = 1;
    waiting[0] = 0;
    while (depth > 0) {
      const branch = waiting[--depth] as number;
      if (!isLeft(around, branch, x, y, end)) continue;
      const other = second[branch] as number;
      if (other > 0) {
        const one = branch + 1;
        // What reaches further to the right is looked at first.
        const isOneFirst = (around[4 * one + 2] as number) > (around[4 * other + 2] as number);
        waiting[depth++] = isOneFirst ? other : one;
        waiting[depth++] = isOneFirst ? one : other;
        continue;
      }
      for (let k = low[branch] as number; k < (high[branch] as number); k++) {
        const i = item[k] as number;
        if (isLeft(boxes, i, x, y, end)) end = visit(i);
      }
    }
  }

  /**
   * Calls `visit` for the items whose boxes come within a distance of another box, along both axes; roughly from near
   * to far.
   * @param visit returns how far to look from then on
   */
  nearBox(near: Bounds, reach: number, visit: (item: number) => number): void {
    const { around, boxes, item, low, high, second, waiting } = this;
    let by = reach;
    let depth = 1;
    waiting[0] = 0;
    while (depth > 0) {
      const branch = waiting[--depth] as number;
      if (!(apartBy(around, branch, near) <= by)) continue;
      const other = second[branch] as number;
      if (other > 0) {
        const one = branch + 1;
        const isOneFirst = apartBy(around, one, near) <= apartBy(around, other, near);
        waiting[depth++] = isOneFirst ? other : one;
        waiting[depth++] = isOneFirst ? one : other;
        continue;
      }
      for (let k = low[branch] as number; k < (high[branch] as number); k++) {
        const i = item[k] as number;
        if (apartBy(boxes, i, near) <= by) by = visit(i);
      }
    }
  }
}

/** The wider of the two gaps along the axes between an item and a box; 0 where they share a point. */
function apartBy(boxes: Float64Array, index: number, { minX, minY, maxX, maxY }: Bounds): number {
  const o = 4 * index;
  const dx = Math.max(minX - (boxes[o + 2] as number), (boxes[o] as number) - maxX);
  const dy = Math.max(minY - (boxes[o + 3] as number), (boxes[o + 1] as number) - maxY);
  return Math.max(dx, dy, 0);
}

/** A tree of boxes that are at hand one by one. */
export function boxTreeOf(boxes: readonly Bounds[]): BoxTree {
  const flat = new Float64Array(4 * boxes.length);
  for (let k = 0; k < boxes.length; k++) {
    const { minX, minY, maxX, maxY } = boxes[k] as Bounds;
    flat[4 * k] = minX;
    flat[4 * k + 1] = minY;
    flat[4 * k + 2] = maxX;
    flat[4 * k + 3] = maxY;
  }
  return new BoxTree(flat, boxes.length);
}

/** Whether a ray from a place to the left, a hair below it, meets a box before it has come to `end`. */
function isLeft(boxes: Float64Array, index: number, x: number, y: number, end: number): boolean {
  const o = 4 * index;
  return (
    (boxes[o + 1] as number) < y &&
    y <= (boxes[o + 3] as number) &&
    (boxes[o] as number) <= x &&
    (boxes[o + 2] as number) >= end
  );
}

/** The items in the order of the leaves: strips from low to high, each from left to right. */
function inOrder(boxes: Float64Array, count: number): Int32Array {
  const item = new Int32Array(count);
  for (let i = 0; i < count; i++) item[i] = i;
  sortBy(1, boxes, item, 0, count);
  // Halving goes the same way as in the tree, so that no branch has parts of two strips.
  const perStrip = Math.sqrt(count * LEAF);
  const waiting = [0, count];
  while (waiting.length > 0) {
    const hi = waiting.pop() as number;
    const lo = waiting.pop() as number;
    const middle = (lo + hi) >> 1;
    if (hi - lo <= perStrip) sortBy(0, boxes, item, lo, hi);
    else waiting.push(lo, middle, middle, hi);
  }
  return item;
}

/** Whole numbers of so many bits are exact in a double. */
const EXACT_BITS = 53;

/**
 * Sorts a range of items by the middles of their boxes, by x (0) or y (1), as whole numbers: the native sort of numbers is
 * many times quicker than one that has to ask, and has room for the place of the item behind the coordinate.
 */
function sortBy(side: number, boxes: Float64Array, item: Int32Array, lo: number, hi: number): void {
  const n = hi - lo;
  const keys = new Float64Array(n);
  let min = Infinity;
  let max = -Infinity;
  for (let k = 0; k < n; k++) {
    const o = 4 * (item[lo + k] as number) + side;
    const middle = (boxes[o] as number) + (boxes[o + 2] as number);
    keys[k] = middle;
    if (middle < min) min = middle;
    if (middle > max) max = middle;
  }
  const places = 2 ** Math.ceil(Math.log2(n));
  const scale = (2 ** EXACT_BITS / places - 1) / (max - min);
  // None or one, or nothing lies apart by more than can be divided by.
  if (!Number.isFinite(scale)) return;
  for (let k = 0; k < n; k++) keys[k] = Math.floor(((keys[k] as number) - min) * scale) * places + k;
  keys.sort();
  const before = item.slice(lo, hi);
  for (let k = 0; k < n; k++) {
    const key = keys[k] as number;
    item[lo + k] = before[key - Math.floor(key / places) * places] as number;
  }
}

/** Whether the boxes of two items come within a distance of each other. */
export function areNear(boxes: Float64Array, one: number, other: number, by: number): boolean {
  const p = 4 * one;
  const q = 4 * other;
  return (
    (boxes[p] as number) - by <= (boxes[q + 2] as number) &&
    (boxes[q] as number) - by <= (boxes[p + 2] as number) &&
    (boxes[p + 1] as number) - by <= (boxes[q + 3] as number) &&
    (boxes[q + 1] as number) - by <= (boxes[p + 3] as number)
  );
}
