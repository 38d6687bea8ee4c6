import { type ArcEdge, arcEdge, type Edge, lineEdge, type Source } from '../geometry/edge.js';
import { distance, type Point } from '../geometry/point.js';
import { shownNumber } from '../geometry/shown.js';

/** The centre may be moved this share of the radius to suit both ends; more is another arc than the one drawn. */
const CENTER_SLACK = 1e-3;

/**
 * An arc from `a` to `b` round about `center`, which moves to where it is equally far from both ends.
 * @throws RangeError as `arcEdge` does, and if the ends are so close together that the centre would have to move
 *   by over a thousandth of the radius.
 */
export function fittedArc(a: Point, b: Point, center: Point, ccw: boolean, source?: Source): ArcEdge {
  const arc = arcEdge(a, b, center, ccw, source);
  if (distance(arc.center, center) <= CENTER_SLACK * arc.radius) return arc;
  throw new RangeError(
    `the ends are ${shownNumber(distance(center, a))} and ${shownNumber(distance(center, b))} from the centre, ` +
      'and so close together that the arc is not determined',
  );
}

/**
 * The same edge between other ends, which lie close to its own.
 * @throws RangeError if the ends coincide or no arc fits them.
 */
export function withEnds(edge: Edge, a: Point, b: Point): Edge {
  return edge.kind === 'line'
    ? lineEdge(a, b, edge.source)
    : fittedArc(a, b, edge.center, edge.ccw, edge.source);
}
