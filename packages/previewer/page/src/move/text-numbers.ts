import { tidied } from '../board/snap.js';

/** A number of a text: where it stands, and which coordinate of a place it is, if it is one that moves with the shape. */
export interface Found {
  readonly from: number;
  readonly to: number;
  readonly axis: 'x' | 'y' | null;
}

/** Reads the numbers of a text of one form; null if it is none of that form. */
export type Reader = (text: string) => readonly Found[] | null;

/** A drawn text moved by a vector: its own text with other numbers in it; null if it is none. */
export function movedText(text: string, [dx, dy]: readonly [number, number], read: Reader): string | null {
  const found = read(text);
  if (found === null) return null;
  let moved = '';
  let done = 0;
  for (const { from, to, axis } of found) {
    if (axis === null) continue;
    const value = tidied(Number(text.slice(from, to)) + (axis === 'x' ? dx : dy));
    // Numbers may run together where the next begins with a sign or a point.
    moved += text.slice(done, from);
    const gap = /[\d.]$/.test(moved) && value >= 0 ? ' ' : '';
    moved += `${gap}${value}${text[to] === '.' ? ' ' : ''}`;
    done = to;
  }
  return moved + text.slice(done);
}

/** Where a drawn text starts; null if it is none. */
export function startOfText(text: string, read: Reader): readonly [number, number] | null {
  const [x, y] = (read(text) ?? []).map(({ from, to }) => Number(text.slice(from, to)));
  return x === undefined || y === undefined ? null : [x, y];
}
