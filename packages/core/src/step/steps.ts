import { sweptRegion } from '../cut/swept.js';
import { metalOf } from '../cutting/material.js';
import type { Range } from '../cutting/range.js';
import { isInReach, isThereIn, type KeepOut } from '../datum/keep-out.js';
import type { ToolDocument } from '../document/schema.js';
import type { Point } from '../geometry/point.js';
import { type Tick, unwatched } from '../geometry/watch.js';
import { givensOf } from '../job/givens.js';
import type { Job } from '../job/job.js';
import type { Removal } from '../left/cells.js';
import { burrsOf } from '../load/burrs.js';
import { type Layer, loadByHeight, type RoundTool } from '../load/by-height.js';
import { placeFacts } from '../load/tool-place.js';
import { goesDown, lowestOf, underneath } from '../load/underneath.js';
import { metalReach, type WayOff, wayOff } from '../load/way-off.js';
import { forgetful, type Memory } from '../memory/memory.js';
import { furthestBack } from '../passes/clear-stand.js';
import { disc } from '../region/region.js';
import { clearanceOf } from '../result/center-rows.js';
import { type Asked, afterCut, beforeStep, type NearMetal } from '../result/near-metal.js';
import type { PassesStart } from '../result/passes-row.js';
import { spindleSetOf, toolsByCut } from '../result/running.js';
import { clearBefore } from './clear.js';
import { paceOf } from './pace.js';
import { type Stand, standAt, standsAlong, standsOfRuns } from './stands.js';
import { type States, type StepShape, type StepVolumes, volumesOf } from './states.js';
import type { Step } from './step.js';
import type { PassShape } from './taken.js';

type JobCut = Job['cuts'][number];

/** All that a step is worked out from. */
interface Task {
  readonly job: Job;
  readonly states: States;
  readonly number: number;
  readonly cut: JobCut;
  readonly removal: Removal;
  readonly approach: StepShape['approach'];
  readonly tool: ToolDocument | null;
  readonly keepOuts: readonly KeepOut[];
  readonly start: PassesStart | null;
  readonly givens: readonly unknown[];
  readonly memory: Memory;
}

type RoundPass = PassShape & { readonly kind: 'round' };

/** All steps of a job, in order. */
export function stepsOf(
  job: Job,
  shapes: readonly StepShape[],
  states: States,
  tick: Tick = unwatched,
  memory: Memory = forgetful,
): Step[] {
  const volumes = volumesOf(states);
  const tools = toolsByCut(job);
  const givens = givensOf(job);
  return shapes.map(({ approach, pass, passes, shape, start }, number): Step => {
    tick(number / shapes.length);
    const cut = job.cuts[approach.cut] as JobCut;
    const { id } = approach.lay.setup;
    const task: Task = {
      job,
      states,
      number,
      cut,
      removal: states.timeline.cells.removals[approach.cut] as Removal,
      approach,
      tool: tools.get(cut.id) ?? null,
      keepOuts: job.keepOuts.filter((one) => isThereIn(one, id)),
      start,
      givens,
      memory,
    };
    const { area, taken, ...rest } = volumes[number] as StepVolumes;
    const common = { approach, pass, passes, area, volume: taken, volumes: rest };
    return Object.assign(common, shape.kind === 'path' ? pathPart(task, shape) : roundPart(task, shape));
  });
}

type Part = Omit<Step, 'approach' | 'pass' | 'passes' | 'area' | 'volume' | 'volumes'>;

/** What a step is worked out from besides the metal near it. */
function givenOf({ givens, cut, removal, approach, tool, keepOuts, start }: Task): readonly unknown[] {
  const { low, high } = removal;
  const { lay, from } = approach;
  return [...givens, cut, low, high, lay, from, tool, start, ...keepOuts];
}

function pathPart(task: Task, { path, runs }: PassShape & { readonly kind: 'path' }): Part {
  const { cut, approach, memory } = task;
  const body = memory.of(`body ${task.number}`, [path, cut.diameter], () =>
    sweptRegion(path, cut.diameter / 2),
  );
  const down = goesDown(cut, task.tool?.kind ?? null, cut.diameter);
  const stands = runs.length === 0 ? standsAlong(approach.lay, path) : standsOfRuns(approach.lay, runs);
  return {
    center: null,
    path,
    diameter: cut.diameter,
    body,
    lowest: lowestOf(down, task.job.thickness),
    load: null,
    burrs: null,
    footing: plungesOf(task, stands),
    under: underneath(down, body, task.job.thickness, task.keepOuts),
    wayOff: null,
    clear: null,
    stands,
    pace: paceIn(task, cut.diameter, path),
  };
}

function roundPart(task: Task, pass: RoundPass): Part {
  const near: NearRound = {
    met: metalUnder(task, pass.center, pass.radius),
    left: metalBeside(task, pass),
    first: metalBefore(task),
  };
  const from = [...givenOf(task), pass, near.met, near.left, near.first];
  return task.memory.of(`step ${task.number}`, from, () => roundPartIn(task, pass, near));
}

/** The metal near a round pass. */
interface NearRound {
  /** Under the tool, before the pass. */
  readonly met: NearMetal;
  /** Where it backs off, after it. */
  readonly left: NearMetal;
  /** Where it stands clear before the first pass of its cut; null for all other passes. */
  readonly first: NearMetal | null;
}

