import { examine, pairsFor, parseJob, pinFault } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

const DOWN = { dx: 0, dy: -1 };

/** A seat of a radius that goes on by so much to both sides of straight down. */
const seat = (radius: number, half: number) => ({
  radius,
  spans: [{ from: -Math.PI / 2 - half, to: -Math.PI / 2 + half }],
});

describe('pins in a seat', () => {
  it.each([
    ['one that goes in with room', 10, 1, 1.2, null],
    // 10 percent under size the seat is 18 across.
    ['one as wide as the seat is under size', 18, 1, 1.2, 'too large'],
    ['one that is hardly narrower', 17.9, 1, 1.2, null],
    ['two that do not go in side by side', 9.1, 2, 1.2, 'too large'],
    // By hand: 4 / (9 - 4) is the sine of 0.927.
    ['two that touch under the horns', 8, 2, 0.94, null],
    ['two that touch above them', 8, 2, 0.92, 'touches a horn'],
    // 1 / cos(phi) = 1.02 where sin(phi) = 0.1971: 2 x 10 x 0.1971 / 1.1971 = 3.29.
    ['two that are thin', 3.28, 2, 1.2, 'too small'],
    ['two that are just not thin', 3.3, 2, 1.2, null],
  ] as const)('%s: %f, %d', (_, pin, pins, half, wanted) => {
    expect(pinFault(seat(10, half), DOWN, pin, pins)).toBe(wanted);
  });

  it('near the end of the arc touch a horn', () => {
    // 4.9 degrees from the end, and 5.1.
    const near = (degrees: number) => {
      const angle = -Math.PI / 2 + 0.5 - (degrees * Math.PI) / 180;
      return pinFault(seat(10, 0.5), { dx: Math.cos(angle), dy: Math.sin(angle) }, 5, 1);
    };
    expect([near(4.9), near(5.1)]).toEqual(['touches a horn', null]);
  });

  it('beside the arc are off it', () => {
    expect(pinFault(seat(10, 0.5), { dx: 1, dy: 0 }, 5, 1)).toBe('off the arc');
    expect(pairsFor(seat(10, 0.5), { dx: 1, dy: 0 })).toBeNull();
  });

  it('side by side serve in the sizes told, and in no other', () => {
    for (const half of [0.4, 0.8, 1.3, 1.57]) {
      const [least, most] = pairsFor(seat(12, half), DOWN) as readonly [number, number];
      const fault = (pin: number) => pinFault(seat(12, half), DOWN, pin, 2);
      expect(fault(least * 1.001)).toBeNull();
      expect(fault(most * 0.999)).toBeNull();
      expect(fault(least * 0.999)).toBe('too small');
      expect(fault(most * 1.001)).toMatch(/too large|touches a horn/);
    }
    expect(pairsFor(seat(12, 0.1), DOWN)).toBeNull();
  });

  it('of a job that do not serve are told with a sentence of their own', () => {
    const { checks } = examine(
      parseJob({
        edgebite: 1,
        units: 'mm',
        part: { outline: { rectangle: [80, 40] }, thickness: 20 },
        gauges: { pins: [2, 9, 11.2, 12.5, 25] },
        cuts: [{ id: 'seat', kind: 'bore', center: [40, 46], diameter: 26 }],
      }),
    );
    expect(checks[0]?.refused.map(({ words }) => words)).toEqual([
      'Two pins of 2.000 mm side by side are too small: they tell no more than one pin does.',
      'Two pins of 11.200 mm side by side touch the horns once the bore is under size: burrs and broken edges falsify the reading.',
      'Two pins of 12.500 mm side by side are too large: once the bore is under size, they would lie on its horns or not go in.',
      'A pin of 25.000 mm is too large: once the bore is under size, it would lie on its horns or not go in.',
      'Two pins of 25.000 mm side by side are too large: once the bore is under size, they would lie on its horns or not go in.',
    ]);
  });
});
