import type { Job } from '../job/job.js';
import { type Cells, cellsOf, cellVolume, type Removal } from '../left/cells.js';
import { type KeptCells, keptCells } from '../left/pieces.js';
import { forgetful, type Memory } from '../memory/memory.js';
import { type MetalFinder, metalFinder } from '../result/near-metal.js';
import type { PassesStart } from '../result/passes-row.js';
import { type Body, bodiesOver } from '../state/bodies.js';
import { kerfAcross, type NarrowPlace, narrowPlaces } from '../state/narrow-places.js';
import { type Taking, type Timeline, timelineOf } from '../state/timeline.js';
import { goneOf } from './gone.js';
import type { Approach } from './order.js';
import { footprintsOf, type PassShape } from './taken.js';

/** The part before and after each step, and the bodies that come off it on the way. */
export interface States {
  readonly timeline: Timeline;
  readonly kept: KeptCells;
  readonly bodies: readonly Body[];
  readonly metalNear: MetalFinder;
}

/** The steps of a job: each pass of each approach, in order. */
export interface StepShape {
  readonly approach: Approach;
  readonly pass: number;
  readonly passes: number;
  readonly shape: PassShape;
  /** From where the first pass of a cut comes; null for the others, and for a cut without passes. */
  readonly start: PassesStart | null;
}

/** States of a job of which each cut is one step: what is known before passes are planned. */
export function statesByCut(
  job: Job,
  cells: Cells,
  approaches: readonly Approach[],
  memory: Memory = forgetful,
): States {
  const steps = approaches.map((approach): StepShape => {
    const cut = job.cuts[approach.cut] as Job['cuts'][number];
    const shape = memory.of(`whole ${approach.cut}`, [cut], () => wholeShape(cut));
    return { approach, pass: 0, passes: 1, shape, start: null };
  });
  return statesOf(job, cells, steps, memory.within('by cut'));
}

/** States of a job pass by pass; where no cut has several, those of the same cells. */
export function statesByPass(
  job: Job,
  cells: Cells,
  steps: readonly StepShape[],
  memory: Memory = forgetful,
): States {
  const shapes = new Map<number, PassShape[]>();
  for (const { approach, shape } of steps.filter(({ approach }) => approach.isFirst)) {
    const own = shapes.get(approach.cut) ?? [];
    own.push(shape);
    shapes.set(approach.cut, own);
  }
  const removals = cells.removals.map((removal, k): Removal => {
    const [cut, own] = [job.cuts[k] as Job['cuts'][number], shapes.get(k) ?? []];
    const passes = memory.of(`passes ${k}`, [cut, ...own], () => footprintsOf(cut, own));
    return passes === undefined ? removal : { ...removal, passes };
  });
  const isFiner = removals.some(({ passes }) => passes !== undefined);
  if (!isFiner) return statesOf(job, cells, steps, memory);
  return withLooseTaken(job, cellsOf(job.outline, job.thickness, removals), steps, [], memory);
}

/** The same states with the metal parted at its narrow places, so that what hangs by them is told. */
export function withNecks(
  job: Job,
  states: States,
  steps: readonly StepShape[],
  memory: Memory = forgetful,
): States {
  const { hold } = job.limits;
  const places = narrowPlaces(states.timeline, hold);
  if (places.length === 0) return states;
  const kerfs = places.map((place) => kerfAcross(place, hold));
  const parted = cellsOf(job.outline, job.thickness, states.timeline.cells.removals, undefined, kerfs);
  return withLooseTaken(job, parted, steps, places, memory);
}

function withLooseTaken(
  job: Job,
  cells: Cells,
  steps: readonly StepShape[],
  places: readonly NarrowPlace[],
  memory: Memory,
): States {
  const states = statesOf(job, cells, steps, memory, places);
  const taker = takenBeside(states);
  return taker === null ? states : statesOf(job, { ...cells, taker }, steps, memory, places);
}

/**
 * Who takes each cell, where passes stand beside their final cut in loose metal and take of that too; null where none
 * does. What stands fast there is no metal that a pass may take: such passes are refused.
 */
