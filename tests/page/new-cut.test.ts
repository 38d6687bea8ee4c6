/// <reference path="../../packages/previewer/page/src/vite.d.ts" />
import type { Signal } from '@preact/signals';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { firstCut } from '../../packages/previewer/page/src/form/new-cut.js';
import { shown } from '../../packages/previewer/page/src/state/store.js';

/* The first hole put in a part by a button, without a worker: the box of the part is put in place by hand. */

vi.mock('../../packages/previewer/page/src/state/store.js', async () => {
  const { signal } = await import('@preact/signals');
  return { shown: signal(null) };
});

const box = shown as unknown as Signal<{ readonly sketch: { readonly box: readonly number[] } } | null>;

beforeEach(() => {
  box.value = null;
});

describe('a new hole', () => {
  it('stands in the middle of the part, a quarter of its shorter side wide', () => {
    box.value = { sketch: { box: [0, 0, 80, 40] } };
    expect(firstCut({ cuts: [] })).toEqual({ id: 'cut-1', kind: 'bore', center: [40, 20], diameter: 10 });
    // Wherever zero lies: from -60 to -20 and from 30 to 150.
    box.value = { sketch: { box: [-60, 30, -20, 150] } };
    expect(firstCut({ cuts: [] })).toMatchObject({ center: [-40, 90], diameter: 10 });
  });

  it('has round numbers for the size of the part, and never no width', () => {
    // A twentieth of 2.6 is 0.13, so steps of 0.1: half of 3.1 and of 2.6, and a quarter of 2.6 is 0.65.
    box.value = { sketch: { box: [0, 0, 3.1, 2.6] } };
    const { center, diameter } = firstCut(null) as { center: readonly number[]; diameter: number };
    for (const value of [...center, diameter]) {
      expect(Math.abs(value * 10 - Math.round(value * 10))).toBeLessThan(1e-9);
    }
    expect(Math.abs((center[0] as number) - 1.55)).toBeLessThanOrEqual(0.05 + 1e-9);
    expect(center[1]).toBeCloseTo(1.3, 9);
    expect(Math.abs(diameter - 0.65)).toBeLessThanOrEqual(0.05 + 1e-9);
  });

  it('takes a name that no cut has', () => {
    const cuts = ['cut-1', 'cut-3'].map((id) => ({ id }));
    // The third by number; that one is taken.
    expect(firstCut({ cuts }).id).toBe('cut-4');
    expect(firstCut({ cuts: [{ id: 'bite' }] }).id).toBe('cut-2');
  });
});
