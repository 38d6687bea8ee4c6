import { effect, signal } from '@preact/signals';
import { dragging, issues, nudged, outdated } from './store.js';

/**
 * Milliseconds that the answer to a move may take before what is shown is marked as old: else the marks would come and
 * go with every move, and each time be painted.
 */
const GRACE = 100;

/** Whether what is shown is to be marked as from before a change: at once, but for moves that are answered at once. */
export const isMarked = signal(false);

effect(() => {
  const isMoving = dragging.value || nudged.value;
  if (!outdated.value || !isMoving || issues.value.length > 0) {
    isMarked.value = outdated.value;
    return;
  }
  const timer = setTimeout(() => {
    isMarked.value = true;
  }, GRACE);
  return () => clearTimeout(timer);
});
