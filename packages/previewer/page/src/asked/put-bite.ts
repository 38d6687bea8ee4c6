import { tidied } from '../board/snap.js';
import { isList, type Json, type JsonObject, valueAt, withValue } from '../document/json.js';
import { cutsIn, freeName } from '../form/new-cut.js';
import { change, chosenCut, job, seal } from '../state/store.js';
import type { Bite } from './bite-entry.js';

/** What the ring of a bite is called after the name of its bore. */
export const ROUGH = '-rough';

/** Puts the bore into the job, and before it the hollow cutter, about the same centre; returns its name. */
export function putBite(bite: Bite): string {
  const id = freeName(job.value, 'bite', 1);
  const made = [...ringOf(bite, id), boreOf(bite, id)];
  seal();
  change(inOnlySetup(withValue(job.value ?? {}, ['cuts'], [...cutsIn(job.value), ...made]), made));
  seal();
  chosenCut.value = id;
  return id;
}

function boreOf({ face, along, radius, depth, opening, step }: Bite, id: string): JsonObject {
  return {
    id,
    kind: 'bore',
    diameter: tidied(2 * radius),
    center: { on: face.source, along, ...acrossOf(opening, depth, radius) },
    ...(step === null ? {} : { passes: { kind: 'step in', bite: step } }),
  };
}

function ringOf({ face, along, radius, depth, rough }: Bite, id: string): readonly JsonObject[] {
  if (rough === null) return [];
  const { diameter, wall } = rough;
  const center = { on: face.source, along, depth: tidied(depth - radius + diameter / 2) };
  return [{ id: `${id}${ROUGH}`, kind: 'annular', diameter, wall, center }];
}

/** Of an opening less than the diameter the centre that lies outside of the metal. */
function acrossOf(opening: number | null, depth: number, radius: number): JsonObject {
  if (opening === null) return { depth };
  return opening < 2 * radius ? { opening, pick: 'outside' } : { opening };
}

/** In a job of one setup a bite is cut in that. */
function inOnlySetup(present: Json, made: readonly JsonObject[]): Json {
  const setups = valueAt(present, ['setups']);
  const own = valueAt(present, ['setups', 0, 'cuts']);
  if (!isList(setups) || setups.length !== 1 || !isList(own)) return present;
  return withValue(present, ['setups', 0, 'cuts'], [...own, ...made.map(({ id }) => id as string)]);
}
