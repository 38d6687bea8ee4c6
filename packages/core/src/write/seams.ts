import type { Cut } from '../cut/cut.js';
import { type Circle, seamStep } from '../datum/seam.js';
import type { Stack } from '../datum/stack.js';
import { pointToJson } from '../format/json.js';
import type { Edge } from '../geometry/edge.js';
import { edgeBounds } from '../geometry/measure.js';
import { reversed } from '../geometry/parts.js';
import { distance, type Point } from '../geometry/point.js';
import type { Job } from '../job/job.js';
import type { ReportSeam } from '../report/report-schema.js';
import type { Moving } from '../result/moving.js';

/** Share of the thickness by which two depths may fall short of it together, by rounding. */
const MEETS = 1e-9;

/**
 * Where two halves of one bore or slot meet: of one centre or path and one diameter to the resolution, one from the top
 * and one from below.
 */
export function seamRows(job: Job, moving: Moving): ReportSeam[] {
  const blind = job.cuts.filter(({ through }) => !through);
  const below = blind.filter(({ from }) => from === 'bottom');
  return blind
    .filter(({ from }) => from === 'top')
    .flatMap((top) =>
      below.filter((bottom) => isOneCut(job, top, bottom)).map((bottom) => seamRow(job, moving, top, bottom)),
    );
}

function isOneCut(job: Job, top: Cut, bottom: Cut): boolean {
  return (
    top.kind === bottom.kind &&
    Math.abs(top.diameter - bottom.diameter) <= job.resolution &&
    top.depth + bottom.depth >= job.thickness * (1 - MEETS) &&
    liesTheSame(top, bottom, job.resolution)
  );
}

function liesTheSame(top: Cut, bottom: Cut, near: number): boolean {
  if (top.kind !== 'swept' && bottom.kind !== 'swept') return distance(top.center, bottom.center) <= near;
  if (top.kind !== 'swept' || bottom.kind !== 'swept') return false;
  const back = bottom.path.map(reversed).reverse();
  return [bottom.path, back].some(
    (path) =>
      path.length === top.path.length && top.path.every((edge, k) => isNear(edge, path[k] as Edge, near)),
  );
}

function isNear(one: Edge, other: Edge, near: number): boolean {
  if (distance(one.a, other.a) > near || distance(one.b, other.b) > near) return false;
  if (one.kind === 'line' || other.kind === 'line') return one.kind === other.kind;
  return one.ccw === other.ccw && distance(one.center, other.center) <= near;
}

/** Places of a cut between which a step is largest at one of them: its centre, or the corners of boxes round its path. */
function placesOf(cut: Cut): Point[] {
  if (cut.kind !== 'swept') return [cut.center];
  return cut.path.flatMap((edge) => {
    if (edge.kind === 'line') return [edge.a, edge.b];
    const { minX, minY, maxX, maxY } = edgeBounds(edge);
    return [minX, maxX].flatMap((x) => [minY, maxY].map((y): Point => ({ x, y })));
  });
}

/** The tool of a cut, at a place of its path. */
function circleAt(cut: Cut, place: Point): Circle {
  return { center: cut.kind === 'swept' ? place : cut.center, diameter: cut.diameter };
}

function seamRow(job: Job, moving: Moving, top: Cut, bottom: Cut): ReportSeam {
  const pairs = (moving.cuts.get(top.id) ?? []).flatMap((one) =>
    (moving.cuts.get(bottom.id) ?? []).map((other) => ({ one, other })),
  );
  const steps = pairs.flatMap(({ one, other }) =>
    placesOf(top).map(
      (place): Stack => seamStep(one, other, [circleAt(top, place), circleAt(bottom, place)], job),
    ),
  );
  return {
    cuts: [top.id, bottom.id],
    center: pointToJson(placesOf(top)[0] as Point),
    diameter: top.diameter,
    from: job.thickness - top.depth,
    overlap: Math.max(0, top.depth + bottom.depth - job.thickness),
    step:
      steps.length === 0
        ? null
        : {
            worst: Math.max(...steps.map(({ worst }) => worst)),
            rss: Math.max(...steps.map(({ rss }) => rss)),
          },
  };
}
