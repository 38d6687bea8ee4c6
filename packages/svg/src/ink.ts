import type { Report, ReportEdge, ReportRegion } from '@edgebite/core';
import { placesAlong, turnOf } from './edges.js';
import type { Layout } from './layout.js';
import { emptyRoom, INK, MOST_STEPS, type Room } from './room.js';
import { stretchesAt } from './scan.js';
import { onSheet, shrunk, type View } from './view.js';

/** A map of what the plan has on it: the part, its metal, and the lines of the cuts. */
export function inkedRoom(report: Report, layout: Layout): Room {
  const { plan, view } = layout;
  const room = emptyRoom(shrunk(plan, 1));
  markArea(room, report.outline, layout, INK.part);
  for (const piece of report.pieces) markArea(room, piece.view, layout, INK.metal);
  for (const region of [report.outline, ...report.cuts.map((cut) => cut.footprint)]) {
    for (const { outer, holes } of region) {
      for (const edge of [outer, ...holes].flat()) markEdge(room, edge, view);
    }
  }
  return room;
}

function markArea(room: Room, region: ReportRegion, { plan, view }: Layout, ink: number): void {
  for (let y = plan.y + 0.5; y < plan.y + plan.height; y++) {
    const level = view.middle[1] + (view.at[1] - y) / view.factor;
    for (const [from, to] of stretchesAt(region, level)) {
      const left = Math.max(onSheet(view, [from, level])[0], plan.x);
      const right = Math.min(onSheet(view, [to, level])[0], plan.x + plan.width);
      if (right > left) room.markLine([left, y], [right, y], ink);
    }
  }
}

function markEdge(room: Room, edge: ReportEdge, view: View): void {
  if (edge.kind === 'line') {
    room.markLine(onSheet(view, edge.a), onSheet(view, edge.b), INK.line);
    return;
  }
  const length = turnOf(edge) * edge.radius * view.factor;
  const steps = Math.min(Math.max(Math.ceil(length), 1), MOST_STEPS);
  for (const place of placesAlong(edge, steps)) room.mark(onSheet(view, place), INK.line);
}
