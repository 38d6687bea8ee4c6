import { isAlike } from '../memory/alike.js';
import { contains } from '../region/contains.js';
import type { Region } from '../region/region.js';
import { type PinFault, pairsFor, pinFault } from './pins.js';
import { type Measurable, measurableIn, type Seat } from './seat.js';
import type { Way } from './way.js';
import { byRadiusShown, type Fitting, type Gauges, waysFor } from './ways.js';

/** A way, and between which heights it can be taken. */
export interface Taken extends Fitting {
  readonly from: number;
  readonly to: number;
}

/** An arc as it stands between two heights, and how to measure it. */
export interface Check {
  readonly seat: Seat;
  readonly from: number;
  readonly to: number;
  /** Those by which the radius shows most first. */
  readonly ways: readonly Taken[];
  /** Least and most diameter of two like pins that tell the radius side by side; null where no pair does. */
  readonly pairs: readonly [number, number] | null;
  /** Of the pins that there are, those that serve in no direction, by themselves or side by side, and why. */
  readonly refused: readonly { readonly pin: number; readonly pins: 1 | 2; readonly why: PinFault }[];
}

/** A section of the part between two heights. */
export interface HeightSection {
  readonly from: number;
  readonly to: number;
  readonly region: Region;
}

/** How to measure each hollow arc of a part, given its sections from the bottom up: one check for each arc, as high as it goes. */
export function checksIn(sections: readonly HeightSection[], gauges: Gauges): Check[] {
  const checks: GrowingCheck[] = [];
  /** By check: where it begins. */
  const starts: Start[] = [];
  let under: HeightSection | null = null;
  /** By cut: the checks of its arcs below the section at hand. */
  let below = new Map<string, number[]>();
  for (const section of sections) {
    const here = new Map<string, number[]>();
    const measurable = measurableIn(section.region);
    for (const seat of measurable.seats) {
      const check = checkOf(section, seat, measurable, gauges);
      const known = below.get(seat.cut)?.find((k) => isAlike((checks[k] as Check).seat, seat));
      const low = known === undefined ? undefined : checks[known];
      const goesOn = known !== undefined && low !== undefined && low.to === section.from;
      if (goesOn) goOn(low, check);
      else {
        checks.push(check);
        starts.push({ measurable, under: under?.to === section.from ? under.region : null });
      }
      const own = goesOn ? known : checks.length - 1;
      const others = here.get(seat.cut);
      if (others === undefined) here.set(seat.cut, [own]);
      else others.push(own);
    }
    below = here;
    under = section;
  }
  return checks.map((check, k) => withBalls(check, starts[k] as Start, gauges));
}

/** A check that the sections further up may still add to. */
type GrowingCheck = Omit<Check, 'to' | 'ways' | 'pairs'> & {
  to: number;
  ways: (Taken & { to: number })[];
  pairs: Check['pairs'];
};

/** What is in the lowest section of an arc, and the metal under that; null at the bottom. */
interface Start {
  readonly measurable: Measurable;
  readonly under: Region | null;
}

/**
 * An arc with the balls that lie in it: on what is under the arc, or on the table, each touching the wall as high as its middle.
 * Of those that touch below the upper end of the arc and have something to lie on, the widest, and the widest pair.
 */
function withBalls(check: Check, { measurable, under }: Start, gauges: Gauges): Check {
  const { seat, from, to } = check;
  const low = gauges.balls.filter((ball) => from + ball / 2 <= to);
  if (low.length === 0) return { ...check, ways: [...check.ways].sort(byRadiusShown) };
  const drafted = waysFor(seat, measurable, { ...gauges, pins: low, feet: [] });
  const balls = drafted.flatMap((one): Taken[] => {
    if (!('pin' in one.way) || !liesOn(seat, one.way, under)) return [];
    const touches = from + one.way.pin / 2;
    return [{ ...one, way: { ...one.way, ball: true }, from: touches, to: touches }];
  });
  return { ...check, ways: [...check.ways, ...balls].sort(byRadiusShown) };
}

/** Whether there is metal under the middle of each ball; at the bottom of the part there is the table. */
function liesOn(seat: Seat, way: Extract<Way, { pin: number }>, under: Region | null): boolean {
  if (under === null) return true;
  const sign = way.kind === 'over pins' ? -1 : 1;
  const [dx, dy] = [sign * way.face.into.dx, sign * way.face.into.dy];
  const aside = way.pins === 1 ? 0 : way.pin / 2;
  const deep = Math.sqrt((seat.radius - way.pin / 2) ** 2 - aside ** 2);
  return [-aside, aside].every((side) => {
    const at = { x: seat.center.x + deep * dx - side * dy, y: seat.center.y + deep * dy + side * dx };
    return contains(under, at) === 'inside';
  });
}

function checkOf(
  { from, to }: HeightSection,
  seat: Seat,
  measurable: Measurable,
  gauges: Gauges,
): GrowingCheck {
  const ways = waysFor(seat, measurable, gauges).map((one) => ({ from, to, ...one }));
  // Pins lie where a depth is read to, or where what is left is read from.
  const directions = ways.flatMap(({ way }) => {
    if (way.kind !== 'depth' && way.kind !== 'left') return [];
    const sign = way.kind === 'depth' ? 1 : -1;
    return [{ dx: sign * way.face.into.dx, dy: sign * way.face.into.dy }];
  });
  const pairs = directions.flatMap((towards) => {
    const pair = pairsFor(seat, towards);
    return pair === null ? [] : [pair];
  });
  const refused = gauges.pins.flatMap((pin) =>
    ([1, 2] as const).flatMap((pins) => {
      const faults = directions.map((towards) => pinFault(seat, towards, pin, pins));
      const [why] = faults;
      return why === undefined || why === null || faults.includes(null) ? [] : [{ pin, pins, why }];
    }),
  );
  const ends = [
    Math.min(...pairs.map(([least]) => least)),
    Math.max(...pairs.map(([, most]) => most)),
  ] as const;
  return { seat, from, to, ways, pairs: pairs.length === 0 ? null : ends, refused };
}

/** Adds the ways of the height above to those of an arc; what can be measured at both heights is one way. */
function goOn(low: GrowingCheck, high: GrowingCheck): void {
  const { ways } = low;
  for (const way of high.ways) {
    const known = ways.find((one) => one.to === way.from && isAlike(one.way, way.way));
    if (known === undefined) ways.push(way);
    else known.to = way.to;
  }
  low.to = high.to;
  low.pairs ??= high.pairs;
}
