import type { ChainPlace } from '../datum/chain.js';
import { along } from '../datum/lie.js';
import { outermost } from '../datum/outermost.js';
import { described } from '../document/described.js';
import type { Vector } from '../geometry/point.js';
import { SAME_DIRECTION } from '../left/walls.js';
import { loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';
import type { Outward } from './touched-side.js';

/** What the places of a chain are read against. */
export interface ChainPart {
  readonly outline: Region;
  readonly axis: 'x' | 'y';
  /** Direction of the axis on the part as drawn. */
  readonly direction: Vector;
}

/** A place on the part: in words, and how far it lies along the axis from the zero of the drawing. */
export interface PartPlace {
  readonly words: string;
  readonly at: number;
  /** Which way its face looks along the axis; null of a place that is no face. */
  readonly outward: Outward;
}

/** The words for the outermost places of the part as it lies: the least along the axis, and the most. */
export const OUTERMOST = { x: ['left', 'right'], y: ['front', 'back'] } as const;

const EDGE = /^(outline:\d+|hole:\d+:\d+)$/;

/** The place on the part that a chain ends at, or what is wrong with it. */
export function placeOnPart(place: ChainPlace, part: ChainPart): PartPlace | string {
  const { outline, axis, direction } = part;
  if (typeof place !== 'string')
    return { words: placeWord(place), at: along(place, direction), outward: null };
  const own: readonly string[] = OUTERMOST[axis];
  if (own.includes(place)) {
    const [least, most] = outermost(outline, direction);
    return { words: place, at: place === own[0] ? least : most, outward: place === own[0] ? -1 : 1 };
  }
  if (EDGE.test(place)) return edgePlace(place, part);
  const choice = `"${own[0]}", "${own[1]}", a straight edge such as "outline:0", or [x, y]`;
  const other: readonly string[] = OUTERMOST[axis === 'x' ? 'y' : 'x'];
  if (other.includes(place))
    return `is ${described(place)}, which is no end of the part in ${axis}; use ${choice}`;
  return `is ${described(place)}, which is no place on the part; the chain must end at ${choice}`;
}

function edgePlace(name: string, { outline, axis, direction }: ChainPart): PartPlace | string {
  const edge = loopsOf(outline)
    .flat()
    .find(({ source }) => source === name);
  if (edge === undefined) return `is ${described(name)}, but the part has no such edge`;
  if (edge.kind !== 'line')
    return `is ${described(name)}, which is round; a finder or a stop needs a straight edge`;
  const length = Math.hypot(edge.b.x - edge.a.x, edge.b.y - edge.a.y);
  const lean = Math.abs(along(edge.b, direction) - along(edge.a, direction)) / length;
  if (lean > SAME_DIRECTION)
    return `is ${described(name)}, which does not stand square to ${axis} in this setup`;
  // Metal lies to the left of an edge.
  const out = along({ x: edge.b.y - edge.a.y, y: edge.a.x - edge.b.x }, direction);
  return { words: name, at: along(edge.a, direction), outward: out > 0 ? 1 : -1 };
}

/** A place as its name or its coordinates. */
export function placeWord(place: ChainPlace): string {
  return typeof place === 'string' ? place : `(${place.x}, ${place.y})`;
}
