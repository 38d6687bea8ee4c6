import { arcEdge, contains, type JobDocument, type Point, parseJob, type Region } from '@edgebite/core';
import { outlines } from '@edgebite/core/testing';
import fc from 'fast-check';
import { anchorOn, fromAnchor, stepped } from '../../packages/core/src/testing/anchors.js';
import { outlineJson } from '../left/section-builder.js';

type CutDocument = JobDocument['cuts'][number];
type OutlineDocument = JobDocument['part']['outline'];

const length = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min, max });

/** Outlines by the ready shapes of the job format. */
const readyShapes: fc.Arbitrary<OutlineDocument> = fc.oneof(
  fc
    .record({ size: fc.tuple(length(30, 120), length(30, 90)), corner: fc.nat(15), hole: fc.boolean() })
    .map(({ size, corner, hole }) => ({
      rectangle: size,
      ...(corner === 0 ? {} : { corner }),
      ...(hole ? { holes: [{ circle: 10, at: [size[0] / 2, size[1] / 2] as const }] } : {}),
    })),
  length(20, 120).map((circle) => ({ circle, at: [40, 40] as const })),
  fc
    .record({ length: length(50, 120), width: length(10, 45), angle: fc.constantFrom(0, 30, 45, 90, -17) })
    .map(({ length: long, width, angle }) => ({ slot: [long, width] as const, angle })),
);

/** Small numbers that a cut is made from. */
interface CutPlan {
  readonly kind: 'bore' | 'annular' | 'swept';
  readonly way: number;
  readonly edge: number;
  readonly along: number;
  readonly direction: number;
  readonly radius: number;
  readonly share: number;
  readonly spot: readonly [number, number];
  readonly large: boolean;
  readonly depth: number;
  readonly fromBottom: boolean;
  readonly reach: number;
  readonly steps: readonly (readonly [number, number, number])[];
}

const plans: fc.Arbitrary<CutPlan> = fc.record({
  kind: fc.constantFrom<CutPlan['kind']>('bore', 'bore', 'annular', 'annular', 'swept'),
  way: fc.nat(11),
  edge: fc.nat(15),
  along: fc.integer({ min: 0, max: 16 }),
  direction: fc.nat(35),
  radius: fc.integer({ min: 2, max: 30 }),
  share: fc.integer({ min: 1, max: 7 }),
  spot: fc.tuple(fc.integer({ min: -20, max: 120 }), fc.integer({ min: -20, max: 120 })),
  large: fc.nat(11).map((n) => n === 11),
  depth: fc.nat(8),
  fromBottom: fc.boolean(),
  reach: fc.nat(5),
  steps: fc.array(
    fc.tuple(
      fc.integer({ min: -30, max: 30 }),
      fc.integer({ min: -30, max: 30 }),
      fc.integer({ min: -2, max: 2 }),
    ),
    { minLength: 1, maxLength: 4 },
  ),
});

/** Thicknesses, also such that thirds of them are rounded. */
const THICKNESSES = [12, 10 / 3, 0.7];

/** Depths as shares of the thickness, so that cuts from both sides meet; the last ones stand for `through`. */
const DEPTHS = [0.25, 1 / 3, 0.5, 2 / 3, 0.75, 1];

/** Some cuts are so much larger: their edges are all but straight. */
const LARGE = 40;

/** Reaches as shares of the thickness; the last ones stand for any depth. */
const REACHES = [0.3, 0.5, 2];

/** Planted gaps in mm, on parts of about 100: over the weld tolerance, on both sides of the usual resolution. */
const GAPS = [2, 0.3, 0.02, 1e-3, 1e-5];

/** Random jobs: any outline, up to seven cuts of all kinds and depths, from both sides, many touching or repeated. */
export const jobCases: fc.Arbitrary<JobDocument> = fc
  .record({
    shape: fc.oneof({ weight: 3, arbitrary: outlines.map(edgeShape) }, { weight: 1, arbitrary: readyShapes }),
    thickness: fc.constantFrom(...THICKNESSES),
    cuts: fc.array(plans, { maxLength: 7 }),
    keep: fc.tuple(fc.nat(15), fc.integer({ min: 1, max: 15 }), fc.nat(4)),
    // At no round number, so that what is measured off a round part does not lie right at the limit.
    web: fc.constantFrom(0.2037, 1.0173, 2.513, 6.021),
    knifeEdge: fc.constantFrom(10.13, 30.17, 60.19, 89.9),
    material: fc.constantFrom(undefined, 'mild steel'),
  })
  .map(({ shape, thickness, cuts, keep, web, knifeEdge, material }): JobDocument => {
    const outline = regionOf(shape);
    const place = keptPlace(outline, keep);
    return {
      edgebite: 1,
      units: 'mm',
      part: {
        outline: shape,
        thickness,
        ...(material === undefined ? {} : { material }),
      },
      ...(place === null ? {} : { keep: place }),
      limits: { web, knifeEdge },
      cuts: cutsOf(outline, cuts, thickness),
    };
  });

function edgeShape(region: Region): OutlineDocument {
  return outlineJson(region[0] as Region[number], false) as OutlineDocument;
}

/** Where the library itself says that the edges of a shape are. */
function regionOf(outline: OutlineDocument): Region {
  return parseJob({ edgebite: 1, units: 'mm', part: { outline, thickness: 1 }, cuts: [] }).outline;
}

