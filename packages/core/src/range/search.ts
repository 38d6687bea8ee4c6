/** A value that was tried, and what came of it. */
export interface Probe<T> {
  readonly at: number;
  readonly outcome: T;
  /** The same for two outcomes that are the same. */
  readonly key: string;
}

/** A value at which the outcome changes, and what is on both sides of it. */
export interface Switch<T> {
  readonly at: number;
  readonly before: Probe<T>;
  readonly after: Probe<T>;
}

/** A value at which the outcome can change. */
export interface Candidate {
  readonly at: number;
  /** Whether the outcome of touching spreads round it, so that both of its sides have to be looked at. */
  readonly isLong: boolean;
  /** As that of the plan, where it is more for this one. */
  readonly blur?: number | undefined;
}

/** What a search asks for and how closely it looks. */
export interface SearchPlan<T> {
  readonly from: number;
  readonly to: number;
  /** Values at which the outcome can change, sorted. */
  readonly candidates: readonly Candidate[];
  /** Within this of a candidate the outcome may be that of touching; values closer than twice this are one event. */
  readonly blur: number;
  /** How closely a change is bracketed that is not where a candidate is. */
  readonly fine: number;
  readonly probe: (at: number) => Probe<T>;
  /**
   * A quicker way to tell, between two probes, on which side of a change a value lies; null where there is none, or
   * it cannot tell.
   */
  readonly sideOf: (low: Probe<T>, high: Probe<T>) => ((at: number) => Probe<T> | null) | null;
  /** Asked before each probe but the first two: whether to stop there, with what is known. Never unless given. */
  readonly isOver?: (() => boolean) | undefined;
}

/** The first outcome of a range, and where it changes. */
export interface Found<T> {
  readonly first: Probe<T>;
  readonly switches: readonly Switch<T>[];
  /** As far as the range was looked at: its end, if nothing stopped the search. */
  readonly knownTo: number;
}

/**
 * Looks at the outcome between neighbouring candidates. Where it changes from one gap to the next it is looked at
 * close by the candidate as well: if that is where it changes, the candidate is an event, else the change is bracketed
 * by halving. It goes up from the lower end, so that what is known when it is stopped is one stretch.
 */
export function search<T>(given: SearchPlan<T>): Found<T> {
  const { from, to, blur, probe } = given;
  const plan = stoppable(given);
  const groups = groupsOf(plan);
  const starts = [from, ...groups.map(({ high }) => high)];
  const ends = [...groups.map(({ low }) => low), to];
  // An end of the range may itself be a place of touching, which is not what the range goes on with.
  const first = probe(from + 2 * blur);
  const middles = starts.map((start, k) => start + ((ends[k] as number) - start) / 2);
  let before = probe(middles[0] as number);
  const switches: Switch<T>[] = [];
  let knownTo = first.at;
  try {
    switches.push(...changesIn(plan, first, before));
    knownTo = before.at;
    for (const [k, group] of groups.entries()) {
      const after = plan.probe(middles[k + 1] as number);
      switches.push(...changesOver(plan, group, before, after));
      before = after;
      knownTo = before.at;
    }
    switches.push(...changesIn(plan, before, plan.probe(to - 2 * blur)));
    knownTo = to;
  } catch (error) {
    if (!(error instanceof Stopped)) throw error;
  }
  return { first, switches: settled(switches, 2 * blur), knownTo };
}

/** The changes from one side of a group of candidates to the other. */
function changesOver<T>(plan: SearchPlan<T>, group: Group, before: Probe<T>, after: Probe<T>): Switch<T>[] {
  if (before.key === after.key && !group.isLong) return [];
  const [low, high] = [plan.probe(group.low), plan.probe(group.high)];
  const here =
    low.key === high.key ? [] : [{ at: placeAmong(plan, group, low, high), before: low, after: high }];
  return [...changesBefore(plan, before, low), ...here, ...changesAfter(plan, high, after)];
}

/** Thrown to end a search that is to stop. */
class Stopped extends Error {}

function stoppable<T>(plan: SearchPlan<T>): SearchPlan<T> {
  const { isOver, probe } = plan;
  if (isOver === undefined) return plan;
  return {
    ...plan,
    probe: (at) => {
      if (isOver()) throw new Stopped();
      return probe(at);
    },
  };
}

/** Candidates so close together that no outcome between them can be told from that of touching. */
interface Group {
  /** The ends of the stretch that touching at any of them may take up. */
  readonly low: number;
  readonly high: number;
  readonly members: readonly Member[];
  readonly isLong: boolean;
}

interface Member {
  readonly at: number;
  readonly blur: number;
}

/** No candidate is taken to blur by more than this many times as much as one of welding: that would hide others. */
const MOST_BLUR = 1000;

