import type { Aim, AimStop } from '../aim/aim.js';
import { DEGREE } from '../geometry/degree.js';
import type { Report } from '../report/report-schema.js';

/** Away from a stop on each side: to the right from one at the left, away from the person from one in front. */
const AWAY: Readonly<Record<AimStop, readonly [number, number]>> = {
  left: [1, 0],
  right: [-1, 0],
  front: [0, 1],
  back: [0, -1],
};

/** A push that is across a stop but for less than this is not off it; an eighth of a turn. Common practice, no source. */
const ACROSS = Math.SQRT1_2;

/** A side load smaller than this pushes nowhere; common practice, no source. */
const LEAST_LOAD = 0.1;

/** Cuts of which a pass pushes the part off a stop that bears on it, where its load is worst; directions at the machine. */
export function pushesOff({ stops }: Pick<Aim, 'stops'>, { steps }: Pick<Report, 'steps'>): number {
  if (stops.length === 0) return 0;
  const off = steps.filter(({ load }) => {
    const worst = load?.worst;
    if (worst == null || worst.push === null || worst.sideLoad < LEAST_LOAD) return false;
    const angle = worst.push.degrees * DEGREE;
    return stops.some((side) => {
      const [x, y] = AWAY[side];
      return Math.cos(angle) * x + Math.sin(angle) * y > ACROSS;
    });
  });
  return new Set(off.map(({ cut }) => cut)).size;
}
