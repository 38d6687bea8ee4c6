/*
 * Room: the figures of a result: what tools stand on and meet, targets, intervals, sizes.
 * In: a job, the metal near each cut.
 * Out: rows and figures that `step` puts in order and `write` writes down.
 */

import type { Cut } from '../cut/cut.js';
import { isInReach, isThereIn } from '../datum/keep-out.js';
import { type Tick, unwatched } from '../geometry/watch.js';
import { givensOf } from '../job/givens.js';
import type { Job } from '../job/job.js';
import type { JobCut } from '../job/plan.js';
import type { Removal } from '../left/cells.js';
import { goesDown, lowestOf } from '../load/underneath.js';
import { forgetful, type Memory } from '../memory/memory.js';
import { furthestBack } from '../passes/clear-stand.js';
import { type Gouge, gouges } from '../path/gouge.js';
import type { ReportCut } from '../report/report-schema.js';
import { backOffReach, clearanceOf, placementRow } from './center-rows.js';
import { beforeStep, type MetalFinder, type NearMetal, type RoundCut } from './near-metal.js';
import { type PassesStart, passesRow } from './passes-row.js';
import { pathRow } from './path-row.js';

/** What a report says of where a tool stands and what it meets there. */
export type CenterRow = Pick<ReportCut, 'placement' | 'passes' | 'toolPath'>;

/** That, and what is amiss with it. */
export interface CenterCut {
  readonly row: CenterRow;
  /** Why the passes that were asked for cannot be made; null if they can. */
  readonly passesFault: string | null;
  /** From where its first pass comes; null where it has none. */
  readonly start: PassesStart | null;
  /** Where a path goes that was meant to stay on the other side. */
  readonly gouges: readonly Gouge[];
}

/**
 * What there is to say of where each tool stands, from the metal near it when its turn comes.
 * @param stepOf by cut: number of the step that makes it
 * @param setupOf by cut: id of the setup that it is made in first; null where the job has none for it
 */
export function centerCuts(
  job: Job,
  removals: readonly Removal[],
  metalNear: MetalFinder,
  stepOf: readonly number[],
  setupOf: readonly (string | null)[],
  tick: Tick = unwatched,
  memory: Memory = forgetful,
): CenterCut[] {
  const givens = givensOf(job);
  return job.cuts.map((cut, k) => {
    tick(k / job.cuts.length);
    const place = `center ${k}`;
    if (cut.kind === 'swept') {
      return memory.of(place, [cut, ...givens], () => sweptCut(job, cut));
    }
    const { low, high } = removals[k] as Removal;
    const reach = cut.diameter / 2 + reachOf(job, cut);
    const moment = beforeStep(stepOf[k] as number);
    const metal = metalNear({ moment, center: cut.center, reach, low, high, from: cut.from });
    const setup = setupOf[k] ?? null;
    const from = [cut, metal, setup, ...givens];
    return memory.of(place, from, () => roundCut(job, cut, metal, setup));
  });
}

/**
 * How far from its circle a cut can do anything: passes stand a whole diameter short of the final cut at most, and before the
 * first the tool stands clear behind that.
 */
function reachOf(job: Job, cut: JobCut & RoundCut): number {
  const [radius, gap] = [cut.diameter / 2, clearanceOf(job, cut)];
  const off = backOffReach(radius, gap);
  return cut.plan?.passes ? Math.max(off, cut.diameter + furthestBack(radius, gap) + gap) : off;
}

/** The rows of a round cut: of nothing but the job's tools, the cut, and the metal near it. */
function roundCut(job: Job, cut: JobCut & RoundCut, metal: NearMetal, setup: string | null): CenterCut {
  const { center = null, passes = null } = cut.plan ?? {};
  const head = job.tools.find(({ kind, cuts }) => kind === 'boring head' && cuts.includes(cut.id)) ?? null;
  const made = passes === null ? null : passesRow(cut, passes, metal, head, clearOf(job, cut, setup));
  return {
    row: {
      placement: center === null ? null : placementRow(cut, center, metal),
      passes: made !== null && 'row' in made ? made.row : null,
      toolPath: null,
    },
    passesFault: made !== null && 'fault' in made ? made.fault : null,
    start: made !== null && 'row' in made ? made.start : null,
    gouges: [],
  };
}

/** What the tool of a cut is to stand clear of, in its setup, before the first pass: what it comes down to. */
function clearOf(job: Job, cut: JobCut & RoundCut, setup: string | null) {
  const tool = job.tools.find(({ cuts }) => cuts.includes(cut.id))?.kind ?? null;
  const lowest = lowestOf(goesDown(cut, tool, cut.diameter), job.thickness);
  const avoid = job.keepOuts.flatMap((one) =>
    isThereIn(one, setup) && isInReach(lowest, cut.through, one) ? [one.region] : [],
  );
  return { gap: clearanceOf(job, cut), avoid };
}

function sweptCut(job: Job, cut: JobCut & Extract<Cut, { kind: 'swept' }>): CenterCut {
  const { along = null, stays = null } = cut.plan ?? {};
  const radius = cut.diameter / 2;
  return {
    row: {
      placement: null,
      passes: null,
      toolPath: along === null ? null : pathRow(job.outline, cut.diameter, along, job.resolution),
    },
    passesFault: null,
    start: null,
    gouges:
      stays === null ? [] : gouges(cut.path, radius, job.outline, { side: stays, tolerance: job.resolution }),
  };
}
