import {
  boundsOf,
  type Cut,
  contains,
  type Edge,
  type JobDocument,
  type Loop,
  parseJob,
  type RangeQuery,
  type Region,
} from '@edgebite/core';
import { outlines, transformed, UNMOVED } from '@edgebite/core/testing';
import fc from 'fast-check';

/** A job and a range to look at in it. */
export interface RangeCase {
  readonly document: JobDocument;
  readonly query: RangeQuery;
}

type CutDocument = JobDocument['cuts'][number];

interface Numbers {
  /** A place along the box of the outline, from a little under 0 to a little over 1. */
  readonly share: fc.Arbitrary<number>;
  /** A length between two bounds. */
  readonly length: (min: number, max: number) => fc.Arbitrary<number>;
  /** A coordinate brought to the numbers that are in use. */
  readonly rounded: (value: number) => number;
}

/** Numbers as on a drawing, in halves of a unit: much touches, lines up and coincides. */
const DRAWN: Numbers = {
  share: fc.integer({ min: -2, max: 18 }).map((n) => n / 16),
  length: (min, max) => fc.integer({ min: Math.ceil(min * 2), max: Math.floor(max * 2) }).map((n) => n / 2),
  rounded: (value) => Math.round(value * 2) / 2,
};

function between(min: number, max: number): fc.Arbitrary<number> {
  return fc.noBias(fc.integer({ min: 0, max: 2 ** 30 })).map((n) => min + ((max - min) * n) / 2 ** 30);
}

/** Numbers of which no two have to do with each other. */
const LOOSE: Numbers = {
  share: between(-0.15, 1.15),
  length: between,
  rounded: (value) => value,
};

/** Parts of about 100 units with one to five cuts of all kinds and depths, and a range for one of the cuts. */
export const rangeCases: fc.Arbitrary<RangeCase> = fc.oneof(casesOf(LOOSE), casesOf(DRAWN));

/** The same with numbers of one kind only. */
export const looseCases: fc.Arbitrary<RangeCase> = casesOf(LOOSE);
export const drawnCases: fc.Arbitrary<RangeCase> = casesOf(DRAWN);

function casesOf(numbers: Numbers): fc.Arbitrary<RangeCase> {
  const turns = numbers === LOOSE ? between(0, 6) : fc.constant(0);
  return fc
    .tuple(outlines, turns, fc.array(cutPlans(numbers), { minLength: 1, maxLength: 5 }))
    .chain(([drawn, turn, plans]) => {
      const outline = transformed(drawn, { ...UNMOVED, turn: [Math.cos(turn), Math.sin(turn)] });
      const cuts = plans.map((plan, k) => plan(outline, `c${k}`));
      return fc
        .record({
          // No length or angle of a drawing is at the limit: a report would tell of it as rounding wants.
          limits: fc.record({
            web: numbers.length(0.5, 5).map((n) => n + 0.0123),
            knifeEdge: fc.integer({ min: 8, max: 70 }).map((n) => n + 0.123),
          }),
          resolution: fc.constantFrom(0.005, 0.02, 0.1),
          keep: fc.option(fc.tuple(numbers.share, numbers.share)),
          chosen: fc.nat(cuts.length - 1),
          along: fc.constantFrom('x', 'y', 'diameter' as const),
          below: numbers.length(5, 50),
          above: numbers.length(5, 50),
        })
        .map(({ limits, resolution, keep, chosen, along, below, above }): RangeCase => {
          const held = keep === null ? null : placeIn(outline, keep, numbers);
          const document: JobDocument = {
            edgebite: 1,
            units: 'mm',
            part: { outline: outlineDocument(outline), thickness: 12 },
            ...(held === null || contains(outline, { x: held[0], y: held[1] }) === 'outside'
              ? {}
              : { keep: held }),
            limits,
            resolution,
            cuts,
          };
          return { document, query: queryFor(parseJob(document).cuts[chosen] as Cut, along, below, above) };
        });
    });
}

type CutPlan = (outline: Region, id: string) => CutDocument;

