import type { Aim, AimStop } from '../aim/aim.js';
import { DEGREE } from '../geometry/angle.js';
import { type Bounds, boxAround, grown, joined } from '../geometry/bounds.js';
import { edgeBounds } from '../geometry/measure.js';
import { boundsOf } from '../region/measure.js';
import { edgeFromReport } from '../report/from-report.js';
import type { Report, ReportCut } from '../report/report-schema.js';
import type { Quarter } from './layout.js';

/** Away from a stop on each side: to the right from one at the left, away from the person from one in front. */
const AWAY: Readonly<Record<AimStop, readonly [number, number]>> = {
  left: [1, 0],
  right: [-1, 0],
  front: [0, 1],
  back: [0, -1],
};

/**
 * A push that is across a stop but for less than this is not off it: an eighth of a turn, and what rounding makes of one.
 * Common practice, no source.
 */
const ACROSS = Math.SQRT1_2 + 1e-9;

/** A side load smaller than this pushes nowhere; common practice, no source. */
const LEAST_LOAD = 0.1;

/** A cut that comes out at a side by less than this share of the part does not come out there: rounding of drawings. */
const OVER_SHARE = 1e-9;

/**
 * Names of cuts that go against a stop: that push the part off it where their load is worst, or whose tool comes out at the
 * side that bears on it.
 * @param turn to ask what they would do with the part turned by so much more than in the report
 */
export function cutsAgainstStops(
  aim: Pick<Aim, 'stops' | 'job'>,
  report: Report,
  turn: Quarter,
): Set<string> {
  if (aim.stops.length === 0) return new Set();
  return new Set([...pushedOff(aim, report, turn), ...overStops(aim, report, turn)]);
}

function pushedOff({ stops }: Pick<Aim, 'stops'>, { steps }: Report, turn: Quarter): string[] {
  const off = steps.filter(({ load }) => {
    const worst = load?.worst;
    if (worst == null || worst.push === null || worst.sideLoad < LEAST_LOAD) return false;
    const angle = (worst.push.degrees + turn) * DEGREE;
    return stops.some((side) => {
      const [x, y] = AWAY[side];
      return Math.cos(angle) * x + Math.sin(angle) * y > ACROSS;
    });
  });
  return off.map(({ cut }) => cut);
}

/** Sides in the order in which a quarter turn counter-clockwise takes each to the place of the next. */
const ROUND = ['right', 'back', 'left', 'front'] as const satisfies readonly AimStop[];

/** Where a side of the drawing lies with the part turned over about y, and then turned. */
function liesAt(side: AimStop, isOver: boolean, turn: number): AimStop {
  const at = ROUND.indexOf(side);
  const over = isOver && at % 2 === 0 ? at + 2 : at;
  return ROUND[(over + turn / 90) % ROUND.length] as AimStop;
}

function overStops({ stops, job }: Pick<Aim, 'stops' | 'job'>, report: Report, turn: Quarter): string[] {
  const box = boundsOf(job.outline);
  if (box === null) return [];
  const slack = OVER_SHARE * (box.maxX - box.minX + box.maxY - box.minY);
  const sidesOf = (cut: ReportCut): AimStop[] => {
    const reach = reachOf(cut, report);
    if (reach === null) return [];
    const { minX, maxX, minY, maxY } = reach;
    return [
      ...(minX < box.minX - slack ? ['left' as const] : []),
      ...(maxX > box.maxX + slack ? ['right' as const] : []),
      ...(minY < box.minY - slack ? ['front' as const] : []),
      ...(maxY > box.maxY + slack ? ['back' as const] : []),
    ];
  };
  return report.cuts.flatMap((cut) => {
    const setup = report.setups.find(({ cuts }) => cuts.includes(cut.id));
    const isOver = setup === undefined ? cut.from === 'bottom' : setup.flip !== null;
    const lies = sidesOf(cut).map((side) => liesAt(side, isOver, (setup?.turn ?? 0) + turn));
    return lies.some((side) => stops.includes(side)) ? [cut.id] : [];
  });
}

/** The box round all places that the tool of a cut takes up; null where it stands nowhere. */
function reachOf({ id, diameter, path }: ReportCut, { steps }: Report): Bounds | null {
  const half = diameter / 2;
  const stands = steps.flatMap(({ cut, center }) => (cut === id && center !== null ? [center] : []));
  return [
    ...stands.map(([x, y]) => boxAround({ x, y }, half)),
    ...(path ?? []).map((edge) => grown(edgeBounds(edgeFromReport(edge)), half)),
  ].reduce<Bounds | null>((all, box) => (all === null ? box : joined(all, box)), null);
}
