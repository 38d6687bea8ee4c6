import type { Link, LinkSize } from '../datum/chain.js';
import { depthTarget } from '../datum/depth-target.js';
import { type AxisZero, type Laid, laid, placeUnder, readoutAt, type ZeroSize } from '../datum/setup.js';
import { targetAt } from '../datum/target.js';
import { pointToJson, regionToJson } from '../format/json.js';
import { DEGREE } from '../geometry/angle.js';
import type { Point } from '../geometry/point.js';
import type { Job } from '../job/job.js';
import { pointOf } from '../job/read-edges.js';
import { goesDown, lowestOf } from '../load/underneath.js';
import { type PathStand, pathStands } from '../report/path-stands.js';
import type { Report, ReportCut, ReportKeepOut, ReportSetup, ReportTarget } from '../report/report-schema.js';

/** A readout that shows 0 along both axes. */
const ZERO = [0, 0] as const;

/** The setups of a job, worked out. */
export function laidSetups(job: Job): Laid[] {
  return job.setups.map((setup) => laid(setup, job));
}

/** The rows of a job's setups: how the part lies, the zeros, and the targets of each cut, in the order of the job. */
export function setupRows(job: Job, lays: readonly Laid[], cuts: Report['cuts']): ReportSetup[] {
  return lays.map((lay) => {
    const { id, name, lie, readout, heights, zero } = lay.setup;
    const own = new Set(lay.setup.cuts);
    const inOrder = cuts.filter((cut) => own.has(cut.id));
    return {
      id,
      name,
      turn: lie.turn + 0,
      flip: lie.flip,
      angleTolerance: lay.setup.angleTolerance / DEGREE,
      up: lie.flip === null ? 'top' : 'bottom',
      readout,
      heights: { on: heights.on, units: heights.units, resolution: heights.resolution },
      stops: lay.setup.stops.map(({ id: stop, face }) => ({ id: stop, face })),
      zero: {
        at: pointToJson(placeUnder(lay, ZERO)),
        x: axisRow(zero.x, lay.x),
        y: axisRow(zero.y, lay.y),
        z: zero.z === null || lay.z === null ? null : axisRow(zero.z, lay.z),
      },
      cuts: inOrder.map((cut) => cut.id),
      targets: inOrder.flatMap((cut) => targetRows(job, lay, cut)),
    };
  });
}

function axisRow({ place, links }: AxisZero, size: ZeroSize): ReportSetup['zero']['x'] {
  let at = 0;
  return {
    place,
    at: size.offset + 0,
    links: links.map((link, k) => {
      const row = linkRow(link, size.links[k] as LinkSize);
      at += row.offset;
      // Between a touch or a move and the set that goes with it, the readout shows nothing that means anything yet.
      return { ...row, at: ['touch', 'dial in', 'move'].includes(link.kind) ? null : at + 0 };
    }),
    worst: size.worst,
    rss: size.rss,
  };
}

function linkRow(
  { kind, action, name, of, side, length, units }: Link,
  { offset, tolerance, basis }: LinkSize,
): Omit<ReportSetup['zero']['x']['links'][number], 'at'> {
  return { kind, action, name, of, side, length, units, offset, tolerance, basis };
}

function targetRows(job: Job, lay: Laid, cut: ReportCut): ReportTarget[] {
  const depth = depthOf(job, lay, cut.id);
  return standsOf(cut).map(({ center, pass, point, path }) => {
    const { exact, readout, roundingError, worst, rss } = targetAt(lay, center);
    return {
      cut: cut.id,
      pass,
      point,
      path: path === null ? null : pathPlace(lay, path),
      center: pointToJson(center),
      exact: [...exact],
      readout: [...readout],
      roundingError: [...roundingError],
      worst: [...worst],
      rss: [...rss],
      depth,
    };
  });
}

/** Where the readout is to stand in Z; null without a zero there, and for a cut from the face that lies down. */
export function depthOf(job: Job, lay: Laid, id: string): ReportTarget['depth'] {
  const cut = job.cuts.find((one) => one.id === id);
  const up = lay.setup.lie.flip === null ? 'top' : 'bottom';
  if (cut === undefined || (!cut.through && cut.from !== up)) return null;
  const { thickness, thicknessTolerance } = job;
  const tool = job.tools.find(({ cuts }) => cuts.includes(id))?.kind ?? null;
  const lowest = lowestOf(goesDown(cut, tool, cut.diameter), thickness);
  const from = cut.through ? 'bottom' : 'top';
  const target = depthTarget(lay, { lowest, thickness, tolerance: thicknessTolerance, from });
  return target && { ...target, below: Math.max(0, -lowest) };
}

interface TargetStand {
  readonly center: Point;
  readonly pass: number | null;
  readonly point: number | null;
  readonly path: PathStand | null;
}

/** Where the spindle stands for a cut: at its centre, at that of each pass, or at each place along its path. */
function standsOf(cut: ReportCut): TargetStand[] {
  const { center, path, passes } = cut;
  if (path !== null) {
    return pathStands(cut).map((stand, k) => ({
      center: pointOf(stand.at),
      pass: null,
      point: k,
      path: stand,
    }));
  }
  const at = (place: readonly [number, number], pass: number | null): TargetStand => ({
    center: pointOf(place),
    pass,
    point: null,
    path: null,
  });
  if (passes !== null && passes.list.length > 0) return passes.list.map((one, k) => at(one.center, k + 1));
  return center === null ? [] : [at(center, null)];
}

/** How a tool comes to a place along a path, as the part lies: turned over, the other way round. */
function pathPlace(lay: Laid, { run, move, arc, lift }: PathStand): ReportTarget['path'] {
  if (arc === null) return { run, move, arc, lift };
  const isOver = lay.setup.lie.flip !== null;
  const exact = readoutAt(lay, pointOf(arc.center));
  return { run, move, arc: { exact: [...exact], radius: arc.radius, ccw: arc.ccw !== isOver }, lift };
}

/** The rows of a job's keep-outs. */
export function keepOutRows(job: Job): ReportKeepOut[] {
  return job.keepOuts.map(({ id, kind, setup, from, to, region }) => ({
    id,
    kind,
    setup,
    from: from + 0,
    to: to + 0,
    region: regionToJson(region),
  }));
}
