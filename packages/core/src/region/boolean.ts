import { arrange } from './arrange.js';
import type { Operand } from './gather.js';
import type { Subdivision } from './label.js';
import { loopsOf } from './measure.js';
import type { Loop, Region } from './region.js';
import { collect } from './stitch.js';

/** What lies in at least one of the regions. */
export function union(regions: readonly Region[]): Region {
  return overlay(regions.map(loopsOf), (count) => count > 0);
}

/** What lies in all of the regions; nothing if none is given. */
export function intersect(regions: readonly Region[]): Region {
  if (regions.length === 0) return [];
  return overlay(regions.map(loopsOf), (count) => count === regions.length);
}

/** What lies in an odd number of the regions. */
export function xor(regions: readonly Region[]): Region {
  return overlay(regions.map(loopsOf), (count) => count % 2 === 1);
}

/**
 * What is left of a region when others are taken from it, all in one go; their order does not matter and they may
 * overlap. Every edge keeps the source of the edge that it is part of.
 */
export function subtract(from: Region, cuts: readonly Region[]): Region {
  if (from.length === 0) return [];
  const whole = loopsOf(from);
  const subdivision = arrange([whole, ...cuts.map(loopsOf)], [whole]);
  const inWhole = windings(subdivision, (operand) => operand === 0);
  const inCuts = windings(subdivision, (operand) => operand > 0);
  return parts(subdivision, (face) => (inWhole[face] as number) > 0 && (inCuts[face] as number) === 0);
}

/**
 * The region that loops of any direction enclose, by a rule for where they overlap: `nonzero` keeps what they go
 * round at all, `evenodd` what they go round an odd number of times.
 */
export function normalize(loops: readonly Loop[], rule: 'nonzero' | 'evenodd'): Region {
  return overlay([loops], (count) => (rule === 'nonzero' ? count !== 0 : count % 2 !== 0));
}

function overlay(operands: readonly Operand[], keeps: (count: number) => boolean): Region {
  if (operands.every((loops) => loops.length === 0)) return [];
  const subdivision = arrange(operands);
  const count = windings(subdivision, () => true);
  return parts(subdivision, (face) => keeps(count[face] as number));
}

/** For each face, how many times the chosen operands go round it counter-clockwise, in all. */
export function windings(subdivision: Subdivision, counts: (operand: number) => boolean): Int32Array {
  const { graph, order, via, faceOf, faceCount } = subdivision;
  const winding = new Int32Array(faceCount);
  for (let k = 0; k < order.length; k++) {
    const half = via[k] as number;
    const edge = half >> 1;
    let change = 0;
    for (let m = graph.start[edge] as number; m < (graph.start[edge + 1] as number); m++) {
      if (counts(graph.curves.operand[graph.member[m] as number] as number))
        change += graph.sign[m] as number;
    }
    const across = winding[faceOf[half ^ 1] as number] as number;
    winding[order[k] as number] = across + (half & 1 ? -change : change);
  }
  return winding;
}

function parts(subdivision: Subdivision, keeps: (face: number) => boolean): Region {
  const kept = new Uint8Array(subdivision.faceCount);
  for (let face = 1; face < kept.length; face++) if (keeps(face)) kept[face] = 1;
  return collect(subdivision, kept).map(({ outer, holes }) => ({ outer, holes }));
}
