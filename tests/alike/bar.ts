import type { CutDocument, JobDocument } from '@edgebite/core';

type SetupDocument = NonNullable<JobDocument['setups']>[number];

/** A seat bored in two steps: a ring, and a bore that finishes it. */
export const RING = {
  id: 'ring',
  kind: 'annular',
  center: [22.7, -2.3],
  diameter: 20,
  wall: 3,
  reach: 30,
} as const satisfies CutDocument;

export const SEAT = {
  id: 'seat',
  kind: 'bore',
  center: [22.7, -2.3],
  diameter: 21.5,
  passes: { kind: 'step in', bite: 0.4, finish: 0.1, approach: 85 },
  drawing: { radius: 0.05, place: 0.1 },
} as const satisfies CutDocument;

/** The bar put against a stop by its left end, its front on a jaw. */
export const AGAINST_STOP = {
  id: 'vice',
  stops: [{ id: 'stop', face: 'left' }],
  zero: {
    x: [
      { touch: 'stop', tip: 10, reads: 0, tolerance: 0.01 },
      { bears: 'left', on: 'stop', block: 20, tolerance: 0.01 },
    ],
    y: [{ touch: 'front', tip: 10, reads: 0, tolerance: 0.01 }],
    z: [{ touch: 'top', feeler: 0.1, reads: 0 }],
  },
  cuts: ['ring', 'seat'],
} as const satisfies SetupDocument;

/** A bar with one seat in its front, ready to be repeated. */
export const BAR = {
  edgebite: 1,
  units: 'mm',
  part: { outline: { rectangle: [160, 32] }, thickness: 12, material: 'mild steel' },
  gauges: { pins: [8, 16], feet: [10] },
  tools: [
    { id: 'cutter', kind: 'annular cutter', toolMaterial: 'HSS', teeth: 4, cuts: ['ring'] },
    { id: 'head', kind: 'boring head', toolMaterial: 'HSS', maxSpeed: 800, cuts: ['seat'] },
  ],
  setups: [AGAINST_STOP],
  cuts: [RING, SEAT],
} as const satisfies JobDocument;

/** The same job with ids of cuts in a list. */
export function withNames(job: JobDocument, ring: readonly string[], seat: readonly string[]): JobDocument {
  const [cutter, head] = BAR.tools;
  return {
    ...job,
    tools: [
      { ...cutter, cuts: [...ring] },
      { ...head, cuts: [...seat] },
    ],
    setups: (job.setups ?? []).map((setup) => ({ ...setup, cuts: [...ring, ...seat] })),
  };
}
