import type { Report, ReportEdge, ReportRegion } from '@edgebite/core';
import { placesAlong, turnOf } from '../view/edges.js';
import { emptyRoom, INK, MOST_STEPS, type Room } from '../view/room.js';
import { boundsOfRegion, stretchesAt } from '../view/scan.js';
import { type Box, onSheet, shrunk, type View } from '../view/view.js';

/** A map of what an area of the sheet has on it: the part as it was, and the lines of the cuts. */
export function inkedRoom(report: Report, area: Box, view: View): Room {
  const room = emptyRoom(shrunk(area, 1));
  markArea(room, report.outline, area, view, INK.part);
  markEdges(room, report.outline, view, INK.edge);
  for (const { footprint } of report.cuts) markEdges(room, footprint, view, INK.line);
  return room;
}

function markEdges(room: Room, region: ReportRegion, view: View, ink: number): void {
  for (const edge of region.flatMap(({ outer, holes }) => [outer, ...holes].flat())) {
    markEdge(room, edge, view, ink);
  }
}

function markArea(room: Room, region: ReportRegion, area: Box, view: View, ink: number): void {
  const bounds = boundsOfRegion(region);
  if (bounds === null) return;
  const first = Math.max(onSheet(view, [0, bounds.maxY])[1], area.y);
  const last = Math.min(onSheet(view, [0, bounds.minY])[1], area.y + area.height);
  for (let y = first + 0.5; y < last; y++) {
    const level = view.middle[1] + (view.at[1] - y) / view.factor;
    for (const [from, to] of stretchesAt(region, level)) {
      const left = Math.max(onSheet(view, [from, level])[0], area.x);
      const right = Math.min(onSheet(view, [to, level])[0], area.x + area.width);
      if (right > left) room.markLine([left, y], [right, y], ink);
    }
  }
}

function markEdge(room: Room, edge: ReportEdge, view: View, ink: number): void {
  if (edge.kind === 'line') {
    room.markLine(onSheet(view, edge.a), onSheet(view, edge.b), ink);
    return;
  }
  const length = turnOf(edge) * edge.radius * view.factor;
  const steps = Math.min(Math.max(Math.ceil(length), 1), MOST_STEPS);
  for (const place of placesAlong(edge, steps)) room.mark(onSheet(view, place), ink);
}
