import { Groups } from '../region/groups.js';

/** Numbers joined into groups that can be listed: a disjoint-set forest whose groups are rings of links as well. */
export class Members {
  private readonly groups: Groups;
  private readonly next: Int32Array;

  constructor(count: number) {
    this.groups = new Groups(count);
    this.next = Int32Array.from({ length: count }, (_, k) => k);
  }

  /** The member that speaks for the group of `i`. */
  leader(i: number): number {
    return this.groups.leader(i);
  }

  /** Makes one group of two. */
  join(a: number, b: number): void {
    if (this.leader(a) === this.leader(b)) return;
    this.groups.join(a, b);
    const after = this.next[a] as number;
    this.next[a] = this.next[b] as number;
    this.next[b] = after;
  }

  /** All members of the group of `i`. */
  of(i: number): number[] {
    const all = [i];
    for (let at = this.next[i] as number; at !== i; at = this.next[at] as number) all.push(at);
    return all;
  }
}

/** A pair of numbers to be joined. */
export type Joint = readonly [number, number];

/**
 * Joins pairs, and tells which groups that were there before came to a certain group by that: the members of each as
 * they were before.
 * @param home a member of that group; -1 for none
 * @param before whether a number was in a group before
 */
export function joinedTo(
  groups: Members,
  joints: readonly Joint[],
  home: number,
  before: (i: number) => boolean,
): number[][] {
  // The pairs are tried among leaders first, as a group can no longer be told from another once they are joined.
  const numberOf = new Map<number, number>();
  const leaders: number[] = [];
  const numbered = (i: number) => {
    const leader = groups.leader(i);
    let number = numberOf.get(leader);
    if (number === undefined) {
      number = leaders.length;
      numberOf.set(leader, number);
      leaders.push(leader);
    }
    return number;
  };
  const pairs = joints.map(([a, b]) => [numbered(a), numbered(b)] as const);
  const arrived: number[][] = [];
  const homeNumber = home < 0 ? undefined : numberOf.get(groups.leader(home));
  if (homeNumber !== undefined) {
    const tried = new Groups(leaders.length);
    for (const [a, b] of pairs) tried.join(a, b);
    const at = tried.leader(homeNumber);
    leaders.forEach((leader, k) => {
      if (k !== homeNumber && before(leader) && tried.leader(k) === at) arrived.push(groups.of(leader));
    });
  }
  for (const [a, b] of joints) groups.join(a, b);
  return arrived;
}
