/// <reference path="../../packages/previewer/page/src/vite.d.ts" />
import { readFileSync } from 'node:fs';
import { examine, parseJob, type Report } from '@edgebite/core';
import type { Signal } from '@preact/signals';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { rested } from '../../packages/previewer/page/src/state/rested.js';
import { job } from '../../packages/previewer/page/src/state/store.js';
import {
  stepAt,
  stepCount,
  walk,
  walked,
  walkedReport,
} from '../../packages/previewer/page/src/state/walk.js';

/* The walk through the steps, without a worker: the job and its report are put in place by hand. */

vi.mock('../../packages/previewer/page/src/state/store.js', async () => {
  const { signal } = await import('@preact/signals');
  return { job: signal(null) };
});
vi.mock('../../packages/previewer/page/src/state/rested.js', async () => {
  const { signal } = await import('@preact/signals');
  return { rested: signal(null) };
});

const document = readFileSync(new URL('../../examples/saddle-block.json', import.meta.url), 'utf8');
const report = examine(parseJob(document));

const present = job as unknown as Signal<unknown>;
const whole = rested as Signal<Report | null>;

beforeEach(() => {
  present.value = null;
  whole.value = null;
});

function open(): void {
  present.value = JSON.parse(document);
  whole.value = report;
}

describe('the walk through the steps', () => {
  it('is nowhere before there is a report, and at the first step then', () => {
    expect([stepCount.value, stepAt.value, walked.value, walkedReport.value]).toEqual([0, 0, null, null]);
    open();
    // Five passes and rings of the one setup, four cuts of the other.
    expect([stepCount.value, stepAt.value]).toEqual([report.steps.length, 0]);
    expect(walked.value?.step.number).toBe(1);
    expect(walkedReport.value).toBe(report);
  });

  it('goes on and back by steps, and stops at both ends', () => {
    open();
    walk(1);
    expect([stepAt.value, walked.value?.step.number]).toEqual([1, 2]);
    walk(3);
    expect(stepAt.value).toBe(4);
    walk(-2);
    expect(stepAt.value).toBe(2);
    walk(-9);
    expect(stepAt.value).toBe(0);
    walk(99);
    expect(stepAt.value).toBe(stepCount.value - 1);
    walk(-1);
    expect(stepAt.value).toBe(stepCount.value - 2);
  });

  it('keeps its step while the job changes, and begins anew with another', () => {
    open();
    walk(2);
    whole.value = null;
    expect(stepAt.value).toBe(2);
    present.value = null;
    expect(stepAt.value).toBe(0);
  });
});
