import type { Cut } from '../cut/cut.js';
import { FINEST_SHARE, MAX_LENGTH, ROUNDEST_SHARE } from '../document/limits.js';
import { extentOf, joined } from '../geometry/bounds.js';
import type { Edge } from '../geometry/edge.js';
import { EdgebiteError } from '../geometry/edgebite-error.js';
import { edgeBounds } from '../geometry/measure.js';
import { moved, type Point, type Vector } from '../geometry/point.js';
import { weldTolerance } from '../geometry/tolerance.js';
import type { Job } from '../job/job.js';
import { boundsOf } from '../region/measure.js';

/** The number of a cut that is left free: its place along an axis, or its diameter. */
export type Along = 'x' | 'y' | 'diameter';

/** A cut, which of its numbers is free, and between which two values, in the unit of the job. */
export interface RangeQuery {
  readonly cut: string;
  readonly along: Along;
  readonly from: number;
  readonly to: number;
}

/** A query that cannot be answered; the message names the fault and the remedy. */
export class RangeQueryError extends EdgebiteError {
  override readonly name = 'RangeQueryError';

  constructor(message: string) {
    super(message, { code: 'range', place: message.slice(0, message.indexOf(':')) });
  }
}

/** How the rims of a cut move as the free number grows by 1: all of them by a vector, or all radii by half. */
export interface Motion {
  readonly velocity: Vector;
  readonly growth: number;
}

/** The free number of a query, looked up in its job. */
export interface FreeNumber {
  /** Which cut of the job. */
  readonly index: number;
  /** Its value in the job as it is. */
  readonly now: number;
  readonly motion: Motion;
  /** Two values closer than this are one: the places of the cut are no more than a weld tolerance apart then. */
  readonly tolerance: number;
  /** The cut with another value. */
  readonly cutAt: (value: number) => Cut;
}

/** A range has to be this many weld tolerances wide; in a narrower one nothing could be told apart. */
const NARROWEST = 1000;

/**
 * Looks up the free number of a query and checks both ends of its range.
 * @throws RangeQueryError if there is no such cut or number, the ends are no range, or the cut is none at an end.
 */
export function freeNumberOf(job: Job, query: RangeQuery): FreeNumber {
  const index = job.cuts.findIndex(({ id }) => id === query.cut);
  const cut = job.cuts[index];
  if (cut === undefined) throw new RangeQueryError(`cut: there is no cut ${query.cut}; ${cutsOf(job)}`);
  const { along, from, to } = query;
  if (along !== 'x' && along !== 'y' && along !== 'diameter') {
    throw new RangeQueryError(`along: is ${String(along)}; it must be x, y or diameter`);
  }
  if (cut.kind === 'swept' && along === 'diameter') {
    throw new RangeQueryError(
      `along: cut ${cut.id} is swept; its path can be moved along x or y, but its diameter has to stay`,
    );
  }
  const extent = extentOf(boundsOf(job.outline) as NonNullable<ReturnType<typeof boundsOf>>);
  const tolerance = weldTolerance(extent, Math.max(...reachOf(cut), Math.abs(from), Math.abs(to)));
  for (const [name, value] of [
    ['from', from],
    ['to', to],
  ] as const) {
    if (!(Math.abs(value) <= MAX_LENGTH)) {
      throw new RangeQueryError(`${name}: is ${value}; it must be a number up to ${MAX_LENGTH}`);
    }
    const fault = faultOf(withNumber(cut, along, value), extent);
    if (fault !== null) throw new RangeQueryError(`${name}: with ${along} ${value} cut ${cut.id} ${fault}`);
  }
  if (!(to - from >= NARROWEST * tolerance)) {
    throw new RangeQueryError(
      `to: is ${to}; it must be over from, ${from}, by ${NARROWEST * tolerance} at least`,
    );
  }
  return {
    index,
    now: along === 'diameter' ? cut.diameter : referencePoint(cut)[along],
    motion: {
      velocity: { dx: along === 'x' ? 1 : 0, dy: along === 'y' ? 1 : 0 },
      growth: along === 'diameter' ? 0.5 : 0,
    },
    tolerance,
    cutAt: (value) => withNumber(cut, along, value),
  };
}

function cutsOf({ cuts }: Job): string {
  return cuts.length === 0 ? 'the job has none' : `the job has ${cuts.map(({ id }) => id).join(', ')}`;
}

/** The place that stands for a cut: its centre, or where the path of a swept one starts. */
function referencePoint(cut: Cut): Point {
  return cut.kind === 'swept' ? (cut.path[0] as Edge).a : cut.center;
}

/** The cut with its free number set to a value. */
function withNumber(cut: Cut, along: Along, value: number): Cut {
  if (along === 'diameter') return { ...cut, diameter: value };
  if (cut.kind !== 'swept') return { ...cut, center: { ...cut.center, [along]: value } };
  const by = value - referencePoint(cut)[along];
  const shift = along === 'x' ? { dx: by, dy: 0 } : { dx: 0, dy: by };
  return { ...cut, path: cut.path.map((edge) => movedEdge(edge, shift)) };
}

/** An edge moved by a vector; neighbours still share their ends to the last bit. */
export function movedEdge(edge: Edge, by: Vector): Edge {
  const ends = { a: moved(edge.a, by), b: moved(edge.b, by) };
  return edge.kind === 'line' ? { ...edge, ...ends } : { ...edge, ...ends, center: moved(edge.center, by) };
}

/** The sizes of the coordinates of a cut. */
function reachOf(cut: Cut): number[] {
  if (cut.kind !== 'swept') return [Math.abs(cut.center.x), Math.abs(cut.center.y)];
  return Object.values(cut.path.map(edgeBounds).reduce(joined)).map(Math.abs);
}

/** Why a cut cannot be as it is; the same bounds as for a cut of a job. Null if it can. */
function faultOf(cut: Cut, extent: number): string | null {
  const finest = Math.max(extent * FINEST_SHARE, Math.max(...reachOf(cut)) * ROUNDEST_SHARE);
  if (!(cut.diameter >= finest)) return `is too small to keep its shape; from ${finest} across on it does`;
  if (cut.kind !== 'annular') return null;
  const core = cut.diameter - 2 * cut.wall;
  if (core >= finest) return null;
  return `leaves no core within its wall of ${cut.wall}; it must be over ${2 * cut.wall + finest} across`;
}
