import type { Side } from '../cut/cut.js';
import { massOf } from '../cutting/density.js';
import type { Range } from '../cutting/range.js';
import { targetAt } from '../datum/target.js';
import { namesIn } from '../find/names.js';
import { pointToJson, regionToJson } from '../format/json.js';
import type { Bounds } from '../geometry/bounds.js';
import type { Vector } from '../geometry/point.js';
import type { Job } from '../job/job.js';
import type { LoadAt } from '../load/by-height.js';
import { noWayWords } from '../load/load-words.js';
import { machineDirection, steady } from '../load/machine-direction.js';
import type { WayOff } from '../load/way-off.js';
import { boundsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';
import type { Report, ReportLoadAt, ReportRegion, ReportStep } from '../report/report-schema.js';
import type { Body } from '../state/bodies.js';
import { metalBefore } from '../state/metal.js';
import type { Result } from '../step/result.js';
import type { Stand } from '../step/stands.js';
import type { Step } from '../step/step.js';
import { clearRow } from './clear-row.js';
import { forceOf } from './tearing.js';

type Pair = [number, number];

/** The steps of a report, but for what its findings say of them. */
export function stepRows(result: Result): Omit<ReportStep, 'findings'>[] {
  const sections = sectionsOf(result);
  const at = bodiesByStep(result);
  return result.steps.map((step, number) => stepRow(result, step, number, sections, at));
}

interface NamedBody {
  readonly body: Body;
  readonly id: string;
}

/** The bodies by what happens to them in a step. */
interface BodiesByStep {
  readonly frees: (step: number) => readonly NamedBody[];
  readonly hangs: (step: number) => readonly NamedBody[];
  readonly meets: (step: number) => readonly NamedBody[];
}

function bodiesByStep({ bodies, bodyIds }: Result): BodiesByStep {
  const named = bodies.map((body, k): NamedBody => ({ body, id: bodyIds[k] as string }));
  const by = (eventsOf: (body: Body) => readonly { readonly step: number }[]) => {
    const known = new Map<number, Set<NamedBody>>();
    for (const one of named) {
      for (const { step } of eventsOf(one.body)) known.set(step, (known.get(step) ?? new Set()).add(one));
    }
    return (step: number) => [...(known.get(step) ?? [])];
  };
  return {
    frees: by(({ frees }) => (frees === null ? [] : [frees])),
    hangs: by(({ hangs }) => (hangs === null ? [] : [hangs])),
    meets: by(({ cutBy }) => cutBy),
  };
}

function stepRow(
  result: Result,
  step: Step,
  number: number,
  sections: ReturnType<typeof sectionsOf>,
  at: BodiesByStep,
): Omit<ReportStep, 'findings'> {
  const { job } = result;
  const { approach, pass, passes } = step;
  const { lay, from } = approach;
  const cut = job.cuts[approach.cut] as Job['cuts'][number];
  return {
    setup: lay.setup.id,
    cut: cut.id,
    pass: passes === 1 ? null : pass + 1,
    passes,
    tool: toolOf(job, approach.cut)?.id ?? null,
    up: from,
    center: step.center === null ? null : pointToJson(step.center),
    diameter: step.diameter,
    wall: cut.kind === 'annular' ? cut.wall : null,
    reaches: cut.depth,
    area: step.area,
    volume: step.volume,
    get before() {
      return sections?.(number) ?? null;
    },
    get after() {
      return sections?.(number + 1) ?? null;
    },
    volumes: step.volumes,
    frees: at.frees(number).map(({ body, id }) => {
      const { volume, depth, plan } = body.frees as NonNullable<Body['frees']>;
      return {
        body: id,
        volume,
        mass: massIn(result, volume),
        atDepth: depth,
        at: centroidPair(plan),
        view: regionToJson(plan),
      };
    }),
    hangs: at.hangs(number).map(({ body, id }) => {
      const { volume, depth, plan, thickness, area } = body.hangs as NonNullable<Body['hangs']>;
      return {
        body: id,
        volume,
        mass: massIn(result, volume),
        at: centroidPair(plan),
        thickness,
        ...forceOf(job, area),
        atDepth: depth,
        view: regionToJson(plan),
      };
    }),
    meets: at.meets(number).map(({ body, id }) => {
      const { volume } = body.cutBy.find(({ step }) => step === number) as Body['cutBy'][number];
      return { body: id, volume };
    }),
    starts: step.load?.starts ?? null,
    load: loadRow(step),
    burrs:
      step.burrs === null
        ? null
        : {
            leaves: step.burrs.leaves.map(({ at: place, from: top, to }) => ({
              at: pointToJson(place),
              readout: [...targetAt(lay, place).readout] as Pair,
              from: top,
              to,
            })),
            under: step.burrs.under,
          },
    clear: clearRow(job, step),
    backOff: backOffRow(result, step),
    milling: millingOf(cut, from),
    under: { ...step.under },
    doing: step.pace?.doing ?? null,
    travel: step.pace?.travel ?? null,
    feedPerTurn: rangeJson(step.pace?.perTurn ?? null),
    minutes: rangeJson(step.pace?.minutes ?? null),
    stands: step.stands.map(standRow),
    targets: step.stands
      .filter(({ what }) => what !== 'back off')
      .map(({ target: { exact, readout, roundingError, worst, rss } }) => ({
        exact: [...exact] as Pair,
        readout: [...readout] as Pair,
        roundingError: [...roundingError] as Pair,
        worst: [...worst] as Pair,
        rss: [...rss] as Pair,
      })),
  };
}

/** The middle of the box round a region that is not empty. */
function centroidPair(region: Region): Pair {
  const { minX, minY, maxX, maxY } = boundsOf(region) as Bounds;
  return [(minX + maxX) / 2, (minY + maxY) / 2];
}

function rangeJson(range: Range | null): Pair | null {
  return range === null ? null : [range[0], range[1]];
}

/** The mass of a volume; null where the material is not known. */
export function massIn({ job, density }: Result, volume: number): number | null {
  return density === null ? null : massOf(volume, density, job.units);
}

/** How a path mills at the machine; plans say it for a part with the face up that the cut is said to start from. */
function millingOf(cut: Job['cuts'][number], up: Side): ReportStep['milling'] {
  const milling = cut.plan?.along?.milling ?? null;
  if (milling === null || up === cut.from) return milling;
  return milling === 'climb' ? 'conventional' : 'climb';
}

/** The tool that makes a cut; undefined where the job names none. */
function toolOf(job: Job, cut: number): Job['tools'][number] | undefined {
  const id = job.cuts[cut]?.id as string;
  return job.tools.find(({ cuts }) => cuts.includes(id));
}

/** Degrees counter-clockwise from the x axis of the drawing; of quarter turns, exact. */
function headingDrawn({ dx, dy }: Vector): number {
  return steady((Math.atan2(dy, dx) * 180) / Math.PI);
}

function loadRow({ load, approach: { lay } }: Step): ReportStep['load'] {
  if (load === null) return null;
  const row = (one: LoadAt): ReportLoadAt => ({
    from: one.from,
    to: one.to,
    share: one.share,
    strikes: one.strikes,
    sideLoad: one.sideLoad,
    push: one.push === null ? null : machineDirection(lay.axes, one.push),
    pushDrawn: one.push === null ? null : headingDrawn(one.push),
  });
  const orNull = (one: LoadAt | null) => (one === null ? null : row(one));
  return {
    heights: load.heights.map(row),
    entry: orNull(load.entry),
    worst: orNull(load.worst),
    breakThrough: orNull(load.breakThrough),
  };
}

const NO_WAY = { by: null, machine: null, drawn: null, to: null, readout: null, gap: null };

function backOffRow({ job }: Result, step: Step): ReportStep['backOff'] {
  const { wayOff, approach, center } = step;
  const { lay } = approach;
  if (wayOff === null || center === null) {
    return { ...NO_WAY, why: 'the tool follows a path; lift it at the end of that' };
  }
  switch (wayOff.kind) {
    case 'none':
      return {
        ...NO_WAY,
        why: noWayWords(wayOff.why, step.pace?.doing ?? null, namesIn(job)),
      };
    case 'lift':
      return {
        ...NO_WAY,
        by: 0,
        to: pointToJson(center),
        readout: [...targetAt(lay, center).readout],
        gap: wayOff.gap,
        why: null,
      };
    case 'way':
      return wayRow(wayOff, lay);
  }
}

function wayRow(off: WayOff & { kind: 'way' }, lay: Step['approach']['lay']): ReportStep['backOff'] {
  return {
    by: off.by,
    machine: machineDirection(lay.axes, off.direction),
    drawn: headingDrawn(off.direction),
    to: pointToJson(off.to),
    readout: [...targetAt(lay, off.to).readout],
    gap: off.gap,
    why: null,
  };
}

function standRow({ what, target, arc, lifted }: Stand): ReportStep['stands'][number] {
  return {
    what,
    at: pointToJson(target.center),
    readout: [...target.readout] as Pair,
    rounding: [...target.roundingError] as Pair,
    arc:
      arc === null
        ? null
        : { center: [...arc.center.readout] as Pair, radius: arc.edge.radius, sense: arc.sense },
    lifted,
  };
}

type Sections = NonNullable<ReportStep['before']>;

/** Most sections times edges of the overlay that a report spells out, so that it stays in bounds for any job. */
const MOST_SECTION_EDGES = 2_000_000;

/** Tells the sections of what stands after so many steps; null where that is too much to spell out for all. */
function sectionsOf({ timeline, steps }: Result): ((made: number) => Sections) | null {
  const { slabs, subdivision } = timeline.cells;
  if ((steps.length + 1) * slabs.length * subdivision.graph.count > MOST_SECTION_EDGES) return null;
  const known = new Map<number, Sections>();
  // A section that no step has changed since one that is known is that one.
  const lastChange = slabs.map((_, s) => changesIn(timeline, s));
  const told = new Map<string, Sections[number]['region']>();
  return (made) => {
    const all =
      known.get(made) ??
      (slabs.map(({ from, to }, s) => {
        const changes = lastChange[s] as readonly number[];
        const key = `${s} ${changes.filter((step) => step < made).length}`;
        const region = told.get(key) ?? (regionToJson(metalBefore(timeline, made, s)) as ReportRegion);
        told.set(key, region);
        return { from, to, region };
      }) as Sections);
    known.set(made, all);
    return all;
  };
}

/** The steps that take metal in a slab. */
function changesIn({ cells, stepOf }: Result['timeline'], slab: number): number[] {
  const n = cells.slabs.length;
  const steps = new Set<number>();
  for (let cell = slab; cell < stepOf.length; cell += n) {
    const step = stepOf[cell] as number;
    if (step >= 0) steps.add(step);
  }
  return [...steps];
}
/** The merges of a report. */
export function mergeRows({ job, merges }: Result): Report['merges'] {
  return merges.map(({ step, cuts: [a, b], at }) => ({
    step,
    cuts: [job.cuts[a]?.id as string, job.cuts[b]?.id as string],
    at: pointToJson(at),
  }));
}
