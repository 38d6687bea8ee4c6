import { inUnit } from './length-unit.js';
import type { AxisZero, Laid } from './setup.js';
import { stackOf } from './stack.js';
import { toStep } from './step.js';

/** Where the readout, or the scale of the quill, is to stand when a tool is as deep as it goes. In its unit. */
export interface DepthTarget {
  readonly exact: number;
  /** The nearest step of what is read. */
  readonly readout: number;
  /** Target less exact. */
  readonly roundingError: number;
  /** How far the end of the tool may be from there, as measured from the face that counts. */
  readonly worst: number;
  readonly rss: number;
}

/** What a depth is measured with, in the unit of the part: heights are over the face that the part lies on. */
export interface DepthTask {
  /** The lowest place that the end of the tool comes to. */
  readonly lowest: number;
  readonly thickness: number;
  /** How far the thickness may be off, to either side. */
  readonly tolerance: number;
  /** The face that the depth counts from: the upper one of a blind cut, the lower one of a cut through the part. */
  readonly from: 'top' | 'bottom';
}

/**
 * The target in Z; null where the setup has no zero there. Over what its zero is taken from the readout shows the sum of its
 * chain, and less by as much as the tool goes below that, or more on the scale of a quill. Where the depth counts from the other face, the
 * thickness of the part lies between, and its tolerance with it.
 *
 * Source: linear stack, see `stackOf`.
 */
export function depthTarget(lay: Laid, task: DepthTask): DepthTarget | null {
  const { z, setup, part } = lay;
  if (z === null || setup.zero.z === null) return null;
  const { units, resolution, sense } = setup.heights;
  const exact = sense * inUnit(task.lowest - setup.zero.z.at, part.units, units) + z.offset + 0;
  const readout = toStep(exact, resolution);
  const off = [
    ...z.links.map(({ tolerance }) => tolerance),
    resolution / 2,
    between(setup.zero.z, lay, task),
  ];
  return { exact, readout, roundingError: readout - exact + 0, ...stackOf(off) };
}

function between(zero: AxisZero, { setup, part }: Laid, task: DepthTask): number {
  const isTop = zero.at === task.thickness;
  return isTop === (task.from === 'top') ? 0 : inUnit(task.tolerance, part.units, setup.heights.units);
}
