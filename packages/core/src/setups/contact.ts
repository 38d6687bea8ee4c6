import type { Link } from '../datum/chain.js';
import { inUnit, type LengthUnit } from '../datum/length-unit.js';
import { along } from '../datum/lie.js';
import { shownPoint } from '../geometry/shown.js';
import { bad, good, pointOf, type Read } from '../job/read-edges.js';
import type { AxisPart, Face } from './faces.js';

/** Where along the other axis a face is touched, and how far from there it may be, to either side. */
export interface ContactSpan {
  readonly middle: number;
  readonly half: number;
}

/** Share of a face's length by which a place may lie past its end, by rounding. */
const PAST = 1e-9;

/**
 * Where a face is touched or bears: near a place that the job gives, else anywhere along it; null of a stop.
 * @param path JSON Pointer to the place
 */
export function contactOf(
  face: Face | null,
  given: readonly [number, number] | undefined,
  path: string,
  { part }: { readonly part: AxisPart },
): Read<ContactSpan | null> {
  if (face === null) {
    if (given === undefined) return good(null);
    return bad(
      path,
      'is a place of the part, but a stop is touched; give it in "bears", where the part bears on it',
    );
  }
  const [least, most] = face.stretch;
  if (given === undefined) return good({ middle: (least + most) / 2, half: (most - least) / 2 });
  const middle = along(pointOf(given), part.across);
  const slack = PAST * (1 + Math.abs(least) + Math.abs(most));
  if (middle < least - slack || middle > most + slack) {
    return bad(
      path,
      `is ${shownPoint(pointOf(given))}, which is not beside ${face.words}; take a place on that face`,
    );
  }
  return good({ middle, half: 0 });
}

/** All lengths that stand square to a face between the spindle and the place of the zero, in the unit of the part. */
export function leverOf(links: readonly Link[], part: LengthUnit): number {
  return links
    .filter(({ kind }) => kind === 'touch' || kind === 'block' || kind === 'measured')
    .reduce((sum, { by, units }) => sum + Math.abs(inUnit(by, units, part)), 0);
}
