/** A whole number and a fraction, as inch sizes are written: `3/8`, `1 3/8`, `-1/4`. */
const FRACTION = /^([+-]?)(?:(\d+)\s+)?(\d+)\/(\d+)$/;

/** A decimal number with a point or a comma, without signs between thousands. */
const DECIMAL = /^[+-]?(?:\d+[.,]?\d*|[.,]\d+)(?:e[+-]?\d+)?$/i;

/** The number that someone typed, or null if it is none: `12.5`, `12,5`, `.5`, `1 3/8`. */
export function numberOf(text: string): number | null {
  const typed = text.trim();
  const fraction = FRACTION.exec(typed);
  if (fraction !== null) {
    const [, sign, whole = '0', over, under] = fraction;
    const value = Number(whole) + Number(over) / Number(under);
    return Number.isFinite(value) ? (sign === '-' ? -value : value) : null;
  }
  if (!DECIMAL.test(typed)) return null;
  const value = Number(typed.replace(',', '.'));
  return Number.isFinite(value) ? value + 0 : null;
}

/**
 * What goes into the job for typed text: a number if it is one; else the text itself, which the job's checks then
 * name as a fault in its place; undefined for nothing typed where nothing is needed.
 */
export function entryOf(text: string, optional: boolean): number | string | undefined {
  const typed = text.trim();
  if (typed === '' && optional) return undefined;
  return numberOf(typed) ?? typed;
}
