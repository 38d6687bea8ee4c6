import type { Point } from '../geometry/point.js';
import { type Laid, readoutAt } from './setup.js';
import { stackOf } from './stack.js';
import { toStep } from './step.js';

type Pair = readonly [number, number];

/** Where the readout is to stand for a place on the part. All but `center` in the readout's unit. */
export interface Target {
  /** On the part as drawn, in its unit. */
  readonly center: Point;
  readonly exact: Pair;
  /** The nearest step of the readout. */
  readonly readout: Pair;
  /** Target less exact. */
  readonly roundingError: Pair;
  /** How far the spindle may stand from the target: the chain and half a step of the readout. */
  readonly worst: Pair;
  readonly rss: Pair;
}

/**
 * The readout's target for a place on the part. The readout cannot tell places apart that are within half a step
 * of what it shows, so half a step adds to the errors of the chain.
 */
export function targetAt(lay: Laid, center: Point): Target {
  const { resolution } = lay.setup.readout;
  const exact = readoutAt(lay, center);
  const readout: Pair = [toStep(exact[0], resolution), toStep(exact[1], resolution)];
  const [x, y] = (['x', 'y'] as const).map((axis) =>
    stackOf([...lay[axis].links.map(({ tolerance }) => tolerance), resolution / 2]),
  ) as [ReturnType<typeof stackOf>, ReturnType<typeof stackOf>];
  return {
    center,
    exact,
    readout,
    roundingError: [readout[0] - exact[0] + 0, readout[1] - exact[1] + 0],
    worst: [x.worst, y.worst],
    rss: [x.rss, y.rss],
  };
}