function keptPlace(
  outline: Region,
  [edge, along, depth]: readonly [number, number, number],
): [number, number] | null {
  // Depth 0: the job does not say.
  if (depth === 0) return null;
  const p = fromAnchor(anchorOn(outline, edge, along), depth * 1.7);
  return contains(outline, p) === 'inside' ? [p.x, p.y] : null;
}

function cutsOf(outline: Region, all: readonly CutPlan[], thickness: number): CutDocument[] {
  const cuts: CutDocument[] = [];
  for (const plan of all) {
    const { center, radius } = placed(outline, plan, cuts);
    cuts.push({
      id: `c${cuts.length}`,
      ...depthOf(plan, thickness),
      ...shapeOf(plan, center, radius, thickness),
    } as CutDocument);
  }
  return cuts;
}

function depthOf({ depth, fromBottom }: CutPlan, thickness: number): object {
  const share = DEPTHS[depth];
  return {
    ...(fromBottom ? { from: 'bottom' } : {}),
    ...(share === undefined ? {} : { depth: share * thickness }),
  };
}

function shapeOf(plan: CutPlan, center: Point, radius: number, thickness: number): object {
  const at = [center.x, center.y];
  if (plan.kind === 'bore') return { kind: 'bore', center: at, diameter: 2 * radius };
  if (plan.kind === 'annular') {
    const reach = REACHES[plan.reach];
    const wall = (radius * plan.share) / 8;
    return {
      kind: 'annular',
      center: at,
      diameter: 2 * radius,
      wall,
      ...(reach === undefined ? {} : { reach: reach * thickness }),
    };
  }
  return { kind: 'swept', diameter: plan.share * 2, path: { edges: pathFrom(center, plan.steps) } };
}

/** A path of lines, and of arcs where the third number of a step is not 0. */
function pathFrom(start: Point, steps: CutPlan['steps']): object[] {
  let a = start;
  return steps.map(([dx, dy, bow]) => {
    const b = { x: a.x + (dx === 0 && dy === 0 ? 5 : dx), y: a.y + dy };
    const edge = bow === 0 ? null : bowed(a, b, bow);
    const ends = { a: [a.x, a.y], b: [b.x, b.y] };
    a = b;
    if (edge === null) return { kind: 'line', ...ends };
    return { kind: 'arc', ...ends, center: [edge.center.x, edge.center.y], ccw: edge.ccw };
  });
}

/** Half a turn for a bow of 1, a quarter turn for one of 2; to the other side under 0. */
function bowed(a: Point, b: Point, bow: number): { center: Point; ccw: boolean } {
  const away = Math.abs(bow) === 1 ? 0 : Math.sign(bow) / 2;
  const center = { x: (a.x + b.x) / 2 - away * (b.y - a.y), y: (a.y + b.y) / 2 + away * (b.x - a.x) };
  const { ccw } = arcEdge(a, b, center, bow > 0) as { ccw: boolean };
  return { center, ccw };
}

/** Where a cut goes and how large it is: by the outline, or by a cut before it. */
function placed(
  outline: Region,
  plan: CutPlan,
  before: readonly CutDocument[],
): { center: Point; radius: number } {
  const radius = (plan.radius / 2) * (plan.large ? LARGE : 1);
  const anchor = anchorOn(outline, plan.edge, plan.along);
  const gap = GAPS[plan.direction % GAPS.length] as number;
  const other = before[plan.edge % Math.max(1, before.length)];
  const beside = (reach: number): Point => stepped(centerOf(other), plan.direction, reach);
  switch (plan.way) {
    case 0:
      return { center: fromAnchor(anchor, radius), radius };
    case 1:
      return { center: fromAnchor(anchor, -radius), radius };
    case 2:
      return { center: fromAnchor(anchor, radius + gap), radius };
    case 3:
      return { center: fromAnchor(anchor, radius - gap), radius };
    case 4:
      return { center: anchor.at, radius };
    case 5:
      return { center: anchor.edge.a, radius };
    case 6:
      return anchor.edge.kind === 'arc'
        ? { center: anchor.edge.center, radius: anchor.edge.radius }
        : { center: fromAnchor(anchor, radius / 2), radius };
    case 7:
      return { center: centerOf(other), radius: plan.share % 2 === 0 ? radiusOf(other) : radius };
    case 8:
      return { center: beside(radiusOf(other) + radius), radius };
    case 9:
      return { center: beside(radiusOf(other) + radius + gap), radius };
    case 10:
      return { center: beside(radiusOf(other)), radius };
    default:
      return { center: { x: plan.spot[0], y: plan.spot[1] }, radius };
  }
}

function centerOf(cut: CutDocument | undefined): Point {
  if (cut === undefined) return { x: 20, y: 20 };
  if (cut.kind !== 'swept') {
    const [x, y] = cut.center as readonly [number, number];
    return { x, y };
  }
  const [first] = 'edges' in cut.path ? cut.path.edges : [];
  return first === undefined ? { x: 20, y: 20 } : { x: first.a[0], y: first.a[1] };
}

function radiusOf(cut: CutDocument | undefined): number {
  return (cut?.diameter ?? 10) / 2;
}
