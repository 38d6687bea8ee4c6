import { ROW } from '../geometry/curves.js';
import type { Curves } from './gather.js';
import type { Hits } from './meetings.js';

/**
 * For each piece the first one that is the same to the last digit: ends, circle and way to run. What is made again exactly
 * where it was meets everything where the first one does, and looking at each two of a stack would take a square of them.
 * @returns null if all pieces differ
 */
export function twinsOf({ rows, count }: Pick<Curves, 'rows' | 'count'>): Int32Array | null {
  const words = new Int32Array(rows.buffer, rows.byteOffset, 2 * ROW * count);
  const places = 2 ** Math.ceil(Math.log2(2 * count + 1));
  const table = new Int32Array(places);
  let twins: Int32Array | null = null;
  for (let i = 0; i < count; i++) {
    let at = hashOf(words, 2 * ROW * i) & (places - 1);
    // Numbers in the table count from 1.
    while (table[at] !== 0 && !areSame(rows, i, (table[at] as number) - 1)) at = (at + 1) & (places - 1);
    if (table[at] === 0) table[at] = i + 1;
    else {
      twins ??= Int32Array.from({ length: count }, (_, k) => k);
      twins[i] = (table[at] as number) - 1;
    }
  }
  return twins;
}

/** Welds the ends of pieces that are the same, and gives to all what has been found on the first. */
export function shareWithTwins(
  { from, to, count }: Pick<Curves, 'from' | 'to' | 'count'>,
  twins: Int32Array,
  hits: Hits,
  welds: number[],
): void {
  const next = new Int32Array(count).fill(-1);
  for (let i = count - 1; i >= 0; i--) {
    const first = twins[i] as number;
    if (first === i) continue;
    next[i] = next[first] as number;
    next[first] = i;
    welds.push(from[first] as number, from[i] as number, to[first] as number, to[i] as number);
  }
  const found = hits.piece.length;
  for (let k = 0; k < found; k++) {
    const point = hits.point[k] as number;
    for (let i = next[hits.piece[k] as number] as number; i >= 0; i = next[i] as number) {
      hits.piece.push(i);
      hits.point.push(point);
    }
  }
}

/** Mixes where a piece starts and ends. Source: the multiplier and the shifts of MurmurHash3 by Appleby, in the public domain. */
function hashOf(words: Int32Array, o: number): number {
  let h = 0;
  for (let k = 0; k < 8; k++) {
    h = Math.imul(h ^ (words[o + k] as number), 0x85ebca6b);
    h ^= h >>> 13;
  }
  return h ^ (h >>> 16);
}

function areSame(rows: Float64Array, i: number, j: number): boolean {
  const p = i * ROW;
  const q = j * ROW;
  for (let k = 0; k < ROW; k++) if (rows[p + k] !== rows[q + k]) return false;
  return true;
}
