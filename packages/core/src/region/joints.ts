import { Groups } from './groups.js';
import type { Loop } from './region.js';

/** Joints of loops, told apart to the last bit. */
export class Joints {
  private readonly rows = new Map<number, Set<number>>();

  add(loop: Loop): void {
    for (const { a } of loop) {
      const row = this.rows.get(a.x);
      if (row === undefined) this.rows.set(a.x, new Set([a.y]));
      else row.add(a.y);
    }
  }

  /** Whether a joint of a loop is one of those added. */
  touch(loop: Loop): boolean {
    for (const { a } of loop) if (this.rows.get(a.x)?.has(a.y) === true) return true;
    return false;
  }
}

/** Loops that touch in joints, by themselves or by way of others, in one group each. */
export function touching(loops: readonly Loop[]): Groups {
  const groups = new Groups(loops.length);
  const rows = new Map<number, Map<number, number>>();
  for (const [k, loop] of loops.entries()) {
    for (const { a } of loop) {
      const row = rows.get(a.x) ?? new Map<number, number>();
      rows.set(a.x, row);
      const known = row.get(a.y);
      if (known === undefined) row.set(a.y, k);
      else groups.join(known, k);
    }
  }
  return groups;
}
