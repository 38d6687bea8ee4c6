import type { Point } from '../geometry/point.js';
import { type Fit, fitted, leastSquares } from './polyline-fit.js';

/** Points looked at to either side of a joint while its best place is sought, as a multiple of its room. */
const LOOK_ROUND = 4;

/** Points looked at at least; ones far off tell nothing about where two edges join. */
const LOOK_LEAST = 8;

/** Places tried in one round of the search for a joint. */
const TRIED = 9;

/** Stretches of points and the edges along them, for one tolerance. */
export class Joints {
  constructor(
    readonly points: readonly Point[],
    readonly tolerance: number,
  ) {}

  /** The edge along a stretch, if there is one. */
  fit(from: number, to: number): Fit | null {
    return from < to ? fitted({ points: this.points, from, to }, this.tolerance) : null;
  }

  /**
   * The index nearest to `limit` up to which one edge goes along the points from index `from`, in either direction:
   * found by doubling, then by halving, so in time that grows as n log n with the points passed.
   */
  reach(from: number, limit: number): number {
    const way = limit < from ? -1 : 1;
    const most = Math.abs(limit - from);
    const fits = (steps: number): boolean => this.fits(from, from + way * steps);
    let good = 1;
    let bad = most + 1;
    for (let steps = 2; good < most && steps < bad; steps = Math.min(2 * steps, most)) {
      if (fits(steps)) good = steps;
      else bad = steps;
      if (steps === most) break;
    }
    while (bad - good > 1) {
      const middle = Math.floor((good + bad) / 2);
      if (middle > most) break;
      if (fits(middle)) good = middle;
      else bad = middle;
    }
    return from + way * good;
  }

  /** Where each of the fewest edges along the points ends, going as far as each can. */
  greedy(first: number, last: number): number[] {
    const ends = [first];
    for (let at = first; at < last; ) {
      at = this.reach(at, last);
      ends.push(at);
    }
    return ends;
  }

  /**
   * The best place for a joint near index `joint`, between two stretches that begin at `before` and end at `after`:
   * of all from which an edge reaches both, the one with the least squares of the deviations.
   */
  settled(before: number, joint: number, after: number): number {
    const low = Math.max(before + 1, this.reach(after, before));
    const high = Math.min(after - 1, this.reach(before, after));
    if (low >= high) return low === high ? low : joint;
    const room = high - low;
    const look = Math.max(LOOK_LEAST, LOOK_ROUND * room);
    const [from, to] = [Math.max(before, low - look), Math.min(after, high + look)];
    return this.search(from, low, high, to);
  }

  private search(from: number, low: number, high: number, to: number): number {
    let best = { at: low, cost: Number.POSITIVE_INFINITY };
    for (let step = Math.ceil((high - low) / TRIED); ; step = Math.ceil(step / 4)) {
      const [start, end] = Number.isFinite(best.cost)
        ? [best.at - 4 * step, best.at + 4 * step]
        : [low, high];
      for (let at = Math.max(low, start); at <= Math.min(high, end); at += step) {
        const cost = this.cost(from, at) + this.cost(at, to);
        if (cost < best.cost) best = { at, cost };
      }
      if (step === 1) return best.at;
    }
  }

  private fits(from: number, to: number): boolean {
    return this.fit(Math.min(from, to), Math.max(from, to)) !== null;
  }

  private cost(from: number, to: number): number {
    return leastSquares({ points: this.points, from, to }, this.tolerance);
  }
}
