import type { Found } from './text-numbers.js';

/** A command, or a number, of SVG path data (W3C SVG 2, section 9.3.9: the grammar for path data). */
const TOKEN = /([MLHVAZ])|[+-]?(?:\d+(?:\.\d+)?|\.\d+)(?:e[+-]?\d+)?/giy;

/** A flag of an arc: one digit, which may run into what follows it. */
const FLAG = /[01]/y;

const GAP = /[\s,]*/y;

/** What each number after a command is: a coordinate, `r` a radius, `a` an angle, `f` a flag. */
const NUMBERS: Readonly<Record<string, string>> = { M: 'xy', L: 'xy', H: 'x', V: 'y', A: 'rraffxy', Z: '' };

/** The numbers of path data of lines and arcs; null for a text that is none. */
export function svgNumbers(text: string): readonly Found[] | null {
  const found: Found[] = [];
  let command = '';
  let kinds = '';
  let next = 0;
  for (let at = gapAfter(text, 0); at < text.length; at = gapAfter(text, at)) {
    const kind = kinds[next];
    const pattern = kind === 'f' ? FLAG : TOKEN;
    pattern.lastIndex = at;
    const match = pattern.exec(text);
    if (match === null) return null;
    const [token] = match;
    if (kind !== 'f' && match[1] !== undefined) {
      command = token;
      kinds = NUMBERS[token.toUpperCase()] ?? '';
      next = 0;
    } else {
      if (kind === undefined) return null;
      // The first move of all is absolute, even in small letters; what follows small letters moves with it.
      const absolute = command === command.toUpperCase() || (command === 'm' && found.length < 2);
      const axis = absolute && (kind === 'x' || kind === 'y') ? kind : null;
      found.push({ from: at, to: at + token.length, axis, long: kind !== 'a' && kind !== 'f' });
      next = (next + 1) % kinds.length;
    }
    at += token.length;
  }
  return found;
}

function gapAfter(text: string, at: number): number {
  GAP.lastIndex = at;
  return at + (GAP.exec(text)?.[0].length ?? 0);
}
