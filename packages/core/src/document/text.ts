import { doubleKeys, placeIn } from './double-keys.js';
import { JobError } from './errors.js';
import { jsonFault } from './json-fault.js';
import { MAX_DEPTH, MAX_TEXT } from './limits.js';

/**
 * The value that a job's JSON text describes. Length and nesting are checked before the text is parsed, so that
 * no text can exhaust memory or stack.
 * @throws JobError if it is too long, too deep, not JSON, or has a key twice.
 */
export function valueOfText(text: string): unknown {
  if (text.length > MAX_TEXT) {
    throw fault(`is ${text.length} characters long; a job has at most ${MAX_TEXT}`);
  }
  if (nesting(text) > MAX_DEPTH) {
    throw fault(`nests lists and objects over ${MAX_DEPTH} deep; no job needs that`);
  }
  const body = text.startsWith('\ufeff') ? text.slice(1) : text;
  const value = parsed(body);
  const doubles = doubleKeys(body);
  if (doubles.length > 0) throw new JobError(doubles);
  return value;
}

function parsed(body: string): unknown {
  try {
    return JSON.parse(body);
  } catch {
    throw fault(`is not JSON: ${complaint(body)}`);
  }
}

const QUOTE = 34;
const BACKSLASH = 92;
const OPEN = new Set([91, 123]);
const CLOSE = new Set([93, 125]);

/** How deep brackets and braces nest outside of quoted text. */
function nesting(text: string): number {
  let depth = 0;
  let deepest = 0;
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (quoted) {
      if (code === BACKSLASH) i++;
      else if (code === QUOTE) quoted = false;
    } else if (code === QUOTE) quoted = true;
    else if (OPEN.has(code)) deepest = Math.max(deepest, ++depth);
    else if (CLOSE.has(code)) depth--;
  }
  return deepest;
}

/** What is amiss, with line and column, which editors show. */
function complaint(text: string): string {
  if (text.trim() === '') return 'there is nothing in it';
  const position = jsonFault(text);
  const where = placeIn(text, position);
  return position === text.length
    ? `the text is cut short at ${where}`
    : `${JSON.stringify(text[position])} is out of place at ${where}`;
}

function fault(message: string): JobError {
  return new JobError([{ path: '', message }]);
}
