import { area, type Loop, lineEdge, normalize, offsetPath, type Point } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { p } from './shapes.js';

/*
 * Polylines so fine that each joint is next to nothing off the line of its neighbours. Areas by the formula of a regular
 * polygon, n r² sin(2 pi / n) / 2.
 */

const corners = (n: number, radius: number): Point[] =>
  Array.from({ length: n }, (_, k) =>
    p(radius * Math.cos((2 * Math.PI * k) / n), radius * Math.sin((2 * Math.PI * k) / n)),
  );
const polygon = (n: number, radius: number, source: string): Loop => {
  const points = corners(n, radius);
  return points.map((a, k) => lineEdge(a, points[(k + 1) % n] as Point, source));
};
const polygonArea = (n: number, radius: number) => (n * radius * radius * Math.sin((2 * Math.PI) / n)) / 2;

describe('a fine polyline under one name', () => {
  it.each([100, 3600, 30_000])('keeps its area, of %d edges', (n) => {
    const [part] = normalize([polygon(n, 50, 'rim')], 'nonzero');
    expect(Math.abs(area([part as NonNullable<typeof part>]) - polygonArea(n, 50))).toBeLessThan(
      1e-9 * 100 * 320,
    );
  });

  it('loses joints only where all that it loses lies on its edges', () => {
    // So fine that a joint is less than a tolerance off the line of its neighbours. The part is 2 across.
    const step = 4e-5;
    const rim = Array.from({ length: 6001 }, (_, k) => p(Math.cos(k * step), Math.sin(k * step)));
    const points = [...rim, p(-1, 1), p(-1, -1)];
    const loop = points.map((a, k) => lineEdge(a, points[(k + 1) % points.length] as Point, 'rim'));
    const [part] = normalize([loop], 'nonzero');
    const { outer } = part as NonNullable<typeof part>;
    expect(outer.length).toBeLessThan(6000 / 2 + 10);
    expect(outer.length).toBeGreaterThan(1000);
    for (const { a, b } of outer.filter(({ a, b }) => a.x > 0.9 && b.x > 0.9)) {
      const sagitta = 1 - Math.hypot((a.x + b.x) / 2, (a.y + b.y) / 2);
      expect(sagitta).toBeLessThan(1.1 * 2 * 1e-9);
    }
  });

  it('of a ring stays a ring', () => {
    const hole = polygon(3600, 30, 'bore')
      .map(({ a, b }) => lineEdge(b, a, 'bore'))
      .reverse();
    const found = normalize([polygon(3600, 50, 'rim'), hole], 'nonzero');
    expect(Math.abs(area(found) - polygonArea(3600, 50) + polygonArea(3600, 30))).toBeLessThan(1e-4);
  });

  it('swept by a tool takes what the tool takes along it', () => {
    // Half a circle of 40, a tool of 5: a half ring and a disc, each short of a circle by the polygon's share.
    const n = 4000;
    const points = Array.from({ length: n + 1 }, (_, k) =>
      p(20 * Math.cos((Math.PI * k) / n), 20 * Math.sin((Math.PI * k) / n)),
    );
    const path = points.slice(1).map((b, k) => lineEdge(points[k] as Point, b, 'path'));
    const found = area(offsetPath(path, 2.5));
    expect(Math.abs(found - (Math.PI * 20 * 5 + Math.PI * 2.5 ** 2))).toBeLessThan(1e-4);
  });
});
