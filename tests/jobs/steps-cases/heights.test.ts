import { describe, expect, it } from 'vitest';
import type { CutDocument } from '../../outside/machine/sim/job.js';
import { findingsOf, plate, setup, stepOf, told } from './told.js';

describe('a tool that meets other metal on its way down', () => {
  it('is not backed off into a wall that stands above', () => {
    // Lying on its back the plate gets a pocket of radius 18, 6 deep. From above a circle of radius 10 about the same
    // centre, 6 inside of the front edge, has nothing beside it below a depth of 6; above, a wall round more than half.
    const pocket: CutDocument = {
      id: 'pocket',
      kind: 'bore',
      center: [40, 6],
      diameter: 36,
      depth: 6,
      from: 'bottom',
    };
    const seat: CutDocument = { id: 'seat', kind: 'bore', center: [40, 6], diameter: 20 };
    const setups = [setup('over', ['pocket'], { flip: 'y' }), setup('up', ['seat'])];
    const { backOff, load } = stepOf(told(plate([pocket, seat], { setups })), 1);
    expect(backOff.by).toBeNull();
    expect(backOff.why).toMatch(/./);
    // In metal from the top to 6, in none below: there it comes out.
    expect(load?.breakThrough).toMatchObject({ from: 0, to: 6 });
    expect(load?.heights.filter(({ share }) => share === 0)).toMatchObject([{ from: 6, to: 12 }]);
    // Its circle is cut off by the edge where sin a = -0.6: in metal over pi + 2 asin 0.6.
    expect(load?.entry?.share).toBeCloseTo((Math.PI + 2 * Math.asin(0.6)) / (2 * Math.PI), 9);
  });

  it('is not told to start in no metal and left at that, where it has 680 to take below', () => {
    // A pocket of radius 15 takes the upper 6; the bore of radius 6 within it the lower 6: pi 36 6 = 678.6.
    const pocket: CutDocument = { id: 'pocket', kind: 'bore', center: [40, 15], diameter: 28, depth: 6 };
    const seat: CutDocument = { id: 'seat', kind: 'bore', center: [40, 15], diameter: 12 };
    const report = told(plate([pocket, seat]));
    const step = stepOf(report, 1);
    expect(step.starts).toBe('air');
    expect(step.volume).toBeCloseTo(Math.PI * 36 * 6, 9);
    expect(step.load?.entry).toMatchObject({ from: 6, to: 12, share: 1, strikes: 0 });
    expect(step.load?.breakThrough).toMatchObject({ from: 6, to: 12 });
    for (const { message } of findingsOf(report, 1)) expect(message).not.toMatch(/no metal/);
  });
});
