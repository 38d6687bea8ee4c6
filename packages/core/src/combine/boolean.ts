import type { Operand } from '../noding/gather.js';
import { arrange } from '../overlay/arrange.js';
import type { Subdivision } from '../overlay/label.js';
import { collect } from '../overlay/stitch.js';
import { windings } from '../overlay/windings.js';
import { loopsOf } from '../region/measure.js';
import type { Loop, Region } from '../region/region.js';

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

function parts(subdivision: Subdivision, keeps: (face: number) => boolean): Region {
  const kept = new Uint8Array(subdivision.faceCount);
  for (let face = 1; face < kept.length; face++) if (keeps(face)) kept[face] = 1;
  return collect(subdivision, kept).map(({ outer, holes }) => ({ outer, holes }));
}
