/**
 * The same plain data without minus zeros, which JSON does not keep, and without keys that hold nothing.
 * Goes as deep as the data does, which has been checked.
 */
export function tidied(value: unknown): unknown {
  if (typeof value === 'number') return value + 0;
  if (Array.isArray(value)) return value.map(tidied);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, held]) => (held === undefined ? [] : [[key, tidied(held)]])),
  );
}
