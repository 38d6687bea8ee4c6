import type { JobIssue } from './errors.js';
import { pieceAt } from './json-fault.js';

/** An object or list that is being read. */
interface Open {
  /** JSON Pointer to it. */
  readonly path: string;
  /** Of an object: its keys, and where each stands; null for a list. */
  readonly keys: Map<string, number> | null;
  /** Of a list: the number of the entry that is being read. */
  index: number;
  key: string;
}

/**
 * The keys that an object of a JSON text has twice, with both places. RFC 8259 leaves open which of the two counts, and
 * readers differ: the first list of cuts of a job would go unread without a word.
 * @param text a text that is JSON
 */
export function doubleKeys(text: string): JobIssue[] {
  const issues: JobIssue[] = [];
  const open: Open[] = [];
  let isKey = false;
  for (let at = 0; at < text.length; ) {
    const sign = text[at] as string;
    if (' \t\n\r'.includes(sign)) {
      at++;
      continue;
    }
    const { end } = pieceAt(text, at);
    const last = open.at(-1);
    if (isKey && sign === '"' && last?.keys) {
      const key = JSON.parse(text.slice(at, end)) as string;
      const earlier = last.keys.get(key);
      if (earlier === undefined) last.keys.set(key, at);
      else issues.push(fault(`${last.path}/${escaped(key)}`, text, earlier, at));
      last.key = key;
      isKey = false;
    } else if (sign === '{' || sign === '[') {
      open.push({ path: pathIn(last), keys: sign === '{' ? new Map() : null, index: 0, key: '' });
      isKey = sign === '{';
    } else if (sign === '}' || sign === ']') {
      open.pop();
      isKey = false;
    } else if (sign === ',' && last !== undefined) {
      last.index += 1;
      isKey = last.keys !== null;
    }
    at = end;
  }
  return issues;
}

/** JSON Pointer to what is read next in an object or list (RFC 6901). */
function pathIn(open: Open | undefined): string {
  if (open === undefined) return '';
  return `${open.path}/${open.keys === null ? open.index : escaped(open.key)}`;
}

function escaped(key: string): string {
  return key.replaceAll('~', '~0').replaceAll('/', '~1');
}

function fault(path: string, text: string, first: number, second: number): JobIssue {
  return {
    path,
    message: `is given twice, at ${placeIn(text, first)} and at ${placeIn(text, second)}; keep one of them`,
  };
}

/** Line and column of a place in a text, from 1, as editors show them. */
export function placeIn(text: string, at: number): string {
  const before = text.slice(0, at).split('\n');
  return `line ${before.length}, column ${(before.at(-1) ?? '').length + 1}`;
}
