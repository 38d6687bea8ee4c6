import type { Point, Vector } from '../geometry/point.js';
import { generalTolerance } from './general-tolerance.js';
import { EXACT, type Growth, type Size } from './growth.js';
import { inUnit } from './length-unit.js';
import { onPart } from './lie.js';
import { datumOf, type Laid, type SetPart } from './setup.js';
import { targetAt } from './target.js';
import { turnCauses, turnSlack } from './turn.js';

/**
 * One cause of error at its limit to one side: how far it moves something, how far it turns it (radians), and by how much
 * it makes a cut larger. Another key, another cause.
 */
export interface Cause {
  readonly key: string;
  readonly by: Vector;
  readonly turn: number;
  readonly grows: Growth;
  /** By how much less than its limit it counts in a root of squares: a product of two errors is seldom at its own. */
  readonly share: number;
}

/** How far something may stand from where it is drawn, on the part and in its unit. */
export interface Errors {
  /** What is known: the rounding of a target, and by how much a cutter cuts over its size on the whole. */
  readonly shift: Vector;
  readonly grows: Growth;
  /** They act on their own, each anywhere from all of it backwards to all of it forwards. */
  readonly causes: readonly Cause[];
  /** What a linear sum leaves out, in any direction, at worst. */
  readonly slack: number;
}

/** Something that may be off, and the place on the part that its position is measured from. */
export interface Placed {
  readonly from: Point;
  /** Its errors at a place of it: what turns moves far places further. */
  readonly errorsAt: (place: Point) => Errors;
}

/** A cause that acts on two things: what it moves the second by against the first, and how each grows and turns. */
export interface Relative {
  readonly key: string;
  readonly by: Vector;
  readonly one: Growth & { readonly turn: number };
  readonly other: Growth & { readonly turn: number };
  readonly share: number;
}

/** How far one thing may stand from where it is drawn beside another. */
export interface Drift {
  readonly shift: Vector;
  readonly one: Growth;
  readonly other: Growth;
  readonly causes: readonly Relative[];
  readonly slack: number;
}

/** What of a boundary grows: the outside of a cut, the inside of a ring, or nothing, of the part's own edges. */
export type Wall = 'rim' | 'core' | 'own';

/** By how much the metal at a boundary gives way as a cut grows. */
export function giveWay({ rim, core }: Growth, wall: Wall): number {
  return wall === 'own' ? 0 : wall === 'rim' ? rim : -core;
}

const STILL: Vector = { dx: 0, dy: 0 };
const NO_ERRORS: Errors = { shift: STILL, grows: EXACT, causes: [], slack: 0 };

/** A place of the outline, which is drawn where it is. */
export function asDrawn(at: Point): Placed {
  return { from: at, errorsAt: () => NO_ERRORS };
}

/**
 * How far a round cut may be off: by the known rounding of its target, the links of both chains, half a step of the readout
 * along each axis, the turn of the lay, and the size of its tool.
 */
export function driftAt(lay: Laid, cut: string, center: Point, size: Size): Placed {
  const { roundingError } = targetAt(lay, center);
  const [x, y] = roundingError.map((by) => inPart(lay, by)) as [number, number];
  const step = inPart(lay, lay.setup.readout.resolution / 2);
  const errors: Errors = {
    shift: onPart(lay.axes, x, y),
    grows: size.known,
    causes: [
      ...chainCauses(lay),
      ...axisCauses(lay, `read ${cut}`, step),
      ...turnCauses(lay, center).map(plain),
      ...size.causes.map(({ key, grows }) => plain({ key, grows })),
    ],
    slack: turnSlack(lay, center),
  };
  return { from: datumOf(lay), errorsAt: () => errors };
}

