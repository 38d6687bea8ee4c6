/** A value with what it was before and what has been taken back. */
export interface History<T> {
  readonly past: readonly T[];
  readonly present: T;
  readonly future: readonly T[];
  /** Changes of one kind in a row are one step; null where the next change starts a new one. */
  readonly kind: string | null;
}

/** Steps that can be taken back; enough for an afternoon, few enough for large jobs. */
const STEPS = 500;

/** A history without a past. */
export function startOf<T>(present: T): History<T> {
  return { past: [], present, future: [], kind: null };
}

/** The history after a change. A change of the same kind as the one before goes into its step. */
export function changed<T>(history: History<T>, present: T, kind: string | null): History<T> {
  if (present === history.present) return history;
  if (kind !== null && kind === history.kind) return { ...history, present, future: [] };
  return { past: [...history.past, history.present].slice(-STEPS), present, future: [], kind };
}

/** The history in which the next change is a step of its own, whatever its kind. */
export function sealed<T>(history: History<T>): History<T> {
  return history.kind === null ? history : { ...history, kind: null };
}

/** The history one step back; the same if there is no past. */
export function undone<T>(history: History<T>): History<T> {
  const present = history.past.at(-1);
  if (present === undefined) return history;
  return {
    past: history.past.slice(0, -1),
    present,
    future: [history.present, ...history.future],
    kind: null,
  };
}

/** The history one step forward again; the same if nothing was taken back. */
export function redone<T>(history: History<T>): History<T> {
  const [present, ...future] = history.future;
  if (present === undefined) return history;
  return { past: [...history.past, history.present], present, future, kind: null };
}
