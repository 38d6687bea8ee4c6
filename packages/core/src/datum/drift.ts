import { distance, type Point, type Vector } from '../geometry/point.js';
import { generalTolerance } from './general-tolerance.js';
import { inUnit } from './length-unit.js';
import { onPart } from './lie.js';
import { datumOf, type Laid, type SetPart } from './setup.js';
import { targetAt } from './target.js';

/** One cause of error: how far it moves something when it is at its limit to one side. Another key, another cause. */
export interface Cause {
  readonly key: string;
  readonly by: Vector;
}

/**
 * How far something may stand from where it is drawn, on the part and in its unit: a known shift, and causes that act
 * on their own, each anywhere from all of it backwards to all of it forwards.
 */
export interface Drift {
  readonly shift: Vector;
  readonly causes: readonly Cause[];
}

/** Something that may be off, and the place on the part that its position is measured from. */
export interface Placed {
  readonly drift: Drift;
  readonly from: Point;
}

const STILL: Vector = { dx: 0, dy: 0 };

/** A place of the outline, which is drawn where it is. */
export function asDrawn(at: Point): Placed {
  return { drift: { shift: STILL, causes: [] }, from: at };
}

/**
 * How far a round cut may be off: by the known rounding of its target, the links of both chains, and half a step of
 * the readout along each axis.
 */
export function driftAt(lay: Laid, cut: string, center: Point): Placed {
  const { roundingError } = targetAt(lay, center);
  const [x, y] = roundingError.map((by) => inPart(lay, by)) as [number, number];
  const step = inPart(lay, lay.setup.readout.resolution / 2);
  return {
    from: datumOf(lay),
    drift: {
      shift: onPart(lay.axes, x, y),
      causes: [...chainCauses(lay), ...axisCauses(lay, `read ${cut}`, step)],
    },
  };
}

/** The same of a cut along a path, of which each point has a rounding of its own: that is half a step more. */
export function driftOfPath(lay: Laid, cut: string): Placed {
  const step = inPart(lay, lay.setup.readout.resolution / 2);
  const own = [...axisCauses(lay, `read ${cut}`, step), ...axisCauses(lay, `round ${cut}`, step)];
  return { from: datumOf(lay), drift: { shift: STILL, causes: [...chainCauses(lay), ...own] } };
}

function inPart(lay: Laid, length: number): number {
  return inUnit(length, lay.setup.readout.units, lay.part.units);
}

function axisCauses(lay: Laid, what: string, step: number): Cause[] {
  const key = (axis: string) => `${what} in ${lay.setup.id} ${axis}`;
  return [
    { key: key('x'), by: onPart(lay.axes, step, 0) },
    { key: key('y'), by: onPart(lay.axes, 0, step) },
  ];
}

/** Where the place reads more than it is taken for, the spindle stands short of it by as much. */
function chainCauses(lay: Laid): Cause[] {
  return (['x', 'y'] as const).flatMap((axis) =>
    lay.setup.zero[axis].links.flatMap(({ name, way }, k): Cause[] => {
      const tolerance = inPart(lay, (lay[axis].links[k] as { tolerance: number }).tolerance);
      if (tolerance === 0) return [];
      const by = way < 0 ? tolerance : -tolerance;
      return [
        {
          key: name === null ? `link ${k} in ${lay.setup.id} ${axis}` : `thing ${name}`,
          by: axis === 'x' ? onPart(lay.axes, by, 0) : onPart(lay.axes, 0, by),
        },
      ];
    }),
  );
}

/**
 * How far one thing may move against another. What they share moves both alike and drops out; where their places are
 * measured from different places of the part, the part's own size between those adds its general tolerance.
 */
export function driftBetween(one: Placed, other: Placed, part: SetPart): Drift {
  const sum = new Map<string, Vector>();
  const add = (causes: readonly Cause[], sign: number) => {
    for (const { key, by } of causes) {
      const so = sum.get(key) ?? STILL;
      sum.set(key, { dx: so.dx + sign * by.dx, dy: so.dy + sign * by.dy });
    }
  };
  add(other.drift.causes, 1);
  add(one.drift.causes, -1);
  add(sizeCauses(one.from, other.from, part), 1);
  return {
    shift: {
      dx: other.drift.shift.dx - one.drift.shift.dx,
      dy: other.drift.shift.dy - one.drift.shift.dy,
    },
    causes: [...sum].map(([key, by]) => ({ key, by })).filter(({ by }) => by.dx !== 0 || by.dy !== 0),
  };
}

function sizeCauses(a: Point, b: Point, { units, tolerances }: SetPart): Cause[] {
  if (tolerances === null || distance(a, b) === 0) return [];
  const off = (length: number) => {
    const general = generalTolerance(inUnit(Math.abs(length), units, 'mm'), tolerances);
    return general === null ? 0 : inUnit(general, 'mm', units);
  };
  return [
    { key: 'size in x', by: { dx: off(b.x - a.x), dy: 0 } },
    { key: 'size in y', by: { dx: 0, dy: off(b.y - a.y) } },
  ];
}
