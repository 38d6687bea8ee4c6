import type { ToldRegion } from './told.js';

/** Area of a region: by Green's theorem along its edges; outer loops run counter-clockwise, holes clockwise. */
export function areaOf(region: ToldRegion): number {
  let twice = 0;
  for (const { outer, holes } of region) {
    for (const edge of [outer, ...holes].flat()) {
      twice += edge.a[0] * edge.b[1] - edge.b[0] * edge.a[1];
      if (edge.kind === 'line') continue;
      const [cx, cy] = edge.center;
      const radius = Math.hypot(edge.a[0] - cx, edge.a[1] - cy);
      const start = Math.atan2(edge.a[1] - cy, edge.a[0] - cx);
      const end = Math.atan2(edge.b[1] - cy, edge.b[0] - cx);
      let sweep = edge.ccw ? end - start : start - end;
      if (sweep <= 0) sweep += 2 * Math.PI;
      twice += (edge.ccw ? 1 : -1) * radius * radius * (sweep - Math.sin(sweep));
    }
  }
  return twice / 2;
}
