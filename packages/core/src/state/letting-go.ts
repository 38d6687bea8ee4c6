import { type Joint, joinedTo, Members } from './members.js';
import { eachBeside, momentsBackwards, NEVER, type Timeline } from './timeline.js';

/** A body that comes loose: the moment after which no joint is left, and its cells then. */
export interface LooseBody {
  readonly moment: number;
  readonly cells: readonly number[];
}

/**
 * The bodies that come loose from the one that is kept, in the order in which they do. Moments are taken back one by
 * one, the last first: what joins the kept body then was loose from then on. Each body is told of once, as it was
 * when it let go; what later cuts make of it is not a body of its own.
 * @param kept a cell of the kept body; it is there from when it comes back on
 */
export function looseBodies(timeline: Timeline, kept: number): LooseBody[] {
  const { cells, momentOf } = timeline;
  const n = cells.slabs.length;
  const present = Uint8Array.from(momentOf, (moment) => (moment === NEVER ? 1 : 0));
  const groups = new Members(momentOf.length);
  const jointsOf = (own: readonly number[]): Joint[] => {
    const joints: Joint[] = [];
    for (const cell of own) {
      const level = cell % n;
      if (level > 0 && present[cell - 1] === 1) joints.push([cell, cell - 1]);
      if (level < n - 1 && present[cell + 1] === 1) joints.push([cell, cell + 1]);
      eachBeside(cells, cell, (other) => {
        if (present[other] === 1) joints.push([cell, other]);
      });
    }
    return joints;
  };
  const standing: number[] = [];
  present.forEach((is, cell) => {
    if (is === 1) standing.push(cell);
  });
  for (const [a, b] of jointsOf(standing)) groups.join(a, b);
  const bodies: LooseBody[] = [];
  for (const { moment, cells: back } of momentsBackwards(timeline)) {
    const isBack = new Set(back);
    for (const cell of back) present[cell] = 1;
    const home = present[kept] === 1 && !isBack.has(kept) ? kept : -1;
    for (const own of joinedTo(groups, jointsOf(back), home, (i) => !isBack.has(i))) {
      bodies.push({ moment, cells: own });
    }
  }
  return bodies.reverse();
}
