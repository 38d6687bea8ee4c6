import { snapped } from '../board/snap.js';
import { isList, isObject, type Json, type JsonObject, valueAt } from '../document/json.js';
import { shown } from '../state/store.js';

/** A new cut's diameter as a share of the part's shorter side: large enough to see, small enough to place. */
const SHARE = 0.25;

/** A bore in the middle of the part, with a name that no other cut has. */
export function firstCut(job: Json | null): JsonObject {
  const [minX, minY, maxX, maxY] = shown.value?.sketch.box ?? [0, 0, 40, 40];
  const step = stepFor(Math.min(maxX - minX, maxY - minY));
  return {
    id: freeName(job, 'cut', cutsIn(job).length + 1),
    kind: 'bore',
    center: [snapped((minX + maxX) / 2, step), snapped((minY + maxY) / 2, step)],
    diameter: Math.max(snapped(Math.min(maxX - minX, maxY - minY) * SHARE, step), step),
  };
}

/** A round step of about a fiftieth of a length. */
export function stepFor(length: number): number {
  return 10 ** Math.floor(Math.log10(length / 20));
}

/** The cuts of a job as they are written; none while it has no list of them. */
export function cutsIn(job: Json | null): readonly Json[] {
  const cuts = valueAt(job ?? undefined, ['cuts']);
  return isList(cuts) ? cuts : [];
}

/** A name after a word that no cut has yet, with the first number from one on that is free. */
export function freeName(job: Json | null, word: string, from: number): string {
  const names = new Set(cutsIn(job).map((cut) => (isObject(cut) ? cut.id : null)));
  let number = from;
  while (names.has(`${word}-${number}`)) number++;
  return `${word}-${number}`;
}
