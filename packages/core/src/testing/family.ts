import fc from 'fast-check';
import type { Region } from '../region/region.js';
import { RATIONAL_DIRECTIONS } from './anchors.js';
import { type Cut, type CutCase, placedCut } from './cut-case.js';
import { outlines } from './outlines.js';
import { extentOf } from './probe.js';
import { type Similarity, transformed } from './transform.js';

/** A named kind of cut case with its generator. */
export interface Family {
  readonly name: string;
  readonly about: string;
  /**
   * True if a distance in the case is near the weld tolerance, so that the number of pieces may hang on
   * rounding; areas still have to be right.
   */
  readonly marginal: boolean;
  readonly cases: fc.Arbitrary<CutCase>;
}

/** The small numbers that every family builds its cuts from; each family uses those it needs. */
export interface Picks {
  readonly edge: number;
  /** Place along the edge, in sixteenths. */
  readonly along: number;
  readonly direction: number;
  /** Radii, in units of the outline (about 100 long). */
  readonly radius: number;
  readonly second: number;
  readonly count: number;
  readonly choice: number;
  /** Loose discs: place and radius. */
  readonly spread: readonly (readonly [number, number, number])[];
}

const picks: fc.Arbitrary<Picks> = fc.record({
  edge: fc.nat(15),
  along: fc.integer({ min: 1, max: 15 }),
  direction: fc.nat(RATIONAL_DIRECTIONS.length - 1),
  radius: fc.integer({ min: 2, max: 30 }),
  second: fc.integer({ min: 2, max: 30 }),
  count: fc.integer({ min: 2, max: 6 }),
  choice: fc.nat(7),
  spread: fc.array(
    fc.tuple(
      fc.integer({ min: -20, max: 120 }),
      fc.integer({ min: -20, max: 120 }),
      fc.integer({ min: 1, max: 30 }),
    ),
    { minLength: 1, maxLength: 6 },
  ),
});

/** Where the part lies: as drawn, or turned, mirrored, in inches, off the origin, or far from it. */
const placements = fc.record({
  unit: fc.constantFrom<'mm' | 'inch'>('mm', 'inch'),
  mirror: fc.boolean(),
  turn: fc.oneof(
    fc.constant<readonly [number, number]>([1, 0]),
    fc.constantFrom(...RATIONAL_DIRECTIONS),
    fc.integer({ min: 1, max: 359 }).map((degrees): readonly [number, number] => {
      const angle = (degrees * Math.PI) / 180;
      return [Math.cos(angle), Math.sin(angle)];
    }),
  ),
  away: fc.constantFrom(0, 0, 1, 1e4),
});

/** What a family needs to be told apart from a generator: how its cuts are built from the picks. */
export interface FamilyPlan {
  readonly name: string;
  readonly about: string;
  readonly marginal?: boolean | undefined;
  readonly outlines?: fc.Arbitrary<Region> | undefined;
  readonly build: (outline: Region, picks: Picks) => Cut[];
}

/** A family from its plan: outline and picks drawn independently, the finished case put somewhere. */
export function family(plan: FamilyPlan): Family {
  const cases = fc.tuple(plan.outlines ?? outlines, picks, placements).map(([outline, picked, placement]) => {
    const cuts = plan.build(outline, picked);
    const scale = placement.unit === 'inch' ? 1 / 25.4 : 1;
    const away = placement.away * extentOf(outline) * scale;
    const { mirror, turn, unit } = placement;
    return placedCase(
      { family: plan.name, unit, outline, cuts },
      { mirror, turn, scale, shift: [away, -away / 2] },
    );
  });
  return { name: plan.name, about: plan.about, marginal: plan.marginal ?? false, cases };
}

/** A case put through a similarity, outline and cuts alike. */
export function placedCase(cutCase: CutCase, by: Similarity): CutCase {
  const cuts = cutCase.cuts.map((cut) => placedCut(cut, by));
  return { ...cutCase, outline: transformed(cutCase.outline, by), cuts };
}
