/// <reference path="../../packages/previewer/page/src/vite.d.ts" />
import type { Signal } from '@preact/signals';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import {
  catchUp,
  isCaughtUp,
  panelJob,
  panelResult,
} from '../../packages/previewer/page/src/state/panels.js';
import * as store from '../../packages/previewer/page/src/state/store.js';

vi.mock('../../packages/previewer/page/src/state/live.js', async () => {
  const { signal } = await import('@preact/signals');
  return { live: signal(null) };
});

vi.mock('../../packages/previewer/page/src/state/store.js', async () => {
  const { signal } = await import('@preact/signals');
  return {
    job: signal(null),
    shown: signal(null),
    fresh: signal(true),
    worked: signal(new Map()),
    dragging: signal(false),
    jumped: signal(false),
    nudged: signal(false),
    issues: signal([]),
  };
});

const job = store.job as unknown as Signal<unknown>;
const shown = store.shown as unknown as Signal<unknown>;
const fresh = store.fresh as Signal<boolean>;

/** A move to a place, and its answer. */
function move(place: number): void {
  fresh.value = false;
  job.value = { place };
  shown.value = { of: place };
  fresh.value = true;
}

beforeEach(() => {
  vi.useFakeTimers();
  store.dragging.value = true;
  move(0);
  vi.advanceTimersByTime(1000);
});

afterEach(() => {
  store.dragging.value = false;
  vi.useRealTimers();
});

it('follows the first move with its answer', () => {
  move(1);
  expect([panelJob.value, panelResult.value]).toEqual([{ place: 1 }, { of: 1 }]);
  expect(isCaughtUp.value).toBe(true);
});

it('goes by some of the moves that follow each other, and ends with the last', () => {
  const seen = new Set<unknown>();
  for (let k = 1; k <= 30; k++) {
    move(k);
    vi.advanceTimersByTime(16);
    seen.add(panelJob.value);
  }
  // 480 milliseconds at 150 a time.
  expect(seen.size).toBeGreaterThanOrEqual(3);
  expect(seen.size).toBeLessThanOrEqual(5);
  vi.advanceTimersByTime(1000);
  expect([panelJob.value, panelResult.value]).toEqual([{ place: 30 }, { of: 30 }]);
  expect(isCaughtUp.value).toBe(true);
});

it('does not wait for the answer where there is none for long', () => {
  fresh.value = false;
  job.value = { place: 1 };
  vi.advanceTimersByTime(1000);
  expect(panelJob.value).toEqual({ place: 1 });
  expect(isCaughtUp.value).toBe(false);
  fresh.value = true;
});

it('follows all that is no move at once, and what it is asked for', () => {
  move(1);
  move(2);
  expect(isCaughtUp.value).toBe(false);
  catchUp();
  expect(panelJob.value).toEqual({ place: 2 });
  store.dragging.value = false;
  move(3);
  expect([panelJob.value, panelResult.value]).toEqual([{ place: 3 }, { of: 3 }]);
});

it('shows what comes for a job before the one that stands, while that is worked out', () => {
  store.dragging.value = false;
  fresh.value = false;
  job.value = { place: 1 };
  shown.value = { of: 'the one before' };
  expect(panelResult.value).toEqual({ of: 'the one before' });
  fresh.value = true;
});
