/// <reference path="../../packages/previewer/page/src/vite.d.ts" />
import { examine, parseJob, type Report } from '@edgebite/core';
import type { Signal } from '@preact/signals';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { biteCenter, type Face, faceAt, faces } from '../../packages/previewer/page/src/state/biting.js';
import { rested } from '../../packages/previewer/page/src/state/rested.js';

/* Picking a face for a bite, without a worker: the report is put in place by hand. */

vi.mock('../../packages/previewer/page/src/state/store.js', async () => {
  const { signal } = await import('@preact/signals');
  return { job: signal(null) };
});
vi.mock('../../packages/previewer/page/src/state/rested.js', async () => {
  const { signal } = await import('@preact/signals');
  return { rested: signal(null) };
});

const whole = rested as Signal<Report | null>;

const open = (wkt: string): void => {
  const part = { outline: { wkt }, thickness: 10 };
  const cut = { id: 'a', kind: 'bore', center: [20, 20], diameter: 6 };
  whole.value = examine(parseJob({ edgebite: 1, units: 'mm', part, cuts: [cut] }));
};

beforeEach(() => {
  whole.value = null;
});

describe('the faces that can be bitten into', () => {
  it('are those of the part, each as long as it is', () => {
    expect(faces.value).toEqual([]);
    // The slope goes 40 along and 30 up: 3, 4, 5.
    open('POLYGON((0 0,80 0,80 30,40 60,0 60,0 0))');
    expect(faces.value.map(({ source, length }) => [source, length])).toEqual([
      ['outline:0', 80],
      ['outline:1', 30],
      ['outline:2', 50],
      ['outline:3', 40],
      ['outline:4', 60],
    ]);
  });

  it('are the 64 longest, in their order', () => {
    // A comb of 20 teeth: 40 edges of 30 and 29 up and down, 40 of 1 between, and 3 round the back.
    const teeth = Array.from({ length: 20 }, (_, k) => {
      const x = 40 - 2 * k;
      return `${x} 60,${x - 1} 60,${x - 1} 31,${x - 2} 31`;
    });
    open(`POLYGON((0 0,40 0,40 31,${teeth.join(',')},0 0))`);
    expect(faces.value).toHaveLength(64);
    // 20 teeth of 29 up, 20 down, three at the back, the rest of the places by their order among those of 1.
    expect(faces.value.filter(({ length }) => length > 1)).toHaveLength(43);
  });

  it('are picked where one lies near enough, at the place along it straight across', () => {
    open('POLYGON((0 0,80 0,80 30,40 60,0 60,0 0))');
    // Half along the slope, 2 out of the metal: (60, 45) and 2 times (0.6, 0.8).
    expect(faceAt([61.2, 46.6], 1.9)).toBeNull();
    expect(faceAt([61.2, 46.6], 2.1)?.source).toBe('outline:2');
    expect(faceAt([61.2, 46.6], 2.1)?.along).toBeCloseTo(25, 9);
    // Past the end of the slope at (40, 60) it is picked at its end; straight across lies the upper face.
    expect(faceAt([39, 63], 9)).toMatchObject({ source: 'outline:3', along: 1 });
    // Left of the part, a third of the way down the left face, which runs down.
    expect(faceAt([-5, 40], 9)).toMatchObject({ source: 'outline:4', along: 20 });
  });

  it('have the centre of a bite in front of them by what the circle is not deep', () => {
    open('POLYGON((0 0,80 0,80 30,40 60,0 60,0 0))');
    // Radius 8, 3 deep: 5 out of the metal from (60, 45) along (0.6, 0.8).
    const [x, y] = biteCenter(faces.value[2] as Face, 25, 8, 3);
    expect(x).toBeCloseTo(63, 9);
    expect(y).toBeCloseTo(49, 9);
  });
});
