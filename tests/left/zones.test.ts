import { type Bounds, boxesMeet, type Loop, loopBounds, type Region } from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Discs, type Zone } from '../../packages/core/src/left/discs.js';
import { zonedKnifeEdges } from '../../packages/core/src/left/knife-edges.js';
import { type Walls, wallsOf } from '../../packages/core/src/left/walls.js';
import { zonedWebs } from '../../packages/core/src/left/webs.js';
import { wedgesOf } from '../../packages/core/src/left/wedges.js';
import { evenly } from '../tools/evenly.js';
import { runs } from '../tools/runs.js';
import { hole, loopThrough, section, slotHole } from './section-builder.js';

/*
 * What is said of a web or a knife edge hangs on the boundary in its zone and on nothing else: with all holes gone that
 * stay outside of the zone, it is found again to the last bit. The search itself is the outside source here; it knows of no
 * zones.
 */

const PITCH = 10;

/** Round and long holes, one in each square of the pitch, that may come close to each other and to the outline. */
const holes: fc.Arbitrary<Loop[]> = fc
  .array(
    fc.record({
      x: evenly(-0.6, 0.6),
      y: evenly(-0.6, 0.6),
      radius: fc.constantFrom(2, 3.5, 4, 4.3),
      isLong: fc.boolean(),
    }),
    { minLength: 24, maxLength: 24 },
  )
  .map((all) =>
    all.map(({ x, y, radius, isLong }, k) => {
      const [cx, cy] = [PITCH * (k % 6) + 5 + x, PITCH * Math.floor(k / 6) + 5 + y];
      const half = 4.3 - radius;
      return isLong && half > 0
        ? slotHole(cx - half, cx + half, cy, radius, `cut ${k}`)
        : hole(cx, cy, radius, `cut ${k}`);
    }),
  );

/** A plate with a wedge to its right, whose sides part by 20 degrees, and some holes in it too. */
const plate = loopThrough([
  [0, 0],
  [60, 0],
  [160, 17],
  [60, 40],
  [0, 40],
]);
const inWedge = [
  hole(75, 20, 5, 'wedge 0'),
  hole(90, 14, 4, 'wedge 1'),
  hole(104, 19, 3, 'wedge 2'),
  // Where the widest of the discs would first have room.
  hole(146, 17.2, 0.8, 'wedge 3'),
];

const LIMITS = [0.8, 2, 5];

/** A zone that is too small shows in one case of several, so a short run needs some too. */
const LEAST_CASES = 8;

function without(region: Region, zone: Zone): Region {
  const isNear = (loop: Loop) => loop.some((edge) => zone.some((box) => boxesMeet(box, loopBounds([edge]))));
  return region.map(({ outer, holes: own }) => ({ outer, holes: own.filter(isNear) }));
}

function isHeld<T extends { readonly zone: Zone }>(
  region: Region,
  limit: number,
  find: (region: Region, discs: Discs) => readonly T[],
): { found: number; dropped: number } {
  const walls = wallsOf(region) as Walls;
  let dropped = 0;
  const found = find(region, new Discs(walls, limit / 2));
  for (const one of found) {
    const rest = without(region, one.zone);
    dropped += (region[0] as Region[number]).holes.length - (rest[0] as Region[number]).holes.length;
    const again = find(rest, new Discs(wallsOf(rest, walls.tolerance) as Walls, limit / 2));
    const bare = ({ zone: _, ...all }: T) => all;
    expect(again.map(bare)).toContainEqual(bare(one));
  }
  return { found: found.length, dropped };
}

describe('of what lies outside of its zone nothing changes', () => {
  it('a web', () => {
    const sum = { found: 0, dropped: 0 };
    fc.assert(
      fc.property(holes, fc.constantFrom(...LIMITS), (own, limit) => {
        const { found, dropped } = isHeld(section(plate, ...own, ...inWedge), limit, (region, discs) =>
          zonedWebs(discs, wedgesOf(region)),
        );
        sum.found += found;
        sum.dropped += dropped;
      }),
      { numRuns: Math.max(LEAST_CASES, runs(60)) },
    );
    // Zones are small: most of the holes lie outside.
    expect(sum.dropped).toBeGreaterThan(14 * sum.found);
  });

  it('a knife edge', () => {
    const sum = { found: 0, dropped: 0 };
    fc.assert(
      fc.property(holes, fc.constantFrom(...LIMITS), (own, limit) => {
        const { found, dropped } = isHeld(section(plate, ...own, ...inWedge), limit, (region, discs) =>
          zonedKnifeEdges(wedgesOf(region), 1.4, discs),
        );
        sum.found += found;
        sum.dropped += dropped;
      }),
      { numRuns: Math.max(LEAST_CASES, runs(30)) },
    );
    expect(sum.found).toBeGreaterThan(0);
    expect(sum.dropped).toBeGreaterThan(20 * sum.found);
  });

  it('a single neck: to where the metal is as thick as the limit, and as far round', () => {
    const walls = wallsOf(section(plate, hole(20, 6, 5.5))) as Walls;
    const [web] = zonedWebs(new Discs(walls, 1), wedgesOf(walls.section));
    const all = (web?.zone ?? []).reduce((a: Bounds, b: Bounds) => ({
      minX: Math.min(a.minX, b.minX),
      minY: Math.min(a.minY, b.minY),
      maxX: Math.max(a.maxX, b.maxX),
      maxY: Math.max(a.maxY, b.maxY),
    }));
    // The disc of the limit 2 rests on the side and the hole: its centre is at a height of 1 and 6.5 from the hole's.
    const out = Math.sqrt(6.5 ** 2 - 5 ** 2);
    expect(all.minX).toBeLessThanOrEqual(20 - out - 1);
    expect(all.maxX).toBeGreaterThanOrEqual(20 + out + 1);
    // All that may enter a disc: the slack is some weld tolerances of the part, 160e-9 each.
    const reach = Math.hypot(out, 0.75) + 2 + 1e-5;
    expect(all.minX).toBeGreaterThanOrEqual(20 - reach);
    expect(all.maxX).toBeLessThanOrEqual(20 + reach);
    expect(all.minY).toBeGreaterThanOrEqual(0.25 - reach);
    expect(all.maxY).toBeLessThanOrEqual(0.25 + reach);
  });
});