function cutPlans(numbers: Numbers): fc.Arbitrary<CutPlan> {
  const place = fc.tuple(numbers.share, numbers.share);
  const every = fc
    .record({
      depth: fc.constantFrom<number | 'through'>('through', 'through', 'through', 4, 6, 9),
      from: fc.constantFrom<'top' | 'bottom'>('top', 'top', 'bottom'),
    })
    .map(({ depth, from }) => ({ depth, from }));
  const bore = fc.tuple(place, numbers.length(4, 40), every).map(
    ([at, diameter, rest]): CutPlan =>
      (outline, id) => ({ id, kind: 'bore', center: placeIn(outline, at, numbers), diameter, ...rest }),
  );
  const annular = fc.tuple(place, numbers.length(16, 50), numbers.length(1.5, 6), every).map(
    ([at, diameter, wall, rest]): CutPlan =>
      (outline, id) => ({
        id,
        kind: 'annular',
        center: placeIn(outline, at, numbers),
        diameter,
        wall,
        ...rest,
      }),
  );
  const swept = fc
    .tuple(
      fc.array(place, { minLength: 2, maxLength: 4 }),
      numbers.length(4, 14),
      fc.constantFrom(0, 1, -1),
      every,
    )
    .map(
      ([places, diameter, bow, rest]): CutPlan =>
        (outline, id) => {
          const points = places.map((at) => placeIn(outline, at, numbers)).filter(unlikeTheOneBefore);
          const steps = points
            .slice(1)
            .map(([x, y], k) => {
              const [px, py] = points[k] as [number, number];
              const radius = Math.hypot(x - px, y - py) * 0.7;
              return bow === 0 || k > 0
                ? `L${x} ${y}`
                : `A${radius} ${radius} 0 0 ${bow > 0 ? 1 : 0} ${x} ${y}`;
            })
            .join(' ');
          const [x, y] = points[0] as [number, number];
          const path = points.length > 1 ? `M${x} ${y} ${steps}` : `M${x} ${y} l10 0`;
          return { id, kind: 'swept', diameter, path: { svgPath: path }, ...rest };
        },
    );
  return fc.oneof(
    { arbitrary: bore, weight: 4 },
    { arbitrary: annular, weight: 3 },
    { arbitrary: swept, weight: 2 },
  );
}

function unlikeTheOneBefore(
  p: readonly [number, number],
  k: number,
  all: readonly (readonly [number, number])[],
) {
  const before = all[k - 1];
  return before === undefined || Math.hypot(p[0] - before[0], p[1] - before[1]) > 1;
}

function placeIn(outline: Region, [u, v]: readonly [number, number], { rounded }: Numbers): [number, number] {
  const box = boundsOf(outline);
  if (box === null) throw new Error('an outline without a box');
  return [rounded(box.minX + u * (box.maxX - box.minX)), rounded(box.minY + v * (box.maxY - box.minY))];
}

function queryFor(cut: Cut, along: RangeQuery['along'], below: number, above: number): RangeQuery {
  if (along === 'diameter' && cut.kind !== 'swept') {
    const least = cut.kind === 'annular' ? 2 * cut.wall + 0.5 : 0.5;
    return { cut: cut.id, along, from: Math.max(least, cut.diameter - below), to: cut.diameter + above };
  }
  const axis = along === 'y' ? 'y' : 'x';
  const now = (cut.kind === 'swept' ? (cut.path[0] as Edge).a : cut.center)[axis];
  return { cut: cut.id, along: axis, from: now - below, to: now + above };
}

function outlineDocument(region: Region): JobDocument['part']['outline'] {
  const part = region[0];
  if (part === undefined) throw new Error('an empty outline');
  return {
    edges: loopDocument(part.outer),
    ...(part.holes.length === 0 ? {} : { holes: part.holes.map((hole) => ({ edges: loopDocument(hole) })) }),
  };
}

function loopDocument(loop: Loop) {
  return loop.map((edge: Edge) => {
    const ends = { a: [edge.a.x, edge.a.y] as const, b: [edge.b.x, edge.b.y] as const };
    if (edge.kind === 'line') return { kind: 'line' as const, ...ends };
    return { kind: 'arc' as const, ...ends, center: [edge.center.x, edge.center.y] as const, ccw: edge.ccw };
  });
}
