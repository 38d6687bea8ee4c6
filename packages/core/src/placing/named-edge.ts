import type { Edge } from '../geometry/edge.js';
import { samePoint } from '../geometry/point.js';
import { loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';

/**
 * The edge of an outline that has a name, such as `outline:2`. Two arcs of one circle, as full circles are drawn,
 * count as one, which ends where it starts.
 * @param where what the message of an error begins with
 * @throws RangeError if there is no such edge, or several pieces of it
 */
export function edgeNamed(where: string, outline: Region, name: string): Edge {
  const edges = loopsOf(outline).flat();
  const named = edges.filter(({ source }) => source === name);
  const [first, second] = named;
  if (first === undefined) {
    const known = [...new Set(edges.map(({ source }) => source).filter((source) => source !== undefined))];
    throw new RangeError(`${where}: the outline has no edge ${name}; it has ${listed(known)}`);
  }
  if (second === undefined) return first;
  const isCircle =
    named.length === 2 &&
    first.kind === 'arc' &&
    second.kind === 'arc' &&
    samePoint(first.center, second.center) &&
    samePoint(first.a, second.b) &&
    samePoint(first.b, second.a);
  if (isCircle) return { ...first, b: first.a };
  throw new RangeError(`${where}: ${name} is in ${named.length} pieces; measure from another edge`);
}

/** So many names a message lists; a part of more edges has them in its report. */
const LISTED = 12;

function listed(names: readonly string[]): string {
  if (names.length === 0) return 'no names';
  if (names.length <= LISTED) return names.join(', ');
  return `${names.slice(0, LISTED).join(', ')} and ${names.length - LISTED} more`;
}
