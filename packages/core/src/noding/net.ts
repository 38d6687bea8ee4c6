import type { Points } from './points.js';

/**
 * Makes vertices of points: each point is within a distance of its vertex, and vertices are further than that apart. Joining
 * all that are near, and all that are near these, would move points of a row by the length of the row.
 */
export class Net {
  private readonly cells = new Map<number, Map<number, number[]>>();

  constructor(private readonly distance: number) {}

  /** The vertex of each point: itself, or the nearest vertex before it. Points that were given come before all others. */
  leaders({ x, y, given }: Points): Int32Array {
    const n = x.length;
    const leader = new Int32Array(n);
    for (const isTurn of [(k: number) => given[k] !== null, (k: number) => given[k] === null]) {
      for (let k = 0; k < n; k++) if (isTurn(k)) leader[k] = this.add(k, x, y);
    }
    return leader;
  }

  private add(k: number, x: readonly number[], y: readonly number[]): number {
    const px = x[k] as number;
    const py = y[k] as number;
    const column = Math.floor(px / this.distance);
    const row = Math.floor(py / this.distance);
    let nearest = -1;
    let least = this.distance * this.distance;
    for (let c = column - 1; c <= column + 1; c++) {
      const cells = this.cells.get(c);
      if (cells === undefined) continue;
      for (let r = row - 1; r <= row + 1; r++) {
        for (const v of cells.get(r) ?? []) {
          const dx = (x[v] as number) - px;
          const dy = (y[v] as number) - py;
          const square = dx * dx + dy * dy;
          if (square > least) continue;
          least = square;
          nearest = v;
        }
      }
    }
    if (nearest >= 0) return nearest;
    let cells = this.cells.get(column);
    if (cells === undefined) {
      cells = new Map();
      this.cells.set(column, cells);
    }
    const cell = cells.get(row);
    if (cell === undefined) cells.set(row, [k]);
    else cell.push(k);
    return k;
  }
}
