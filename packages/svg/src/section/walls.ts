import type { ReportEdge, ReportRegion } from '@edgebite/core';
import { type Place, turnOf } from '../view/edges.js';

/** A stretch of an edge that goes one way along x, so that it is met once at every x that it spans. */
export interface Wall {
  readonly from: number;
  readonly to: number;
  readonly edge: ReportEdge;
  /** Of an arc whether it is the half over its centre. */
  readonly upper: boolean;
}

/** The walls of a region; those that run straight up span no x, and are none. */
export function wallsOf(region: ReportRegion): readonly Wall[] {
  const edges = region.flatMap(({ outer, holes }) => [outer, ...holes]).flat();
  return edges.flatMap(wallsAlong).filter(({ from, to }) => to > from);
}

function wallsAlong(edge: ReportEdge): readonly Wall[] {
  if (edge.kind === 'line') return [wall(edge, edge.a[0], edge.b[0], false)];
  const { a, b, center, radius, ccw } = edge;
  const start = Math.atan2(a[1] - center[1], a[0] - center[0]);
  const end = start + (ccw ? turnOf(edge) : -turnOf(edge));
  const [least, most] = [Math.min(start, end), Math.max(start, end)];
  // Its leftmost and rightmost places lie at whole half turns.
  const between: number[] = [];
  for (let k = Math.floor(least / Math.PI) + 1; k * Math.PI < most; k++) between.push(k * Math.PI);
  const stops = [least, ...between, most];
  const across = stops.map((angle, i) =>
    i > 0 && i < stops.length - 1 ? center[0] + radius * Math.cos(angle) : Number.NaN,
  );
  across[0] = (ccw ? a : b)[0];
  across[across.length - 1] = (ccw ? b : a)[0];
  return stops.slice(1).map((angle, i) => {
    const middle = (angle + (stops[i] as number)) / 2;
    return wall(edge, across[i] as number, across[i + 1] as number, Math.sin(middle) > 0);
  });
}

function wall(edge: ReportEdge, x: number, other: number, upper: boolean): Wall {
  return { from: Math.min(x, other), to: Math.max(x, other), edge, upper };
}

/** The y of a wall at an x that it spans. */
export function yAt({ edge, upper }: Wall, x: number): number {
  if (edge.kind === 'line') {
    const { a, b } = edge;
    return a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1]);
  }
  const dx = x - edge.center[0];
  const half = Math.sqrt(Math.max(edge.radius * edge.radius - dx * dx, 0));
  return edge.center[1] + (upper ? half : -half);
}

/** The unit vector along a wall at an x that it spans, with x growing. */
export function tangentAt({ edge, upper }: Wall, x: number): Place {
  if (edge.kind === 'line') {
    const [dx, dy] = [edge.b[0] - edge.a[0], edge.b[1] - edge.a[1]];
    const long = Math.hypot(dx, dy) * Math.sign(dx);
    return [dx / long, dy / long];
  }
  const { center, radius } = edge;
  const over = Math.min(Math.max((x - center[0]) / radius, -1), 1);
  const along = Math.sqrt(1 - over * over);
  return [along, upper ? -over : over];
}
