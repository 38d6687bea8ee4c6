import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it, vi } from 'vitest';
import {
  cutsLeft,
  type Lay,
  LIES,
  lastLength,
  withSetup,
  X_FROM,
  Y_FROM,
} from '../../packages/previewer/page/src/asked/laying.js';

/* Setups as one entry, without the page's store. */

vi.mock('../../packages/previewer/page/src/state/store.js', async () => {
  const { signal } = await import('@preact/signals');
  return {
    job: signal(null),
    chosenCut: signal(null),
    shown: signal(null),
    change: () => {},
    seal: () => {},
  };
});

const bore = (id: string, x: number, y: number) => ({ id, kind: 'bore', center: [x, y], diameter: 8 });

const job = {
  edgebite: 1,
  units: 'mm',
  part: { outline: { rectangle: [90, 40] }, thickness: 12 },
  cuts: [
    bore('pin', 60, 12),
    { ...bore('seat-rough', 20, 20), kind: 'annular', wall: 2 },
    bore('seat', 20, 20),
  ],
};

const lay: Lay = {
  lie: 'as drawn',
  x: 'stop and block at the left',
  y: 'front',
  tip: 6,
  block: 25,
  cuts: ['pin'],
};

/** Where the readout stands for the pin. */
const pinAt = (how: Partial<Lay>): readonly (readonly number[] | undefined)[] =>
  examine(parseJob(withSetup(job, { ...lay, ...how })))
    .steps.filter(({ cut }) => cut === 'pin')
    .map(({ stands }) => stands[0]?.readout);

describe('a setup as one entry', () => {
  // The pin lies 60 from the left end and 12 from the front of a part of 90 by 40.
  it.each<[string, Partial<Lay>, readonly number[]]>([
    ['a block of 25 on a stop at the left, whose face is 0: 25 + 60', {}, [85, 12]],
    ['the part itself touched at the left', { x: 'the left face itself' }, [60, 12]],
    ['at the right: 90 - 60 to the left of it', { x: 'the right face itself' }, [-30, 12]],
    ['a stop at the right: the block and 30 to the left', { x: 'stop and block at the right' }, [-55, 12]],
    ['the back: 40 - 12 before it', { y: 'back' }, [85, -28]],
    ['turned round: 30 from the left and 28 from the front', { lie: 'turned round' }, [55, 28]],
    // A quarter to the left takes the front to the right: 12 from the right, so 28 from the left; 60 up.
    ['a quarter to the left', { lie: 'a quarter turn to the left' }, [53, 60]],
    // And to the right the front to the left: 12 from the left; 30 up.
    ['a quarter to the right', { lie: 'a quarter turn to the right' }, [37, 30]],
    ['end for end: 30 from the left, 12 from the front', { lie: 'turned over, end for end' }, [55, 12]],
    ['front to back: 60 from the left, 28 from the front', { lie: 'turned over, front to back' }, [85, 28]],
  ])('%s', (_, how, readout) => {
    expect(pinAt(how)).toEqual([readout]);
  });

  it('is read by the library in every way in which it can be asked for', () => {
    for (const lie of LIES)
      for (const x of X_FROM)
        for (const y of Y_FROM) expect(pinAt({ lie, x, y }), `${lie}, ${x}, ${y}`).toHaveLength(1);
  });

  it('makes what no other makes yet, a ring with its bore', () => {
    expect(cutsLeft(job)).toEqual([
      { name: 'pin', ids: ['pin'] },
      { name: 'seat', ids: ['seat-rough', 'seat'] },
    ]);
    const laid = withSetup(job, lay);
    expect(cutsLeft(laid)).toEqual([{ name: 'seat', ids: ['seat-rough', 'seat'] }]);
    const both = withSetup(laid, { ...lay, lie: 'turned round', cuts: ['seat-rough', 'seat'] });
    expect(cutsLeft(both)).toEqual([]);
    expect(examine(parseJob(both)).setups.map(({ id }) => id)).toEqual(['setup-1', 'setup-2']);
  });

  it('suggests the tip and the block of the one before', () => {
    expect(lastLength(job, 'tip')).toBeNull();
    const laid = withSetup(job, { ...lay, tip: 4, block: 12.5 });
    expect([lastLength(laid, 'tip'), lastLength(laid, 'block')]).toEqual([4, 12.5]);
  });
});
