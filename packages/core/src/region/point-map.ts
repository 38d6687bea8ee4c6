import type { Point } from '../geometry/point.js';

/** Values by point. Points count as one where their coordinates are the same to the last bit, as those of a joint are. */
export class PointMap<T> {
  readonly #columns = new Map<number, Map<number, T>>();

  /** The value at a point; where there is none yet, a new one. */
  at(p: Point, first: () => T): T {
    let column = this.#columns.get(p.x);
    if (column === undefined) {
      column = new Map();
      this.#columns.set(p.x, column);
    }
    const known = column.get(p.y);
    if (known !== undefined) return known;
    const made = first();
    column.set(p.y, made);
    return made;
  }

  /** All values, column by column, in the order in which the first of each was asked for. */
  *values(): Generator<T> {
    for (const column of this.#columns.values()) yield* column.values();
  }
}
