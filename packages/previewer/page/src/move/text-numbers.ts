import { tidied } from '../board/snap.js';

/** A number of a text: where it stands, and what it is. */
export interface Found {
  readonly from: number;
  readonly to: number;
  /** Which coordinate of a place, if it is one that moves with the shape. */
  readonly axis: 'x' | 'y' | null;
  /** Whether it is a length or a coordinate, and no angle or flag. */
  readonly long: boolean;
}

/** Reads the numbers of a text of one form; null if it is none of that form. */
export type Reader = (text: string) => readonly Found[] | null;

/** A drawn text moved by a vector: its own text with other numbers in it; null if it is none. */
export function movedText(text: string, [dx, dy]: readonly [number, number], read: Reader): string | null {
  return rewritten(text, read, (value, { axis }) =>
    axis === null ? value : value + (axis === 'x' ? dx : dy),
  );
}

/** A drawn text with all its lengths times a factor; null if it is none. */
export function scaledText(text: string, factor: number, read: Reader): string | null {
  return rewritten(text, read, (value, { long }) => (long ? value * factor : value));
}

function rewritten(text: string, read: Reader, turn: (value: number, found: Found) => number): string | null {
  const found = read(text);
  if (found === null) return null;
  let written = '';
  let done = 0;
  for (const number of found) {
    const { from, to } = number;
    const old = Number(text.slice(from, to));
    const value = turn(old, number);
    if (value === old) continue;
    const next = tidied(value);
    // Numbers may run together where the next begins with a sign or a point.
    written += text.slice(done, from);
    const gap = /[\d.]$/.test(written) && next >= 0 ? ' ' : '';
    written += `${gap}${next}${text[to] === '.' ? ' ' : ''}`;
    done = to;
  }
  return written + text.slice(done);
}

/** Where a drawn text starts; null if it is none. */
export function startOfText(text: string, read: Reader): readonly [number, number] | null {
  const [x, y] = (read(text) ?? []).map(({ from, to }) => Number(text.slice(from, to)));
  return x === undefined || y === undefined ? null : [x, y];
}
