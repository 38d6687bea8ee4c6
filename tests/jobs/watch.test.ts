import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  examine,
  outlineRegion,
  parseAim,
  parseJob,
  propose,
  rangeOf,
  rectangle,
  type Watch,
  websOf,
} from '@edgebite/core';
import { describe, expect, it } from 'vitest';

const JOB = parseJob(readFileSync(join(import.meta.dirname, '../../examples/saddle-block.json'), 'utf8'));
const CUT = JOB.cuts[0] as (typeof JOB.cuts)[number];
const QUERY = { cut: CUT.id, along: 'diameter', from: CUT.diameter * 0.98, to: CUT.diameter * 1.02 } as const;
const PLATE = outlineRegion(rectangle(40, 0.5));
const AIM = parseAim({
  edgebite: 1,
  units: 'mm',
  blank: { rectangle: [60, 30] },
  finished: { rectangle: [60, 30], holes: [{ circle: 8, at: [20, 15] }] },
  thickness: 10,
  material: 'mild steel',
  drawer: [{ id: 'drill', kind: 'drill', toolMaterial: 'HSS', diameter: 8, reach: 60 }],
});

/** Every call that may take long, watched. */
const CALLS: readonly (readonly [string, (watch?: Watch) => unknown])[] = [
  ['examine', (watch) => examine(JOB, watch)],
  ['rangeOf', (watch) => rangeOf(JOB, QUERY, watch)],
  ['websOf', (watch) => websOf(PLATE, 1, watch)],
  ['propose', (watch) => propose(AIM, watch)],
];

describe.each(CALLS)('%s', (_, call) => {
  it('tells how much is done, which never falls, from nothing to all', () => {
    const shares: number[] = [];
    const watched = call({ progress: (share) => shares.push(share) });
    expect(shares.length).toBeGreaterThan(3);
    expect([shares[0], shares.at(-1)]).toEqual([0, 1]);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    // And comes to the same.
    expect(JSON.stringify(watched)).toBe(JSON.stringify(call()));
  });

  it('ends with the reason of its signal, at once or on the way', () => {
    expect(() => call({ signal: AbortSignal.abort(new Error('not asked for any more')) })).toThrow(
      'not asked for any more',
    );
    const controller = new AbortController();
    let told = 0;
    const progress = (): void => {
      if (++told === 2) controller.abort();
    };
    expect(() => call({ signal: controller.signal, progress })).toThrow(DOMException);
    expect(told).toBe(2);
  });
});
