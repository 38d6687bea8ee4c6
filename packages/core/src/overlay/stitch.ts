import { OverlayError } from '../noding/overlay-error.js';
import { loopArea } from '../region/measure.js';
import type { Loop, RegionPart } from '../region/region.js';
import { isSliver } from '../region/sliver.js';
import { isClosed, regionFault } from './certify-region.js';
import { Drawer, type MayName } from './draw.js';
import { type Border, borderOf } from './keep.js';
import type { Subdivision } from './label.js';
import { endOf, startOf } from './rotate.js';

/** A part of a result, and one of the faces that it is made of. */
export interface CollectedPart extends RegionPart {
  readonly face: number;
}

/**
 * The faces marked in `kept` as a region. Parts that touch in a point only are parts of their own; loops are
 * split where they touch themselves; what is thinner than a few weld tolerances is left out.
 */
export function collect(
  subdivision: Subdivision,
  kept: Uint8Array,
  mayName: MayName = always,
): CollectedPart[] {
  const border = borderOf(subdivision, kept);
  const drawer = new Drawer(subdivision, border, mayName);
  const { tolerance } = subdivision.graph.curves;
  const bodies = new Map<number, Body>();
  let dropped = 0;
  const done = new Uint8Array(border.isBorder.length);
  for (const first of border.halves) {
    if (done[first] === 1) continue;
    const face = subdivision.faceOf[first] as number;
    const id = border.bodyOf(face);
    const body = bodies.get(id) ?? { face, outer: null, area: 0, holes: [], sizes: [] };
    bodies.set(id, body);
    for (const halves of simpleLoops(subdivision, border, traced(subdivision, border, first, done))) {
      const loop = drawer.loop(halves);
      // What does not close has no area, and is told of with the rest.
      const size = isClosed(loop) ? loopArea(loop) : Number.NaN;
      if (isSliver(loop, Math.abs(size), tolerance)) dropped += size;
      else if (size < 0) {
        body.holes.push(loop);
        body.sizes.push(size);
      } else if (!(size <= body.area)) {
        body.outer = loop;
        body.area = size;
      }
    }
  }
  const parts: CollectedPart[] = [];
  const sizes: number[] = [];
  for (const { face, outer, area, holes, sizes: taken } of bodies.values()) {
    if (outer === null) continue;
    parts.push({ outer, holes, face });
    sizes.push(area);
    for (const size of taken) sizes.push(size);
  }
  const fault = regionFault(subdivision, border, parts, dropped, sizes);
  if (fault === null) return parts;
  throw new OverlayError(
    `collect: ${fault}; this is a fault of the library, please report it with the input`,
  );
}

/** A part in the making, and the areas of its holes. */
interface Body {
  readonly face: number;
  outer: Loop | null;
  area: number;
  readonly holes: Loop[];
  readonly sizes: number[];
}

const always: MayName = () => true;

/** Goes round once along the border with what is kept to the left, hugging it at every vertex. */
function traced(subdivision: Subdivision, border: Border, first: number, done: Uint8Array): number[] {
  const { cw } = subdivision.rotation;
  const halves: number[] = [];
  let half = first;
  do {
    halves.push(half);
    done[half] = 1;
    half = cw[half ^ 1] as number;
    while (border.isBorder[half] === 0) half = cw[half] as number;
  } while (half !== first);
  return halves;
}

/** Splits a closed walk into loops that visit no vertex twice. */
function simpleLoops({ graph }: Subdivision, { leaving }: Border, walk: number[]): number[][] {
  let k = 0;
  while (k < walk.length && leaving[startOf(graph, walk[k] as number)] === 1) k++;
  if (k === walk.length) return [walk];
  const loops: number[][] = [];
  const stack: number[] = [];
  const heightOf = new Map<number, number>();
  for (const half of walk) {
    heightOf.set(startOf(graph, half), stack.length);
    stack.push(half);
    const back = heightOf.get(endOf(graph, half));
    if (back === undefined) continue;
    const loop = stack.splice(back);
    for (const one of loop) heightOf.delete(startOf(graph, one));
    loops.push(loop);
  }
  return loops;
}
