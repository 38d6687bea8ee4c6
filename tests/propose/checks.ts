import {
  type AimDocument,
  area,
  examine,
  fromReport,
  intersect,
  type JobDocument,
  JobError,
  type Proposal,
  type ProposedWay,
  parseAim,
  parseJob,
  propose,
  type Region,
  xor,
} from '@edgebite/core';
import { dangersIn, isSound, orders } from './brute.js';
import { leftAt, type MixedPart } from './mixed-parts.js';

/*
 * What has to hold of a proposed job, by what the part was made of: each function tells what is wrong, or nothing. They share
 * `examine` and the regions with the search, and none of its thoughts.
 */

/** Of the plate's area: only rounding lies below it. */
const SAME = 1e-9;

/** What is proposed; null where the aim is refused as such, since its outline touches itself. */
export function proposed(aim: AimDocument): Proposal | null {
  try {
    return propose(parseAim(aim));
  } catch (error) {
    if (error instanceof JobError) return null;
    throw error;
  }
}

/** At every height the kept piece is the part, no cut goes into what is to stay there, and nothing hangs on it. */
export function leavesThePart(part: MixedPart, { job }: ProposedWay): string[] {
  const parsed = parseJob(job);
  const report = examine(parsed);
  const { pieces, cuts } = fromReport(report);
  const { thickness } = part.aim;
  const nothing = SAME * area(part.blank);
  const blind = part.taken.flatMap(({ depth }) => (depth === null ? [] : [depth, thickness - depth]));
  // Floors that meet from both sides are at one height, but for rounding.
  const marks = [0, thickness, ...blind]
    .sort((a, b) => a - b)
    .filter((mark, n, all) => n === 0 || mark - (all[n - 1] as number) > SAME * thickness);
  const [kept] = pieces;
  const wrong = marks.slice(1).flatMap((to, k) => {
    const middle = ((marks[k] as number) + to) / 2;
    const expected = leftAt(part, middle);
    const section = kept?.sections.find((one) => one.from < middle && middle < one.to);
    const off = area(xor([section?.region ?? [], expected]));
    const gouging = parsed.cuts.flatMap(({ id, from, depth, through }, n) => {
      const isThere = through || (from === 'top' ? middle > thickness - depth : middle < depth);
      const footprint: Region = cuts[n]?.footprint ?? [];
      return isThere && area(intersect([footprint, expected])) >= nothing ? [id] : [];
    });
    return [
      ...(off < nothing ? [] : [`off by ${off} at ${middle}`]),
      ...gouging.map((id) => `cut ${id} goes into what is to stay at ${middle}`),
    ];
  });
  const others = report.pieces.slice(1).filter(({ role }) => role !== 'slug' && role !== 'offcut');
  return [...wrong, ...others.map(({ id, role }) => `${id} is ${role}`)];
}

/** The setups of a job for another order of its cuts: each cut lies as it did. */
function setupsFor({ setups }: JobDocument, cuts: JobDocument['cuts']): Pick<JobDocument, 'setups'> {
  if (setups === undefined) return {};
  const lies = cuts.map(({ id }) => setups.find((one) => one.cuts.includes(id)) as (typeof setups)[number]);
  const isSame = (k: number) => lies[k]?.flip === lies[k - 1]?.flip && lies[k]?.turn === lies[k - 1]?.turn;
  const starts = lies.flatMap((_, k) => (k > 0 && isSame(k) ? [] : [k]));
  return {
    setups: starts.map((from, n) => ({
      ...(lies[from] as (typeof lies)[number]),
      id: `in turn ${n}`,
      cuts: cuts.slice(from, starts[n + 1]).map(({ id }) => id),
    })),
  };
}

/** Each cut is one that its tool can make: its depth, its size, at a speed that the machine has. */
export function respectsTools({ aim }: MixedPart, { job, report }: ProposedWay): string[] {
  const fastest = aim.machine?.fastest ?? Number.POSITIVE_INFINITY;
  const slowest = aim.machine?.slowest ?? 0;
  return job.cuts.flatMap((cut) => {
    const own = aim.drawer.find(({ id }) => id === cut.tool);
    if (own === undefined) return [`${cut.id} names no tool of the drawer`];
    const wrong: string[] = [];
    const depth = typeof cut.depth === 'number' ? cut.depth : aim.thickness;
    const reach = own.kind === 'boring head' ? own.bar : own.reach;
    if (depth > reach) wrong.push(`${cut.id} is ${depth} deep, its tool reaches ${reach}`);
    const { diameter = own.kind === 'boring head' ? 0 : own.diameter } = cut;
    if (own.kind === 'boring head') {
      const isWithin = diameter >= own.smallest - 1e-9 && diameter <= own.largest + 1e-9;
      if (!isWithin) wrong.push(`${cut.id} of ${diameter} is no size of its head`);
    } else if (own.kind === 'end mill' ? diameter < own.diameter : diameter !== own.diameter) {
      wrong.push(`${cut.id} of ${diameter} is not that of its tool`);
    }
    const set = report.cuts.find(({ id }) => id === cut.id)?.running?.set;
    if (set === null) wrong.push(`${cut.id} has no speed`);
    if (set != null && (set[0] < slowest - 1e-9 || set[1] > fastest + 1e-9))
      wrong.push(`${cut.id} turns at ${set}`);
    return wrong;
  });
}

/**
 * An order of the same cuts with fewer dangers, if there is one; null where there are more than so many cuts to try it.
 * What has no danger needs no trying.
 */
export function betterOrder({ job, row }: ProposedWay, most: number): string[] | null {
  if (row.dangers.length === 0) return [];
  if (job.cuts.length > most) return null;
  for (const cuts of orders(job.cuts)) {
    const report = examine(parseJob({ ...job, cuts, ...setupsFor(job, cuts) }));
    if (isSound(report) && dangersIn(report) < row.dangers.length) {
      return [
        `${row.dangers.length} dangers, ${dangersIn(report)} by ${cuts.map(({ id }) => id).join(', ')}`,
      ];
    }
  }
  return [];
}
