import {
  type ArcEdge,
  arcEdge,
  type Edge,
  lineEdge,
  type Point,
  placeTangent,
  type Touch,
} from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evenly } from '../tools/evenly.js';
import { near, nearPlace } from './near.js';

const P = (x: number, y: number): Point => ({ x, y });
const SLOPE = Math.sqrt(3);

/** Half a circle, counter-clockwise from its right end unless turned, so that its inside is to the left. */
function bow(center: Point, radius: number, ccw = true): ArcEdge {
  return arcEdge(P(center.x + radius, center.y), P(center.x - radius, center.y), center, ccw);
}

const sidesOf = (touches: readonly Touch[]): string => touches.map(({ side }) => side).join(' ');

/** Distance from a place to the line or circle that an edge is part of. */
function toCurve(edge: Edge, p: Point): number {
  if (edge.kind === 'arc')
    return Math.abs(Math.hypot(p.x - edge.center.x, p.y - edge.center.y) - edge.radius);
  const dx = edge.b.x - edge.a.x;
  const dy = edge.b.y - edge.a.y;
  return Math.abs(dx * (p.y - edge.a.y) - dy * (p.x - edge.a.x)) / Math.hypot(dx, dy);
}

describe('placeTangent to two lines', () => {
  it('gives the in-circle of the 3-4-5 triangle with radius 1 (scienceaq.com 398365)', () => {
    const [first, ...others] = placeTangent(1, lineEdge(P(0, 0), P(4, 0)), lineEdge(P(0, 3), P(0, 0)));
    nearPlace(first?.center ?? P(9, 9), P(1, 1), 1);
    expect(first?.touches.map(({ at }) => at)).toEqual([P(1, 0), P(0, 1)]);
    expect(sidesOf(first?.touches ?? [])).toBe('inside inside');
    expect(others).toHaveLength(3);
    // The same circle touches the long side, from (4, 0) to (0, 3).
    const [again] = placeTangent(1, lineEdge(P(0, 0), P(4, 0)), lineEdge(P(4, 0), P(0, 3)));
    nearPlace(again?.center ?? P(9, 9), P(1, 1), 1);
  });

  it('gives four answers, one for each pair of sides, those on the edges first', () => {
    // Lines that meet at the origin at 60 degrees; the metal lies above the one and below the other.
    const flat = lineEdge(P(-1, 0), P(20, 0), 'outline:0');
    const steep = lineEdge(P(10, 10 * SLOPE), P(0, 0), 'outline:1');
    const answers = placeTangent(3, flat, steep);
    expect(answers.map(({ touches }) => sidesOf(touches)).sort()).toEqual([
      'inside inside',
      'inside outside',
      'outside inside',
      'outside outside',
    ]);
    expect(answers.every(({ hand }) => hand === null)).toBe(true);
    const [corner, ...others] = answers;
    // Elementary: in a corner of 60 degrees the centre lies r / sin 30 degrees from its tip.
    near(Math.hypot(corner?.center.x ?? 0, corner?.center.y ?? 0), 6);
    near(corner?.includedAngle ?? 0, (2 * Math.PI) / 3);
    near(corner?.opening ?? 0, 3 * SLOPE);
    near(corner?.depth ?? 0, 1.5);
    expect(corner?.touches.map(({ onEdge }) => onEdge)).toEqual([true, true]);
    expect(corner?.touches.map(({ source }) => source)).toEqual(['outline:0', 'outline:1']);
    // From inside it leaves tips of no angle, and the shorter arc faces the corner: a clockwise tooth runs along it
    // from the flat to the steep edge.
    expect([corner?.entry.angle, corner?.exit.angle]).toEqual([0, 0]);
    expect(corner?.entry.source).toBe('outline:0');
    for (const other of others) expect(other.touches.every(({ onEdge }) => onEdge)).toBe(false);
  });

  it('from outside leaves a smooth wall: angle pi', () => {
    const answers = placeTangent(3, lineEdge(P(0, 0), P(-20, 0)), lineEdge(P(0, 20), P(0, 0)));
    const notch = answers.find(({ touches }) => sidesOf(touches) === 'outside outside');
    expect(notch?.entry.angle).toBe(Math.PI);
    near(notch?.includedAngle ?? 0, Math.PI / 2);
  });

  it('refuses lines side by side, and says which radius fits between them', () => {
    const low = lineEdge(P(0, 0), P(50, 0));
    const high = lineEdge(P(50, 10), P(0, 10));
    expect(() => placeTangent(4, low, high)).toThrow(
      'placeTangent: no circle of radius 4 touches both edges; the nearest radius that does is 5',
    );
    expect(() => placeTangent(5, low, high)).toThrow(
      'wherever it stands along them; give its centre by distances',
    );
    expect(() => placeTangent(5, low, lineEdge(P(60, 0), P(90, 0)))).toThrow('wherever it stands along them');
    expect(() => placeTangent(0, low, high)).toThrow('radius is 0');
  });
});

