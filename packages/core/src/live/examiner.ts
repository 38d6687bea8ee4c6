/*
 * Room: a job changed one cut at a time, and examined again after each change.
 * In: a job, then changes of one cut at a time.
 * Out: a report as `examine` gives it.
 */

import { JobError } from '../document/errors.js';
import type { CutDocument } from '../document/schema.js';
import type { Point } from '../geometry/point.js';
import type { Job } from '../job/job.js';
import { RunningMemory } from '../memory/memory.js';
import { parseJob } from '../read/parse.js';
import type { Report } from '../report/report-schema.js';
import { examineWith } from '../write/examine.js';

/** What may be changed of a cut, as a job has it; its kind and its id stay. */
export type CutChange = Partial<Omit<CutDocument, 'id' | 'kind'>> & Readonly<Record<string, unknown>>;

/**
 * A job with its report, ready to be changed one cut at a time. It is plain data of its own and is never changed: each
 * change gives a new one, which shares with the old one all that stays the same, so that a drag can go back at any time.
 */
export interface Examiner {
  readonly job: Job;
  /** What `examine` says of the job. */
  readonly report: Report;
  /**
   * The same job with the centre of a cut elsewhere, in the unit of the job; its copies go with it.
   * @throws RangeError if there is no such cut in the job as written, or if it is a swept cut, which has no centre.
   * @throws JobError if the cut cannot be there.
   */
  readonly moved: (cut: string, center: Point | readonly [number, number]) => Examiner;
  /**
   * The same job with some values of a cut changed, written as in a job: `{ diameter: 12 }`, `{ center: [3, 4] }`,
   * `{ depth: 5 }`. A value of `undefined` takes a key away. Its copies change with it.
   * @throws RangeError if there is no such cut in the job as written, or the change has an id or a kind.
   * @throws JobError with all faults of what comes out, as `parseJob` would find them.
   */
  readonly changed: (cut: string, change: CutChange) => Examiner;
}

/** Examines a job so that single cuts of it can be changed. */
export function examiner(job: Job): Examiner {
  return withMemory(job, new RunningMemory());
}

function withMemory(given: Job, memory: RunningMemory): Examiner {
  memory.next();
  const job = inKnownParts(given, memory);
  const { cuts } = job.document;
  const numberOf = new Map(cuts.map(({ id }, k) => [id, k]));
  const changed = (id: string, change: CutChange): Examiner => {
    const number = numberOf.get(id);
    if (number === undefined) throw new RangeError(`changed: ${strange(job, id)}`);
    for (const key of ['id', 'kind']) {
      if (Object.hasOwn(change, key)) {
        throw new RangeError(
          `changed: cut "${id}": its ${key} cannot be changed; parse the job with another cut instead`,
        );
      }
    }
    return withMemory(withCut(job, number, change), memory);
  };
  return {
    job,
    report: examineWith(memory, job),
    changed,
    moved: (id, center) => {
      const number = numberOf.get(id);
      if (number === undefined) throw new RangeError(`moved: ${strange(job, id)}`);
      if (cuts[number]?.kind === 'swept') {
        throw new RangeError(
          `moved: cut "${id}" is swept and has a path, no centre; change its path instead`,
        );
      }
      const [x, y] = 'x' in center ? [center.x, center.y] : center;
      return changed(id, { center: [x, y] });
    },
  };
}

/** A job in parts of which each that is alike to that of the job before is the very same. */
function inKnownParts({ cuts, document, plain, ...rest }: Job, memory: RunningMemory): Job {
  const known = Object.entries(rest).map(([key, value]) => [key, memory.same(`job ${key}`, value)] as const);
  return {
    ...(Object.fromEntries(known) as typeof rest),
    cuts: cuts.map((cut, k) => memory.same(`cut ${k}`, cut)),
    document,
    plain,
  };
}

/** What is wrong with the name of a cut that is not in the job as it is written. */
function strange(job: Job, id: string): string {
  return job.cuts.some((cut) => cut.id === id)
    ? `"${id}" is a copy; change the cut that it is a copy of`
    : `the job has no cut "${id}"`;
}

/** The job with one cut changed, checked as `parseJob` does. */
function withCut(job: Job, number: number, change: CutChange): Job {
  const { document } = job;
  const { setups, keepOut, tools, drawer, repeat, ...plain } = document as typeof document &
    Record<string, unknown>;
  const cut = { ...document.cuts[number], ...change } as CutDocument;
  const cuts = document.cuts.map((one, k) => (k === number ? cut : one));
  // What names cuts can be checked with all of them only.
  if ([setups, keepOut, tools, drawer, repeat].some((part) => part !== undefined)) {
    return parseJob({ ...document, cuts });
  }
  try {
    const alone = parseJob({ ...plain, cuts: [cut] });
    const changed = {
      ...document,
      cuts: cuts.map((one, k) => (k === number ? (alone.document.cuts[0] as CutDocument) : one)),
    };
    return {
      ...job,
      cuts: job.cuts.map((one, k) => (k === number ? (alone.cuts[0] as Job['cuts'][number]) : one)),
      document: changed,
      plain: changed,
    };
  } catch (error) {
    if (!(error instanceof JobError)) throw error;
    const issues = error.issues.map(({ path, message }) => ({
      path: path.replace(/^\/cuts\/0(?=\/|$)/, `/cuts/${number}`),
      message,
    }));
    throw new JobError(issues);
  }
}
