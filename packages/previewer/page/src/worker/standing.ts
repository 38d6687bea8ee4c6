import { type CutChange, type Examiner, examiner, parseJob, type Report } from '@edgebite/core';
import { isList, isObject, type Json, type JsonObject } from '../document/json.js';

/**
 * The job that was worked out last. Where the next one differs from it in one cut only, as at every move of a drag, the
 * library looks near that cut alone.
 */
export class Standing {
  #last: { readonly job: Json; readonly examiner: Examiner } | null = null;

  /**
   * The report on a job.
   * @throws JobError as `parseJob` does; what stood before still stands then.
   */
  report(job: Json): Report {
    const change = this.#last === null ? null : oneCutChanged(this.#last.job, job);
    const next =
      this.#last === null || change === null
        ? examiner(parseJob(job))
        : this.#last.examiner.changed(change.id, change.values);
    this.#last = { job, examiner: next };
    return next.report;
  }
}

interface Change {
  readonly id: string;
  readonly values: CutChange;
}

/** What changed from one job to the next, if it is values of a single cut; null if it is anything else. */
export function oneCutChanged(before: Json, after: Json): Change | null {
  if (!isObject(before) || !isObject(after)) return null;
  const { cuts: cutsBefore, ...restBefore } = before;
  const { cuts: cutsAfter, ...restAfter } = after;
  if (!isList(cutsBefore) || !isList(cutsAfter) || cutsBefore.length !== cutsAfter.length) return null;
  if (!same(restBefore, restAfter)) return null;
  const differ = cutsAfter.flatMap((cut, k) => (same(cut, cutsBefore[k]) ? [] : [k]));
  const [index] = differ;
  if (index === undefined || differ.length > 1) return null;
  return changeOf(cutsBefore[index], cutsAfter[index]);
}

function changeOf(before: Json | undefined, after: Json | undefined): Change | null {
  if (!isObject(before) || !isObject(after)) return null;
  const { id, kind } = after;
  if (typeof id !== 'string' || before.id !== id || before.kind !== kind) return null;
  const gone = Object.keys(before).filter((key) => !Object.hasOwn(after, key));
  const differ = Object.entries(after).filter(([key, value]) => !same(value, before[key]));
  return { id, values: Object.fromEntries([...gone.map((key) => [key, undefined]), ...differ]) };
}

/** Whether two values are alike, all the way down. */
function same(a: Json | undefined, b: Json | undefined): boolean {
  if (a === b) return true;
  if (isList(a) && isList(b)) return a.length === b.length && a.every((value, k) => same(value, b[k]));
  return isObject(a) && isObject(b) && sameObject(a, b);
}

function sameObject(a: JsonObject, b: JsonObject): boolean {
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && same(a[key], b[key]))
  );
}
