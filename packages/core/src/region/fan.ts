import { ROW } from '../geometry/curves.js';
import type { Graph } from './merge.js';

/** Directions closer than this (radians) are told apart by where the edges go, not by the rounded angle. */
export const LIKE_DIRECTION = 1e-3;

/**
 * Half-edges that leave one vertex, put in order counter-clockwise as they are added. At most vertices their directions
 * are clearly apart, and no angle has to be measured then. Made to be used again for vertex after vertex.
 */
export class Fan {
  /** How many there are. */
  count = 0;
  private half = new Int32Array(16);
  /** The direction of each, with |dx| + |dy| = 1, and a number from -2 to 2 that grows as its angle does. */
  private dx = new Float64Array(16);
  private dy = new Float64Array(16);
  private turn = new Float64Array(16);

  /** The half-edge at a place in the order. */
  at(k: number): number {
    return this.half[k] as number;
  }

  /**
   * Adds a half-edge. Its direction is that of the chord, turned back by half of what the edge turns: so that it fits
   * the ends, which welding may have moved.
   */
  add({ curves, from, to, start, member }: Graph, half: number): void {
    const { rows, points } = curves;
    const edge = half >> 1;
    const isBack = (half & 1) === 1;
    const v = (isBack ? to : from)[edge] as number;
    const w = (isBack ? from : to)[edge] as number;
    const o = (member[start[edge] as number] as number) * ROW;
    const vx = points.x[v] as number;
    const vy = points.y[v] as number;
    const wx = points.x[w] as number;
    const wy = points.y[w] as number;
    let dx = wx - vx;
    let dy = wy - vy;
    const turn = rows[o + 7] as number;
    if (turn !== 0) {
      const cx = rows[o + 4] as number;
      const cy = rows[o + 5] as number;
      const px = vx - cx;
      const py = vy - cy;
      const qx = wx - cx;
      const qy = wy - cy;
      const dot = px * qx + py * qy;
      const cross = Math.abs(px * qy - py * qx);
      const product = Math.sqrt((px * px + py * py) * (qx * qx + qy * qy));
      // Cosine and sine of half the angle at the centre, times a length; each form is precise on its side.
      const cos = dot > 0 ? product + dot : cross;
      const sin = (dot > 0 ? cross : product - dot) * (isBack ? -turn : turn);
      const chordX = dx;
      dx = chordX * cos + dy * sin;
      dy = dy * cos - chordX * sin;
    }
    const size = Math.abs(dx) + Math.abs(dy);
    dx /= size;
    dy /= size;
    this.insert(half, dx, dy, dy >= 0 ? 1 - dx : dx - 1);
  }

  private insert(half: number, dx: number, dy: number, turn: number): void {
    let slot = this.count++;
    if (slot === this.half.length) this.widen();
    for (; slot > 0 && (this.turn[slot - 1] as number) > turn; slot--) {
      this.half[slot] = this.half[slot - 1] as number;
      this.dx[slot] = this.dx[slot - 1] as number;
      this.dy[slot] = this.dy[slot - 1] as number;
      this.turn[slot] = this.turn[slot - 1] as number;
    }
    this.half[slot] = half;
    this.dx[slot] = dx;
    this.dy[slot] = dy;
    this.turn[slot] = turn;
  }

  private widen(): void {
    const { half, dx, dy, turn } = this;
    const size = 2 * half.length;
    this.half = new Int32Array(size);
    this.dx = new Float64Array(size);
    this.dy = new Float64Array(size);
    this.turn = new Float64Array(size);
    this.half.set(half);
    this.dx.set(dx);
    this.dy.set(dy);
    this.turn.set(turn);
  }

  /** Whether all neighbours are clearly apart, so that their order is beyond doubt. */
  isClear(): boolean {
    const { dx, dy } = this;
    let before = this.count - 1;
    for (let k = 0; k < this.count; k++) {
      const ux = dx[before] as number;
      const uy = dy[before] as number;
      const vx = dx[k] as number;
      const vy = dy[k] as number;
      // Said so that a direction that cannot be told is never clear.
      if (!(Math.abs(ux * vy - uy * vx) > LIKE_DIRECTION * (ux * vx + uy * vy))) return false;
      before = k;
    }
    return true;
  }
}
