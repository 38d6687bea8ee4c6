import type { Point } from '../geometry/point.js';
import { type Laid, readoutAt } from './setup.js';
import { type Stack, stackOfCauses } from './stack.js';
import { toStep } from './step.js';
import { turnOff } from './turn.js';

type Pair = readonly [number, number];

/** The readout numbers for a point on the part. All but `center` are in the unit of the readout. */
export interface Target {
  /** On the part as drawn, in its unit. */
  readonly center: Point;
  readonly exact: Pair;
  /** The nearest step of the readout. */
  readonly readout: Pair;
  /** Target less exact. */
  readonly roundingError: Pair;
  /**
   * The possible error of the spindle at the target: the chain, half a step of the readout, and the angle of the
   * part.
   */
  readonly worst: Pair;
  readonly rss: Pair;
}

/**
 * The target of the readout for a point on the part. The readout cannot resolve less than half a step, so half a step
 * adds to the errors of the chain.
 */
export function targetAt(lay: Laid, center: Point): Target {
  const { resolution } = lay.setup.readout;
  const exact = readoutAt(lay, center);
  const readout: Pair = [toStep(exact[0], resolution), toStep(exact[1], resolution)];
  const turned = turnOff(lay, center);
  const [x, y] = (['x', 'y'] as const).map((axis, k) =>
    stackOfCauses([
      ...lay[axis].links.map(({ tolerance }) => ({ by: tolerance, share: 1 })),
      { by: resolution / 2, share: 1 },
      ...(turned[k] ?? []),
    ]),
  ) as [Stack, Stack];
  return {
    center,
    exact,
    readout,
    roundingError: [readout[0] - exact[0] + 0, readout[1] - exact[1] + 0],
    worst: [x.worst, y.worst],
    rss: [x.rss, y.rss],
  };
}
