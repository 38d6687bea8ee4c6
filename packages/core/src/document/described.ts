/** Longest text quoted in a sentence. */
const QUOTED = 40;

/** A value of a job as a sentence names it. */
export function described(value: unknown): string {
  if (typeof value === 'string') {
    return JSON.stringify(value.length > QUOTED ? `${value.slice(0, QUOTED)}...` : value);
  }
  if (value === null) return 'null';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'an object';
  if (typeof value === 'function' || typeof value === 'symbol') return `a ${typeof value}`;
  return String(value);
}

/** Choices as a sentence names them: `"a", "b" or "c"`. */
export function choices(values: readonly unknown[]): string {
  const shown = values.map(described);
  const last = shown.at(-1) ?? '';
  return shown.length < 2 ? last : `${shown.slice(0, -1).join(', ')} or ${last}`;
}
