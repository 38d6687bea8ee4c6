import { type ArcEdge, type Loop, lineEdge, type Point } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { OverlayError } from '../../packages/core/src/noding/overlay-error.js';
import { arrange } from '../../packages/core/src/overlay/arrange.js';
import { closed, p } from './shapes.js';

/*
 * An overlay that cannot be put in order ends in an error. Five points, each joined to all others, have no order in any plane
 * (Kuratowski, Fundamenta Mathematicae 15, 1930). Where they are so joined by arcs that say to lie elsewhere, no crossing is
 * found, as little as where rounding has lost it; and no answer is proven, since the ends are not on the circles.
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
    // A billionth of the frame's larger side.
    const [tolerance] = message.match(/(?<=tolerance of )\S+/) ?? [];
    expect(Number(Number(tolerance).toPrecision(9))).toBe(2e-8);
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
