import { type MeasureWay, readingOf, slopesOf } from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../tools/runs.js';
import { deepest, heightOver, pinsBelow, sampledArc, widthAt } from './sampled.js';

const top = { source: 'outline:2', at: { x: 0, y: 0 }, into: { dx: 0, dy: -1 } };
const bottom = { source: 'outline:0', at: { x: 0, y: -200 }, into: { dx: 0, dy: 1 } };

describe('the height over a chord', () => {
  // Machinery's Handbook, 31st ed., p. 79: chord 16, height 6, radius 8 1/3. p. 83: r = (c² + 4 h²) / 8 h.
  it.each([
    { chord: 16, height: 6, radius: 25 / 3 },
    { chord: 21, height: 6, radius: 12.1875 },
  ])('of $chord in a radius of $radius is $height, as printed', ({ chord, height, radius }) => {
    expect(readingOf({ kind: 'height', chord }, { center: { x: 0, y: 0 }, radius })).toBeCloseTo(height, 12);
  });
});

describe('an opening', () => {
  it('of a radius of 60 at a height of 8 is that of the handbook', () => {
    // Machinery's Handbook, 31st ed., p. 79: r 60, h 8, chord printed as 59.86, which is 59.8665 cut off.
    const way: MeasureWay = { kind: 'opening', face: top, under: 0 };
    const chord = readingOf(way, { center: { x: 0, y: 52 }, radius: 60 });
    expect(chord).toBeGreaterThan(59.86);
    expect(chord).toBeLessThan(59.87);
  });
});

const seat = fc.record({
  radius: fc.double({ min: 3, max: 80, noNaN: true }),
  /** How deep the seat goes, of its diameter. */
  share: fc.double({ min: 0.08, max: 0.85, noNaN: true }),
  pin: fc.double({ min: 0.1, max: 0.9, noNaN: true }),
});

describe('readings of a seat', () => {
  it('are those of its points, pins pushed in until they touch', () => {
    fc.assert(
      fc.property(seat, ({ radius, share, pin }) => {
        const depth = 2 * radius * share;
        const center = { x: 7, y: radius - depth };
        const half = Math.acos((radius - depth) / radius);
        const count = 2000;
        const arc = sampledArc(center, radius, -Math.PI / 2 - half, -Math.PI / 2 + half, count);
        const slack = radius * ((2 * half) / count) ** 2 + 1e-9;
        const circle = { center, radius };
        const close = (way: MeasureWay, sampled: number, by = 1) => {
          expect(Math.abs(readingOf(way, circle) - sampled)).toBeLessThanOrEqual(by * slack);
        };
        close({ kind: 'depth', face: top }, deepest(arc, 0));
        close({ kind: 'left', face: bottom }, 200 - deepest(arc, 0));
        // A side that runs nearly along the line is cut far off for the same error.
        close({ kind: 'opening', face: top, under: depth / 4 }, widthAt(arc, 0, depth / 4), 20);
        const chord = 2 * radius * Math.sin(Math.min(half, Math.PI / 2)) * 0.6;
        close({ kind: 'height', chord }, heightOver(arc, chord), 4);
        const one = 2 * radius * pin;
        const below = pinsBelow(arc, 0, center, one, 1);
        close({ kind: 'to pins', face: top, pin: one, pins: 1 }, below, 40);
        close({ kind: 'over pins', face: bottom, pin: one, pins: 1 }, 200 - below, 40);
        const sine = pin * Math.sin(Math.min(half, 1.2));
        const two = (2 * radius * sine) / (1 + sine);
        const both = pinsBelow(arc, 0, center, two, 2);
        close({ kind: 'to pins', face: top, pin: two, pins: 2 }, both, 40);
        close({ kind: 'over pins', face: bottom, pin: two, pins: 2 }, 200 - both, 40);
      }),
      { numRuns: runs(60) },
    );
  });

  it('change with radius and place as their slopes say', () => {
    const ways: MeasureWay[] = [
      { kind: 'depth', face: top },
      { kind: 'left', face: bottom },
      { kind: 'opening', face: top, under: 0 },
      { kind: 'opening', face: top, under: 2 },
      { kind: 'height', chord: 5 },
      { kind: 'to pins', face: top, pin: 4, pins: 1 },
      { kind: 'to pins', face: top, pin: 4, pins: 2 },
      { kind: 'pins out', face: top, pin: 4, pins: 1 },
      { kind: 'pins out', face: top, pin: 6, pins: 2 },
      { kind: 'over pins', face: bottom, pin: 4, pins: 1 },
      { kind: 'over pins', face: bottom, pin: 4, pins: 2 },
      { kind: 'wall', cut: 'b', center: { x: 40, y: 9 }, radius: 8 },
    ];
    const h = 1e-5;
    for (const way of ways) {
      for (const circle of [
        { center: { x: 1, y: 3 }, radius: 10 },
        { center: { x: -4, y: -2 }, radius: 7 },
      ]) {
        const { radius, place } = slopesOf(way, circle);
        const at = (dr: number, dx: number, dy: number) =>
          readingOf(way, {
            center: { x: circle.center.x + dx, y: circle.center.y + dy },
            radius: circle.radius + dr,
          });
        expect((at(h, 0, 0) - at(-h, 0, 0)) / (2 * h)).toBeCloseTo(radius, 6);
        expect((at(0, h, 0) - at(0, -h, 0)) / (2 * h)).toBeCloseTo(place.dx, 6);
        expect((at(0, 0, h) - at(0, 0, -h)) / (2 * h)).toBeCloseTo(place.dy, 6);
      }
    }
  });

  it('are no number where they cannot be taken', () => {
    const circle = { center: { x: 0, y: 0 }, radius: 5 };
    expect(readingOf({ kind: 'height', chord: 11 }, circle)).toBeNaN();
    expect(readingOf({ kind: 'to pins', face: top, pin: 11, pins: 1 }, circle)).toBeNaN();
    expect(readingOf({ kind: 'to pins', face: top, pin: 6, pins: 2 }, circle)).toBeNaN();
    expect(readingOf({ kind: 'opening', face: top, under: 7 }, circle)).toBeNaN();
  });
});
