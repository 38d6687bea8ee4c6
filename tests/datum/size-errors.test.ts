import { describe, expect, it } from 'vitest';
import { bore, finder, reportOn, setup } from './setup-jobs.js';

/*
 * Two holes that are zeroed from opposite faces: what lies between those faces is off by the general tolerance of each
 * of its sizes. By hand, with ISO 2768-1 m: 80 is off by 0.3, 25 by 0.2.
 */

const part = { outline: { rectangle: [80, 25] }, thickness: 10, tolerances: 'm' };

/** One setup from the left and the front, one from the right and the back. */
const setups = [
  setup(['a'], { id: 'one' }),
  setup(['b'], {
    id: 'other',
    zero: { x: [finder('right')], y: [finder('back')] },
  }),
];

/** Off along each axis: both tips 0.02, both readings half a step of 0.005, and the size. */
const off = (size: number) => 2 * 0.02 + 2 * 0.0025 + size;
const squares = (size: number) => Math.sqrt(2 * 0.02 ** 2 + 2 * 0.0025 ** 2 + size ** 2);

describe('holes zeroed from opposite faces', () => {
  it.each([
    { along: 'x', b: [49, 8] as const, ahead: 0.3, aside: 0.2 },
    { along: 'y', b: [40, 17] as const, ahead: 0.2, aside: 0.3 },
  ])('are apart by the tolerance of the size along $along', ({ b, ahead, aside }) => {
    // Radius 4 each, 9 apart: a web of 1.
    const { webs } = reportOn([bore('a', [40, 8], 8), bore('b', b, 8)], setups, { part });
    const web = webs.find(({ between }) => between.every((name) => name.startsWith('cut:')));
    expect(web?.thickness).toBeCloseTo(1, 12);
    const [low, high] = web?.interval?.worst ?? [];
    expect(low).toBeCloseTo(1 - off(ahead), 9);
    // Furthest apart they are off to the side as well (Pythagoras).
    expect(high).toBeCloseTo(Math.hypot(9 + off(ahead), off(aside)) - 8, 9);
    const [least, most] = web?.interval?.rss ?? [];
    expect(least).toBeCloseTo(1 - squares(ahead), 9);
    expect(most).toBeCloseTo(1 + squares(ahead), 9);
  });
});