function roundPartIn(task: Task, { center, radius }: RoundPass, near: NearRound): Part {
  const { job, cut, approach, removal } = task;
  const round: RoundTool =
    cut.kind === 'annular'
      ? { kind: 'ring', center, radius, inner: radius - cut.wall }
      : { kind: 'circle', center, radius };
  const met = layersOf(near.met);
  const comesOut = approach.from === 'top' ? removal.low <= 0 : removal.high >= job.thickness;
  const body = disc(center, radius);
  const down = goesDown(cut, task.tool?.kind ?? null, 2 * radius);
  const pace = paceIn(task, 2 * radius, null);
  const lowest = lowestOf(down, task.job.thickness);
  const off = wayFrom(task, round, layersOf(near.left), lowest);
  return {
    center,
    path: null,
    diameter: 2 * radius,
    body,
    lowest,
    load: loadByHeight(round, met, approach.from, comesOut),
    burrs: burrsOf(round, met, approach.from, comesOut),
    footing: pace === null ? [] : footingOf(task, { center, radius }, met, pace.doing),
    under: underneath(down, body, job.thickness, task.keepOuts),
    wayOff: off,
    clear: clearOf(task, near.first, lowest),
    stands: [standAt(approach.lay, center), ...backedOff(task, off)],
    pace,
  };
}

/** The metal under a tool before the step, by its depth. */
function metalUnder({ states, number, removal, approach }: Task, center: Point, radius: number): NearMetal {
  const { low, high } = removal;
  const moment = beforeStep(number);
  return states.metalNear({ moment, center, reach: 2 * radius, low, high, from: approach.from });
}

/** The metal beside a round pass once it is made: at every height from where it ends up to the face that lies up. */
function metalBeside(task: Task, { center, radius }: RoundPass): NearMetal {
  const { job, cut, number, states } = task;
  const reach = metalReach(radius, clearanceOf(job, cut));
  return states.metalNear({ moment: afterCut(number), center, reach, ...heightsAbove(task) });
}

/** The metal round a cut before its first pass, as far as the tool may stand clear of it, at the same heights. */
function metalBefore(task: Task): NearMetal | null {
  const { job, cut, number, start, states } = task;
  if (start === null || cut.kind === 'swept') return null;
  const [radius, gap] = [cut.diameter / 2, clearanceOf(job, cut)];
  const reach = 3 * radius + furthestBack(radius, gap) + gap;
  return states.metalNear({ moment: beforeStep(number), center: cut.center, reach, ...heightsAbove(task) });
}

function heightsAbove({ job, removal, approach: { from } }: Task): Pick<Asked, 'low' | 'high' | 'from'> {
  const isTop = from === 'top';
  return { low: isTop ? removal.low : 0, high: isTop ? job.thickness : removal.high, from };
}

/** What is amiss where a tool goes straight down to start along a path; of several places with the same, the first. */
function plungesOf(task: Task, stands: readonly Stand[]): Step['footing'] {
  if (task.tool === null) return [];
  const radius = (task.tool.diameter ?? task.cut.diameter) / 2;
  const all = stands.flatMap(({ what, target: { center } }) =>
    what === 'start'
      ? footingOf(task, { center, radius }, layersOf(metalUnder(task, center, radius)), 'plunges')
      : [],
  );
  return all.filter(({ kind }, k) => all.findIndex((one) => one.kind === kind) === k);
}

/** Layers by depth of the tool. */
function layersOf({ layers }: NearMetal): Layer[] {
  let from = 0;
  return layers.map(({ metal, low, high, plain }) => {
    const to = from + high - low;
    const layer = { from, to, metal: plain === 'air' ? [] : metal };
    from = to;
    return layer;
  });
}

function footingOf(
  { job, tool }: Task,
  { center, radius }: Pick<RoundPass, 'center' | 'radius'>,
  layers: readonly Layer[],
  doing: Parameters<typeof placeFacts>[0]['doing'],
): Step['footing'] {
  const metal = job.material === null ? null : metalOf(job.material);
  return placeFacts({ doing, cutsToCenter: tool?.centerCutting ?? null, center, radius, layers, metal });
}

function paceIn({ job, cut, tool }: Task, diameter: number, path: Step['path']): Step['pace'] {
  if (tool === null) return null;
  const set: Range | null = spindleSetOf(job, tool, cut.diameter).range;
  return paceOf(job, cut, tool, set, { diameter, path });
}

/** The way off the wall of a round cut. */
function wayFrom(
  { job, cut, keepOuts }: Task,
  tool: RoundTool,
  layers: readonly Layer[],
  lowest: number,
): WayOff {
  const inTheWay = keepOuts.filter((keepOut) => isInReach(lowest, cut.through, keepOut));
  return wayOff({ tool, layers, clearance: clearanceOf(job, cut), keepOuts: inTheWay });
}

/** Where the tool stands clear before the first pass: of all metal from where it ends up to the face that lies up. */
function clearOf({ job, cut, keepOuts, start }: Task, near: NearMetal | null, lowest: number) {
  if (start === null || near === null || cut.kind === 'swept') return null;
  const [radius, gap] = [cut.diameter / 2, clearanceOf(job, cut)];
  const layers = layersOf(near);
  const { center } = cut;
  const through = cut.through;
  return {
    kind: start.kind,
    stand: clearBefore({ start, center, radius, layers, gap, keepOuts, lowest, through }),
  };
}

function backedOff({ approach }: Task, off: WayOff): Stand[] {
  if (off.kind !== 'way') return [];
  return [{ ...standAt(approach.lay, off.to), what: 'back off', lifted: false }];
}
