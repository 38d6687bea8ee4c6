import type { Report } from '@edgebite/core';
import { computed, effect, signal } from '@preact/signals';
import type { Json } from '../document/json.js';
import { CROWD } from '../worker/crowd.js';
import { isPressed } from './pressed.js';
import { dragging, job, jumped, nudged, outdated, shown, solver } from './store.js';

/** How long a job must stand still before it is drawn in full, in milliseconds: a little longer than from key to key. */
const REST = 200;

/** After a move by keys a little longer, as from tap to tap: the dimensions of the cut stand on the board meanwhile. */
const REST_OF_MOVES = 350;

/** The whole report on the job once the hand rests; null while it is changed, or has faults. */
export const rested = signal<Report | null>(null);

/** Whether the job has so many cuts that its full drawing is made only where it is asked for. */
export const isCrowd = computed(() => (shown.value?.summary.cuts.length ?? 0) > CROWD);

/** The job whose full drawing was asked for. */
const asked = signal<Json | null>(null);

/** Asks for the full drawing of the job as it stands. */
export function askDrawing(): void {
  asked.value = job.value;
}

effect(() => {
  const present = job.value;
  // Nothing rather than an old one: a print outlives its job.
  rested.value = null;
  if (present === null || outdated.value || shown.value === null || dragging.value) return;
  if (isCrowd.value && asked.value !== present) return;
  let wanted = true;
  const isMove = nudged.peek();
  const drawNow = async (): Promise<void> => {
    // A key that is held down comes again, the first time after longer than a rest.
    if (isMove && isPressed()) {
      timer = setTimeout(drawNow, REST_OF_MOVES);
      return;
    }
    const report = await solver.report(present);
    if (wanted) rested.value = report;
  };
  let timer = setTimeout(drawNow, jumped.peek() ? 0 : isMove ? REST_OF_MOVES : REST);
  return () => {
    wanted = false;
    clearTimeout(timer);
  };
});
