import type { Point, Vector } from '../geometry/point.js';
import { inUnit } from './length-unit.js';
import { along, onPart } from './lie.js';
import type { AxisZero, Laid } from './setup.js';

/** What a lay that may be turned does to a place. */
export interface TurnCause {
  readonly key: string;
  readonly by: Vector;
  readonly turn: number;
  readonly share: number;
}

/** A product of two errors, each spread evenly, has a third of its limit squared, as a share of what an even spread has. */
const OF_PRODUCT = 1 / Math.sqrt(3);

/**
 * How far cuts may be off as the part may lie turned by the angle tolerance of the setup. Each axis is zeroed at a place
 * along its face; from there on the face runs off its axis. So places move about the one where those two cross, by the angle
 * times their distance. Where along the face is not said, it may be anywhere: that adds a product of two errors.
 *
 * Source: plane rotation, to first order; what is left of it, at worst, is in `turnSlack`. Variance of a product of
 * independent errors: JCGM 100:2008 (GUM), 5.1.2, note.
 */
export function turnCauses(lay: Laid, place: Point): TurnCause[] {
  const { axes, setup } = lay;
  const angle = setup.angleTolerance;
  if (angle === 0) return [];
  const { x, y } = setup.zero;
  const [u, v] = [along(place, axes.x), along(place, axes.y)];
  // Turned over, the part turns the other way round as seen from the drawing.
  const sense = axes.x.dx * axes.y.dy - axes.x.dy * axes.y.dx > 0 ? -1 : 1;
  return [
    {
      key: `turn of ${setup.id}`,
      by: onPart(axes, angle * (v - x.contact.middle), -angle * (u - y.contact.middle)),
      turn: sense * angle,
      share: 1,
    },
    ...anywhere(x, (by) => onPart(axes, angle * by, 0), `place of x in ${setup.id}`),
    ...anywhere(y, (by) => onPart(axes, 0, angle * by), `place of y in ${setup.id}`),
  ];
}

function anywhere({ contact }: AxisZero, move: (by: number) => Vector, key: string): TurnCause[] {
  return contact.half === 0 ? [] : [{ key, by: move(contact.half), turn: 0, share: OF_PRODUCT }];
}

/** What the first order leaves out of a turn, at worst, in any direction: the squares of the angle, with all its arms. */
export function turnSlack({ axes, setup }: Laid, place: Point): number {
  const angle = setup.angleTolerance;
  if (angle === 0) return 0;
  const { x, y } = setup.zero;
  const arms = [
    along(place, axes.x) - x.at,
    along(place, axes.y) - y.at,
    x.contact.middle - y.at,
    y.contact.middle - x.at,
    x.contact.half,
    y.contact.half,
    x.contact.lever,
    y.contact.lever,
  ];
  return angle * angle * arms.reduce((sum, arm) => sum + Math.abs(arm), 0);
}

/** How far a target may be off along each axis for that, in the unit of the readout: by cause, with its share. */
export function turnOff(lay: Laid, place: Point): readonly (readonly { by: number; share: number }[])[] {
  const inReadout = (length: number) => inUnit(length, lay.part.units, lay.setup.readout.units);
  const causes = turnCauses(lay, place);
  return (['x', 'y'] as const).map((axis) => {
    const way = lay.axes[axis];
    return causes
      .map(({ by, share }) => ({ by: inReadout(by.dx * way.dx + by.dy * way.dy), share }))
      .concat(causes.length === 0 ? [] : [{ by: inReadout(turnSlack(lay, place)), share: 0 }]);
  });
}
