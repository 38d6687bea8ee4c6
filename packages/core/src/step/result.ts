/*
 * Room: the spine: every approach of a tool, as the part lies and stands then.
 * In: a `Job`.
 * Out: a `Result`: geometry only, with what is left, steps, bodies and merges.
 */

import { densityOf } from '../cutting/density.js';
import { DEGREE } from '../geometry/angle.js';
import { partOf, type Tick, unwatched } from '../geometry/watch.js';
import type { Job } from '../job/job.js';
import { cellsOf } from '../left/cells.js';
import { type Left, whatIsLeft } from '../left/left.js';
import { type CoverSums, standingOf } from '../left/relation.js';
import { forgetful, type Memory } from '../memory/memory.js';
import { type CenterCut, centerCuts } from '../result/center-cuts.js';
import { type Facts, factsOf } from '../result/facts.js';
import { removalOf } from '../result/removal.js';
import { type SetUp, setUp } from '../result/set-up.js';
import type { Body } from '../state/bodies.js';
import { type Merge, mergesOver } from '../state/merges.js';
import { hangingInTheEnd } from '../state/support.js';
import type { Timeline } from '../state/timeline.js';
import { approachesOf } from './order.js';
import { type StepShape, statesByCut, statesByPass, withNecks } from './states.js';
import type { Step } from './step.js';
import { stepsOf } from './steps.js';
import { passShapes } from './taken.js';

/** Everything that is worked out of a job, once: what is left, and each step on the way. Geometry, no JSON. */
export interface Result {
  readonly job: Job;
  readonly set: SetUp;
  /** In g/cm³; null where the material is not known. */
  readonly density: number | null;
  readonly left: Left;
  readonly standing: CoverSums;
  readonly facts: Facts;
  /** By cut. */
  readonly centers: readonly CenterCut[];
  readonly timeline: Timeline;
  readonly steps: readonly Step[];
  /** Bodies that come loose or hang, in the order in which that begins; by body its id, and the ids of what is left. */
  readonly bodies: readonly Body[];
  readonly bodyIds: readonly string[];
  readonly piecesOfBody: readonly (readonly string[])[];
  readonly merges: readonly Merge[];
}

/**
 * Works out a job. The shares of the work are those of common jobs, roughly.
 * @param memory what is near no changed cut is taken from it
 */
export function resultOf(job: Job, tick: Tick = unwatched, memory: Memory = forgetful): Result {
  tick(0);
  const set = setUp(job, memory);
  const approaches = approachesOf(job, set.lays, memory);
  const { thickness } = job;
  const removals = job.cuts.map((cut, k) =>
    memory.of(`removal ${k}`, [cut, thickness], () => removalOf(cut, thickness)),
  );
  const rough = cellsOf(job.outline, job.thickness, removals);
  const byCut = statesByCut(job, rough, approaches, memory);
  const stepOfCut = job.cuts.map((_, k) => approaches.findIndex(({ cut }) => cut === k));
  const setupOfCut = job.cuts.map((_, k) => approaches[stepOfCut[k] as number]?.lay.setup.id ?? null);
  tick(0.15);
  const centers = centerCuts(
    job,
    removals,
    byCut.metalNear,
    stepOfCut,
    setupOfCut,
    partOf(tick, 0.15, 0.35),
    memory,
  );
  const shapes = approaches.flatMap((approach): StepShape[] => {
    const cut = job.cuts[approach.cut] as Job['cuts'][number];
    const passes = centers[approach.cut]?.row.passes ?? null;
    const own = memory.of(`shapes ${approach.cut}`, [cut, passes], () => passShapes(cut, passes));
    const start = centers[approach.cut]?.start ?? null;
    return own.map((shape, pass) => ({
      approach,
      pass,
      passes: own.length,
      shape,
      start: pass === 0 ? start : null,
    }));
  });
  const whole = shapes.length === approaches.length ? byCut : statesByPass(job, rough, shapes, memory);
  const states = withNecks(job, whole, shapes, memory);
  tick(0.45);
  const { cells } = states.timeline;
  const hanging = hangingInTheEnd(states.timeline, states.kept, job.limits.hold);
  const { web, knifeEdge } = job.limits;
  const left = whatIsLeft(cells, job.keep, web, knifeEdge * DEGREE, hanging);
  tick(0.55);
  return {
    job,
    set,
    density: job.material === null ? null : densityOf(job.material),
    left,
    standing: standingOf(cells),
    facts: factsOf(job, left, byCut.metalNear, stepOfCut),
    centers,
    timeline: states.timeline,
    steps: stepsOf(job, shapes, states, partOf(tick, 0.55, 1), memory),
    bodies: states.bodies,
    ...namesOf(left, states.bodies),
    merges: mergesOver(states.timeline),
  };
}

/**
 * Bodies that are left in the end have the id of the largest piece of theirs; the others are counted on from there. A slug that a
 * floor holds is a body of its own, even where what hung before has it in it.
 */
function namesOf({ pieces }: Left, bodies: readonly Body[]): Pick<Result, 'bodyIds' | 'piecesOfBody'> {
  const counts = new Map<string, number>();
  for (const { id } of pieces.pieces) {
    const [name = ''] = id.split('-');
    counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  const piecesOfBody = bodies.map(({ left }) => {
    const numbers = new Set(left.map((cell) => pieces.pieceOf[cell] as number));
    return [...numbers]
      .filter((number) => number >= 0)
      .sort((a, b) => a - b)
      .map((number) => pieces.pieces[number] as (typeof pieces.pieces)[number])
      .filter(({ role }) => role !== 'held slug')
      .map(({ id }) => id);
  });
  const bodyIds = bodies.map(({ coreOf }, k) => {
    const own = piecesOfBody[k]?.find((id) => id !== 'kept');
    if (own !== undefined) return own;
    const name = coreOf === null ? 'offcut' : 'slug';
    const number = (counts.get(name) ?? 0) + 1;
    counts.set(name, number);
    return `${name}-${number}`;
  });
  return { bodyIds, piecesOfBody };
}
