/// <reference path="../../packages/previewer/page/src/vite.d.ts" />
import type { Signal } from '@preact/signals';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { isMarked } from '../../packages/previewer/page/src/state/marked.js';
import { followKeys } from '../../packages/previewer/page/src/state/pressed.js';
import { rested } from '../../packages/previewer/page/src/state/rested.js';
import * as store from '../../packages/previewer/page/src/state/store.js';

vi.mock('../../packages/previewer/page/src/state/store.js', async () => {
  const { signal } = await import('@preact/signals');
  return {
    job: signal(null),
    shown: signal({ summary: { cuts: [] } }),
    outdated: signal(false),
    dragging: signal(false),
    jumped: signal(false),
    nudged: signal(false),
    issues: signal([]),
    solver: { report: async (job: unknown) => ({ job }) },
  };
});

const job = store.job as unknown as Signal<unknown>;
const outdated = store.outdated as Signal<boolean>;
const issues = store.issues as unknown as Signal<unknown[]>;
const keys = new EventTarget();
const press = (kind: string) => keys.dispatchEvent(new Event(kind));

followKeys(keys, new AbortController().signal);

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(() => {
  press('keyup');
  store.nudged.value = false;
  store.dragging.value = false;
  issues.value = [];
  outdated.value = false;
  job.value = null;
  vi.useRealTimers();
});

describe('the full drawing', () => {
  it('is there soon after a tap on a key', async () => {
    store.nudged.value = true;
    press('keydown');
    job.value = {};
    press('keyup');
    await vi.advanceTimersByTimeAsync(400);
    expect(rested.value).toEqual({ job: {} });
  });

  // Keys repeat after 250 ms to a second, as systems are set.
  it('waits while a key is held down, however late it comes again', async () => {
    store.nudged.value = true;
    press('keydown');
    job.value = {};
    await vi.advanceTimersByTimeAsync(2000);
    expect(rested.value).toBeNull();
    press('keyup');
    await vi.advanceTimersByTimeAsync(400);
    expect(rested.value).toEqual({ job: {} });
  });

  it('waits for no key after other changes', async () => {
    press('keydown');
    job.value = {};
    await vi.advanceTimersByTimeAsync(250);
    expect(rested.value).toEqual({ job: {} });
  });

  it('is not that of a job that is gone', async () => {
    job.value = { of: 'before' };
    await vi.advanceTimersByTimeAsync(100);
    job.value = { of: 'now' };
    await vi.advanceTimersByTimeAsync(250);
    expect(rested.value).toEqual({ job: { of: 'now' } });
  });
});

describe('what is from before a change', () => {
  it('is marked at once, but not between moves that are answered at once', async () => {
    outdated.value = true;
    expect(isMarked.value).toBe(true);
    outdated.value = false;
    expect(isMarked.value).toBe(false);
    store.dragging.value = true;
    for (let move = 0; move < 20; move++) {
      outdated.value = true;
      await vi.advanceTimersByTimeAsync(30);
      expect(isMarked.value).toBe(false);
      outdated.value = false;
      await vi.advanceTimersByTimeAsync(10);
    }
  });

  it('is marked where the answer to a move is slow, or the job has faults', async () => {
    store.nudged.value = true;
    outdated.value = true;
    expect(isMarked.value).toBe(false);
    await vi.advanceTimersByTimeAsync(150);
    expect(isMarked.value).toBe(true);
    outdated.value = false;
    expect(isMarked.value).toBe(false);
    outdated.value = true;
    issues.value = [{}];
    expect(isMarked.value).toBe(true);
  });
});
