import { describe, expect, it } from 'vitest';
import type { CutDocument } from '../../outside/machine/sim/job.js';
import { plate, told } from './told.js';

describe('the time of opening out with an end mill', () => {
  it('is that of once round for each pass, at the feed that the job gives', () => {
    // A hole of radius 5 is opened out to radius 10 by 2.5: passes of diameter 15 and 20. A mill of 8 has its centre on
    // circles of 7 and 12: it goes pi 7 and pi 12, at 0.1 times 1000 in a minute.
    const hole: CutDocument = { id: 'hole', kind: 'bore', center: [40, 15], diameter: 10 };
    const seat: CutDocument = {
      id: 'seat',
      kind: 'bore',
      center: [40, 15],
      diameter: 20,
      passes: { kind: 'open out', bite: 2.5, smallest: 8, feed: { perTurn: 0.1, rpm: 1000 } },
    };
    const tools = [
      { id: 'mill', kind: 'end mill', toolMaterial: 'HSS', diameter: 8, teeth: 2, cuts: ['seat'] },
    ];
    const report = told(plate([hole, seat], { tools }));
    const minutes = report.steps
      .filter(({ cut }) => cut === 'seat')
      .map((step) => (step as unknown as { minutes: [number, number] | null }).minutes);
    expect(minutes).toHaveLength(2);
    for (const [k, circle] of [7, 12].entries()) {
      const [least, most] = minutes[k] as [number, number];
      expect(least).toBeCloseTo((Math.PI * circle) / 100, 9);
      expect(most).toBeCloseTo((Math.PI * circle) / 100, 9);
    }
  });
});