describe('placeTangent to a line and an arc', () => {
  const floor = lineEdge(P(-30, 0), P(30, 0));

  it('gives every answer: a half disc on a floor and a radius of 2', () => {
    // Elementary: from outside the dome of radius 8 the centre is 10 from its centre and 2 high, so sqrt 96 aside;
    // from inside 6 from it, so sqrt 32 aside.
    const dome = bow(P(0, 0), 8);
    const answers = placeTangent(2, floor, dome);
    expect(answers).toHaveLength(8);
    const named = (sides: string, hand: string) =>
      answers.find((one) => sidesOf(one.touches) === sides && one.hand === hand);
    nearPlace(named('inside inside', 'right')?.center ?? P(9, 9), P(Math.sqrt(32), 2), 10);
    nearPlace(named('inside inside', 'left')?.center ?? P(9, 9), P(-Math.sqrt(32), 2), 10);
    nearPlace(named('inside outside', 'right')?.center ?? P(9, 9), P(Math.sqrt(96), 2), 10);
    nearPlace(named('outside outside', 'left')?.center ?? P(9, 9), P(-Math.sqrt(96), -2), 10);
    // Below the floor the dome is not there.
    expect(answers.slice(0, 4).every(({ touches }) => touches.every(({ onEdge }) => onEdge))).toBe(true);
    expect(answers.slice(4).some(({ touches }) => touches.every(({ onEdge }) => onEdge))).toBe(false);
  });

  it('knows a circle that goes round the arc', () => {
    // Elementary: round a circle of radius 2 and touching a line 1 below its lowest point, with radius 5.
    const answers = placeTangent(5, floor, bow(P(0, 3), 2));
    const round = answers.filter(({ touches }) => sidesOf(touches) === 'inside inside');
    expect(round).toHaveLength(2);
    for (const { center, touches } of round) {
      near(Math.hypot(center.x, center.y - 3), 3);
      near(center.y, 5);
      near(Math.hypot(touches[1].at.x, touches[1].at.y - 3), 2);
    }
  });

  it('refuses a radius too small to bridge the gap, and says how large it must be', () => {
    // Elementary: half the gap of 12 - 8.
    expect(() => placeTangent(1.5, floor, bow(P(0, 12), 8))).toThrow('the nearest radius that does is 2');
    const [least] = placeTangent(2, floor, bow(P(0, 12), 8));
    nearPlace(least?.center ?? P(9, 9), P(0, 2), 12, 1e-9);
    expect(least?.hand).toBeNull();
  });
});

describe('placeTangent to two arcs', () => {
  it('gives the small circle of three that touch on a line (Descartes, from memory; checked by distances below)', () => {
    const answers = placeTangent(2, bow(P(-8, 0), 6), bow(P(8, 0), 6));
    const outside = answers.filter(({ touches }) => sidesOf(touches) === 'outside outside');
    // Both centres are 8 away: the only place is halfway.
    expect(outside).toHaveLength(1);
    nearPlace(outside[0]?.center ?? P(9, 9), P(0, 0), 8, 1e-9);
    const higher = placeTangent(4, bow(P(-8, 0), 6), bow(P(8, 0), 6)).filter(
      ({ touches }) => sidesOf(touches) === 'outside outside',
    );
    // 6-8-10 triangle.
    expect(higher.map(({ hand }) => hand)).toEqual(['left', 'right']);
    nearPlace(higher[0]?.center ?? P(9, 9), P(0, 6), 8);
    nearPlace(higher[1]?.center ?? P(9, 9), P(0, -6), 8);
  });

  it('refuses a radius between the sizes that fit, and names the nearest', () => {
    // One circle within the other, off by 1: 20 - 5 - 1 to 20 - 5 + 1 between them, 20 + 5 -+ 1 round the inner one.
    const outer = bow(P(0, 0), 20);
    const inner = bow(P(1, 0), 5);
    expect(() => placeTangent(6, outer, inner)).toThrow('the nearest radius that does is 7');
    expect(() => placeTangent(9, outer, inner)).toThrow('the nearest radius that does is 8');
    expect(() => placeTangent(11.5, outer, inner)).toThrow('the nearest radius that does is 12');
    expect(() => placeTangent(14, outer, inner)).toThrow('the nearest radius that does is 13');
    for (const fits of [7.5, 12.5]) expect(placeTangent(fits, outer, inner).length).toBeGreaterThan(0);
    expect(() => placeTangent(6, outer, bow(P(0, 0), 5))).toThrow('the nearest radius that does is 7.5');
    expect(() => placeTangent(7.5, outer, bow(P(0, 0), 5))).toThrow('wherever it stands along them');
  });
});

