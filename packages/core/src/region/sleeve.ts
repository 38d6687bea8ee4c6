import type { Point } from '../geometry/point.js';

/**
 * The straight ways from a start that pass every place given so far within a tolerance, as the wedge of their directions.
 * Joints of a fine polyline are each next to nothing off the line of their neighbours; that adds up, and here it is the sum
 * that counts.
 * Source: the cone of Williams, "An efficient algorithm for the piecewise linear approximation of planar curves" (1978).
 */
export class Sleeve {
  private x = 0;
  private y = 0;
  /** Directions of the right and the left side of the wedge; no joint yet if `isOpen`. */
  private rightX = 0;
  private rightY = 0;
  private leftX = 0;
  private leftY = 0;
  private isOpen = true;

  constructor(private readonly tolerance: number) {}

  /** Begins anew from a place. */
  start({ x, y }: Point): void {
    this.x = x;
    this.y = y;
    this.isOpen = true;
  }

  /** Whether the straight way to an end passes all places, each before the end. */
  reaches({ x, y }: Point): boolean {
    if (this.isOpen) return true;
    const dx = x - this.x;
    const dy = y - this.y;
    const isAhead = dx * (this.rightX + this.leftX) + dy * (this.rightY + this.leftY) > 0;
    return isAhead && this.rightX * dy - this.rightY * dx >= 0 && dx * this.leftY - dy * this.leftX >= 0;
  }

  /** Adds a place to pass, one that the way reaches. */
  pass({ x, y }: Point): void {
    const dx = x - this.x;
    const dy = y - this.y;
    const away = Math.hypot(dx, dy);
    // From so near to the start every direction passes it.
    if (away <= this.tolerance) return;
    const side = this.tolerance / away;
    const ahead = Math.sqrt((1 - side) * (1 + side));
    const rightX = dx * ahead + dy * side;
    const rightY = dy * ahead - dx * side;
    const leftX = dx * ahead - dy * side;
    const leftY = dy * ahead + dx * side;
    if (this.isOpen || this.rightX * rightY - this.rightY * rightX > 0) {
      this.rightX = rightX;
      this.rightY = rightY;
    }
    if (this.isOpen || leftX * this.leftY - leftY * this.leftX > 0) {
      this.leftX = leftX;
      this.leftY = leftY;
    }
    this.isOpen = false;
  }
}
