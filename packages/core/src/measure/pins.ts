import type { Vector } from '../geometry/point.js';
import { besides, hasRoom, type Seat } from './seat.js';

/** A pair of pins that goes in by less than this more than one pin does, of a change of the radius, tells nothing. */
const LEAST_GAIN = 0.02;

/**
 * A bore is measured on its way to size, and may end up small: pins are to go in where its radius is this share of the drawn one,
 * and to keep as far from its horns.
 */
const UNDER_SIZE = 0.9;

/** Why pins cannot be used in an arc. */
export type PinFault = 'too large' | 'too small' | 'touches a horn' | 'off the arc';

/**
 * Why pins do not serve in a seat, lying at its innermost place in a direction; null where they do. One pin that is nearly as
 * wide as the seat lies on its horns once the bore is small; a pair that is thin tells no more than one pin.
 * @param pin diameter, in the unit of the seat
 */
export function pinFault(
  seat: Pick<Seat, 'radius' | 'spans'>,
  towards: Vector,
  pin: number,
  pins: 1 | 2,
): PinFault | null {
  const room = besides(seat, towards);
  if (room === null) return 'off the arc';
  if (!hasRoom(seat, towards)) return 'touches a horn';
  const least = UNDER_SIZE * seat.radius;
  if (pins * pin >= 2 * least) return 'too large';
  if (pins === 1) return null;
  if (Math.asin(pin / 2 / (least - pin / 2)) >= room) return 'touches a horn';
  const phi = Math.asin(pin / 2 / (seat.radius - pin / 2));
  return 1 / Math.cos(phi) - 1 < LEAST_GAIN ? 'too small' : null;
}

/** The sizes of pins of which a pair tells the radius of a seat: those between the two; null if there are none. */
export function pairsFor(
  seat: Pick<Seat, 'radius' | 'spans'>,
  towards: Vector,
): readonly [number, number] | null {
  const room = besides(seat, towards);
  if (room === null) return null;
  const sizeAt = (radius: number, sine: number) => (2 * radius * sine) / (1 + sine);
  const least = sizeAt(seat.radius, Math.sin(Math.acos(1 / (1 + LEAST_GAIN))));
  const most = sizeAt(UNDER_SIZE * seat.radius, Math.sin(Math.min(room, Math.PI / 2)));
  return least < most ? [least, most] : null;
}
