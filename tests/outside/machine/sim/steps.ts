import type { Slab } from './grid.js';
import { type CutDocument, depthOf, type JobDocument, lieOf, type Tool, toolOf } from './job.js';
import type { Lie } from './lie.js';
import type { Place } from './shapes.js';

/** One approach of one tool, as it is to be simulated. */
export interface Step {
  readonly setup: string;
  readonly lie: Lie;
  /** The face of the drawn part that lies up. */
  readonly up: 'top' | 'bottom';
  readonly cut: CutDocument;
  /** From 1; null where the cut is made in one pass. */
  readonly pass: number | null;
  readonly tool: Tool;
  readonly depth: number;
  /** Heights that it takes, over the bottom of the part as drawn. */
  readonly low: number;
  readonly high: number;
}

/** Where the tool stands in each pass of a cut, as someone is told; null where it is made in one. */
export type Passes = (cut: string) => readonly { readonly center: Place; readonly diameter: number }[] | null;

/** The steps of a job in the order in which they are made. */
export function stepsOf(job: JobDocument, passes: Passes = () => null): Step[] {
  if (job.setups === undefined) {
    return job.cuts.flatMap((cut) =>
      cut.from === 'bottom'
        ? stepsOfCut(job, cut, 'as drawn, turned over', { flip: 'y', turn: 0 }, passes(cut.id))
        : stepsOfCut(job, cut, 'as drawn', { flip: null, turn: 0 }, passes(cut.id)),
    );
  }
  return job.setups.flatMap((setup) =>
    job.cuts
      .filter(({ id }) => setup.cuts.includes(id))
      .flatMap((cut) => stepsOfCut(job, cut, setup.id, lieOf(setup), passes(cut.id))),
  );
}

function stepsOfCut(
  job: JobDocument,
  cut: CutDocument,
  setup: string,
  lie: Lie,
  passes: readonly { readonly center: Place; readonly diameter: number }[] | null,
): Step[] {
  const { thickness } = job.part;
  const depth = depthOf(cut, thickness);
  const isTop = (cut.from ?? 'top') === 'top';
  const common = {
    setup,
    lie,
    up: lie.flip === null ? ('top' as const) : ('bottom' as const),
    cut,
    depth,
    low: isTop ? thickness - depth : 0,
    high: isTop ? thickness : depth,
  };
  if (passes === null) return [{ ...common, pass: null, tool: toolOf(cut) }];
  return passes.map(({ center, diameter }, k) => ({
    ...common,
    pass: passes.length === 1 ? null : k + 1,
    tool: { kind: 'disc', center, radius: diameter / 2 },
  }));
}

/** Two heights nearer than this are one. */
const SAME = 1e-9;

/** Layers between all heights at which a step begins or ends. */
export function slabsOf(job: JobDocument, steps: readonly Step[]): Slab[] {
  const heights = [0, job.part.thickness, ...steps.flatMap(({ low, high }) => [low, high])].sort(
    (a, b) => a - b,
  );
  const apart = heights.filter((height, k) => k === 0 || height - (heights[k - 1] as number) > SAME);
  return apart.slice(1).map((to, k) => ({ from: apart[k] as number, to }));
}

/** Slabs that a step takes, in the order in which its tool comes to them. */
export function takenBy(step: Step, slabs: readonly Slab[]): number[] {
  const own = slabs.flatMap(({ from, to }, s) =>
    from > step.low - SAME && to < step.high + SAME ? [s] : [],
  );
  return step.up === 'top' ? own.reverse() : own;
}

/** Depth of the tool, below the face that lies up, at which it has gone through a slab. */
export function depthAfter(job: JobDocument, step: Step, slab: Slab): number {
  return step.up === 'top' ? job.part.thickness - slab.from : slab.to;
}
