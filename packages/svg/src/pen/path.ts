import type { ReportEdge, ReportRegion } from '@edgebite/core';
import { type Place, placesAlong, type ReportArc, turnOf } from '../view/edges.js';
import { isTurnedOver, onSheet, type View } from '../view/view.js';

/** Decimals of a millimetre on the sheet in path data. A tenth of a micron: far under any printer's dot. */
const DECIMALS = 4;

/**
 * Arcs that turn further are drawn as several. Near half a turn the centre that a viewer works out from two
 * rounded ends is off by the root of the rounding, and near a full turn the ends fall together and the arc
 * is dropped altogether.
 */
const LONGEST_TURN = (2 / 3) * Math.PI;

/** A number for path data, rounded to a tenth of a micron of the sheet without other `decimals`. */
export function pathNumber(value: number, decimals = DECIMALS): string {
  const step = 10 ** decimals;
  return String(Math.round(value * step) / step + 0);
}

/** Path data (W3C SVG 2) of a region on the sheet: closed loops of lines and circular arcs. */
export function regionPath(region: ReportRegion, view: View, decimals = DECIMALS): string {
  return region
    .flatMap((part) => [part.outer, ...part.holes])
    .filter((loop) => loop.length > 0)
    .map((loop) => `${chainPath(loop, view, decimals)}Z`)
    .join('');
}

/** Path data of chains of edges on the sheet, left open: a new one where an edge does not start at the end of the last. */
export function chainPath(edges: readonly ReportEdge[], view: View, decimals = DECIMALS): string {
  return edges
    .map((edge, k) => {
      const before = edges[k - 1];
      const goesOn = before !== undefined && before.b[0] === edge.a[0] && before.b[1] === edge.a[1];
      return `${goesOn ? '' : `M${pair(edge.a, view, decimals)}`}${edgePath(edge, view, decimals)}`;
    })
    .join('');
}

function edgePath(edge: ReportEdge, view: View, decimals: number): string {
  if (edge.kind === 'line') return `L${pair(edge.b, view, decimals)}`;
  if (bulgeOf(edge) * view.factor < 10 ** -decimals / 2) return `L${pair(edge.b, view, decimals)}`;
  const radius = pathNumber(edge.radius * view.factor, decimals);
  // Counter-clockwise with y up is the negative direction of the sheet's angles: sweep flag 0.
  const flags = `0 0 ${edge.ccw === isTurnedOver(view) ? 1 : 0}`;
  return waypoints(edge)
    .map((place) => `A${radius} ${radius} ${flags} ${pair(place, view, decimals)}`)
    .join('');
}

function waypoints(arc: ReportArc): readonly Place[] {
  const turn = turnOf(arc);
  if (turn <= LONGEST_TURN) return [arc.b];
  return placesAlong(arc, Math.ceil(turn / (Math.PI / 2))).slice(1);
}

// How far an arc stands off its chord. 2 sin² of a quarter of the turn keeps its digits where the turn is small.
function bulgeOf(arc: ReportArc): number {
  return 2 * arc.radius * Math.sin(turnOf(arc) / 4) ** 2;
}

function pair(place: Place, view: View, decimals: number): string {
  const [x, y] = onSheet(view, place);
  return `${pathNumber(x, decimals)} ${pathNumber(y, decimals)}`;
}