function groupsOf<T>({ candidates, blur, from, to }: SearchPlan<T>): Group[] {
  const groups: Group[] = [];
  for (const { at, isLong, blur: own = 0 } of candidates) {
    if (at - from <= 4 * blur || to - at <= 4 * blur) continue;
    const wide = Math.min(Math.max(blur, own), MOST_BLUR * blur, (at - from) / 2, (to - at) / 2);
    const one = { low: at - wide, high: at + wide, members: [{ at, blur: wide }], isLong };
    let last = groups[groups.length - 1];
    if (last === undefined || one.low - last.high > 2 * blur) {
      groups.push(one);
      continue;
    }
    groups.pop();
    let whole: Group = joinedGroup(last, one);
    // A wide candidate may reach back over more than the one before it.
    for (last = groups[groups.length - 1]; last !== undefined; last = groups[groups.length - 1]) {
      if (whole.low - last.high > 2 * blur) break;
      groups.pop();
      whole = joinedGroup(last, whole);
    }
    groups.push(whole);
  }
  return groups;
}

function joinedGroup(a: Group, b: Group): Group {
  return {
    low: Math.min(a.low, b.low),
    high: Math.max(a.high, b.high),
    members: [...a.members, ...b.members],
    isLong: a.isLong || b.isLong,
  };
}

/**
 * The candidate of a group at which the outcome changes. Touching may give outcomes of its own on the way from one to
 * the other: the candidate is nearest, measured by its blur, to the stretch that these take up, or to its middle if it
 * is in there.
 */
function placeAmong<T>(plan: SearchPlan<T>, { members }: Group, low: Probe<T>, high: Probe<T>): number {
  const [least, most] = [members[0] as Member, members[members.length - 1] as Member];
  if (most.at - least.at <= plan.fine) return (members[members.length >> 1] as Member).at;
  const changes = halved(plan, low, high);
  const from = (changes[0] as Switch<T>).at;
  const to = (changes[changes.length - 1] as Switch<T>).at;
  const off = ({ at, blur }: Member) => Math.max(from - at, at - to, 0) / blur;
  const aside = ({ at, blur }: Member) => Math.abs(at - from - (to - from) / 2) / blur;
  return members.reduce((best, one) =>
    off(one) < off(best) || (off(one) === off(best) && aside(one) < aside(best)) ? one : best,
  ).at;
}

function changesIn<T>(plan: SearchPlan<T>, low: Probe<T>, high: Probe<T>): Switch<T>[] {
  return low.key === high.key ? [] : halved(plan, low, high);
}

/** A change beside a candidate that is not at it is near it most often, so bigger and bigger steps are taken away. */
const STRIDE = 8;

/** The changes up to a probe beside a candidate, the last of them looked for near the candidate first. */
function changesBefore<T>(plan: SearchPlan<T>, far: Probe<T>, near: Probe<T>): Switch<T>[] {
  if (far.key === near.key) return [];
  const quick = plan.sideOf(far, near);
  let last = near;
  for (let step = plan.blur; near.at - step > far.at; step *= STRIDE) {
    const next = (quick ?? plan.probe)(near.at - step) ?? plan.probe(near.at - step);
    if (next.key !== near.key) return [...changesIn(plan, far, next), ...halved(plan, next, last)];
    last = next;
  }
  return halved(plan, far, last);
}

/** The same on the other side of a candidate. */
function changesAfter<T>(plan: SearchPlan<T>, near: Probe<T>, far: Probe<T>): Switch<T>[] {
  if (far.key === near.key) return [];
  const quick = plan.sideOf(near, far);
  let last = near;
  for (let step = plan.blur; near.at + step < far.at; step *= STRIDE) {
    const next = (quick ?? plan.probe)(near.at + step) ?? plan.probe(near.at + step);
    if (next.key !== near.key) return [...halved(plan, last, next), ...changesIn(plan, next, far)];
    last = next;
  }
  return halved(plan, last, far);
}

/** The changes between two probes that differ: at least one, and all that halving comes upon. */
function halved<T>(plan: SearchPlan<T>, low: Probe<T>, high: Probe<T>): Switch<T>[] {
  let [a, b] = [low, high];
  const quick = plan.sideOf(a, b);
  while (b.at - a.at > plan.fine) {
    const at = a.at + (b.at - a.at) / 2;
    if (at <= a.at || at >= b.at) break;
    const middle = quick?.(at) ?? plan.probe(at);
    if (middle.key === a.key) a = middle;
    else if (middle.key === b.key || b.at - a.at <= plan.blur) b = middle;
    else return [...halved(plan, a, middle), ...halved(plan, middle, b)];
  }
  return [{ at: a.at + (b.at - a.at) / 2, before: low, after: high }];
}

/** Changes nearer to each other than can be told are one; those that take each other back are none. */
function settled<T>(switches: readonly Switch<T>[], near: number): Switch<T>[] {
  const kept: Switch<T>[] = [];
  for (const next of switches) {
    const last = kept[kept.length - 1];
    if (last === undefined || next.at - last.at > near) {
      kept.push(next);
      continue;
    }
    kept.pop();
    if (last.before.key !== next.after.key) kept.push({ ...last, after: next.after });
  }
  return kept;
}
