import { snapped } from '../board/snap.js';
import { isList, isObject, type Json, type JsonObject, valueAt } from '../state/json.js';
import { shown } from '../state/store.js';

/** A new cut's diameter as a share of the part's shorter side: large enough to see, small enough to place. */
const SHARE = 0.25;

/** A bore in the middle of the part, with a name that no other cut has. */
export function firstCut(job: Json | null): JsonObject {
  const [minX, minY, maxX, maxY] = shown.value?.sketch.box ?? [0, 0, 40, 40];
  const step = stepFor(Math.min(maxX - minX, maxY - minY));
  return {
    id: freeName(job, 'cut'),
    kind: 'bore',
    center: [snapped((minX + maxX) / 2, step), snapped((minY + maxY) / 2, step)],
    diameter: Math.max(snapped(Math.min(maxX - minX, maxY - minY) * SHARE, step), step),
  };
}

// A round step of about a fiftieth of a length.
function stepFor(length: number): number {
  return 10 ** Math.floor(Math.log10(length / 20));
}

/** A name after a word that no cut has yet. */
export function freeName(job: Json | null, word: string): string {
  const cuts = valueAt(job ?? undefined, ['cuts']);
  const names = new Set(isList(cuts) ? cuts.map((cut) => (isObject(cut) ? cut.id : null)) : []);
  let number = word === 'cut' ? names.size + 1 : 1;
  while (names.has(`${word}-${number}`)) number++;
  return `${word}-${number}`;
}
