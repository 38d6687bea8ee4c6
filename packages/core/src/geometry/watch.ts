import { EdgebiteError } from './edgebite-error.js';

/**
 * What watches over a long call. These calls do not wait for anything, so a signal is aborted by what `progress` does, or by
 * another thread; where a page is to stay alive they belong in a worker.
 */
export interface Watch {
  /** An AbortSignal: where it is aborted the call ends, with the signal's reason. */
  readonly signal?: { readonly aborted: boolean; readonly reason?: unknown } | undefined;
  /** Told how much is done: a share from 0 to 1 that never falls. */
  readonly progress?: ((share: number) => void) | undefined;
}

/** Told how much is done. */
export type Tick = (share: number) => void;

/** Of a call that nobody watches. */
export const unwatched: Tick = () => {};

/** Tells a watch how much is done, and ends the call with the reason of its signal. */
export function ticking(watch: Watch | undefined): Tick {
  if (watch === undefined) return unwatched;
  const { signal, progress } = watch;
  let told = 0;
  return (share) => {
    told = Math.max(told, share);
    progress?.(told);
    if (signal?.aborted) throw signal.reason ?? stopped();
  };
}

function stopped(): EdgebiteError {
  const remedy = 'call it anew if it is wanted after all';
  return new EdgebiteError('the call was ended by its signal', {
    code: 'stopped',
    place: 'watch.signal',
    remedy,
  });
}

/** Of a part of the work, from one share of the whole to another. */
export function partOf(tick: Tick, from: number, to: number): Tick {
  return tick === unwatched ? tick : (share) => tick(from + share * (to - from));
}
