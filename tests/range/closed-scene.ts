import type { Cut, Job, Point, RangeQuery } from '@edgebite/core';
import { type Boundary, boundaryOfCut, boundaryOfPart, crossingsBetween } from './closed-job.js';
import { type Corner, far, type Shape, shifted } from './closed-shapes.js';

/** What moves and what stands still in a query, as plain shapes. */
export interface ClosedScene {
  readonly part: Boundary;
  /** All that stands still: shapes, corners and crossings, and places whose metal matters. */
  readonly still: Boundary;
  /** The cut that moves, as drawn in the job. */
  readonly own: Boundary;
  /** The same with its rims moved into the metal by the resolution, and back from it. */
  readonly grown: readonly Boundary[];
  /** What moves, at a value of the free number. */
  readonly moved: (shape: Shape, v: number) => Shape;
  /** How far a shape that moves comes at most, per unit of the free number. */
  readonly pace: number;
  /** Shapes that miss each other by this may touch in the report. */
  readonly slack: number;
}

/** In weld tolerances. */
const SLACK = 100;

/** Lays out a query; `weld` is a weld tolerance of its part. */
export function closedScene(job: Job, { cut: id, along }: RangeQuery, weld: number): ClosedScene {
  const slack = SLACK * weld;
  const moving = job.cuts.find((cut) => cut.id === id) as Cut;
  const start = moving.kind === 'swept' ? (moving.path[0]?.a as Point) : moving.center;
  const now = along === 'diameter' ? moving.diameter : start[along];
  const part = boundaryOfPart(job);
  const all = [part, ...job.cuts.filter((cut) => cut !== moving).map((cut) => boundaryOfCut(cut, slack))];
  const corners = [...all.flatMap((boundary) => boundary.corners), ...crossingsBetween(all, slack)];
  return {
    part,
    still: {
      shapes: all.flatMap(({ shapes }) => shapes),
      corners: unlike(corners, weld),
      places: all.flatMap(({ places }) => places),
    },
    own: boundaryOfCut(moving, slack),
    grown: [job.resolution, -job.resolution].map((by) => boundaryOfCut(moving, slack, by)),
    moved: (shape, v) => {
      const by = v - now;
      if (along === 'diameter') return shifted(shape, { x: 0, y: 0 }, shape.kind === 'circle' ? by / 2 : 0);
      return shifted(shape, along === 'x' ? { x: by, y: 0 } : { x: 0, y: by }, 0);
    },
    pace: along === 'diameter' ? 0.5 : 1,
    slack,
  };
}

/** Corners at one place as one. */
function unlike(corners: readonly Corner[], near: number): Corner[] {
  const kept: { at: Point; of: Shape[] }[] = [];
  for (const { at, of } of corners) {
    const same = kept.find((other) => far(other.at, at) <= near);
    if (same === undefined) kept.push({ at, of: [...of] });
    else same.of.push(...of.filter((shape) => !same.of.includes(shape)));
  }
  return kept;
}
