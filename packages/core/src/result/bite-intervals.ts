import {
  type Crossing,
  crossingInterval,
  depthInterval,
  directionOf,
  leftInterval,
  openingInterval,
  type PlacedCircle,
  roundDepthInterval,
  whereLinesCross,
} from '../datum/bite-interval.js';
import type { Placed } from '../datum/drift.js';
import type { Interval } from '../datum/reach.js';
import type { LineEdge } from '../geometry/edge.js';
import type { Point, Vector } from '../geometry/point.js';
import type { Job } from '../job/job.js';
import type { OpenedFace } from '../placing/opened-faces.js';
import type { ReportCut } from '../report/report-schema.js';
import { hull } from './intervals.js';
import type { FarEnd } from './left-behind.js';
import { normalOf } from './moving.js';

type Intervals = Pick<ReportCut['bites'][number], 'depthInterval' | 'openingInterval' | 'leftInterval'>;

/**
 * Between what the figures of a bite can lie; null where the cut is in no setup, and where a figure hangs on a round edge.
 * @param placed how far the cut may be off, for each setup that it is made in
 */
export function biteIntervals(
  job: Job,
  placed: readonly Placed[],
  opened: OpenedFace,
  circle: Omit<PlacedCircle, 'placed'>,
  left: number | null,
  far: FarEnd | null,
): Intervals {
  const all = placed.map((one) => {
    const own: PlacedCircle = { ...circle, placed: one };
    return {
      depth: depthOf(job, own, opened),
      opening: openingOf(job, own, opened),
      left: left === null ? null : leftOf(job, own, opened, left, far),
    };
  });
  return {
    depthInterval: hull(all.map(({ depth }) => depth)),
    openingInterval: hull(all.map(({ opening }) => opening)),
    leftInterval: hull(all.map((one) => one.left)),
  };
}

function fixed(value: number): Interval {
  return { worst: [value, value], rss: [value, value] };
}

function depthOf(job: Job, circle: PlacedCircle, opened: OpenedFace): Interval | null {
  const { face, from, inward, atBottom, depth, deepEdge } = opened;
  if (face.kind === 'arc') {
    const round = { center: face.center, radius: face.radius, at: from };
    return atBottom ? roundDepthInterval(circle, round, face.ccw, job) : null;
  }
  if (atBottom) return depthInterval(circle, from, inward, job);
  // All of the part goes: it is as deep as the part.
  if (deepEdge === null) return fixed(depth);
  if (deepEdge.kind === 'arc') return null;
  const on = crossingOn(deepEdge, opened.deepest, face);
  return crossingInterval(depth, dot(on.along, inward), circle, on, job);
}

/** Where the circle crosses an edge, as measured from where that edge and a face would meet. */
function crossingOn(edge: LineEdge, at: Point, face: LineEdge): Crossing {
  const along = directionOf(edge.a, edge.b);
  const from = whereLinesCross(at, along, face.a, directionOf(face.a, face.b)) ?? at;
  return { at, along, square: normalOf(edge), from };
}

function openingOf(job: Job, circle: PlacedCircle, opened: OpenedFace): Interval | null {
  const { face, from, inward, opening, ends, crossed } = opened;
  if (face.kind === 'arc') return null;
  if (crossed[0] && crossed[1]) return openingInterval(circle, from, inward, job);
  if (!crossed[0] && !crossed[1]) return fixed(opening);
  // From the end of the face to where the circle crosses it.
  const [at, end] = crossed[0] ? [ends[0], ends[1]] : [ends[1], ends[0]];
  const on = { at, along: directionOf(end, at), square: normalOf(face), from: end };
  return crossingInterval(opening, 1, circle, on, job);
}

function leftOf(
  job: Job,
  circle: PlacedCircle,
  { face, inward, atBottom, deepEdge, deepest }: OpenedFace,
  left: number,
  far: FarEnd | null,
): Interval | null {
  if (far === null) return fixed(left);
  if (face.kind === 'arc' || far.edge.kind === 'arc') return null;
  const normal = normalOf(far.edge);
  if (atBottom) return leftInterval(left, circle, inward, { at: far.at, normal }, job);
  // Along an edge, to a far face that is parallel to the near one.
  const isParallel = Math.abs(dot(normal, inward)) > 1 - PARALLEL;
  if (deepEdge?.kind !== 'line' || !isParallel) return null;
  const on = crossingOn(deepEdge, deepest, far.edge);
  return crossingInterval(left, -dot(on.along, inward), circle, on, job);
}

/** What the cosine of an angle may lack to 1 for two faces to count as parallel. */
const PARALLEL = 1e-12;

function dot(a: Vector, b: Vector): number {
  return a.dx * b.dx + a.dy * b.dy;
}