/** The same of a cut along a path, of which each point has a rounding of its own: that is half a step more. */
export function driftOfPath(lay: Laid, cut: string, size: Size): Placed {
  const step = inPart(lay, lay.setup.readout.resolution / 2);
  const fixed = [
    ...chainCauses(lay),
    ...axisCauses(lay, `read ${cut}`, step),
    ...axisCauses(lay, `round ${cut}`, step),
    ...size.causes.map(({ key, grows }) => plain({ key, grows })),
  ];
  return {
    from: datumOf(lay),
    errorsAt: (place) => ({
      shift: STILL,
      grows: size.known,
      causes: [...fixed, ...turnCauses(lay, place).map(plain)],
      slack: turnSlack(lay, place),
    }),
  };
}

/** A cause that does nothing but what is said. */
function plain(given: Partial<Cause> & { readonly key: string }): Cause {
  return { by: STILL, turn: 0, grows: EXACT, share: 1, ...given };
}

function inPart(lay: Laid, length: number): number {
  return inUnit(length, lay.setup.readout.units, lay.part.units);
}

function axisCauses(lay: Laid, what: string, step: number): Cause[] {
  const key = (axis: string) => `${what} in ${lay.setup.id} ${axis}`;
  return [
    plain({ key: key('x'), by: onPart(lay.axes, step, 0) }),
    plain({ key: key('y'), by: onPart(lay.axes, 0, step) }),
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
        plain({
          key: name === null ? `link ${k} in ${lay.setup.id} ${axis}` : `thing ${name}`,
          by: axis === 'x' ? onPart(lay.axes, by, 0) : onPart(lay.axes, 0, by),
        }),
      ];
    }),
  );
}

/** A boundary: what it belongs to, and a place of it. */
export interface At {
  readonly placed: Placed;
  readonly at: Point;
}

/**
 * How far one thing may move against another. What they share moves both alike and drops out; where their places are
 * measured from different places of the part, the part's own size between those adds its tolerance.
 */
export function driftBetween(one: At, other: At, part: SetPart): Drift {
  const [a, b] = [one.placed.errorsAt(one.at), other.placed.errorsAt(other.at)];
  const sum = new Map<string, Relative>();
  const add = (cause: Cause, side: 'one' | 'other') => {
    const { key, share, turn, grows } = cause;
    const so = sum.get(key) ?? { key, share, by: STILL, one: NOTHING, other: NOTHING };
    const sign = side === 'one' ? -1 : 1;
    const by = { dx: so.by.dx + sign * cause.by.dx, dy: so.by.dy + sign * cause.by.dy };
    sum.set(key, { ...so, by, [side]: { ...grows, turn } });
  };
  for (const cause of b.causes) add(cause, 'other');
  for (const cause of a.causes) add(cause, 'one');
  for (const cause of sizeCauses(one.placed.from, other.placed.from, part)) add(cause, 'other');
  return {
    shift: { dx: b.shift.dx - a.shift.dx, dy: b.shift.dy - a.shift.dy },
    one: a.grows,
    other: b.grows,
    causes: [...sum.values()].filter(isAny),
    slack: a.slack + b.slack,
  };
}

/** What neither grows nor turns. */
const NOTHING = { ...EXACT, turn: 0 };

function isAny({ by, one, other }: Relative): boolean {
  return [by.dx, by.dy, ...Object.values(one), ...Object.values(other)].some((value) => value !== 0);
}

/** Share of how far out two places lie within which they lie at one x or y: one may have come through the readout's unit. */
const SAME = 1e-9;

function sizeCauses(a: Point, b: Point, { units, tolerances, sizeTolerance }: SetPart): Cause[] {
  const same = SAME * (1 + Math.max(...[a.x, a.y, b.x, b.y].map(Math.abs)));
  const off = (length: number) => {
    if (Math.abs(length) <= same) return 0;
    if (sizeTolerance !== null) return sizeTolerance;
    const general =
      tolerances === null ? null : generalTolerance(inUnit(Math.abs(length), units, 'mm'), tolerances);
    return general === null ? 0 : inUnit(general, 'mm', units);
  };
  return [
    plain({ key: 'size in x', by: { dx: off(b.x - a.x), dy: 0 } }),
    plain({ key: 'size in y', by: { dx: 0, dy: off(b.y - a.y) } }),
  ];
}
