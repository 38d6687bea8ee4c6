/**
 * The same plain data without minus zeros, which JSON does not keep, and without keys that hold nothing.
 * Goes as deep as the data does, which has been checked.
 */
export function tidied(value: unknown): unknown {
  if (typeof value === 'number') return value + 0;
  if (Array.isArray(value)) return value.map(tidied);
  if (typeof value !== 'object' || value === null) return value;
  const held = Object.entries(value).filter(([, one]) => one !== undefined);
  for (const entry of held) entry[1] = tidied(entry[1]);
  return Object.fromEntries(held);
}
