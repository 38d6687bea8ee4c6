import {
  areaOf,
  type Cut,
  cutRegion,
  type Encoding,
  filleted,
  HALVES,
  OBLIQUE_THIRDS,
  placed,
  placedCut,
  type Similarity,
  transformed,
} from '@edgebite/core/testing';
import fc from 'fast-check';
import { intersect, type Point, type Region, subtract, union } from '../region/kernel.js';
import { slabsSubtract } from './slabs.js';

/** What an operation must give: by a closed form, or by the slab reference where there is none. */
export interface Expected {
  readonly area: number;
  readonly pieces: number;
  readonly holes: number;
}

/** One case of a family in which @flatten-js/core 1.6.15 was measured to fail. */
export interface FlattenCase {
  readonly run: (encoding: Encoding) => Region;
  readonly expected: Expected;
  /** Area of the part, which deviations are measured by. */
  readonly whole: number;
  /** Longer side of what is worked on. */
  readonly extent: number;
}

/** A family of such cases. */
export interface FlattenFamily {
  readonly name: string;
  readonly cases: fc.Arbitrary<FlattenCase>;
}

/** Encodings that every case is run in: half circles, and three arcs with oblique seams. */
export const WAYS: readonly Encoding[] = [HALVES, OBLIQUE_THIRDS];

const WIDTH = 160;
const HEIGHT = 100;
const CORNERS: readonly Point[] = [
  { x: 0, y: 0 },
  { x: WIDTH, y: 0 },
  { x: WIDTH, y: HEIGHT },
  { x: 0, y: HEIGHT },
];
const plate: Region = [{ outer: filleted(CORNERS, 0), holes: [] }];

const moves: fc.Arbitrary<Similarity> = fc.record({
  mirror: fc.boolean(),
  turn: fc.constantFrom<readonly [number, number]>([1, 0], [0.6, 0.8], [-5 / 13, 12 / 13], [0, -1]),
  scale: fc.constant(1),
  shift: fc.constantFrom<readonly [number, number]>([0, 0], [12.5, -7.25]),
});

const size = fc.integer({ min: 30, max: 150 }).map((n) => n / 10);
const place = fc.record({ x: fc.integer({ min: 50, max: 110 }), y: fc.integer({ min: 42, max: 58 }) });

/** Cuts made in a part, all in one call. */
function cutting(part: Region, cuts: readonly Cut[], expected: Expected, move: Similarity): FlattenCase {
  const moved = transformed(part, move);
  const placedCuts = cuts.map((cut) => placedCut(cut, move));
  const run = (encoding: Encoding): Region =>
    subtract(
      moved,
      placedCuts.map((cut) => cutRegion(cut, encoding)),
    );
  return { run, expected, whole: areaOf(part), extent: WIDTH + HEIGHT };
}

const disc = (center: Point, radius: number): Cut => ({ kind: 'disc', center, radius });
const ring = (center: Point, outer: number, inner: number): Cut => ({ kind: 'ring', center, outer, inner });
const circle = (r: number): number => Math.PI * r * r;
const plateArea = WIDTH * HEIGHT;

/** Area of two equal discs together, d apart. */
const pair = (r: number, d: number): number =>
  circle(r) + 2 * r * r * Math.asin(d / (2 * r)) + (d / 2) * Math.sqrt(4 * r * r - d * d);

/** Area of a disc beyond a line h inside its rim (h under 0: none; h over 2 r: all). */
function beyond(r: number, h: number): number {
  if (h <= 0) return 0;
  return h >= 2 * r ? circle(r) : r * r * Math.acos((r - h) / r) - (r - h) * Math.sqrt(2 * r * h - h * h);
}

/** Gaps of about a millionth, at either side; of a part 160 long the weld tolerance is a sixth of that. */
const gap = fc
  .tuple(fc.integer({ min: 5, max: 40 }), fc.boolean())
  .map(([tenths, over]) => (over ? -1 : 1) * tenths * 1e-7);

