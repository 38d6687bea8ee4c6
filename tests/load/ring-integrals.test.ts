import { arcEdge, type Edge, lineEdge, type Point } from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { integralsOf, turnSeen } from '../../packages/core/src/load/ring-integrals.js';
import { near } from '../center/near.js';
import { evenly } from '../tools/evenly.js';

const P = (x: number, y: number): Point => ({ x, y });
const at = (center: Point, radius: number, angle: number): Point =>
  P(center.x + radius * Math.cos(angle), center.y + radius * Math.sin(angle));

/** The same integrals by Simpson's rule from the definition, along the edge's own parameter. */
function bySimpson(place: (share: number) => Point, count: number) {
  const sums = { turn: 0, reach: 0, x: 0, y: 0 };
  const h = 1e-5;
  for (let k = 0; k <= 2 * count; k++) {
    const share = k / (2 * count);
    const p = place(share);
    const [a, b] = [place(share - h), place(share + h)];
    const [dx, dy] = [(b.x - a.x) / (2 * h), (b.y - a.y) / (2 * h)];
    const square = p.x * p.x + p.y * p.y;
    const weight = k === 0 || k === 2 * count ? 1 : k % 2 === 1 ? 4 : 2;
    const da = ((p.x * dy - p.y * dx) / square) * (weight / (6 * count));
    sums.turn += da;
    sums.reach += da * Math.sqrt(square);
    sums.x += da * p.x;
    sums.y += da * p.y;
  }
  return sums;
}

function check(edge: Edge, place: (share: number) => Point, size: number): void {
  const found = integralsOf(edge, P(0, 0));
  const wanted = bySimpson(place, 4000);
  near(turnSeen(edge, P(0, 0)), wanted.turn, 1e-7, 1);
  for (const key of ['reach', 'x', 'y'] as const) near(found[key], wanted[key], 1e-7, size);
}

function checkArc(center: Point, radius: number, start: number, turn: number): void {
  const arc = arcEdge(at(center, radius, start), at(center, radius, start + turn), center, turn > 0);
  check(arc, (share) => at(center, radius, start + turn * share), Math.hypot(center.x, center.y) + radius);
}

describe('integralsOf', () => {
  it('of lines, as by the definition', () => {
    const coordinate = evenly(-30, 30);
    fc.assert(
      fc.property(
        fc.tuple(coordinate, coordinate),
        fc.tuple(coordinate, coordinate),
        ([ax, ay], [bx, by]) => {
          const [dx, dy] = [bx - ax, by - ay];
          const length = Math.hypot(dx, dy);
          fc.pre(length > 1 && Math.abs(ax * by - ay * bx) / length > 0.5);
          check(lineEdge(P(ax, ay), P(bx, by)), (share) => P(ax + dx * share, ay + dy * share), 30);
        },
      ),
    );
  });

  it('of arcs, seen from inside, from outside and from their own circle, as by the definition', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 30, noNaN: true }),
        evenly(-4, 4),
        fc.double({ min: 1, max: 30, noNaN: true }),
        evenly(-4, 4),
        fc.double({ min: 0.1, max: 6.2, noNaN: true }),
        fc.boolean(),
        (away, heading, radius, start, turn, ccw) => {
          const center = at(P(0, 0), away, heading);
          const steps = Array.from({ length: 200 }, (_, k) =>
            at(center, radius, start + ((ccw ? 1 : -1) * turn * k) / 199),
          );
          // Not so near that Simpson's rule is rough.
          fc.pre(steps.every(({ x, y }) => Math.hypot(x, y) > 0.6));
          checkArc(center, radius, start, ccw ? turn : -turn);
        },
      ),
    );
  });

  it('does not lose its digits where an arc is nearly concentric, or runs by its own centre of sight', () => {
    for (const away of [0, 1e-15, 1e-13, 1e-10, 1e-7, 1e-4, 1e-2]) {
      checkArc(at(P(0, 0), away, 0.7), 10, 0.3, 2.5);
      checkArc(at(P(0, 0), away, 0.7), 10, 0.3, -5.9);
    }
    for (const off of [0, 1e-12, -1e-12, 1e-6, -1e-6, 1e-2, -1e-2]) checkArc(P(10 + off, 0), 10, -2.6, 5.2);
  });

  it('a disc that a place sees from outside has the area over the distance (mean value property of 1 / z)', () => {
    for (const [d, s] of [
      [13, 2],
      [100, 3],
      [10, 9.9],
    ] as const) {
      const center = P(d, 0);
      const halves = [arcEdge(P(d, -s), P(d, s), center, true), arcEdge(P(d, s), P(d, -s), center, true)];
      const sum = halves.map((edge) => integralsOf(edge, P(0, 0))).reduce((all, { x }) => all + x, 0);
      near(sum, (Math.PI * s * s) / d, 1e-12);
    }
    // From within, the place's own disc is all round: the integral of a circle's far side, pi times the way off.
    const halves = [arcEdge(P(3, -9), P(3, 9), P(3, 0), true), arcEdge(P(3, 9), P(3, -9), P(3, 0), true)];
    const sum = halves.map((edge) => integralsOf(edge, P(0, 0))).reduce((all, { x }) => all + x, 0);
    near(sum, Math.PI * 3, 1e-12);
    expect(
      Math.abs(halves.map((edge) => integralsOf(edge, P(0, 0))).reduce((all, { y }) => all + y, 0)),
    ).toBeLessThan(1e-12);
  });
});
