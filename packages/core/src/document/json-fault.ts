/** One piece of JSON text other than a text in quotes. */
const PIECE = /[{}[\],:]|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y;

/** An escape inside a text in quotes. */
const ESCAPE = /\\(?:["\\/bfnrt]|u[\dA-Fa-f]{4})/y;

/** What may come next. */
type Wanted = 'value' | 'value or ]' | 'key' | 'key or }' | ':' | ', or end' | 'nothing';

/**
 * Where a text stops being JSON, from 0; its length if it is cut short. Engines tell that in ways of their own,
 * or not at all. Source: RFC 8259.
 * @param text a text that is not JSON
 */
export function jsonFault(text: string): number {
  const open: string[] = [];
  let wanted: Wanted = 'value';
  let at = afterSpace(text, 0);
  while (at < text.length) {
    const piece = pieceAt(text, at);
    const next: Wanted | null = piece.sound ? after(wanted, text[at] as string, open) : null;
    // What may not come here is at fault where it starts, a broken text in quotes where it breaks.
    if (next === null) return piece.sound || !mayBeText(wanted) ? at : piece.end;
    wanted = next;
    at = afterSpace(text, piece.end);
  }
  return text.length;
}

/** A piece of the text: where it ends, or, if it is none, where it goes wrong. */
interface Piece {
  readonly sound: boolean;
  readonly end: number;
}

/** The piece of JSON text that starts at a place. */
export function pieceAt(text: string, at: number): Piece {
  if (text[at] === '"') return quoted(text, at + 1);
  PIECE.lastIndex = at;
  const found = PIECE.exec(text)?.[0];
  return found === undefined ? { sound: false, end: at } : { sound: true, end: at + found.length };
}

/** The rest of a text in quotes. By hand: a pattern would recurse on every escape. */
function quoted(text: string, start: number): Piece {
  let at = start;
  while (at < text.length) {
    const sign = text[at] as string;
    if (sign === '"') return { sound: true, end: at + 1 };
    ESCAPE.lastIndex = at;
    const length = sign === '\\' ? (ESCAPE.exec(text)?.[0].length ?? 0) : sign < ' ' ? 0 : 1;
    if (length === 0) return { sound: false, end: at };
    at += length;
  }
  return { sound: false, end: at };
}

function afterSpace(text: string, start: number): number {
  let at = start;
  while (at < text.length && ' \t\n\r'.includes(text[at] as string)) at++;
  return at;
}

function mayBeText(wanted: Wanted): boolean {
  return wanted === 'value' || wanted === 'value or ]' || wanted === 'key' || wanted === 'key or }';
}

/** What may come after a piece that starts so, or null if it may not come here. Keeps account of what is open. */
function after(wanted: Wanted, piece: string, open: string[]): Wanted | null {
  const value = (): Wanted => (open.length === 0 ? 'nothing' : ', or end');
  if (wanted === ':') return piece === ':' ? 'value' : null;
  if (wanted === ', or end' && piece === ',') return open.at(-1) === '{' ? 'key' : 'value';
  if (piece === ']' || piece === '}') {
    const mayEnd = wanted === ', or end' || wanted === (piece === ']' ? 'value or ]' : 'key or }');
    return mayEnd && open.pop() === (piece === ']' ? '[' : '{') ? value() : null;
  }
  if (wanted === 'key' || wanted === 'key or }') return piece === '"' ? ':' : null;
  if (wanted !== 'value' && wanted !== 'value or ]') return null;
  if (piece === ',' || piece === ':') return null;
  if (piece !== '[' && piece !== '{') return value();
  open.push(piece);
  return piece === '[' ? 'value or ]' : 'key or }';
}