/** The families, as measured with @flatten-js/core 1.6.15 (docs/peer-disagreements.md). */
export const flattenFamilies: readonly FlattenFamily[] = [
  {
    name: 'adjacent concentric rings',
    cases: fc
      .tuple(place, size, size, fc.integer({ min: 2, max: 5 }), moves)
      .map(([at, r, step, count, move]) => {
        const radius = (k: number): number => r + (k * step) / 4;
        const cuts = Array.from({ length: count }, (_, k) => ring(at, radius(k + 1), radius(k)));
        const area = plateArea - circle(radius(count)) + circle(r);
        return cutting(plate, cuts, { area, pieces: 2, holes: 1 }, move);
      }),
  },
  {
    name: 'five nested rings',
    cases: fc.tuple(place, size, size, moves).map(([at, r, step, move]) => {
      const radius = (k: number): number => r / 2 + (k * step) / 6;
      const cuts = [0, 2, 4, 6, 8].map((k) => ring(at, radius(k + 1), radius(k)));
      const kerfs = [0, 2, 4, 6, 8].reduce((sum, k) => sum + circle(radius(k + 1)) - circle(radius(k)), 0);
      return cutting(plate, cuts, { area: plateArea - kerfs, pieces: 6, holes: 5 }, move);
    }),
  },
  {
    name: 'the same bore shifted by 0.005, outline with fillets',
    cases: fc.tuple(place, size, size, moves).map(([at, r, corner, move]) => {
      const rounded: Region = [{ outer: filleted(CORNERS, corner), holes: [] }];
      const area = plateArea - (4 - Math.PI) * corner * corner - pair(r, 0.005);
      const cuts = [disc(at, r), disc({ x: at.x + 0.003, y: at.y + 0.004 }, r)];
      return cutting(rounded, cuts, { area, pieces: 1, holes: 1 }, move);
    }),
  },
  {
    name: 'near-tangent, gap about 1e-6',
    cases: fc.tuple(place, size, gap, moves).map(([at, r, g, move]) => {
      const area = plateArea - circle(r) + beyond(r, -g);
      const holes = g > 0 ? 1 : 0;
      return cutting(plate, [disc({ x: at.x, y: r + g }, r)], { area, pieces: 1, holes }, move);
    }),
  },
  {
    name: 'near-coincident, about 1e-6',
    cases: fc.tuple(place, size, gap, fc.boolean(), moves).map(([at, r, g, grow, move]) => {
      const other = grow ? disc(at, r + g) : disc({ x: at.x + g, y: at.y }, r);
      const taken = grow ? circle(Math.max(r, r + g)) : pair(r, Math.abs(g));
      return cutting(plate, [disc(at, r), other], { area: plateArea - taken, pieces: 1, holes: 1 }, move);
    }),
  },
  ...[10, 50].map(
    (count): FlattenFamily => ({
      name: `${count} cuts on a grid, coordinates rounded`,
      cases: fc.tuple(size, size, moves).map(([r, pitch, move]) => {
        const columns = count / 5;
        const rounded = (value: number): number => Math.round(value * 1000) / 1000;
        const cuts = Array.from({ length: count }, (_, k) => {
          const center = {
            x: rounded(((k % columns) * (pitch + 1)) / 0.97),
            y: rounded((Math.floor(k / columns) * (pitch + 1)) / 0.97),
          };
          return disc(center, rounded(r / 1.3));
        });
        const found = slabsSubtract(
          plate,
          cuts.map((cut) => cutRegion(cut, OBLIQUE_THIRDS)),
        );
        const holes = found.pieces.reduce((sum, piece) => sum + piece.enclosed, 0);
        return cutting(plate, cuts, { area: found.area, pieces: found.pieces.length, holes }, move);
      }),
    }),
  ),
  {
    name: 'rough then finish, 20 in turn',
    cases: fc.tuple(place, size, size, moves).map(([at, r, away, move]) => {
      const finish = r + away / 3;
      const passes = Array.from({ length: 19 }, (_, k) => {
        const share = (k + 1) / 20;
        return disc({ x: at.x, y: (1 - share) * (away / 3) }, finish - (1 - share) * (away / 3));
      });
      const parts = [...passes, disc({ x: at.x, y: 0 }, finish)].map((cut) => placedCut(cut, move));
      const start = transformed(plate, move);
      const run = (encoding: Encoding): Region =>
        parts.reduce((left, cut) => subtract(left, [cutRegion(cut, encoding)]), start);
      const area = plateArea - circle(finish) / 2;
      return { run, expected: { area, pieces: 1, holes: 0 }, whole: plateArea, extent: WIDTH + HEIGHT };
    }),
  },
  {
    name: 'centre on a corner',
    cases: fc.tuple(size, fc.nat(3), moves).map(([r, corner, move]) => {
      const at = CORNERS[corner] as Point;
      return cutting(plate, [disc(at, r)], { area: plateArea - circle(r) / 4, pieces: 1, holes: 0 }, move);
    }),
  },
  {
    name: 'ring crossing an edge',
    cases: fc
      .tuple(place, size, fc.integer({ min: 5, max: 60 }), fc.integer({ min: -9, max: 9 }), moves)
      .map(([at, r, wall, tenths, move]) => {
        const outer = r + wall / 10;
        const y = (r * tenths) / 10;
        const inPlate = (radius: number): number => circle(radius) - beyond(radius, radius - y);
        const area = plateArea - inPlate(outer) + inPlate(r);
        return cutting(plate, [ring({ x: at.x, y }, outer, r)], { area, pieces: 2, holes: 0 }, move);
      }),
  },
  ...(['intersect', 'unify'] as const).map(
    (operation): FlattenFamily => ({
      name: `${operation} a bored plate with the bore`,
      cases: fc.tuple(place, size, fc.integer({ min: 0, max: 6 }), moves).map(([at, r, seam, move]) => {
        const center = placed(at, move);
        const start = transformed(plate, move);
        const run = (encoding: Encoding): Region => {
          const bored = subtract(start, [cutRegion(disc(center, r), encoding)]);
          const bore = cutRegion(disc(center, r), { arcs: encoding.arcs, start: encoding.start + seam });
          return operation === 'unify' ? union([bored, bore]) : intersect([bored, bore]);
        };
        const expected =
          operation === 'unify' ? { area: plateArea, pieces: 1, holes: 0 } : { area: 0, pieces: 0, holes: 0 };
        return { run, expected, whole: plateArea, extent: WIDTH + HEIGHT };
      }),
    }),
  ),
];

/** What is wrong with the kernel's answer to a case, in either encoding; null if nothing is. */
export function wrongIn(flattenCase: FlattenCase): string | null {
  for (const encoding of WAYS) {
    const got = flattenCase.run(encoding);
    const area = areaOf(got);
    const { expected, whole } = flattenCase;
    if (!(Math.abs(area - expected.area) <= 1e-9 * whole)) return `area ${area} against ${expected.area}`;
    if (got.length !== expected.pieces) return `${got.length} pieces against ${expected.pieces}`;
    const holes = got.reduce((sum, part) => sum + part.holes.length, 0);
    if (holes !== expected.holes) return `${holes} holes against ${expected.holes}`;
  }
  return null;
}
