import { type Body, type Flood, flood } from './flood.js';
import { cellAt, coverage, type Grid, gridOver, partOn, type Slab, toolOn } from './grid.js';
import type { JobDocument } from './job.js';
import { depthAfter, type Step, slabsOf, takenBy } from './steps.js';

/** Whose metal a cell of a slab is: none, the kept body's, a loose body's (over 0), or not told by the grid. */
export const NOBODY = -1;
export const KEPT = 0;
export const UNKNOWN = -2;

/** Share of the cells on a border by which what a step takes may be off: errors cancel for the most part. */
const TAKE_SLACK = 0.05;

/** Metal within so many cells of what is of a body for certain is of it. */
const NEAR = 2;

/** The part at some moment. */
export interface Moment {
  /** How many steps are done. */
  readonly done: number;
  /** By slab and cell. */
  readonly owner: Int16Array;
}

/** A body that came off the kept one. */
export interface Freed {
  readonly body: number;
  readonly depth: number;
  readonly volume: number;
  readonly slack: number;
  /** Plan area. */
  readonly view: number;
  /** Whether the grid tells when and as how many bodies it came off. */
  readonly isTold: boolean;
}

/** What one step did. */
export interface Done {
  readonly step: Step;
  readonly before: Moment;
  readonly after: Moment;
  readonly frees: readonly Freed[];
  /** By owner: volume that the step takes of it, and how far off that may be. */
  readonly takes: ReadonlyMap<number, { readonly volume: number; readonly slack: number }>;
}

/** A job done on the grid. */
export interface Run {
  readonly job: JobDocument;
  readonly grid: Grid;
  readonly slabs: readonly Slab[];
  readonly steps: readonly Done[];
  /** Bodies in the end; null where nothing is left. */
  readonly end: { readonly flood: Flood; readonly kept: Body } | null;
  /** How often the grid could not tell what hangs together. */
  readonly doubts: number;
}

/** Does a job step by step on a grid with so many cells along its longer side. */
export function run(job: JobDocument, steps: readonly Step[], cells: number): Run {
  const grid = gridOver(job, cells);
  const slabs = slabsOf(job, steps);
  const part = partOn(grid, job);
  const tools = steps.map(({ tool }) => toolOn(grid, tool));
  const metal = slabs.map(() => part.slice());
  for (const [k, step] of steps.entries()) {
    for (const s of takenBy(step, slabs)) take(metal[s] as Float32Array, tools[k] as Float32Array);
  }
  const end = ending(job, grid, slabs, flood(grid, slabs, metal));
  if (end === null) return { job, grid, slabs, steps: [], end, doubts: 0 };
  const start = slabs.map(() => part.slice());
  const doing = new Doing(job, grid, slabs, start, end.kept.witness);
  const done = steps.map((step, k) => doing.step(step, tools[k] as Float32Array));
  return { job, grid, slabs, steps: done, end, doubts: doing.doubts };
}

/** Takes what is in a tool's way; false where that is nothing. */
function take(metal: Float32Array, tool: Float32Array): boolean {
  let isMet = false;
  for (let k = 0; k < metal.length; k++) {
    if ((tool[k] as number) >= (metal[k] as number)) continue;
    metal[k] = tool[k] as number;
    isMet = true;
  }
  return isMet;
}

/** The body that is kept: the largest at the place that is held, or else the largest of all. */
function ending(job: JobDocument, grid: Grid, slabs: readonly Slab[], now: Flood): Run['end'] {
  const cells = grid.across * grid.along;
  const held = job.keep === undefined ? null : cellAt(grid, job.keep[0], job.keep[1]);
  const at =
    held === null ? [] : slabs.flatMap((_, s) => now.bodies.get(now.label[s * cells + held] as number) ?? []);
  const among = at.length > 0 ? at : [...now.bodies.values()];
  const [kept] = [...among].sort((a, b) => b.volume - a.volume);
  return kept === undefined ? null : { flood: now, kept };
}

/** The work in progress: metal by slab, whose it is, and how many bodies there are. */
class Doing {
  doubts = 0;
  private done = 0;
  private known = 0;
  private owner: Int16Array;

  constructor(
    private readonly job: JobDocument,
    private readonly grid: Grid,
    private readonly slabs: readonly Slab[],
    private readonly metal: Float32Array[],
    /** A place that is kept from first to last. */
    private readonly witness: number,
  ) {
    this.owner = this.owned(flood(grid, slabs, metal), 0, null).owner;
  }

