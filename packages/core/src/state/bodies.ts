import { cellVolume } from '../left/cells.js';
import { commonCore } from '../left/freeing.js';
import type { KeptCells } from '../left/pieces.js';
import type { Region } from '../region/region.js';
import { looseBodies } from './letting-go.js';
import { planOfCells } from './metal.js';
import type { NarrowPlace } from './narrow-places.js';
import { takenAsCut } from './necks.js';
import { hangingBodies } from './support.js';
import { depthAt, stepAt, type Timeline } from './timeline.js';

/** What a body does on its way: hang, then come loose, then be cut into. */
export interface Body {
  /** Number of the annular cut in whose core it lies; null if it lies in none. */
  readonly coreOf: number | null;
  /** From when on only thin metal joins it; null if it never hangs after a step. */
  readonly hangs: (Moment & Thin) | null;
  /** When it comes loose; null if it hangs to the end. */
  readonly frees: Moment | null;
  /** Steps that cut into it when it is loose, and how much each takes. */
  readonly cutBy: readonly { readonly step: number; readonly volume: number }[];
  /** Cells that stand in the end. */
  readonly left: readonly number[];
}

/** A body at a moment. */
export interface Moment {
  readonly step: number;
  /** Of the tool, below the face that it starts from. */
  readonly depth: number;
  readonly volume: number;
  /** Its plan view then. */
  readonly plan: Region;
  readonly cells: readonly number[];
}

/** The metal that joins a body that hangs. */
export interface Thin {
  readonly thickness: number;
  readonly length: number;
  readonly area: number;
}

/**
 * All bodies that come loose, or hang from some step on, in the order in which that begins. Each is listed once.
 * @param kept the kept body in the end
 * @param hold thickness from which on metal holds
 * @param places where metal is narrower than that in plan; their kerfs are the marks of the timeline's cells, in order
 */
export function bodiesOver(
  timeline: Timeline,
  kept: KeptCells,
  hold: number,
  places: readonly NarrowPlace[],
): Body[] {
  const loose = looseBodies(timeline, kept.cells[0] ?? lastTaken(timeline));
  const hanging = hangingBodies(timeline, kept, hold, takenAsCut(timeline, places, hold));
  const looseOf = new Map<number, number>();
  loose.forEach(({ cells }, k) => {
    for (const cell of cells) looseOf.set(cell, k);
  });
  const hangs = new Map<number, (typeof hanging)[number]>();
  const alone: (typeof hanging)[number][] = [];
  for (const one of hanging) {
    const numbers = one.cells.flatMap((cell) => looseOf.get(cell) ?? []);
    const [number] = numbers;
    if (number === undefined) alone.push(one);
    else {
      const body = loose[number] as (typeof loose)[number];
      // What lets go in the same step hangs for a moment only; what is loose already does not hang.
      const isBefore = stepAt(timeline, one.moment) < stepAt(timeline, body.moment);
      if (isBefore && !hangs.has(number)) hangs.set(number, one);
    }
  }
  const bodies = [
    ...loose.map((one, k) => ({ one: hangs.get(k) ?? null, free: one })),
    ...alone.map((one) => ({ one, free: null })),
  ].flatMap(({ one, free }) => bodyOf(timeline, one, free) ?? []);
  return bodies.sort((a, b) => firstStep(a) - firstStep(b) || inStep(a, b));
}

/** Of one step, what lets go first comes first, and of what lets go at once the largest: no frame has a say in it. */
function inStep(a: Body, b: Body): number {
  const [one, other] = [a, b].map(({ hangs, frees }) => hangs ?? frees) as [Moment, Moment];
  return one.depth - other.depth || other.volume - one.volume;
}

/** The step at which a body first hangs or is loose. */
export function firstStep({ hangs, frees }: Body): number {
  return (hangs ?? frees)?.step ?? 0;
}

/** Where nothing stands in the end, what goes last stands for the kept body. */
function lastTaken({ momentOf, cells }: Timeline): number {
  let last = -1;
  momentOf.forEach((moment, cell) => {
    const isLater = last < 0 || moment > (momentOf[last] as number);
    const isLarger =
      last >= 0 && moment === momentOf[last] && cellVolume(cells, cell) > cellVolume(cells, last);
    if (moment >= 0 && (isLater || isLarger)) last = cell;
  });
  return last;
}

function bodyOf(
  timeline: Timeline,
  hanging: ReturnType<typeof hangingBodies>[number] | null,
  loose: ReturnType<typeof looseBodies>[number] | null,
): Body | null {
  const first = (hanging ?? loose) as { moment: number; cells: readonly number[] };
  const hangs = hanging === null ? null : standing(momentOfBody(timeline, hanging));
  const frees = loose === null ? null : standing(momentOfBody(timeline, loose));
  if (hangs === null && frees === null) return null;
  const { thickness = 0, length = 0, area = 0 } = hanging ?? {};
  return {
    coreOf: commonCore(timeline.cells, first.cells),
    hangs: hangs === null ? null : { ...hangs, thickness, length, area },
    frees,
    cutBy: frees === null ? [] : cutsInto(timeline, frees),
    left: (frees ?? first).cells.filter((cell) => (timeline.stepOf[cell] as number) < 0),
  };
}

/** Slivers thinner than the weld tolerance are no metal: a body of which only that is left is none any more. */
function standing(moment: Moment): Moment | null {
  return moment.plan.length === 0 ? null : moment;
}

function momentOfBody(
  timeline: Timeline,
  { moment, cells }: { readonly moment: number; readonly cells: readonly number[] },
): Moment {
  return {
    step: stepAt(timeline, moment),
    depth: depthAt(timeline, moment),
    volume: cells.reduce((sum, cell) => sum + cellVolume(timeline.cells, cell), 0),
    plan: planOfCells(timeline, cells),
    cells,
  };
}

/** Later steps that take metal of a loose body. What the same tool takes on its way down is no later step. */
function cutsInto(timeline: Timeline, { step, cells }: Moment): Body['cutBy'] {
  const volumes = new Map<number, number>();
  for (const cell of cells) {
    const by = timeline.stepOf[cell] as number;
    if (by > step) volumes.set(by, (volumes.get(by) ?? 0) + cellVolume(timeline.cells, cell));
  }
  return [...volumes].map(([at, volume]) => ({ step: at, volume })).sort((a, b) => a.step - b.step);
}
