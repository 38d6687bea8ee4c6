import { type ArcEdge, area, type Loop, lineEdge, normalize, type Point, union } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { arrange, OverlayError } from '../../packages/core/src/region/arrange.js';
import { faceAreas, faceBorders } from '../../packages/core/src/region/faces.js';
import { windings } from '../../packages/core/src/region/windings.js';
import { box, closed, p } from './shapes.js';

/*
 * An overlay that cannot be put in order: it is done again with a larger tolerance, up to a limit. Five points, each joined to
 * all others, have no order in any plane (Kuratowski, Fundamenta Mathematicae 15, 1930). Where they are so joined by
 * arcs that say to lie elsewhere, no crossing is found, as little as where rounding has lost it.
 */

/** A pentagon and its star, the sides of the star as arcs whose circles are far away from them. */
function tangle(center: Point, radius: number): Loop[] {
  const corners = [0, 1, 2, 3, 4].map((k) => {
    // A little askew, so that no side lies level.
    const angle = ((95 + 72 * k) * Math.PI) / 180;
    return p(center.x + radius * Math.cos(angle), center.y + radius * Math.sin(angle));
  });
  const star = [0, 2, 4, 1, 3].map((from, k): ArcEdge => {
    const a = corners[from] as Point;
    const b = corners[(from + 2) % 5] as Point;
    // Each on its own circle, high above, on that side of it where the arc would run one way.
    const away = p(center.x + (a.y < b.y ? -1e3 : 1e3), center.y + 1e3 * (k + 1));
    return { kind: 'arc', a, b, center: away, radius: 1, ccw: true };
  });
  return [closed(...corners), star];
}

describe('an overlay that no plane has', () => {
  const loops = tangle(p(3, 7), 10);
  const frame = { minX: -7, minY: -3, maxX: 13, maxY: 17 };

  it('ends in an error that says so, and how many edges there are', () => {
    expect(() => arrange([loops], frame)).toThrow(OverlayError);
    const message = messageOf(() => arrange([loops], frame));
    expect(message).toMatch(
      /^arrange: 10 edges could not be put in order.*; this is a fault of the library, please report it with the input$/,
    );
    // A billionth of the frame's larger side, and a hundred thousand times as much.
    const tolerances =
      message
        .match(/\d[\d.]*(e-\d+)?(?=[ ;])/g)
        ?.slice(1)
        .map(Number) ?? [];
    expect(tolerances.map((number) => Number(number.toPrecision(9)))).toEqual([2e-8, 2e-3]);
    try {
      arrange([loops], frame);
    } catch (error) {
      expect((error as Error).name).toBe('OverlayError');
    }
  });

  it('is none where the sides of the star say where they are', () => {
    const straight = loops.map((loop) => loop.map(({ a, b }) => lineEdge(a, b)));
    expect(arrange([straight]).faceCount).toBe(1 + 5 + 5 + 1);
  });
});

function messageOf(run: () => unknown): string {
  try {
    run();
  } catch (error) {
    return (error as Error).message;
  }
  throw new Error('nothing was thrown');
}

describe('what is too small to be put in order', () => {
  // 100 wide, so that a tolerance is 1e-7. The triangle stands half out of the square: it is 20 high and 30 wide.
  const plate = box(0, 0, 100, 100);
  const flag = closed(p(95, 40), p(110, 50), p(95, 60));
  const frame = { minX: 0, minY: 0, maxX: 100, maxY: 100 };
  /** The triangle is 20 high at x = 95 and 0 at 110. */
  const beyond = ((20 * (110 - 100)) / (110 - 95)) * (110 - 100) * 0.5;

  it.each([1, 2, 3, 4, 5])(
    'is welded at the attempt that takes it for a point, after %d others',
    (attempt) => {
      const loops = [...tangle(p(30, 70), 0.5e-7 * 10 ** attempt), plate, flag];
      const subdivision = arrange([loops], frame);
      const inside = windings(subdivision, () => true);
      const areas = faceAreas(subdivision, faceBorders(subdivision));
      expect(subdivision.graph.curves.tolerance / (1e-7 * 10 ** attempt)).toBeCloseTo(1, 9);
      expect([...inside].sort()).toEqual([0, 1, 1, 2]);
      const sum = areas.reduce((all, size, face) => all + size * Math.min(1, inside[face] as number), 0);
      expect(sum).toBeCloseTo(1e4 + beyond, 6);
      // What an attempt has found is no part of the next one's input.
      expect(subdivision.graph.curves.points.x.length).toBe(
        arrange([[plate, flag]], frame).graph.curves.points.x.length + 10,
      );
    },
  );

  it('gives an error if six attempts are not enough', () => {
    expect(() => arrange([[...tangle(p(30, 70), 0.5e-1), plate, flag]], frame)).toThrow(OverlayError);
  });

  it('does not mind a region that has none of it', () => {
    expect(area(normalize([...tangle(p(30, 70), 0.5e-6), plate, flag], 'nonzero'))).toBeCloseTo(
      1e4 + beyond,
      4,
    );
    expect(area(union([[{ outer: plate, holes: [] }], [{ outer: flag, holes: [] }]]))).toBeCloseTo(
      1e4 + beyond,
      9,
    );
  });
});
