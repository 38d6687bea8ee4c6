/* Measurements by places and crossings, with geometry of their own: nothing here uses the code under test. */
import type { Edge, Point, Region } from '@edgebite/core';
import { edgesOf, windingOf } from '@edgebite/core/testing';

/** Whether a place that is on no edge lies in a region. */
export function isMetal(region: Region, p: Point): boolean {
  const loops = region.flatMap(({ outer, holes }) => [outer, ...holes]);
  return loops.reduce((sum, loop) => sum + windingOf(loop, p), 0) > 0;
}

/** The place at a distance from another, in a direction. */
export function polar({ x, y }: Point, radius: number, angle: number): Point {
  return { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) };
}

/** Length of metal along a radius: its crossings with all edges in order, and what lies between them. */
export function metalAlong(region: Region, center: Point, radius: number, angle: number): number {
  const cuts = [0, radius, ...edgesOf(region).flatMap((edge) => crossings(edge, center, angle))]
    .filter((t) => t >= 0 && t <= radius)
    .sort((a, b) => a - b);
  let sum = 0;
  for (let k = 0; k + 1 < cuts.length; k++) {
    const [from, to] = [cuts[k] as number, cuts[k + 1] as number];
    if (to - from > 1e-12 * radius && isMetal(region, polar(center, (from + to) / 2, angle)))
      sum += to - from;
  }
  return sum;
}

/** Distances along a radius at which it crosses the line or circle of an edge; some too many do no harm. */
function crossings(edge: Edge, { x, y }: Point, angle: number): number[] {
  const ux = Math.cos(angle);
  const uy = Math.sin(angle);
  if (edge.kind === 'line') {
    const dx = edge.b.x - edge.a.x;
    const dy = edge.b.y - edge.a.y;
    return [((edge.a.x - x) * dy - (edge.a.y - y) * dx) / (ux * dy - uy * dx)];
  }
  const cx = edge.center.x - x;
  const cy = edge.center.y - y;
  const along = cx * ux + cy * uy;
  const half = Math.sqrt(edge.radius ** 2 - (cx * uy - cy * ux) ** 2);
  return Number.isNaN(half) ? [] : [along - half, along + half];
}

/** What is found of a tool's circle by looking at many places of it. */
export interface Sampled {
  /** Share of the places that are in metal. */
  readonly share: number;
  /** How often a place in metal follows one that is not, once round. */
  readonly entries: number;
  /** Mean of the clockwise unit directions at the places in metal. */
  readonly load: { readonly x: number; readonly y: number };
}

export function sampledRim(region: Region, center: Point, radius: number, count: number): Sampled {
  const hits = Array.from({ length: count }, (_, k) => {
    const angle = (2 * Math.PI * (k + 0.5)) / count;
    return { angle, hit: isMetal(region, polar(center, radius, angle)) };
  });
  const inside = hits.filter(({ hit }) => hit);
  const mean = (of: (angle: number) => number): number =>
    inside.length === 0 ? 0 : inside.reduce((sum, { angle }) => sum + of(angle), 0) / inside.length;
  return {
    share: inside.length / count,
    entries: hits.filter(({ hit }, k) => hit && !(hits[(k + count - 1) % count] as { hit: boolean }).hit)
      .length,
    load: { x: mean(Math.sin), y: mean((angle) => -Math.cos(angle)) },
  };
}
