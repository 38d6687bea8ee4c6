import type { Running } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import type { Sheet, SheetBlock, SheetStand, SheetStep } from './sheet.js';
import { depthText, offText, overStep } from './words.js';

const offOf = (off: readonly [number, number] | null, decimals = 3) =>
  offText({ off } as unknown as SheetStand, { decimals } as SheetBlock);

describe('how far the spindle may be off', () => {
  it('is that of the axis that is off more, with one digit more than the readout', () => {
    expect(offOf([0.01, 0.0254])).toBe('0.0254');
    expect(offOf([0.03, 0.0254])).toBe('0.0300');
    expect(offOf([0.0004, 0.0002], 4)).toBe('0.00040');
    expect(offOf(null)).toBe('-');
  });

  it('has no decimals from 100 on', () => {
    expect(offOf([99.99, 0])).toBe('99.9900');
    expect(offOf([0, 100])).toBe('100');
    expect(offOf([104.6, 0])).toBe('105');
  });
});

const RUNNING = {
  tool: 'D1',
  kind: 'drill',
  toolMaterial: 'HSS',
  spindle: [700, 900],
  set: [710, 900],
  feed: [70, 140],
  feedUnit: 'mm/min',
} as unknown as Running;

const step = (over: Partial<SheetStep>): SheetStep =>
  ({ cut: 'a', running: RUNNING, before: [], stands: [], minutes: null, ...over }) as unknown as SheetStep;

describe('what stands over a step', () => {
  const timed = (minutes: readonly [number, number]) => overStep([step({ minutes })], 0)[0];

  it('is its tool with speed, feed and time: in seconds, never under one, up to 2 minutes', () => {
    expect(overStep([step({})], 0)).toEqual([
      'D1 (HSS drill); 710 to 900 turns/min; feed 70.0 to 140 mm/min',
    ]);
    // 0.5 min are 30 s, 1.99 are 119.4 s, which are not over before 120.
    expect(timed([0.5, 1.99])).toMatch(/; 30 to 120 s a step$/);
    expect(timed([0.001, 0.002])).toMatch(/; 1 s a step$/);
    expect(timed([0.21, 0.21])).toMatch(/; 13 s a step$/);
    expect(timed([1.5, 2])).toMatch(/; 1\.50 to 2\.00 min a step$/);
  });

  it('says the tool again only where it is another one, and what to do first under it', () => {
    const other = { ...RUNNING, tool: 'D2' } as Running;
    const steps = [step({}), step({ before: ['Clean.'] }), step({ running: other }), step({ running: null })];
    expect(steps.map((_, k) => overStep(steps, k).map((line) => line.slice(0, 6)))).toEqual([
      ['D1 (HS'],
      ['Clean.'],
      ['D2 (HS'],
      ['No too'],
    ]);
  });

  it('warns of arcs once a cut, at its first step that has one', () => {
    const arc = { center: [0, 0], sense: 'clockwise' };
    const stands = [{ arc: null }, { arc }] as unknown as SheetStep['stands'];
    const straight = [{ arc: null }] as unknown as SheetStep['stands'];
    const steps = [
      step({ stands: straight }),
      step({ stands }),
      step({ stands }),
      step({ cut: 'b', stands }),
    ];
    const warned = steps.map((_, k) => overStep(steps, k).some((line) => line.startsWith('Arcs: ')));
    expect(warned).toEqual([false, true, false, true]);
  });
});

describe('how deep a step goes', () => {
  const deep = (over: Partial<SheetStep>, up: 'top' | 'bottom') =>
    depthText(
      step({ through: false, depth: 4, from: 'top', ...over }),
      { up } as SheetBlock,
      { units: 'mm' } as Sheet,
    );

  it('is through, or a length; from below where the cut starts from the face that lies down', () => {
    expect(deep({ through: true }, 'top')).toBe('through');
    expect(deep({}, 'top')).toBe('4.000');
    expect(deep({}, 'bottom')).toBe('4.000 from below');
    expect(deep({ from: 'bottom' }, 'bottom')).toBe('4.000');
    expect(deep({ from: 'bottom' }, 'top')).toBe('4.000 from below');
  });
});
