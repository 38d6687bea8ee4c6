import type { Link } from '../datum/chain.js';
import type { LengthUnit } from '../datum/length-unit.js';
import type { Stop } from '../datum/setup.js';
import { described } from '../document/described.js';
import type { ActionDocument } from '../document/schema.js';
import type { ContactSpan } from './contact.js';
import { type Done, withMove, withSet } from './done.js';
import type { AxisPart, Face } from './faces.js';

/* What the actions of an axis have come to, and what any of them may do next. */

/** What the actions of an axis are read against. */
export interface ZeroTask {
  readonly part: AxisPart;
  readonly stops: readonly Stop[];
  /** Of lengths that state none. */
  readonly units: LengthUnit;
  /** What the readout shows. */
  readonly shows: LengthUnit;
}

/** What the actions have come to so far: a stop, a face of the part, or a middle or mark, which looks nowhere. */
export type Reached =
  | { readonly kind: 'stop'; readonly stop: Stop; readonly outward: 1 | -1 }
  | { readonly kind: 'face'; readonly face: Face }
  | { readonly kind: 'middle'; readonly words: string; readonly at: number };

export interface Doing extends Done {
  readonly reached: Reached;
  /** Where along the other axis the part is touched or bears; null while only a stop is touched. */
  readonly contact: ContactSpan | null;
}

export type Action<K extends string> = Extract<ActionDocument, { readonly [key in K]: unknown }>;

/** The spindle goes on by a length: what was reached lies as much less beyond it. */
export function moved(
  doing: Doing,
  k: number,
  by: number,
  task: ZeroTask,
  given: {
    readonly tolerance?: number | undefined;
    readonly name?: string | undefined;
    readonly units?: LengthUnit | undefined;
  },
): Doing {
  return withMove(doing, k, by, {
    name: given.name ?? null,
    tolerance: given.tolerance ?? null,
    // A move of its own is read off the readout; half a tip has the unit of the tip.
    units: 'units' in given ? (given.units ?? task.units) : task.shows,
  });
}

export function set(doing: Doing, k: number, to: number, task: ZeroTask): Doing {
  return withSet(doing, k, to, ofReached(doing.reached), task.shows);
}

export function ownOf(
  given: {
    readonly name?: string | undefined;
    readonly tolerance?: number | undefined;
    readonly units?: LengthUnit | undefined;
  },
  { units }: ZeroTask,
  holder?: LengthUnit,
): Pick<Link, 'name' | 'tolerance' | 'units'> {
  return {
    name: given.name ?? null,
    tolerance: given.tolerance ?? null,
    units: given.units ?? holder ?? units,
  };
}

/** A touch without a name of its own is that of its stop, wherever the stop is touched. */
export function stopName(id: string): string {
  return `stop:${id}`;
}

export function ofReached(reached: Reached): string {
  if (reached.kind === 'stop') return `stop:${reached.stop.id}`;
  return reached.kind === 'face' ? reached.face.words : reached.words;
}

export function wordsOf(reached: Reached): string {
  if (reached.kind === 'stop') return `stop ${reached.stop.id}`;
  return reached.kind === 'face' ? described(reached.face.words) : `the ${reached.words}`;
}

export function keyOf(action: ActionDocument): string {
  return ['touch', 'bears', 'measured', 'dial in', 'move', 'set'].find((key) => key in action) ?? '';
}
