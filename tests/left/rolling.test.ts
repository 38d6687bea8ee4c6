import {
  contains,
  edgeLength,
  loopsOf,
  nearestOnEdge,
  type Point,
  pointAlong,
  type Region,
} from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { interiorAngle } from '../../packages/core/src/left/interior-angle.js';
import { openParts, type Rolling, rollingOn } from '../../packages/core/src/left/rolling.js';
import {
  alongWall,
  nearestOnWall,
  restsOn,
  touchPoint,
  type Wall,
  type Walls,
  wallsOf,
} from '../../packages/core/src/left/walls.js';
import { runs } from '../tools/runs.js';
import { hole, loopThrough, section } from './section-builder.js';
import { ell, withHole } from './web-forms.js';

/* How discs of metal lie against walls. What they are held against is elementary: lengths, distances, angles. */

/** An L with a hole, and hung beside it a disc that lacks a quarter, with the same shape as a hole in a plate. */
const pieces: Region = [
  ...withHole(ell, hole(12, 9, 4)),
  ...section(
    loopThrough([
      [120, 0],
      [100, -20, [100, 0], true],
      [100, 0],
    ]),
  ),
  ...section(
    loopThrough([
      [130, -40],
      [200, -40],
      [200, 40],
      [130, 40],
    ]),
    loopThrough([
      [180, 0, [160, 0], false],
      [160, 0],
      [160, -20],
    ]),
  ),
  // A hole whose two arcs close in on a slit at (310, 0): round that tip the metal turns by half a turn.
  ...section(
    loopThrough([
      [280, -30],
      [330, -30],
      [330, 30],
      [280, 30],
    ]),
    loopThrough([
      [310, 0, [304, 0], true],
      [300, -10, [300, 0], false],
      [304, -6],
    ]),
  ),
];

const walls = wallsOf(pieces) as Walls;
const all = walls.list.map((wall, k) => [`${k}, ${wall.shape}`, wall] as const);
const away = (a: Point, b: Point) => Math.hypot(b.x - a.x, b.y - a.y);

it('the walls are of every shape, on either side of the metal', () => {
  const kinds = walls.list.map((wall) => (wall.shape === 'arc' ? `arc ${wall.side}` : wall.shape));
  expect(new Set(kinds)).toEqual(new Set(['flat', 'corner', 'arc 1', 'arc -1']));
});

describe('a disc that rolls along wall', () => {
  describe.each(all)('%s', (_, wall) => {
    const radius = 3;
    const roll = () => rollingOn(wall, radius) as Rolling;
    const next = walls.list[wall.after] as Wall;
    const shares = [0, 0.01, 0.2, 0.5, 0.77, 0.99, 1];

    it('goes as far as the wall is long, or as the corner turns', () => {
      const full =
        wall.shape === 'corner' ? interiorAngle(next.edge, wall.edge) - Math.PI : edgeLength(wall.edge);
      expect(roll().length).toBeCloseTo(full, 12);
    });

    it('touches it where it should, on the side of the metal', () => {
      const { length, centerAt } = roll();
      for (const share of shares) {
        const center = centerAt(share * length);
        const foot = wall.shape === 'corner' ? wall.edge.b : pointAlong(wall.edge, share);
        expect(away(touchPoint(wall, center), foot)).toBeLessThan(1e-12);
        expect(away(center, foot)).toBeCloseTo(radius, 12);
        expect(nearestOnWall(wall, center).distance).toBeCloseTo(radius, 12);
        const near = { x: foot.x + (center.x - foot.x) * 1e-3, y: foot.y + (center.y - foot.y) * 1e-3 };
        if (share > 0 && share < 1) expect(contains(pieces, near)).toBe('inside');
      }
    });

    it('is found again as far along, and a little before the start as less than none', () => {
      const { length, centerAt } = roll();
      for (const share of shares) {
        expect(alongWall(wall, centerAt(share * length))).toBeCloseTo(share * length, 9);
      }
      expect(alongWall(wall, centerAt(-1e-8))).toBeCloseTo(-1e-8, 11);
    });

    it('moves its centre at its pace', () => {
      const { length, pace, centerAt } = roll();
      const step = 1e-4 * length;
      for (const share of shares) {
        const moved = away(centerAt(share * length), centerAt(share * length + step));
        expect(moved / (step * pace)).toBeCloseTo(1, 6);
      }
    });

    it('rests on it between its ends, and past them by the slack only', () => {
      const { length, centerAt } = roll();
      const slack = 1e-3;
      // Of a corner places are angles.
      const past = wall.shape === 'corner' ? slack / radius : slack;
      for (const share of shares) expect(restsOn(wall, centerAt(share * length), slack)).toBe(true);
      for (const [by, rests] of [
        [0.5, true],
        [2, false],
        [100, false],
      ] as const) {
        expect([by, restsOn(wall, centerAt(-by * past), slack)]).toEqual([by, rests]);
        expect([by, restsOn(wall, centerAt(length + by * past), slack)]).toEqual([by, rests]);
      }
    });
  });

  it('is none where the rounded end is smaller', () => {
    const end = walls.list.find(
      (wall) => wall.shape === 'arc' && wall.side > 0 && wall.radius === 20,
    ) as Wall;
    expect(rollingOn(end, 19.9)).not.toBeNull();
    expect(rollingOn(end, 20.1)).toBeNull();
    expect(openParts(walls, end, 20.1)).toEqual([]);
  });
});

