import fc from 'fast-check';
import type { Region } from '../region/region.js';
import { type Cut, type CutCase, cutRegions, OBLIQUE_THIRDS } from './cut-case.js';
import { families } from './families.js';
import type { Family } from './family.js';
import { CLOSE, type Closeness } from './fingerprint.js';
import {
  AREA_SLACK,
  type Booleans,
  conservesArea,
  countsOnce,
  encodingDoesNotMatter,
  idempotent,
  invariantUnder,
  leavesDisjoint,
  orderDoesNotMatter,
  startPointDoesNotMatter,
} from './laws.js';
import { UNMOVED } from './transform.js';

/** What a law is put to: an outline, its cuts, and the same cuts as regions. */
interface Trial {
  readonly ops: Booleans;
  readonly outline: Region;
  readonly cuts: readonly Cut[];
  readonly regions: readonly Region[];
  readonly area: number;
  readonly closeness: Closeness;
}

/** A quarter of the way round and a bit, by a 3-4-5 triangle, so that it rounds as little as possible. */
const TURNED = { ...UNMOVED, turn: [0.6, 0.8] } as const;
const MIRRORED = { ...UNMOVED, mirror: true };
const SHRUNK = { ...UNMOVED, scale: 1e-6 };

const eachCut = ({ regions }: Trial, law: (cut: Region) => unknown): void => {
  for (const cut of regions) law(cut);
};

const LAWS = {
  conservesArea: (t: Trial) => eachCut(t, (cut) => conservesArea(t.ops, t.outline, cut, t.area)),
  countsOnce: (t: Trial) => eachCut(t, (cut) => countsOnce(t.ops, t.outline, cut, t.area)),
  leavesDisjoint: (t: Trial) => eachCut(t, (cut) => leavesDisjoint(t.ops, t.outline, cut, t.area)),
  idempotent: (t: Trial) => eachCut(t, (cut) => idempotent(t.ops, t.outline, cut, t.closeness)),
  orderDoesNotMatter: (t: Trial) => orderDoesNotMatter(t.ops, t.outline, t.regions, t.closeness),
  startPointDoesNotMatter: (t: Trial) => startPointDoesNotMatter(t.ops, t.outline, t.regions, t.closeness),
  encodingDoesNotMatter: (t: Trial) =>
    encodingDoesNotMatter(t.ops, t.outline, t.cuts, [OBLIQUE_THIRDS], t.closeness),
  placeDoesNotMatter: (t: Trial) => {
    for (const move of [TURNED, MIRRORED, SHRUNK]) {
      invariantUnder(t.ops, t.outline, t.regions, move, t.closeness);
    }
  },
} satisfies Record<string, (trial: Trial) => void>;

/** The name of a law that `checkLaws` knows. */
export type LawName = keyof typeof LAWS;

/** The names of all laws that `checkLaws` knows. */
export const lawNames = Object.keys(LAWS) as readonly LawName[];

/** Which laws are put to which cases, how many, and how strictly. */
export interface CheckLawsOptions {
  /** All unless given. */
  readonly laws?: readonly LawName[] | undefined;
  /** Where the cases come from; every family that does not hang on rounding unless given. */
  readonly families?: readonly Family[] | undefined;
  /** Cases of each family that each law is put to; 25 unless given. */
  readonly runs?: number | undefined;
  /** The same number gives the same cases; 1 unless given, so that a red build means that the code changed. */
  readonly seed?: number | undefined;
  /** Deviation of areas that is let pass, as a share; `AREA_SLACK` unless given, where also stands what welding adds. */
  readonly area?: number | undefined;
  /** How far two results may lie apart and still count as the same; `CLOSE` unless given. */
  readonly closeness?: Closeness | undefined;
}

/** A law that does not hold in a family of cases, with the smallest case found that shows it. */
export interface LawFault {
  readonly law: LawName;
  readonly family: string;
  /** What is wrong, as the law or the operations under test say it. */
  readonly message: string;
  /** The case, made as small as could be. Plain JSON: keep it as a test of its own. */
  readonly smallest: CutCase;
  /** How often the case was made smaller on the way. */
  readonly shrinks: number;
}

/**
 * Puts operations of any library to the laws, over generated cuts that lean towards tangent, coincident and touching
 * ones. Returns every fault, none if all laws hold; an exception of the operations is a fault like any other. Wrap the
 * library's functions with `booleansOf`.
 * @throws RangeError if `runs` is not a whole number over 0.
 */
export function checkLaws(ops: Booleans, options: CheckLawsOptions = {}): readonly LawFault[] {
  const { laws = lawNames, runs = 25 } = options;
  if (!Number.isInteger(runs) || runs < 1) {
    throw new RangeError(`checkLaws: runs is ${runs}; it must be a whole number over 0`);
  }
  const list = options.families ?? families.filter(({ marginal }) => !marginal);
  return laws.flatMap((law) => list.flatMap((family) => faultOf(ops, law, family, runs, options) ?? []));
}

function faultOf(
  ops: Booleans,
  law: LawName,
  family: Family,
  runs: number,
  options: CheckLawsOptions,
): LawFault | null {
  const { seed = 1, area = AREA_SLACK, closeness = CLOSE } = options;
  const property = fc.property(family.cases, (one) => {
    const { outline, cuts } = one;
    LAWS[law]({ ops, outline, cuts, regions: cutRegions(one), area, closeness });
  });
  const result = fc.check(property, { numRuns: runs, seed });
  if (!result.failed || result.counterexample === null) return null;
  const [smallest] = result.counterexample;
  const error = result.errorInstance;
  const message = error instanceof Error ? error.message : String(error);
  return { law, family: family.name, message, smallest, shrinks: result.numShrinks };
}
