import { isList, type Json, type JsonObject, type Path, valueAt } from './json.js';

/**
 * Where a value of a job is found in the next one: members of lists may have been moved, taken out or put in before
 * it. Null where it is gone.
 */
export function followed(path: Path, before: Json, after: Json): Path | null {
  let [old, now]: (Json | undefined)[] = [before, after];
  const found: (string | number)[] = [];
  for (const step of path) {
    const next = isList(old) && isList(now) && typeof step === 'number' ? placeIn(old, now, step) : step;
    if (next === null) return null;
    found.push(next);
    [old, now] = [valueAt(old, [step]), valueAt(now, [next])];
    if (now === undefined) return null;
  }
  return found;
}

// A member that was changed is another one in its old place, as long as nothing else of the list is.
function placeIn(old: readonly Json[], now: readonly Json[], index: number): number | null {
  const member = old[index];
  if (member === undefined) return null;
  const alone = now.length === old.length && old.every((held, k) => k === index || held === now[k]);
  if (alone || now[index] === member) return index;
  const moved = now.indexOf(member);
  if (moved >= 0) return moved;
  return now.length === old.length ? index : null;
}

/** The id that the cut of an id has in the next job, where its name was changed; null where the cut is gone. */
export function followedCut(id: string, before: Json, after: Json): string | null {
  const cuts = valueAt(before, ['cuts']);
  const index = isList(cuts) ? cuts.findIndex((cut) => valueAt(cut, ['id']) === id) : -1;
  if (index < 0) return null;
  const path = followed(['cuts', index], before, after);
  const cut = path === null ? undefined : (valueAt(after, path) as JsonObject | undefined);
  return typeof cut?.id === 'string' ? cut.id : null;
}