/** A plate with holes of 4 on a pitch of 10 over its left half. */
const crowded = section(
  loopThrough([
    [0, 0],
    [400, 0],
    [400, 200],
    [0, 200],
  ]),
  ...Array.from({ length: 400 }, (_, k) => hole(10 * (k % 20) + 5, 10 * Math.floor(k / 20) + 5, 2)),
);
const plate = wallsOf(crowded) as Walls;
const distances = (p: Point) =>
  loopsOf(crowded).flatMap((loop) => loop.map((edge) => nearestOnEdge(edge, p).distance));

describe('in a crowd of holes', () => {
  const places = fc.record({
    x: fc.double({ min: 1, max: 399, noNaN: true }),
    y: fc.double({ min: 1, max: 199, noNaN: true }),
  });

  it('a disc has room where no edge is nearer than its radius', () => {
    fc.assert(
      fc.property(places, (center) => {
        const nearest = Math.min(...distances(center));
        for (const share of [0.5, 0.999]) expect(plate.hasRoom(center, share * nearest)).toBe(true);
        for (const more of [1.001, 2, 10, 50]) expect(plate.hasRoom(center, more * nearest)).toBe(false);
      }),
      { numRuns: runs(100) },
    );
  });

  it('a place is in metal where it is in the region', () => {
    fc.assert(
      fc.property(places, (p) => {
        expect(plate.isMetal(p)).toBe(contains(crowded, p) === 'inside');
      }),
      { numRuns: runs(100) },
    );
    expect(plate.isMetal({ x: 5.5, y: 5 })).toBe(false);
    expect(plate.isMetal({ x: 10, y: 10 })).toBe(true);
    expect(plate.isMetal({ x: 401, y: 10 })).toBe(false);
  });

  it('what is not open along a wall has no room for a disc', () => {
    for (const wall of plate.list.slice(0, 60)) {
      for (const radius of [8, 25, 40, 60]) {
        const open = openParts(plate, wall, radius);
        const rolling = rollingOn(wall, radius);
        if (rolling === null) continue;
        for (let k = 0; k <= 32; k++) {
          const along = (k / 32) * rolling.length;
          if (open.some(({ low, high }) => low <= along && along <= high)) continue;
          expect(plate.hasRoom(rolling.centerAt(along), radius)).toBe(false);
        }
      }
    }
  });

  it('large discs are looked for beside the crowd only, small ones everywhere', () => {
    const bottom = plate.list.find(
      ({ edge }) => edge.kind === 'line' && edge.a.x === 0 && edge.b.x === 400,
    ) as Wall;
    expect(openParts(plate, bottom, 8)).toEqual([{ low: -Infinity, high: Infinity }]);
    const open = openParts(plate, bottom, 40);
    const isOpen = (along: number) => open.some(({ low, high }) => low <= along && along <= high);
    expect([-1, 50, 150, 250, 350, 401].map(isOpen)).toEqual([false, false, false, true, true, true]);
    const inside = plate.list.find(
      ({ edge }) => edge.kind === 'arc' && away(edge.center, { x: 95, y: 95 }) < 1,
    ) as Wall;
    expect(openParts(plate, inside, 40)).toEqual([]);
  });
});
