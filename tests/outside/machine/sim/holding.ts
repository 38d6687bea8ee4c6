import type { Slab } from './grid.js';
import { partOn, toolOn } from './grid.js';
import { holdOf } from './job.js';
import type { Run } from './run.js';
import { takenBy } from './steps.js';

/*
 * What holds, from the definition alone: metal at least so thick, in height and in plan. A place holds where an upright
 * cylinder as wide and as high as holds has room about it, and places hold each other where such a cylinder can be moved
 * from one to the next. Twice over: for a cylinder that is thicker by what the grid may be off, and for a thinner one.
 */

/** Of a grid: how far off, in cells, a signed distance between two middles may be from those at both. */
const OFF = 0.75;

/** Which places hold each other after a step: by slab and cell a label, -1 where nothing holds. */
export interface Holding {
  /** With a thicker cylinder: what has one label surely holds itself. */
  readonly sure: Int32Array;
  /** With a thinner one: what has two labels surely does not hold each other. */
  readonly maybe: Int32Array;
  /** As `maybe`, for columns seen from above: what lies over one another counts as joined. */
  readonly above: Int32Array;
}

/** Before the first step and after each one. */
export function* holdingOver(run: Run): Generator<Holding> {
  const { job, grid, slabs } = run;
  const part = partOn(grid, job);
  const metal = slabs.map(() => part.slice());
  const high = Math.min(holdOf(job), job.part.thickness);
  const half = holdOf(job) / 2;
  const told = (): Holding => {
    const maybe = joinedColumns(run, metal, half - OFF * grid.cell, high);
    return {
      sure: joinedColumns(run, metal, half + OFF * grid.cell, high),
      maybe,
      above: seenFromAbove(run, maybe),
    };
  };
  yield told();
  for (const { step } of run.steps) {
    const tool = toolOn(grid, step.tool);
    for (const s of takenBy(step, slabs)) {
      const values = metal[s] as Float32Array;
      for (let k = 0; k < values.length; k++) values[k] = Math.min(values[k] as number, tool[k] as number);
    }
    yield told();
  }
}

/** Stretches of slabs one upon another that are high enough and where something is so in each. */
function runsOf(slabs: readonly Slab[], high: number, has: (slab: number) => boolean): [number, number][] {
  const runs: [number, number][] = [];
  for (let s = 0; s < slabs.length; s++) {
    if (!has(s)) continue;
    const from = s;
    while (s + 1 < slabs.length && has(s + 1)) s++;
    if ((slabs[s] as Slab).to - (slabs[from] as Slab).from >= high - 1e-9) runs.push([from, s]);
  }
  return runs;
}

class Leaders {
  private readonly leader: Int32Array;

  constructor(count: number) {
    this.leader = Int32Array.from({ length: count }, (_, k) => k);
  }

  of(k: number): number {
    let root = k;
    while (this.leader[root] !== root) root = this.leader[root] as number;
    for (let at = k; at !== root; ) {
      const next = this.leader[at] as number;
      this.leader[at] = root;
      at = next;
    }
    return root;
  }

  join(a: number, b: number): void {
    const [p, q] = [this.of(a), this.of(b)];
    if (p !== q) this.leader[Math.max(p, q)] = Math.min(p, q);
  }
}

function joinedColumns(
  { grid: { across, along }, slabs }: Run,
  metal: readonly Float32Array[],
  over: number,
  high: number,
): Int32Array {
  const cells = across * along;
  const isIn = (cell: number, s: number) => ((metal[s] as Float32Array)[cell] as number) > over;
  const label = new Int32Array(cells * slabs.length).fill(-1);
  const leaders = new Leaders(label.length);
  for (let cell = 0; cell < cells; cell++) {
    for (const [from, to] of runsOf(slabs, high, (s) => isIn(cell, s))) {
      for (let s = from; s <= to; s++) {
        label[s * cells + cell] = 0;
        if (s > from) leaders.join(s * cells + cell, (s - 1) * cells + cell);
      }
    }
    for (const other of [cell % across > 0 ? cell - 1 : -1, cell - across]) {
      // Nothing is high enough beside a column that is nowhere.
      if (other < 0 || !slabs.some((_, s) => label[s * cells + other] !== -1)) continue;
      for (const [from] of runsOf(slabs, high, (s) => isIn(cell, s) && isIn(other, s)))
        leaders.join(from * cells + cell, from * cells + other);
    }
  }
  for (let k = 0; k < label.length; k++) if (label[k] !== -1) label[k] = leaders.of(k);
  return label;
}

function seenFromAbove({ grid: { across, along }, slabs }: Run, label: Int32Array): Int32Array {
  const cells = across * along;
  const leaders = new Leaders(cells);
  const isThere = (cell: number) => slabs.some((_, s) => label[s * cells + cell] !== -1);
  const seen = new Int32Array(cells).fill(-1);
  for (let cell = 0; cell < cells; cell++) {
    if (!isThere(cell)) continue;
    seen[cell] = 0;
    for (const other of [cell % across > 0 ? cell - 1 : -1, cell - across])
      if (other >= 0 && isThere(other)) leaders.join(cell, other);
  }
  for (let cell = 0; cell < cells; cell++) if (seen[cell] !== -1) seen[cell] = leaders.of(cell);
  return seen;
}
