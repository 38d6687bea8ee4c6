import type { Aim, AimStop } from '../aim/aim.js';
import { type Bounds, boxAround, grown, joined } from '../geometry/bounds.js';
import { DEGREE } from '../geometry/degree.js';
import { edgeBounds } from '../geometry/measure.js';
import { boundsOf } from '../region/measure.js';
import { edgeFromReport } from '../report/from-report.js';
import type { Report, ReportCut } from '../report/report-schema.js';

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

/** A cut that comes out at a side by less than this share of the part does not come out there: rounding of drawings. */
const OVER_SHARE = 1e-9;

/**
 * Names of cuts that go against a stop: that push the part off it where their load is worst, or whose tool comes out at the
 * side that bears on it.
 * @param isRound to ask what they would do with the part turned round
 */
export function cutsAgainstStops(
  aim: Pick<Aim, 'stops' | 'job'>,
  report: Report,
  isRound: boolean,
): Set<string> {
  if (aim.stops.length === 0) return new Set();
  return new Set([...pushedOff(aim, report, isRound), ...overStops(aim, report, isRound)]);
}

function pushedOff({ stops }: Pick<Aim, 'stops'>, { steps }: Report, isRound: boolean): string[] {
  const sense = isRound ? -1 : 1;
  const off = steps.filter(({ load }) => {
    const worst = load?.worst;
    if (worst == null || worst.push === null || worst.sideLoad < LEAST_LOAD) return false;
    const angle = worst.push.degrees * DEGREE;
    return stops.some((side) => {
      const [x, y] = AWAY[side];
      return sense * (Math.cos(angle) * x + Math.sin(angle) * y) > ACROSS;
    });
  });
  return off.map(({ cut }) => cut);
}

/** The other lie of a part that is turned over about y, and turned round. */
const OPPOSITE = { left: 'right', right: 'left', front: 'back', back: 'front' } as const;

function overStops({ stops, job }: Pick<Aim, 'stops' | 'job'>, report: Report, isRound: boolean): string[] {
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
    // Where a side of the drawing lies: turned over about y left and right change places, turned round all do.
    const isOver = setup === undefined ? cut.from === 'bottom' : setup.flip !== null;
    const turned = (setup?.turn === 180) !== isRound;
    const lies = sidesOf(cut).map((side) => {
      const swaps = (isOver && (side === 'left' || side === 'right')) !== turned;
      return swaps ? OPPOSITE[side] : side;
    });
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