describe('placeTangent on generated edges', () => {
  const coordinate = evenly(-50, 50);
  const place = fc.record({ x: coordinate, y: coordinate });
  const direction = fc.double({ min: 0, max: 6.28, noNaN: true });
  const edgeAt = (at: Point, angle: number, radius: number | null, ccw: boolean): Edge => {
    const normal = { x: -Math.sin(angle), y: Math.cos(angle) };
    if (radius === null)
      return lineEdge(P(at.x - 9 * normal.y, at.y + 9 * normal.x), P(at.x + normal.y, at.y - normal.x));
    const center = P(at.x + radius * normal.x, at.y + radius * normal.y);
    const [a, b] = [-0.5, 0.7].map((by) => {
      const turn = angle - Math.PI / 2 + by;
      return P(center.x + radius * Math.cos(turn), center.y + radius * Math.sin(turn));
    }) as [Point, Point];
    return ccw ? arcEdge(a, b, center, true) : arcEdge(b, a, center, false);
  };
  const size = fc.option(fc.double({ min: 0.5, max: 40, noNaN: true }), { nil: null });

  it('finds a planted circle again, and every answer touches both edges', () => {
    fc.assert(
      fc.property(
        place,
        fc.double({ min: 0.5, max: 30, noNaN: true }),
        fc.tuple(direction, size, fc.boolean(), fc.boolean()),
        fc.tuple(direction, size, fc.boolean(), fc.boolean()),
        (center, radius, p, q) => {
          const [first, second] = [p, q].map(([angle, arc, ccw, flips]) => {
            const at = P(center.x + radius * Math.cos(angle), center.y + radius * Math.sin(angle));
            // The tangent there, the one way or the other.
            return edgeAt(at, angle + (flips ? -1 : 1) * (Math.PI / 2), arc, ccw);
          }) as [Edge, Edge];
          fc.pre(Math.abs(Math.sin(p[0] - q[0])) > 0.05);
          // The arc would be the planted circle itself.
          for (const [, arc] of [p, q]) fc.pre(arc === null || Math.abs(arc - radius) > 0.01);
          const answers = placeTangent(radius, first, second);
          const away = answers.map((one) => Math.hypot(one.center.x - center.x, one.center.y - center.y));
          expect(Math.min(...away)).toBeLessThan(1e-6);
          for (const { center: c, touches } of answers) {
            near(toCurve(first, touches[0].at), 0, 1e-9, 100);
            near(toCurve(second, touches[1].at), 0, 1e-9, 100);
            for (const [k, edge] of [first, second].entries()) {
              const touch = touches[k] as Touch;
              near(Math.hypot(touch.at.x - c.x, touch.at.y - c.y), radius, 1e-9, 100);
              // Tangent: no place of the curve beside it is nearer to the centre on the touching side.
              if (edge.kind === 'line') near(toCurve(edge, c), radius, 1e-9, 100);
              else {
                const d = Math.hypot(c.x - edge.center.x, c.y - edge.center.y);
                const gap = Math.min(
                  Math.abs(d - edge.radius - radius),
                  Math.abs(d - Math.abs(edge.radius - radius)),
                );
                near(gap, 0, 1e-9, 100);
              }
            }
          }
        },
      ),
    );
  });
});
