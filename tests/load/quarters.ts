/* Drawings turned by quarters, which is exact: coordinates are exchanged. */
import type { Point, Region } from '@edgebite/core';

export function quarterPoint({ x, y }: Point, k: number): Point {
  return [
    { x, y },
    { x: -y, y: x },
    { x: -x, y: -y },
    { x: y, y: -x },
  ][k] as Point;
}

export function quarters(region: Region, k: number): Region {
  const loop = (edges: Region[number]['outer']) =>
    edges.map((edge) => {
      const ends = { a: quarterPoint(edge.a, k), b: quarterPoint(edge.b, k) };
      return edge.kind === 'line'
        ? { ...edge, ...ends }
        : { ...edge, ...ends, center: quarterPoint(edge.center, k) };
    });
  return region.map(({ outer, holes }) => ({ outer: loop(outer), holes: holes.map(loop) }));
}
