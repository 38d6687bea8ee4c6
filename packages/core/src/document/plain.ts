import { JobError, type JobIssue, pointer } from './errors.js';
import { MAX_DEPTH, MAX_VALUES } from './limits.js';

/** Keys that reach an object's prototype in careless code further on; no format needs them. */
const FORBIDDEN = new Set(['__proto__', 'constructor', 'prototype']);

/** Whether a key is one that no job may have anywhere. */
export function isForbiddenKey(key: PropertyKey): boolean {
  return typeof key === 'string' && FORBIDDEN.has(key);
}

/** A list or object being walked through, and how far. */
interface Frame {
  readonly value: object;
  readonly keys: readonly string[] | null;
  at: number;
}

/**
 * Walks through all values of a job before anything else looks at them, without recursion: so a job handed over
 * as an object may be as deep as it likes, hold itself, or share members, and is refused all the same.
 * Returns what is wrong that does not hinder further checks: forbidden keys, and objects that are no plain data.
 * @throws JobError if it is too deep or has too many values.
 */
export function plainFaults(root: unknown): JobIssue[] {
  const issues: JobIssue[] = [];
  const stack: Frame[] = [];
  let count = 0;
  const path = () => stack.map(({ keys, at }) => (keys === null ? at - 1 : (keys[at - 1] as string)));
  const enter = (value: unknown) => {
    count++;
    if (count > MAX_VALUES) throw new JobError([{ path: '', message: `holds over ${MAX_VALUES} values` }]);
    if (typeof value !== 'object' || value === null) return;
    if (stack.length >= MAX_DEPTH) {
      const message = `lists and objects nest over ${MAX_DEPTH} deep here; no job needs that`;
      throw new JobError([{ path: pointer(path()), message }]);
    }
    if (!isPlain(value))
      issues.push({ path: pointer(path()), message: 'must be plain data, as JSON has it' });
    else stack.push({ value, keys: Array.isArray(value) ? null : Object.keys(value), at: 0 });
  };
  enter(root);
  for (let frame = stack.at(-1); frame !== undefined; frame = stack.at(-1)) {
    const { value, keys, at } = frame;
    const length = keys === null ? (value as unknown[]).length : keys.length;
    if (at === length) {
      stack.pop();
      continue;
    }
    frame.at++;
    const key = keys === null ? at : (keys[at] as string);
    if (keys !== null && isForbiddenKey(key)) {
      issues.push({ path: pointer(path()), message: 'is a key that no job may have; take it out' });
    } else enter((value as Record<PropertyKey, unknown>)[key]);
  }
  return issues;
}

function isPlain(value: object): boolean {
  if (Array.isArray(value)) return true;
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}
