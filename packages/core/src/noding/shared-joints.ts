import { ROW } from '../geometry/curves.js';
import type { Curves } from './gather.js';

/**
 * Tells whether more than one circle has a joint at a point: they touch there, however each of them is written down.
 * The table is made when it is first asked for, which is seldom.
 */
export function sharedJoints(curves: Curves): (p: number) => boolean {
  let table: Map<number, Map<number, { readonly piece: number; isShared: boolean }>> | null = null;
  const { x, y } = curves.points;
  return (p) => {
    if (table === null) {
      table = new Map();
      for (let i = 0; i < curves.count; i++) {
        for (const end of [curves.from[i] as number, curves.to[i] as number]) {
          const row = table.get(x[end] as number) ?? new Map();
          table.set(x[end] as number, row);
          const known = row.get(y[end] as number);
          if (known === undefined) row.set(y[end] as number, { piece: i, isShared: false });
          else if (!isSameCircle(curves, known.piece, i)) known.isShared = true;
        }
      }
    }
    return table.get(x[p] as number)?.get(y[p] as number)?.isShared === true;
  };
}

function isSameCircle({ rows, tolerance }: Curves, i: number, j: number): boolean {
  const differ = (k: number) => Math.abs((rows[i * ROW + k] as number) - (rows[j * ROW + k] as number));
  const isArc = (k: number) => rows[k * ROW + 7] !== 0;
  return isArc(i) && isArc(j) && Math.max(differ(4), differ(5), differ(6)) <= tolerance;
}
