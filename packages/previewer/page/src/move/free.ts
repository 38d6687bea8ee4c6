import { snapped } from '../board/snap.js';
import { type Json, type JsonObject, type Path, withValue } from '../document/json.js';
import type { Place } from '../worker/sketch.js';
import { dot } from './vector.js';

/** A value to put in a place of a cut; undefined takes it out. */
export type Change = readonly [Path, Json | undefined];

/** A change of a cut. */
export type Turn = (cut: JsonObject) => JsonObject;

/** A number of a cut that is free to change as the cut is moved. */
export interface Free {
  /** What it is called: `x`, `depth`, `along outline edge 6`. */
  readonly name: string;
  readonly value: number;
  /** What the job has for it, where that is another number. */
  readonly shows?: number | undefined;
  /** Unit vector of the way in which the cut moves as the number grows. */
  readonly grows: Place;
  /** The number with which the cut would come nearest to a place. */
  readonly at: (place: Place) => number;
  /** How to give it a value, snapped to a step and kept within its bounds. */
  readonly put: (value: number, step: number) => Turn;
}

/** What is free of a cut; where nothing is, why. */
export interface Moves {
  readonly frees: readonly Free[];
  /** Where the cut is taken hold of. */
  readonly at: Place;
  /** What is to change besides, once the free numbers have changed, for the cut to be near a place; null if it cannot. */
  readonly mended?: ((cut: JsonObject, place: Place, step: number) => readonly Change[] | null) | undefined;
  /** Why nothing is free; null where something is. */
  readonly why: string | null;
}

/** A free number that stands in one place of the cut as it is. */
export function plainFree(
  name: string,
  path: Path,
  value: number,
  grows: Place,
  at: (place: Place) => number,
  bounds: (step: number) => readonly [number, number] = () => [-Infinity, Infinity],
): Free {
  return {
    name,
    value,
    grows,
    at,
    put: (wanted, step) => setting([[path, bounded(snapped(wanted, step), bounds(step))]]),
  };
}

/** A value within bounds; the lower one wins where they cross. */
export function bounded(value: number, [least, most]: readonly [number, number]): number {
  return Math.max(Math.min(value, most), least);
}

/** A value that is so near to a multiple of its step, as a share of the step, is that multiple: rounding. */
const SLACK = 1e-6;

/** The largest multiple of a step that is not over a value. */
export function downTo(value: number, step: number): number {
  return snapped(Math.floor(value / step + SLACK) * step, step);
}

/** The smallest multiple of a step that is not under a value. */
export function upTo(value: number, step: number): number {
  return snapped(Math.ceil(value / step - SLACK) * step, step);
}

/** The cut with its free numbers set so that it comes as near to a place as the step allows; null if it cannot. */
export function movedTo(
  cut: JsonObject,
  { frees, mended }: Moves,
  place: Place,
  step: number,
): JsonObject | null {
  const next = frees.reduce((turned, free) => free.put(free.at(place), step)(turned), cut);
  return mendedCut(next, mended, place, step);
}

/** The cut moved one way by so many steps of one of its numbers: the one that goes that way most. */
export function nudged(
  cut: JsonObject,
  moves: Moves,
  way: Place,
  steps: number,
  step: number,
): JsonObject | null {
  const free = freeAlong(moves.frees, way);
  if (free === null) return null;
  const by = Math.sign(dot(free.grows, way)) * steps * step;
  if (by === 0) return null;
  const next = free.put(free.value + by, step)(cut);
  const place: Place = [moves.at[0] + free.grows[0] * by, moves.at[1] + free.grows[1] * by];
  return mendedCut(next, moves.mended, place, step);
}

/** Less than this share of a way is none of it. */
const ASIDE = 1e-6;

// Of two numbers one goes sideways and the other up and down, whichever way suits both, so that each has its keys.
function freeAlong(frees: readonly Free[], way: Place): Free | null {
  const [first, second] = frees;
  if (first === undefined) return null;
  if (second === undefined) return Math.abs(dot(first.grows, way)) > ASIDE ? first : null;
  const axis = way[0] !== 0 ? 0 : 1;
  const straight = Math.abs(first.grows[0] * second.grows[1]);
  const swapped = Math.abs(first.grows[1] * second.grows[0]);
  return straight >= swapped === (axis === 0) ? first : second;
}

function mendedCut(cut: JsonObject, mended: Moves['mended'], place: Place, step: number): JsonObject | null {
  const more = mended === undefined ? [] : mended(cut, place, step);
  return more === null ? null : setting(more)(cut);
}

/** The change that puts values in places of a cut. */
export function setting(changes: readonly Change[]): Turn {
  return (cut) => changes.reduce((next, [path, value]) => withValue(next, path, value) as JsonObject, cut);
}
