import type { KeepOut } from '../datum/keep-out.js';
import { lowestOf } from '../datum/keep-out.js';
import type { Job } from '../job/job.js';
import type { Removal } from '../left/cells.js';
import { type Layer, loadByHeight, type RoundTool } from '../load/by-height.js';
import { metalReach, type Obstacle, type WayOff, wayOff } from '../load/way-off.js';
import { clearanceOf } from '../result/center-rows.js';
import { afterCut, beforeStep, type NearMetal } from '../result/near-metal.js';
import { type Stand, standAt, standsAlong, standsOfPass } from './stands.js';
import { type States, type StepShape, volumesOf } from './states.js';
import type { Step } from './step.js';

/** All steps of a job, in order. */
export function stepsOf(job: Job, shapes: readonly StepShape[], states: States): Step[] {
  const volumes = volumesOf(states);
  return shapes.map((step, number): Step => {
    const { approach, pass, passes, shape } = step;
    const cut = job.cuts[approach.cut] as Job['cuts'][number];
    const { area, taken, kept, loose, removed } = volumes[number] as (typeof volumes)[number];
    const common = {
      approach,
      pass,
      passes,
      area,
      volume: taken,
      volumes: { kept, loose, removed },
    };
    if (shape.kind === 'path') {
      const stands =
        shape.pass === null ? standsAlong(approach.lay, shape.path) : standsOfPass(approach.lay, shape.pass);
      return {
        ...common,
        center: null,
        path: shape.path,
        diameter: cut.diameter,
        load: null,
        wayOff: null,
        stands,
      };
    }
    const { center, radius } = shape;
    const tool: RoundTool =
      cut.kind === 'annular'
        ? { kind: 'ring', center, radius, inner: radius - cut.wall }
        : { kind: 'circle', center, radius };
    const removal = states.timeline.cells.removals[approach.cut] as Removal;
    const met = layersOf(
      states.metalNear({
        moment: beforeStep(number),
        center,
        reach: radius,
        low: removal.low,
        high: removal.high,
        from: approach.from,
      }),
    );
    const comesOut = approach.from === 'top' ? removal.low <= 0 : removal.high >= job.thickness;
    const off = wayFrom(job, step, number, states, tool);
    return {
      ...common,
      center,
      path: null,
      diameter: 2 * radius,
      load: loadByHeight(tool, met, approach.from, comesOut),
      wayOff: off,
      stands: [standAt(approach.lay, center), ...backedOff(step, off)],
    };
  });
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

/** The way off the wall of a round cut: at every height from where it ends up to the face that lies up. */
function wayFrom(job: Job, { approach }: StepShape, number: number, states: States, tool: RoundTool): WayOff {
  const cut = job.cuts[approach.cut] as Job['cuts'][number];
  const clearance = clearanceOf(job, cut);
  const { low, high } = states.timeline.cells.removals[approach.cut] as Removal;
  const isTop = approach.from === 'top';
  const near = states.metalNear({
    moment: afterCut(number),
    center: tool.center,
    reach: metalReach(tool.radius, clearance),
    low: isTop ? low : 0,
    high: isTop ? job.thickness : high,
    from: approach.from,
  });
  return wayOff({ tool, layers: layersOf(near), clearance, keepOuts: obstacles(job, approach, cut) });
}

function obstacles(job: Job, { lay }: StepShape['approach'], cut: Job['cuts'][number]): Obstacle[] {
  const lowest = lowestOf(cut, job.thickness);
  const isHere = ({ setup, to }: KeepOut) => (setup === null || setup === lay.setup.id) && to > lowest;
  return job.keepOuts.filter(isHere).map(({ id, region }) => ({ id, region }));
}

function backedOff({ approach }: StepShape, off: WayOff): Stand[] {
  if (off.kind !== 'way') return [];
  return [{ ...standAt(approach.lay, off.to), what: 'back off', lifted: false }];
}
