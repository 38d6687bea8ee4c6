import {
  arcEdge,
  disc,
  type Edge,
  type Loop,
  lineEdge,
  type Point,
  type Region,
  reversed,
} from '@edgebite/core';
import { boxRegion, windingOf } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { homesOf, Whereabouts } from '../../packages/core/src/region/homes.js';
import { runs } from '../tools/runs.js';
import { closed, p } from './shapes.js';

/* Which loop a place or a hole lies in; told by the angles that loops turn through as seen from it, or plain to see. */

const outerOf = (region: Region): Loop => (region[0] as Region[number]).outer;
const box = (minX: number, minY: number, maxX: number, maxY: number): Loop =>
  outerOf(boxRegion(minX, minY, maxX, maxY));

/** Far below all that is told apart here. */
const NEAR = 1e-6;

describe('the home of a hole', () => {
  it('is the smallest of nested loops, in whatever order they are', () => {
    const nested = [box(0, 0, 100, 100), box(10, 10, 90, 90), box(20, 20, 80, 80), box(30, 30, 70, 70)];
    const holes = [box(2, 50, 4, 52), box(12, 50, 14, 52), box(22, 50, 24, 52), box(50, 50, 60, 60)];
    expect([...homesOf(nested, holes, NEAR)]).toEqual([0, 1, 2, 3]);
    expect([...homesOf([...nested].reverse(), holes, NEAR)]).toEqual([3, 2, 1, 0]);
    const mixed = [2, 0, 3, 1].map((k) => nested[k] as Loop);
    expect([...homesOf(mixed, holes, NEAR)]).toEqual([1, 3, 0, 2]);
  });

  it('is not a smaller loop round whose box only it lies', () => {
    const corner = closed(p(40, 40), p(60, 40), p(60, 42), p(42, 42), p(42, 60), p(40, 60));
    const plate = box(0, 0, 100, 100);
    const hole = box(50, 50, 52, 52);
    expect([...homesOf([corner, plate], [hole], NEAR)]).toEqual([1]);
    expect([...homesOf([plate, corner], [hole], NEAR)]).toEqual([0]);
    expect([...homesOf([corner, box(70, 70, 80, 80)], [hole], NEAR)]).toEqual([-1]);
  });

  it('is the loop that it touches from inside, at one of its joints', () => {
    const one = box(0, 0, 50, 50);
    const other = box(50, 0, 100, 50);
    const left = closed(p(50, 20), p(45, 25), p(40, 20), p(45, 15));
    const right = closed(p(50, 20), p(55, 15), p(60, 20), p(55, 25));
    expect([...homesOf([one, other], [left, right], NEAR)]).toEqual([0, 1]);
  });

  it('is found among many corners as among few', () => {
    // Holes in a row just above the notches of a long strip, every other one in the strip above it.
    const teeth = 300;
    const notched = Array.from({ length: 2 * teeth }, (_, k) => p(2 * k, k % 2));
    const strip = closed(...notched, p(4 * teeth, 1), p(4 * teeth, 4), p(0, 4));
    const above = box(0, 5, 4 * teeth, 9);
    const holes = Array.from({ length: teeth }, (_, k) => {
      const y = k % 2 === 0 ? 2 : 6;
      return box(4 * k + 1.5, y, 4 * k + 2.5, y + 1);
    });
    expect([...homesOf([strip, above], holes, NEAR)]).toEqual(holes.map((_, k) => k % 2));
  });
});

/** A comb: slots that taper and end in half circles, a dent in its end, and holes with joints at many heights. */
function comb(teeth: number): Loop[] {
  const outline: Edge[] = [];
  let at = p(0, 0);
  const to = (next: Point) => {
    outline.push(lineEdge(at, next));
    at = next;
  };
  to(p(10 * teeth, 0));
  // Part of a circle that is not there goes round places to the right of the end.
  outline.push(arcEdge(at, p(10 * teeth, 40), p(10 * teeth + 75, 20), false));
  at = p(10 * teeth, 40);
  for (let k = teeth - 1; k > 0; k--) {
    const x = 10 * k;
    to(p(x + 3.5, 40));
    to(p(x + 2, 20 + (k % 3)));
    const end = p(x - 2, 20 + (k % 3));
    outline.push(arcEdge(at, end, p(x, 20 + (k % 3)), false));
    at = end;
    to(p(x - 3, 40));
  }
  to(p(0, 40));
  to(p(0, 0));
  const holes = Array.from({ length: teeth }, (_, k) => outerOf(disc(p(10 * k + 5, 10 + (k % 2)), 2)));
  return [outline, ...holes.map((loop) => [...loop].reverse().map(reversed))];
}

describe('whereabouts of places', () => {
  const loops = comb(60);
  const isInside = (at: Point) => loops.reduce((sum, loop) => sum + windingOf(loop, at), 0) !== 0;
  /** Has been asked so often that it has a tree by now. */
  function asked(near: number): Whereabouts {
    const whereabouts = new Whereabouts(loops, near);
    for (let k = 0; k < 10; k++) expect(whereabouts.isInside(1, () => p(1 + k, 1))).toBe(true);
    return whereabouts;
  }

  it('are those that angles tell, asked one by one or by rays', () => {
    const often = asked(1e-6);
    const place = fc.record({
      x: fc.integer({ min: -20, max: 7800 }),
      y: fc.integer({ min: -20, max: 420 }),
    });
    fc.assert(
      fc.property(place, ({ x, y }) => {
        const at = p(x / 10 + 0.0131, y / 10 + 0.0077);
        const wanted = isInside(at);
        expect(often.isInside(1, () => at)).toBe(wanted);
        expect(new Whereabouts(loops, 1e-6).isInside(1, () => at)).toBe(wanted);
      }),
      { numRuns: runs(2000) },
    );
  });

  it('are so at the heights of joints, and of the ends of arcs, too', () => {
    const often = asked(1e-6);
    for (const y of [8, 9, 10, 11, 12, 13, 20, 21, 22, 18, 19]) {
      for (let x = -3; x < 780; x += 0.73) {
        const at = p(x + 0.0131, y);
        expect([at, often.isInside(1, () => at)]).toEqual([at, isInside(at)]);
      }
    }
  });

  it('are so where two walls are nearer to each other than rays can tell apart', () => {
    const thin = [...loops, ...[box(700, 0, 710, 40), box(710 + 1e-9, 0, 720, 40)]];
    const whereabouts = new Whereabouts(thin, 1e-6);
    const is = Array.from({ length: 40 }, (_, k) => whereabouts.isInside(1, () => p(714.5 + (k % 12), 3.3)));
    expect(is).toEqual(Array.from({ length: 40 }, (_, k) => k % 12 < 6));
  });
});
