/* Ways of a tool by many directions and places, over points along edges: nothing here uses the code under test. */
import type { Edge, Point } from '@edgebite/core';

/** Points along an edge, its ends included, so close that a tool's distance to them is right to about a micrometre. */
function pointsOf(edge: Edge, step: number): Point[] {
  if (edge.kind === 'line') {
    const count = Math.max(1, Math.ceil(Math.hypot(edge.b.x - edge.a.x, edge.b.y - edge.a.y) / step));
    return Array.from({ length: count + 1 }, (_, k) => ({
      x: edge.a.x + ((edge.b.x - edge.a.x) * k) / count,
      y: edge.a.y + ((edge.b.y - edge.a.y) * k) / count,
    }));
  }
  const { center, radius } = edge;
  const start = Math.atan2(edge.a.y - center.y, edge.a.x - center.x);
  const end = Math.atan2(edge.b.y - center.y, edge.b.x - center.x);
  const raw = edge.ccw ? end - start : start - end;
  const turn = (raw <= 0 ? raw + 2 * Math.PI : raw) * (edge.ccw ? 1 : -1);
  const count = Math.max(1, Math.ceil((Math.abs(turn) * radius) / step));
  return Array.from({ length: count + 1 }, (_, k) => ({
    x: center.x + radius * Math.cos(start + (turn * k) / count),
    y: center.y + radius * Math.sin(start + (turn * k) / count),
  }));
}

export function sampledWays(edges: readonly Edge[], center: Point, radius: number, clearance: number) {
  const furthest = radius + clearance;
  const points = edges
    .flatMap((edge) => pointsOf(edge, radius / 60))
    .filter((p) => Math.hypot(p.x - center.x, p.y - center.y) < 3 * furthest);
  const gapAt = (at: Point): number =>
    points.reduce(
      (least, p) => Math.min(least, Math.hypot(p.x - at.x, p.y - at.y)),
      Number.POSITIVE_INFINITY,
    ) - radius;
  const leastOn = (from: Point, to: Point): number =>
    Math.min(
      ...Array.from({ length: 41 }, (_, k) =>
        gapAt({ x: from.x + ((to.x - from.x) * k) / 40, y: from.y + ((to.y - from.y) * k) / 40 }),
      ),
    );
  /** Whether a direction leads to a clear place, with something to spare. */
  const leads = (degrees: number): boolean => {
    const [dx, dy] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    for (let k = 1; k < 60; k++) {
      const s = (furthest * k) / 60;
      const gap = gapAt({ x: center.x + dx * s, y: center.y + dy * s });
      if (gap < -1e-9) return false;
      if (gap > clearance + radius / 200) return true;
    }
    return false;
  };
  /** Directions to both sides of which a way leads off too: not by the roughness of the points. */
  const surelyPossible = (): number[] => {
    const all = Array.from({ length: 120 }, (_, k) => leads(3 * k));
    return all.flatMap((yes, k) => (yes && all[(k + 1) % 120] && all[(k + 119) % 120] ? [3 * k] : []));
  };
  return { gapAt, leastOn, surelyPossible };
}
