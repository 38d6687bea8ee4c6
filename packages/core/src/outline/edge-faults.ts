import type { Edge } from '../geometry/edge.js';
import { edgeLength } from '../geometry/measure.js';
import { distance } from '../geometry/point.js';
import { shownNumber, shownPoint } from '../geometry/shown.js';

/**
 * An arc with a radius over this many times its length bulges by less than a tenth of a millionth of it. Its
 * far-off centre then carries more rounding than the bulge is worth, so a line says more.
 */
const FLATTEST = 1e6;

/** What is wrong with an edge on its own, as a sentence without its subject; null if nothing is. */
export function edgeFault(edge: Edge, tolerance: number): string | null {
  const length = edgeLength(edge);
  const where = `at ${shownPoint(edge.a)}`;
  if (length <= tolerance) return `has no length ${where}; leave it out`;
  if (edge.kind === 'line') return null;
  if (distance(edge.a, edge.b) <= tolerance) {
    return `ends where it starts, ${where}; draw a full circle as two arcs`;
  }
  if (edge.radius > FLATTEST * length) {
    return `is an arc ${where} of radius ${shownNumber(edge.radius)} but only ${shownNumber(length)} long; draw a line`;
  }
  return null;
}