function takenBeside({ timeline, bodies }: States): Int32Array | null {
  const { cells, stepOf, stepsOf } = timeline;
  const n = cells.slabs.length;
  const looseFrom = new Map<number, number>();
  for (const { frees } of bodies)
    if (frees !== null) for (const cell of frees.cells) looseFrom.set(cell, frees.step);
  let taker: Int32Array | null = null;
  for (const [cell, from] of looseFrom) {
    const { from: low, to: high } = cells.slabs[cell % n] as Cells['slabs'][number];
    const middle = (low + high) / 2;
    for (const operand of cells.covers[Math.floor(cell / n)] as readonly number[]) {
      const one = cells.passOf.get(operand);
      if (one === undefined) continue;
      const removal = cells.removals[one.cut] as Removal;
      const step = stepsOf[one.cut]?.[one.pass] as number;
      const by = stepOf[cell] as number;
      if (step <= from || removal.low >= middle || removal.high <= middle || (by >= 0 && by <= step))
        continue;
      taker ??= cells.taker.slice();
      taker[cell] = one.cut;
      break;
    }
  }
  return taker;
}

function wholeShape(cut: Job['cuts'][number]): PassShape {
  if (cut.kind === 'swept') return { kind: 'path', path: cut.path, runs: [] };
  return { kind: 'round', center: cut.center, radius: cut.diameter / 2 };
}

function statesOf(
  job: Job,
  cells: Cells,
  steps: readonly StepShape[],
  memory: Memory,
  places: readonly NarrowPlace[] = [],
): States {
  const takings = steps.map(
    ({ approach, pass, passes }): Taking => ({
      cut: approach.cut,
      pass,
      passes,
      fromTop: approach.from === 'top',
    }),
  );
  const timeline = timelineOf(cells, takings);
  const kept = keptCells(cells, job.keep);
  const bodies = bodiesOver(timeline, kept, job.limits.hold, places);
  const rounds = steps.map(({ shape }) => (shape.kind === 'round' ? shape : null));
  const gone = goneOf(timeline, bodies, rounds).map((one, k) => memory.same(`gone ${k}`, one));
  return {
    timeline,
    kept,
    bodies,
    metalNear: metalFinder(job.outline, job.thickness, gone, memory),
  };
}

/** What there is after each step. */
export interface StepVolumes {
  readonly area: number;
  readonly taken: number;
  readonly kept: number;
  readonly loose: number;
  readonly removed: number;
}

/** Sums of volumes are off by no more than this share of the whole: less is none, and never less than none. */
const NONE = 1e-12;

/** Area and volume that each step takes, and what is kept, loose and removed after it. */
export function volumesOf({ timeline, bodies }: Pick<States, 'timeline' | 'bodies'>): StepVolumes[] {
  const { cells, stepOf, takings } = timeline;
  const n = cells.slabs.length;
  const taken = takings.map(() => 0);
  const faces = takings.map(() => new Set<number>());
  let whole = 0;
  stepOf.forEach((step, cell) => {
    if (step < -1) return;
    const volume = cellVolume(cells, cell);
    whole += volume;
    if (step < 0) return;
    taken[step] = (taken[step] as number) + volume;
    (faces[step] as Set<number>).add(Math.floor(cell / n));
  });
  const change = looseChanges(timeline, bodies);
  const orNone = (volume: number) => (volume <= NONE * whole ? 0 : volume);
  let removed = 0;
  let loose = 0;
  return takings.map((_, step) => {
    removed += taken[step] as number;
    loose = orNone(loose + (change[step] as number));
    const area = [...(faces[step] as Set<number>)].reduce((sum, f) => sum + (cells.faceArea[f] as number), 0);
    return {
      area,
      taken: taken[step] as number,
      kept: orNone(whole - removed - loose),
      loose,
      removed,
    };
  });
}

/** By step: how much loose metal it makes, less what it takes of it. */
function looseChanges({ cells, stepOf, takings }: Timeline, bodies: readonly Body[]): number[] {
  const change = takings.map(() => 0);
  for (const { frees } of bodies) {
    if (frees === null) continue;
    for (const cell of frees.cells) {
      const volume = cellVolume(cells, cell);
      const by = stepOf[cell] as number;
      if (by === frees.step) continue;
      change[frees.step] = (change[frees.step] as number) + volume;
      if (by >= 0) change[by] = (change[by] as number) - volume;
    }
  }
  return change;
}
