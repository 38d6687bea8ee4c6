import { boxOf } from './distance.js';
import { fromTool, type JobDocument, partOf, type Tool } from './job.js';
import { loopsOf } from './shapes.js';

/** Square cells over the part as drawn, told by their middles. */
export interface Grid {
  readonly left: number;
  readonly front: number;
  /** Side of a cell. */
  readonly cell: number;
  readonly across: number;
  readonly along: number;
}

/** A layer of the part in which nothing changes on the way down. Heights over the bottom as drawn. */
export interface Slab {
  readonly from: number;
  readonly to: number;
}

/** A grid with so many cells along the longer side of the part, and one more all round. */
export function gridOver(job: JobDocument, cells: number): Grid {
  const [low, high] = boxOf(loopsOf(job.part.outline), { flip: null, turn: 0 });
  const [width, depth] = [high[0] - low[0], high[1] - low[1]];
  // Not in step with round numbers, so that middles of cells do not lie on edges.
  const cell = Math.max(width, depth) / (cells - 0.317);
  return {
    left: low[0] - 1.137 * cell,
    front: low[1] - 1.219 * cell,
    cell,
    across: Math.ceil(width / cell) + 3,
    along: Math.ceil(depth / cell) + 3,
  };
}

/** Signed distances at the middles of all cells. */
export function sampled(grid: Grid, at: (x: number, y: number) => number): Float32Array {
  const values = new Float32Array(grid.across * grid.along);
  for (let j = 0, k = 0; j < grid.along; j++) {
    const y = grid.front + (j + 0.5) * grid.cell;
    for (let i = 0; i < grid.across; i++, k++) values[k] = at(grid.left + (i + 0.5) * grid.cell, y);
  }
  return values;
}

/** The part before any cut. */
export function partOn(grid: Grid, job: JobDocument): Float32Array {
  return sampled(grid, partOf(job));
}

/** What a tool leaves alone. */
export function toolOn(grid: Grid, tool: Tool): Float32Array {
  return sampled(grid, fromTool(tool));
}

/** The cell that a place lies in; null beside the grid. */
export function cellAt(grid: Grid, x: number, y: number): number | null {
  const i = Math.floor((x - grid.left) / grid.cell);
  const j = Math.floor((y - grid.front) / grid.cell);
  return i < 0 || j < 0 || i >= grid.across || j >= grid.along ? null : j * grid.across + i;
}

/** Middle of a cell. */
export function middleOf(grid: Grid, cell: number): readonly [number, number] {
  const i = cell % grid.across;
  const j = (cell - i) / grid.across;
  return [grid.left + (i + 0.5) * grid.cell, grid.front + (j + 0.5) * grid.cell];
}

/** About which share of a cell is metal, from the signed distance at its middle. */
export function coverage(value: number, cell: number): number {
  return Math.max(0, Math.min(1, 0.5 + value / cell));
}
