import type { Finding } from '@edgebite/core';
import { batch, computed, effect, signal } from '@preact/signals';
import { live } from './live.js';
import { dragging, fresh, issues, job, jumped, nudged, shown, worked } from './store.js';

/*
 * The job and what came of it as the panels beside the drawing have them. While a cut moves they follow it some times a
 * second: to lay out and paint their words at every move would cost more than the drawing does.
 */

/** Milliseconds from one to the next: digits that change sooner than this cannot be read. */
const PACE = 150;

export const panelJob = signal(job.peek());
export const panelResult = signal(shown.peek());
export const panelLive = signal(live.peek());
export const panelWorked = signal(worked.peek());

const NONE: readonly Finding[] = [];

/** The findings as the panels have them; the same list while nothing of them differs. */
export const panelFindings = computed(() => panelResult.value?.summary.findings ?? NONE);

/** Whether all of the page is that of the job as it stands. */
export const isCaughtUp = computed(
  () =>
    fresh.value &&
    issues.value.length === 0 &&
    panelJob.value === job.value &&
    panelResult.value === shown.value,
);

let last = 0;
let asked = 0;
let timer: ReturnType<typeof setTimeout> | undefined;

/** Has the panels show what there is. */
export function catchUp(): void {
  clearTimeout(timer);
  timer = undefined;
  last = performance.now();
  batch(() => {
    panelJob.value = job.peek();
    panelResult.value = shown.peek();
    panelLive.value = live.peek();
    panelWorked.value = worked.peek();
  });
}

// With the drawing of a move where one comes, so that both are one frame; by themselves after the last one.
function late(): void {
  timer = undefined;
  const wait = Math.min(asked + PACE / 2, last + 2 * PACE) - performance.now();
  if (wait <= 0) catchUp();
  else timer = setTimeout(late, wait);
}

effect(() => {
  // All of them are read, whatever they are: each one that changes brings the panels up to it.
  const [present, isCurrent, isJumped] = [job.value, fresh.value, jumped.value];
  const [isDragged, isNudged] = [dragging.value, nudged.value];
  void [shown.value, live.value, worked.value];
  const isMoving = present !== null && !isJumped && (isDragged || isNudged);
  asked = performance.now();
  if (!isMoving || (isCurrent && asked - last >= PACE)) catchUp();
  else timer ??= setTimeout(late, PACE / 2);
});
