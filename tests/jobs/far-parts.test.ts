import { describe, expect, it } from 'vitest';
import { issuesOf } from './issues-of.js';

/** A disc of a diameter whose farthest point lies so far out in a direction, with a hole in its middle. */
const disc = ([x, y]: readonly [number, number], diameter: number, far: number) => {
  const at = [x * (far - diameter / 2), y * (far - diameter / 2)];
  return {
    edgebite: 1,
    units: 'mm',
    part: { outline: { circle: diameter, at }, thickness: 10 },
    cuts: [{ id: 'a', kind: 'bore', center: at, diameter: diameter / 4 }],
  };
};

const messageOf = (job: unknown): string => issuesOf(job)[0]?.message ?? '';

describe('a part that lies far out', () => {
  it.each([
    ['right', [1, 0]],
    ['left', [-1, 0]],
    ['back', [0, 1]],
    ['front', [0, -1]],
  ] as const)('to the %s is refused, and how far is said', (_name, way) => {
    // Coordinates go up to 10,000,000; a part lies at most 1,000,000 times its extent from zero.
    expect(messageOf(disc(way, 100, 10_000_001))).toBe(
      'goes out to 10000001 from zero; coordinates go up to 10000000',
    );
    expect(messageOf(disc(way, 2, 2_000_001))).toMatch(/^is 2 across but lies 2000001 from zero/);
    expect(issuesOf(disc(way, 2, 2_000_000))).toEqual([]);
  });
});
