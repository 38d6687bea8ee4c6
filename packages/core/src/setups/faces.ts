import type { SideName } from '../datum/chain.js';
import { along } from '../datum/lie.js';
import { outermost, outermostStretch } from '../datum/outermost.js';
import { described } from '../document/described.js';
import type { Vector } from '../geometry/point.js';
import type { PartName } from '../job/job.js';
import { SAME_DIRECTION } from '../left/walls.js';
import { loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';

/** The part as an axis of a setup sees it. */
export interface AxisPart {
  readonly outline: Region;
  readonly names: readonly PartName[];
  readonly axis: 'x' | 'y';
  /** Direction of the axis on the part as drawn, and of the other one. */
  readonly direction: Vector;
  readonly across: Vector;
}

/** A face of the part: how it is called, how far it lies along the axis from the zero of the drawing, where it looks. */
export interface Face {
  readonly words: string;
  readonly at: number;
  /** Which way it looks along the axis. */
  readonly outward: 1 | -1;
  /** From where to where it stands along the other axis; one place, of a corner or a round. */
  readonly stretch: readonly [number, number];
}

/** The sides of a part in an axis: the least along it, and the most. */
export const SIDES_OF = { x: ['left', 'right'], y: ['front', 'back'] } as const;

const EDGE = /^(outline:\d+|hole:\d+:\d+)$/;

/** Which way the side looks that a part has outermost, along its axis. */
export function lookOf(side: SideName): { readonly axis: 'x' | 'y'; readonly outward: 1 | -1 } {
  const axis = side === 'left' || side === 'right' ? 'x' : 'y';
  return { axis, outward: side === SIDES_OF[axis][0] ? -1 : 1 };
}

/** The side of an axis that is so. */
export function sideOf(axis: 'x' | 'y', outward: 1 | -1): SideName {
  return SIDES_OF[axis][outward < 0 ? 0 : 1];
}

/** The face of a name, or what is wrong with it, to go after the name's key. */
export function faceOf(name: string, part: AxisPart): Face | string {
  const { outline, axis, direction, across, names } = part;
  const own: readonly string[] = SIDES_OF[axis];
  if (own.includes(name)) {
    const [least, most] = outermost(outline, direction);
    const [at, outward] = name === own[0] ? ([least, -1] as const) : ([most, 1] as const);
    return { words: name, at, outward, stretch: outermostStretch(outline, direction, at, across) };
  }
  if (SIDES_OF[axis === 'x' ? 'y' : 'x'].some((side) => side === name))
    return `is ${described(name)}, which is no face in ${axis}; in ${axis} there are ${facesOf(part)}`;
  if (name === 'top' || name === 'bottom')
    return `is ${described(name)}, which looks up or down; in ${axis} there are ${facesOf(part)}`;
  const of = names.find((one) => one.name === name)?.of ?? name;
  if (!EDGE.test(of))
    return `is ${described(name)}, which is no face of the part; there are ${facesOf(part)}`;
  return edgeFace(name, of, part);
}

/** The faces that there are in an axis, as a sentence names them: names come first. */
export function facesOf({ names, axis }: AxisPart): string {
  const shown = [...SIDES_OF[axis], ...names.filter(({ of }) => EDGE.test(of)).map(({ name }) => name)];
  const listed = shown.slice(0, LISTED).map(described);
  return `${listed.join(', ')} and straight edges such as "outline:0"`;
}

/** So many names a message lists. */
const LISTED = 8;

function edgeFace(
  name: string,
  source: string,
  { outline, names, axis, direction, across }: AxisPart,
): Face | string {
  const edge = loopsOf(outline)
    .flat()
    .find((one) => one.source === source);
  if (edge === undefined) return `is ${described(name)}, but the part has no such edge`;
  if (edge.kind !== 'line')
    return `is ${described(name)}, which is round; a finder or a stop needs a straight edge`;
  const length = Math.hypot(edge.b.x - edge.a.x, edge.b.y - edge.a.y);
  const lean = Math.abs(along(edge.b, direction) - along(edge.a, direction)) / length;
  if (lean > SAME_DIRECTION)
    return `is ${described(name)}, which does not stand square to ${axis} in this setup`;
  // Metal lies to the left of an edge.
  const out = along({ x: edge.b.y - edge.a.y, y: edge.a.x - edge.b.x }, direction);
  const words = names.find(({ of }) => of === source)?.name ?? name;
  const [p, q] = [along(edge.a, across), along(edge.b, across)];
  const stretch = [Math.min(p, q), Math.max(p, q)] as const;
  return { words, at: along(edge.a, direction), outward: out > 0 ? 1 : -1, stretch };
}
