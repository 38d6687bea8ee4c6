import { area, disc, type Region, ring, subtract, union } from '@edgebite/core';
import { boxRegion } from '@edgebite/core/testing';
import { describe, expect, it } from 'vitest';

/*
 * Which loop lies in which, where there are so many that they are looked up in a tree. Areas of discs and of half discs in closed
 * form: Machinery's Handbook, 31st ed., "Areas and volumes".
 */

const RADIUS = 2;
const DISC = Math.PI * RADIUS * RADIUS;

/** Holes in rows and columns, 6 apart, the first one's centre at (6, 6). */
function holes(columns: number, rows: number, scale = 1): Region[] {
  return Array.from({ length: columns * rows }, (_, k) =>
    disc(
      { x: 6 * scale * (1 + (k % columns)), y: 6 * scale * (1 + Math.floor(k / columns)) },
      RADIUS * scale,
    ),
  );
}

describe('many loops', () => {
  it('are holes of the plate that they lie in', () => {
    const plate = boxRegion(0, 0, 100, 80);
    const [part, ...others] = subtract(plate, holes(15, 12));
    expect(others).toHaveLength(0);
    expect(part?.holes).toHaveLength(180);
    expect(area([part as Region[number]])).toBeCloseTo(8000 - 180 * DISC, 9);
  });

  it('are so with as many edges gone, since two were made twice, as have come, since one bites the side', () => {
    const plate = boxRegion(0, 0, 100, 80);
    const all = holes(15, 12);
    const bite = disc({ x: 50, y: 80 }, RADIUS);
    for (const cuts of [
      [...all, all[7] as Region, all[93] as Region, bite],
      [bite, all[7] as Region, all[93] as Region, ...all],
    ]) {
      const [part, ...others] = subtract(plate, cuts);
      expect(others).toHaveLength(0);
      expect(part?.holes).toHaveLength(180);
      expect(area([part as Region[number]])).toBeCloseTo(8000 - 180.5 * DISC, 9);
    }
  });

  it('are found where they are crowded in a corner', () => {
    const plate = boxRegion(0, 0, 1e4, 1e4);
    const [part] = subtract(plate, holes(20, 20, 0.01));
    expect(part?.holes).toHaveLength(400);
    expect(area([part as Region[number]])).toBeCloseTo(1e8 - 400 * DISC * 1e-4, 4);
  });

  it('lie in each other as deep as they are given', () => {
    const rings = Array.from({ length: 40 }, (_, k) => ring({ x: 0, y: 0 }, 2 * k + 2, 2 * k + 1));
    const alone = union(rings);
    expect(alone).toHaveLength(40);
    expect(alone.every((part) => part.holes.length === 1)).toBe(true);
    const sum = rings.reduce((all, _, k) => all + Math.PI * ((2 * k + 2) ** 2 - (2 * k + 1) ** 2), 0);
    expect(area(alone)).toBeCloseTo(sum, 8);
  });
});
