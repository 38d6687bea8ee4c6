import { normalize, union } from '../combine/boolean.js';
import type { Edge } from '../geometry/edge.js';
import { EdgebiteError } from '../geometry/edgebite-error.js';
import { reversed } from '../geometry/parts.js';
import { samePoint } from '../geometry/point.js';
import { shownNumber } from '../geometry/shown.js';
import { faultIn } from '../kinds/kinds.js';
import { vouchFor } from '../kinds/region-kind.js';
import { drawn } from '../kinds/shared-kinds.js';
import { fittedArc } from '../outline/fit.js';
import { joinEdges } from '../outline/join.js';
import type { Loop, Region } from '../region/region.js';

/**
 * The region that somebody meant by parts of loops with faults: edges without length are left out, gaps of under a
 * millionth of a loop are closed, arcs whose ends lie off their circle by under a thousandth of its radius get a circle
 * that fits, edges that run against the others of their loop are turned, and loops may run in any direction. What crosses
 * itself is parted: what lies inside an odd number of the loops of a part belongs to it. Parts that overlap become one.
 * @returns a sound region, none of whose loops cross
 * @throws EdgebiteError, with the place, if it cannot be told what was meant: a number that is not finite, a loop that is
 *   open by more, an end further off its circle.
 */
export function repairRegion(value: unknown): Region {
  if (!Array.isArray(value)) throw refused('', 'is not a list of parts', 'give a region: a list of parts');
  const parts = value.map((part: unknown, k): Region => {
    const { outer, holes = [] } = Object(part) as { outer?: unknown; holes?: unknown };
    if (!Array.isArray(holes))
      throw refused(`[${k}].holes`, 'is not a list of loops', 'give a list, empty or not');
    const loops = [outer, ...holes].map((loop, n) =>
      mended(loop, n === 0 ? `[${k}].outer` : `[${k}].holes[${n - 1}]`),
    );
    return normalize(loops, 'evenodd');
  });
  return Object.freeze(vouchFor(union(parts)));
}

function mended(loop: unknown, place: string): Loop {
  const fault = faultIn(drawn, loop);
  if (fault !== null) throw refused(`${place}${fault.at}`, fault.what, fault.remedy);
  const long = (loop as Loop).filter(({ a, b }) => !samePoint(a, b));
  const fitted = inOneDirection(long).map((edge, k) => fittedEdge(edge, `${place}[${k}]`));
  const { edges, gaps } = joinEdges(fitted, true);
  const gap = gaps[0];
  if (gap !== undefined) {
    const what = `ends ${shownNumber(gap.size)} from where [${gap.next}] starts; only smaller gaps are closed`;
    throw refused(`${place}[${gap.edge}]`, what, 'close the loop where it was meant to close');
  }
  return edges;
}

/** Each edge turned, if needed, so that it starts where the one before it ends. */
function inOneDirection(loop: Loop): Edge[] {
  const done: Edge[] = [];
  loop.forEach((edge, k) => {
    const before = done[k - 1];
    const after = loop[k + 1];
    // The first one goes by what follows it.
    const isTurned =
      before === undefined
        ? after !== undefined && !touches(edge.b, after) && touches(edge.a, after)
        : !samePoint(before.b, edge.a) && samePoint(before.b, edge.b);
    done.push(isTurned ? reversed(edge) : edge);
  });
  return done;
}

function touches(p: Edge['a'], edge: Edge): boolean {
  return samePoint(p, edge.a) || samePoint(p, edge.b);
}

function fittedEdge(edge: Edge, place: string): Edge {
  const numbers = [edge.a.x, edge.a.y, edge.b.x, edge.b.y];
  if (edge.kind === 'arc') numbers.push(edge.center.x, edge.center.y);
  if (!numbers.every(Number.isFinite))
    throw refused(place, 'has a number that is not finite', 'write the number that was meant');
  if (edge.kind === 'line') return edge;
  try {
    return fittedArc(edge.a, edge.b, edge.center, edge.ccw, edge.source);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    throw refused(
      place,
      `is no arc: ${error.message.replace(/^\w+: /, '')}`,
      'give the centre that was meant',
    );
  }
}

function refused(at: string, what: string, remedy: string): EdgebiteError {
  const place = `repairRegion: region${at}`;
  return new EdgebiteError(`${place} ${what}; ${remedy}`, { code: 'region', place, remedy });
}
