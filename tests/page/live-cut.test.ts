/// <reference path="../../packages/previewer/page/src/vite.d.ts" />
import { examine, parseJob } from '@edgebite/core';
import type { Signal } from '@preact/signals';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { endText, live, setWeb } from '../../packages/previewer/page/src/state/live.js';
import { rested } from '../../packages/previewer/page/src/state/rested.js';
import { chosenCut, issues, job, shown } from '../../packages/previewer/page/src/state/store.js';
import { sketchOf } from '../../packages/previewer/page/src/worker/sketch.js';

/* The cut that is being looked at, between the edges of its part and other cuts, without a worker. */

vi.mock('../../packages/previewer/page/src/state/store.js', async () => {
  const { signal } = await import('@preact/signals');
  const held = signal<unknown>(null);
  return {
    job: held,
    shown: signal(null),
    worked: signal(new Map()),
    issues: signal([]),
    chosenCut: signal(null),
    readoutStep: () => 0.01,
    change: (value: unknown) => {
      held.value = value;
    },
    MOVE: 'move ',
  };
});
vi.mock('../../packages/previewer/page/src/state/rested.js', async () => {
  const { signal } = await import('@preact/signals');
  return { rested: signal(null) };
});

const put = (one: unknown, value: unknown): void => {
  (one as Signal<unknown>).value = value;
};

/** A plate 80 by 40 and 10 thick with two bores: a of 8 at (20, 12), b of 6 at (30, 12). */
function open(a: object, b: object, part: object = {}): void {
  const written = {
    edgebite: 1,
    units: 'mm',
    part: { outline: { rectangle: [80, 40] }, thickness: 10, ...part },
    cuts: [
      { id: 'a', kind: 'bore', center: [20, 12], diameter: 8, ...a },
      { id: 'b', kind: 'bore', center: [30, 12], diameter: 6, ...b },
    ],
  };
  const report = examine(parseJob(written));
  put(job, written);
  put(rested, report);
  put(shown, { summary: report, sketch: sketchOf(report), issues: null });
  put(issues, []);
  put(chosenCut, 'a');
}

beforeEach(() => {
  for (const one of [job, rested, shown, chosenCut]) put(one, null);
});

const web = () => [live.value?.web?.source, live.value?.web?.size];

describe('the web of the cut that is being looked at', () => {
  it('is that to another cut only where the two take metal at one height', () => {
    // By hand: from a to the front 12 - 4 = 8; to b, 10 off, 10 - 4 - 3 = 3.
    open({}, {});
    expect(web()).toEqual(['cut:b', 3]);
    // From the top down to 6, and from the bottom up to 4; up to 6; up to 7.
    open({ depth: 4 }, { depth: 4, from: 'bottom' });
    expect(web()).toEqual(['outline:0', 8]);
    open({ depth: 4 }, { depth: 6, from: 'bottom' });
    expect(web()).toEqual(['outline:0', 8]);
    open({ depth: 4 }, { depth: 7, from: 'bottom' });
    expect(web()).toEqual(['cut:b', 3]);
    open({ depth: 4 }, { depth: 1 });
    expect(web()).toEqual(['cut:b', 3]);
    open({ depth: 4, from: 'bottom' }, { depth: 4 });
    expect(web()).toEqual(['outline:0', 8]);
    open({ depth: 4, from: 'bottom' }, {});
    expect(web()).toEqual(['cut:b', 3]);
  });

  it('comes to the size that is asked for, straight away from what is next to it', () => {
    open({}, {});
    setWeb(5);
    expect((job.value as { cuts: object[] }).cuts[0]).toMatchObject({ center: [18, 12] });
    open({ depth: 4 }, { depth: 4, from: 'bottom' });
    setWeb(6.5);
    expect((job.value as { cuts: object[] }).cuts[0]).toMatchObject({ center: [20, 10.5] });
  });

  it('is not told of a job with faults, of another part, or of no cut', () => {
    open({}, {});
    put(issues, [{ path: '/units', message: 'is amiss' }]);
    expect(live.value).toBeNull();
    put(issues, []);
    expect(live.value).not.toBeNull();
    put(job, { ...(job.value as object), part: { outline: { rectangle: [80, 40] }, thickness: 10 } });
    expect(live.value).toBeNull();
    open({}, {});
    put(chosenCut, 'c');
    expect(live.value).toBeNull();
  });
});

it('faces are called by their sides, unless the job has a name for them', () => {
  open({}, {});
  // A rectangle runs counter-clockwise from its lower left corner.
  expect([0, 1, 2, 3].map((k) => endText(`outline:${k}`))).toEqual([
    'the front',
    'the right end',
    'the back',
    'the left end',
  ]);
  expect(endText('cut:b')).toBe('cut b');
});
