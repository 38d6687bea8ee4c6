import type { Found } from './text-numbers.js';

/** A word, a bracket, a comma or a number of well-known text (OGC 06-103r4, section 7.2), after the space before it. */
const TOKEN = /\s*(?:[a-z_]+|[(),]|([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?))/iy;

/**
 * The numbers of well-known text of curves in the plane: all of them are coordinates, x and y by turns. Null for a text
 * with anything else in it, or with a point that has not two numbers.
 */
export function wktNumbers(text: string): readonly Found[] | null {
  const found: Found[] = [];
  const end = text.trimEnd().length;
  let inPoint = 0;
  for (let at = 0; at < end; ) {
    TOKEN.lastIndex = at;
    const match = TOKEN.exec(text);
    if (match === null) return null;
    at += match[0].length;
    const [, number] = match;
    if (number !== undefined) {
      found.push({ from: at - number.length, to: at, axis: inPoint === 0 ? 'x' : 'y', long: true });
      inPoint++;
      if (inPoint > 2) return null;
    } else {
      if (inPoint === 1) return null;
      inPoint = 0;
    }
  }
  return inPoint === 0 ? found : null;
}