  step(step: Step, tool: Float32Array): Done {
    const before: Moment = { done: this.done, owner: this.owner };
    const takes = new Map<number, { volume: number; slack: number }>();
    const frees: Freed[] = [];
    for (const s of takenBy(step, this.slabs)) {
      const old = (this.metal[s] as Float32Array).slice();
      if (!take(this.metal[s] as Float32Array, tool)) continue;
      this.count(s, old, before.owner, takes);
      const depth = depthAfter(this.job, step, this.slabs[s] as Slab);
      const now = this.owned(flood(this.grid, this.slabs, this.metal), depth, this.owner);
      this.owner = now.owner;
      frees.push(...now.frees);
    }
    this.done++;
    return { step, before, after: { done: this.done, owner: this.owner }, frees, takes };
  }

  private count(
    s: number,
    old: Float32Array,
    owner: Int16Array,
    takes: Map<number, { volume: number; slack: number }>,
  ): void {
    const { cell } = this.grid;
    const now = this.metal[s] as Float32Array;
    const { from, to } = this.slabs[s] as Slab;
    for (let k = 0; k < now.length; k++) {
      const [was, is] = [old[k] as number, now[k] as number];
      if (was === is) continue;
      const by = coverage(was, cell) - coverage(is, cell);
      const whose = owner[s * now.length + k] as number;
      const sum = takes.get(whose) ?? { volume: 0, slack: 0 };
      takes.set(whose, sum);
      const unit = cell * cell * (to - from);
      sum.volume += by * unit;
      if (Math.abs(was) < cell || Math.abs(is) < cell) sum.slack += TAKE_SLACK * unit;
    }
  }

  /** Whose each cell is now, by whose it was before. */
  private owned(now: Flood, depth: number, was: Int16Array | null): { owner: Int16Array; frees: Freed[] } {
    const kept = now.label[this.witness] as number;
    const keptPart = now.sure[this.witness] as number;
    const frees: Freed[] = [];
    const names = new Map<number, number>();
    for (const [label, body] of now.bodies) {
      const isTold = body.parts === 1;
      if (!isTold) this.doubts++;
      if (label === kept) continue;
      const before = was === null ? KEPT : (was[body.witness] as number);
      if (before > KEPT) {
        names.set(label, before);
        continue;
      }
      if (before === UNKNOWN) this.doubts++;
      this.known++;
      names.set(label, this.known);
      frees.push({
        body: this.known,
        depth,
        volume: body.volume,
        slack: body.slack,
        view: this.viewOf(now, label),
        isTold: isTold && before === KEPT,
      });
    }
    const isWhole = now.bodies.get(kept)?.parts === 1;
    const owner = new Int16Array(now.label.length);
    for (let k = 0; k < owner.length; k++) {
      const label = now.label[k] as number;
      if (label === -1) owner[k] = NOBODY;
      else if (label === kept) owner[k] = isWhole || now.sure[k] === keptPart ? KEPT : UNKNOWN;
      else owner[k] = names.get(label) ?? UNKNOWN;
      // Metal that may be joined to a body, and lies far from all that is for certain, may be a speck by itself.
      const body = now.bodies.get(label);
      if (body === undefined || owner[k] === UNKNOWN) continue;
      if (!this.isNear(now, k, now.sure[body.witness] as number)) owner[k] = UNKNOWN;
    }
    return { owner, frees };
  }

  /** Whether a cell is of a part, or within two cells of one or right over or under one that is. */
  private isNear({ sure }: Flood, k: number, part: number): boolean {
    if (sure[k] === part) return true;
    const { across, along } = this.grid;
    const cells = across * along;
    if (sure[k - cells] === part || sure[k + cells] === part) return true;
    const slab = Math.floor(k / cells) * cells;
    const [i, j] = [(k - slab) % across, Math.floor((k - slab) / across)];
    for (let v = Math.max(0, j - NEAR); v <= Math.min(along - 1, j + NEAR); v++) {
      for (let u = Math.max(0, i - NEAR); u <= Math.min(across - 1, i + NEAR); u++) {
        if (sure[slab + v * across + u] === part) return true;
      }
    }
    return false;
  }

  /** Plan area of a body: what some slab has of it. */
  private viewOf(now: Flood, label: number): number {
    const { across, along, cell } = this.grid;
    const cells = across * along;
    let area = 0;
    for (let k = 0; k < cells; k++) {
      let most = 0;
      this.metal.forEach((values, s) => {
        if (now.label[s * cells + k] === label) most = Math.max(most, coverage(values[k] as number, cell));
      });
      area += most;
    }
    return area * cell * cell;
  }
}
