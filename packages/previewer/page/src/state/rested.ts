import type { Report } from '@edgebite/core';
import { effect, signal } from '@preact/signals';
import { dragging, job, jumped, outdated, shown, solver } from './store.js';

/** How long a job must stand still before it is drawn in full, in milliseconds: a little longer than from key to key. */
const REST = 200;

/** The whole report on the job once the hand rests; null while it is changed, or has faults. */
export const rested = signal<Report | null>(null);

effect(() => {
  const present = job.value;
  // Nothing rather than an old one: a print outlives its job.
  rested.value = null;
  if (present === null || outdated.value || shown.value === null || dragging.value) return;
  let wanted = true;
  const timer = setTimeout(
    async () => {
      const report = await solver.report(present);
      if (wanted) rested.value = report;
    },
    jumped.peek() ? 0 : REST,
  );
  return () => {
    wanted = false;
    clearTimeout(timer);
  };
});
