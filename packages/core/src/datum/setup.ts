/*
 * Room: how a part lies on the machine, and what the readout shows there.
 * In: lies, zeros with their chains of lengths, readout step.
 * Out: readout targets with worst case and root of squares; machine axes; keep-outs.
 */

import { moved, type Point } from '../geometry/point.js';
import { type Link, type LinkSize, type SideName, sizeOfLink } from './chain.js';
import type { ToleranceClass } from './general-tolerance.js';
import { inUnit, type LengthUnit } from './length-unit.js';
import { type Axes, along, axesOf, type Lie, onPart } from './lie.js';
import { type Stack, stackOf } from './stack.js';

/** The unit and step of a readout. */
export interface Readout {
  readonly units: LengthUnit;
  /** Its smallest step, in its unit. */
  readonly resolution: number;
}

/** What heights are read on: the readout, whose numbers grow upwards, or the scale of the quill, whose grow downwards. */
export interface HeightScale extends Readout {
  readonly on: 'readout' | 'quill';
  /** +1 where numbers grow upwards, -1 where they grow downwards. */
  readonly sense: 1 | -1;
}

/** How the zero of one axis relates to the part. */
export interface AxisZero {
  /** The place on the part that the chain ends at: a face, a name, or a place in words. */
  readonly place: string;
  /** How far that place lies along the machine's axis from the zero of the drawing, in the part's unit. */
  readonly at: number;
  /** In working order: from the spindle to the touched face, and on to that place. */
  readonly links: readonly Link[];
  /** Where along the other axis the part is touched, or bears; of no meaning in Z. */
  readonly contact: Contact;
}

/** A place along an axis of the machine, or a stretch where it may be, from the zero of the drawing in the part's unit. */
export interface Contact {
  readonly middle: number;
  /** How far it may lie from there, to either side. */
  readonly half: number;
  /** All lengths that stand square to the face between it and the spindle, and on to the place of the zero. */
  readonly lever: number;
}

/** A stop on the table or the vice. It faces the opposite way to the side of the part that bears on it. */
export interface Stop {
  readonly id: string;
  /** The side of the part, as it lies, that bears on it. */
  readonly face: SideName;
}

/** One clamping of the part: how it lies, where the zero is, and which cuts are made. */
export interface Setup {
  readonly id: string;
  readonly name: string | null;
  readonly lie: Lie;
  /** Error of its turn, to either side; radians. */
  readonly angleTolerance: number;
  readonly readout: Readout;
  /** The scale on which heights are read. */
  readonly heights: HeightScale;
  readonly stops: readonly Stop[];
  /** In Z, heights are over the face that the part lies on; null where the job does not say. */
  readonly zero: { readonly x: AxisZero; readonly y: AxisZero; readonly z: AxisZero | null };
  /** ids of cuts. */
  readonly cuts: readonly string[];
}

/** The part that a setup holds. */
export interface SetPart {
  /** Unit of its coordinates. */
  readonly units: LengthUnit;
  /** Class of general tolerances for its sizes; null if it names none. */
  readonly tolerances: ToleranceClass | null;
  /** How far its own sizes in x and y may be off, to either side; null where those of its class hold. */
  readonly sizeTolerance: number | null;
}

/** A zero worked out: lengths in the readout's unit. */
export interface ZeroSize extends Stack {
  /** The readout number with the spindle over the place on the part. */
  readonly offset: number;
  /** One for each link. */
  readonly links: readonly LinkSize[];
}

/** A setup ready for use. */
export interface Laid {
  readonly setup: Setup;
  readonly part: SetPart;
  readonly axes: Axes;
  readonly x: ZeroSize;
  readonly y: ZeroSize;
  readonly z: ZeroSize | null;
}

/** Works out the axes and the zeros of a setup. */
export function laid(setup: Setup, part: SetPart): Laid {
  return {
    setup,
    part: { units: part.units, tolerances: part.tolerances, sizeTolerance: part.sizeTolerance },
    axes: axesOf(setup.lie),
    x: zeroSize(setup.zero.x, setup.readout.units, part.tolerances),
    y: zeroSize(setup.zero.y, setup.readout.units, part.tolerances),
    z: setup.zero.z === null ? null : zeroSize(setup.zero.z, setup.heights.units, part.tolerances),
  };
}

function zeroSize({ links }: AxisZero, units: LengthUnit, grade: ToleranceClass | null): ZeroSize {
  const sizes = links.map((link) => sizeOfLink(link, units, grade));
  return {
    offset: sizes.reduce((sum, { offset }) => sum + offset, 0),
    links: sizes,
    ...stackOf(sizes.map(({ tolerance }) => tolerance)),
  };
}

/**
 * The readout numbers with the spindle over a point of the part, in the unit of the readout, not rounded: along each
 * axis the distance from the place of the zero's chain to the point, plus the chain.
 */
export function readoutAt(lay: Laid, p: Point): readonly [number, number] {
  const one = (axis: 'x' | 'y') => {
    const { at } = lay.setup.zero[axis];
    return inUnit(along(p, lay.axes[axis]) - at, lay.part.units, lay.setup.readout.units) + lay[axis].offset;
  };
  return [one('x') + 0, one('y') + 0];
}

/** The point of the part under the spindle at given readout numbers: the inverse of `readoutAt`. */
export function placeUnder(lay: Laid, [x, y]: readonly [number, number]): Point {
  const one = (axis: 'x' | 'y', shown: number) =>
    inUnit(shown - lay[axis].offset, lay.setup.readout.units, lay.part.units) + lay.setup.zero[axis].at;
  const v = onPart(lay.axes, one('x', x), one('y', y));
  return { x: v.dx + 0, y: v.dy + 0 };
}

/** The place on the part as drawn where the places of both chains meet: what its positions are measured from. */
export function datumOf({ axes, setup }: Laid): Point {
  return moved({ x: 0, y: 0 }, onPart(axes, setup.zero.x.at, setup.zero.y.at));
}
