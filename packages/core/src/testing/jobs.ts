import fc from 'fast-check';
import type { CutDocument, JobDocument, OutlineDocument, SetupDocument } from '../document/schema.js';

/*
 * Jobs of small whole numbers, of which each shrinks towards a rectangle with one bore in its middle. Every one is
 * valid: `parseJob` takes it.
 */

type PlaceJson = readonly [number, number];

const size = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min, max });

/** Outlines as jobs have them, about 100 across, near zero. */
export const outlineDocuments: fc.Arbitrary<OutlineDocument> = fc.oneof(
  { withCrossShrink: true },
  fc.record({ rectangle: fc.tuple(size(20, 120), size(20, 90)) }),
  fc.record({ rectangle: fc.tuple(size(20, 120), size(20, 90)), corner: size(1, 10) }),
  fc.record({ circle: size(20, 120), at: fc.constant<PlaceJson>([40, 40]) }),
  fc.record({ slot: fc.tuple(size(60, 120), size(10, 50)), angle: fc.constantFrom(0, 30, 45, 90) }),
  fc
    .tuple(size(30, 120), size(30, 90), size(5, 20))
    .map(([w, h, r]) => ({ svgPath: `M0 0 H${w} V${h - r} A${r} ${r} 0 0 1 ${w - r} ${h} H0 Z` })),
);

const places: fc.Arbitrary<PlaceJson> = fc.tuple(size(-20, 130), size(-20, 110));

const depths = fc.constantFrom<number | undefined>(undefined, 3, 6, 12);

const sides = fc.constantFrom<'top' | 'bottom' | undefined>(undefined, 'bottom');

/** A cut as jobs have it, but for its id. */
type CutShape<C = CutDocument> = C extends CutDocument ? Omit<C, 'id'> : never;

const cutShapes: fc.Arbitrary<CutShape> = fc.oneof(
  { withCrossShrink: true },
  fc.record({
    kind: fc.constant('bore' as const),
    center: places,
    diameter: size(1, 60),
    depth: depths,
    from: sides,
  }),
  fc
    .record({ center: places, diameter: size(10, 80), teeth: size(1, 4), depth: depths, from: sides })
    .map(({ teeth, ...cut }) => ({ kind: 'annular' as const, ...cut, wall: (cut.diameter * teeth) / 10 })),
  fc
    .record({
      start: places,
      steps: fc.tuple(size(1, 60), size(-30, 30)),
      diameter: size(1, 20),
      depth: depths,
    })
    .map(({ start: [x, y], steps: [dx, dy], diameter, depth }) => ({
      kind: 'swept' as const,
      diameter,
      depth,
      path: { edges: [{ kind: 'line' as const, a: [x, y] as PlaceJson, b: [x + dx, y + dy] as PlaceJson }] },
    })),
);

const touch = (face: string) => [{ touch: face, tip: 10, reads: 0, tolerance: 0.01 }] as const;

const stopped = (face: string, length: number) =>
  [
    { touch: 'the stop', tip: 10, reads: 0, tolerance: 0.005 },
    { bears: face, on: 'the stop', block: length, tolerance: 0.02 },
  ] as const;

/** Setups as jobs have them, for cuts of the ids given: the part as it lies, turned, or turned over. */
export function setupDocuments(ids: readonly string[]): fc.Arbitrary<SetupDocument> {
  const x = fc.oneof(
    fc.constantFrom([...touch('left')], [...touch('right')]),
    size(10, 200).map((length) => [...stopped('left', length)]),
  );
  const y = fc.constantFrom([...touch('front')], [...touch('back')]);
  return fc
    .record({
      turn: fc.constantFrom(undefined, 90, 180, 30),
      flip: fc.constantFrom<'x' | 'y' | undefined>(undefined, 'x', 'y'),
      stops: fc.constant([{ id: 'the stop', face: 'left' as const }]),
      zero: fc.record({ x, y }),
    })
    .map((setup) => withoutGaps({ id: 'setup', ...setup, cuts: [...ids] }));
}

/** Jobs: any outline, up to six cuts of all kinds and depths, from both sides. */
export const jobDocuments: fc.Arbitrary<JobDocument> = fc
  .record({
    units: fc.constantFrom<'mm' | 'inch'>('mm', 'inch'),
    outline: outlineDocuments,
    thickness: fc.constantFrom(12, 8, 0.5),
    cuts: fc.array(cutShapes, { maxLength: 6 }),
    limits: fc.record({ web: fc.constantFrom(1, 2.5), knifeEdge: fc.constantFrom(30, 60) }),
  })
  .map(({ units, outline, thickness, cuts, limits }) =>
    withoutGaps({
      edgebite: 1 as const,
      units,
      part: { outline, thickness },
      limits,
      cuts: cuts.map((cut, k) => ({ id: `cut-${k + 1}`, ...cut, depth: capped(cut.depth, thickness) })),
    } as JobDocument),
  );

/** Jobs with one setup, in which all cuts are made from the side that lies up. */
export const jobDocumentsWithSetup: fc.Arbitrary<JobDocument> = jobDocuments
  .filter(({ cuts }) => cuts.length > 0)
  .chain((job) => {
    const ids = job.cuts.map(({ id }) => id);
    return setupDocuments(ids).map((setup) => {
      const from = setup.flip === undefined ? 'top' : 'bottom';
      return { ...job, cuts: job.cuts.map((cut) => ({ ...cut, from })), setups: [setup] } as JobDocument;
    });
  });

/** A cut is never deeper than the part is thick. */
function capped(depth: number | 'through' | undefined, thickness: number): number | 'through' | undefined {
  return typeof depth === 'number' && depth > thickness ? thickness : depth;
}

/** The same plain data without keys that hold nothing. */
function withoutGaps<T>(value: T): T {
  return JSON.parse(JSON.stringify(value)) as T;
}
