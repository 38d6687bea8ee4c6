import type { Report, ReportCut, ReportEdge, ReportRegion } from '@edgebite/core';
import { LONGEST_ARM } from '../plan/cuts.js';
import { ARROW_LENGTH, namedKeepOuts, TICK } from '../plan/working.js';
import { type Place, placesAlong, turnOf } from '../view/edges.js';
import { emptyRoom, INK, MOST_STEPS, type Room } from '../view/room.js';
import { boundsOfRegion, stretchesAt } from '../view/scan.js';
import { type Box, onSheet, shrunk, type View } from '../view/view.js';

/** A map of what an area of the sheet has on it: the part as it was, and the lines of the cuts. */
export function inkedRoom(report: Report, area: Box, view: View): Room {
  const room = emptyRoom(shrunk(area, 1));
  markArea(room, report.outline, area, view, INK.part);
  markEdges(room, report.outline, view, INK.edge);
  for (const cut of report.cuts) markCut(room, cut, view);
  for (const { center, backOff } of report.steps) {
    if (center !== null && backOff.drawn !== null) markWayOff(room, onSheet(view, center), backOff.drawn);
  }
  for (const { region } of namedKeepOuts(report)) markEdges(room, region, view, INK.line);
  return room;
}

/** Notes all lines that are drawn of a cut: its rim, its passes, where its tool goes, its centre. */
function markCut(room: Room, { footprint, center, path, passes, toolPath }: ReportCut, view: View): void {
  markEdges(room, footprint, view, INK.line);
  const leads = toolPath?.passes.flatMap(({ leadIn, cut, leadOut }) => [...leadIn, ...cut, ...leadOut]) ?? [];
  for (const edge of [...(path ?? []), ...leads]) markEdge(room, edge, view, INK.line);
  for (const { center: stand, diameter, bite } of passes?.list ?? []) {
    const at = onSheet(view, stand);
    markCircle(room, at, (diameter / 2) * view.factor);
    if (bite !== null) markTick(room, onSheet(view, bite.at), at);
  }
  const named = center ?? path?.[0]?.a;
  if (named === undefined) return;
  const [x, y] = onSheet(view, named);
  room.markLine([x - LONGEST_ARM, y], [x + LONGEST_ARM, y], INK.line);
  room.markLine([x, y - LONGEST_ARM], [x, y + LONGEST_ARM], INK.line);
}

function markEdges(room: Room, region: ReportRegion, view: View, ink: number): void {
  for (const edge of region.flatMap(({ outer, holes }) => [outer, ...holes].flat())) {
    markEdge(room, edge, view, ink);
  }
}

/** Notes the tick where a pass bites most, which points to its centre. */
function markTick(room: Room, [x, y]: Place, [cx, cy]: Place): void {
  const share = TICK / Math.max(Math.hypot(cx - x, cy - y), TICK);
  room.markLine([x, y], [x + share * (cx - x), y + share * (cy - y)], INK.line);
}

/** Notes the arrow by which a tool comes off its wall. */
function markWayOff(room: Room, [x, y]: Place, degrees: number): void {
  const angle = (degrees * Math.PI) / 180;
  const length = ARROW_LENGTH.backOff;
  room.markLine([x, y], [x + length * Math.cos(angle), y - length * Math.sin(angle)], INK.line);
}

function markCircle(room: Room, [x, y]: Place, radius: number): void {
  const steps = Math.min(Math.ceil(4 * Math.PI * radius), MOST_STEPS);
  for (let i = 0; i < steps; i++) {
    const angle = (2 * Math.PI * i) / steps;
    room.mark([x + radius * Math.cos(angle), y + radius * Math.sin(angle)], INK.line);
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
  const steps = Math.min(Math.max(Math.ceil(2 * length), 1), MOST_STEPS);
  for (const place of placesAlong(edge, steps)) room.mark(onSheet(view, place), ink);
}
