import { sweptRegion } from '../cut/swept.js';
import { metalOf } from '../cutting/material.js';
import type { Range } from '../cutting/range.js';
import { isInReach, isThereIn, type KeepOut } from '../datum/keep-out.js';
import type { ToolDocument } from '../document/schema.js';
import type { Point } from '../geometry/point.js';
import { type Tick, unwatched } from '../geometry/watch.js';
import type { Job } from '../job/job.js';
import type { Removal } from '../left/cells.js';
import { burrsOf } from '../load/burrs.js';
import { type Layer, loadByHeight, type RoundTool } from '../load/by-height.js';
import { placeFacts } from '../load/tool-place.js';
import { goesDown, lowestOf, underneath } from '../load/underneath.js';
import { metalReach, type WayOff, wayOff } from '../load/way-off.js';
import { furthestBack } from '../passes/clear-stand.js';
import { disc } from '../region/region.js';
import { clearanceOf } from '../result/center-rows.js';
import { afterCut, beforeStep, type NearMetal } from '../result/near-metal.js';
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
}

type RoundPass = PassShape & { readonly kind: 'round' };

/** All steps of a job, in order. */
export function stepsOf(
  job: Job,
  shapes: readonly StepShape[],
  states: States,
  tick: Tick = unwatched,
): Step[] {
  const volumes = volumesOf(states);
  const tools = toolsByCut(job);
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
    };
    const { area, taken, ...rest } = volumes[number] as StepVolumes;
    const common = { approach, pass, passes, area, volume: taken, volumes: rest };
    return { ...common, ...(shape.kind === 'path' ? pathPart(task, shape) : roundPart(task, shape)) };
  });
}

type Part = Omit<Step, 'approach' | 'pass' | 'passes' | 'area' | 'volume' | 'volumes'>;

function pathPart(task: Task, { path, runs }: PassShape & { readonly kind: 'path' }): Part {
  const { cut, approach } = task;
  const body = sweptRegion(path, cut.diameter / 2);
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

function roundPart(task: Task, { center, radius }: RoundPass): Part {
  const { job, cut, approach, removal } = task;
  const round: RoundTool =
    cut.kind === 'annular'
      ? { kind: 'ring', center, radius, inner: radius - cut.wall }
      : { kind: 'circle', center, radius };
  const met = layersUnder(task, center, radius);
  const comesOut = approach.from === 'top' ? removal.low <= 0 : removal.high >= job.thickness;
  const body = disc(center, radius);
  const down = goesDown(cut, task.tool?.kind ?? null, 2 * radius);
  const pace = paceIn(task, 2 * radius, null);
  const lowest = lowestOf(down, task.job.thickness);
  const off = wayFrom(task, round, lowest);
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
    clear: clearOf(task, lowest),
    stands: [standAt(approach.lay, center), ...backedOff(task, off)],
    pace,
  };
}

/** The metal under a tool before the step, by its depth. */
function layersUnder({ states, number, removal, approach }: Task, center: Point, radius: number): Layer[] {
  return layersOf(
    states.metalNear({
      moment: beforeStep(number),
      center,
      reach: 2 * radius,
      low: removal.low,
      high: removal.high,
      from: approach.from,
    }),
  );
}

/** What is amiss where a tool goes straight down to start along a path; of several places with the same, the first. */
function plungesOf(task: Task, stands: readonly Stand[]): Step['footing'] {
  if (task.tool === null) return [];
  const radius = (task.tool.diameter ?? task.cut.diameter) / 2;
  const all = stands.flatMap(({ what, target: { center } }) =>
    what === 'start' ? footingOf(task, { center, radius }, layersUnder(task, center, radius), 'plunges') : [],
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

/** The way off the wall of a round cut: at every height from where it ends up to the face that lies up. */
function wayFrom(
  { job, cut, approach, removal, states, number, keepOuts }: Task,
  tool: RoundTool,
  lowest: number,
): WayOff {
  const clearance = clearanceOf(job, cut);
  const isTop = approach.from === 'top';
  const near = states.metalNear({
    moment: afterCut(number),
    center: tool.center,
    reach: metalReach(tool.radius, clearance),
    low: isTop ? removal.low : 0,
    high: isTop ? job.thickness : removal.high,
    from: approach.from,
  });
  const inTheWay = keepOuts.filter((keepOut) => isInReach(lowest, cut.through, keepOut));
  return wayOff({ tool, layers: layersOf(near), clearance, keepOuts: inTheWay });
}

/** Where the tool stands clear before the first pass: of all metal from where it ends up to the face that lies up. */
function clearOf({ job, cut, approach, removal, states, number, keepOuts, start }: Task, lowest: number) {
  if (start === null || cut.kind === 'swept') return null;
  const [radius, gap] = [cut.diameter / 2, clearanceOf(job, cut)];
  const isTop = approach.from === 'top';
  const near = states.metalNear({
    moment: beforeStep(number),
    center: cut.center,
    reach: 3 * radius + furthestBack(radius, gap) + gap,
    low: isTop ? removal.low : 0,
    high: isTop ? job.thickness : removal.high,
    from: approach.from,
  });
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
