/**
 * What of plain data is another than before. A message with the data whole is copied whole, and all of it is new to whoever
 * gets it; of a patch only what it holds is.
 */
export type Patch =
  | { readonly whole: unknown }
  | {
      /** Of a list, how long it is now; null for an object. */
      readonly size: number | null;
      readonly parts: readonly (readonly [string | number, Patch])[];
      /** Keys that an object has no more. */
      readonly gone: readonly string[];
    };

/** What leads from one value to the next; null where they are alike. What is the same object is not gone through. */
export function patchOf(before: unknown, after: unknown): Patch | null {
  if (Object.is(before, after)) return null;
  if (Array.isArray(before) && Array.isArray(after)) return ofLists(before, after);
  if (isPlain(before) && isPlain(after)) return ofObjects(before, after);
  return { whole: after };
}

/** The next value. All that is as before is shared with the value before. */
export function patched(before: unknown, patch: Patch | null): unknown {
  if (patch === null) return before;
  if ('whole' in patch) return patch.whole;
  const { size, parts, gone } = patch;
  if (size !== null) {
    const list = (before as readonly unknown[]).slice(0, size);
    for (const [index, part] of parts) list[Number(index)] = patched(list[Number(index)], part);
    return list;
  }
  const entries = new Map<string | number, unknown>(Object.entries(before as Plain));
  for (const key of gone) entries.delete(key);
  for (const [key, part] of parts) entries.set(key, patched(entries.get(key), part));
  return Object.fromEntries(entries);
}

type Plain = Record<string, unknown>;

function isPlain(value: unknown): value is Plain {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function ofLists(before: readonly unknown[], after: readonly unknown[]): Patch | null {
  const parts: [number, Patch][] = [];
  for (let k = 0; k < after.length; k++) {
    const part = k < before.length ? patchOf(before[k], after[k]) : { whole: after[k] };
    if (part !== null) parts.push([k, part]);
  }
  return parts.length === 0 && before.length === after.length
    ? null
    : { size: after.length, parts, gone: [] };
}

function ofObjects(before: Plain, after: Plain): Patch | null {
  const parts: [string, Patch][] = [];
  for (const key of Object.keys(after)) {
    const part = Object.hasOwn(before, key) ? patchOf(before[key], after[key]) : { whole: after[key] };
    if (part !== null) parts.push([key, part]);
  }
  const gone = Object.keys(before).filter((key) => !Object.hasOwn(after, key));
  return parts.length === 0 && gone.length === 0 ? null : { size: null, parts, gone };
}
