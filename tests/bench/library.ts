import { type ArcEdge, area, offset, type Region, subtract } from '@edgebite/core';
import { edgesOf, lengthOf } from '@edgebite/core/testing';
import { type CutProblem, type OffsetProblem, SIZE } from './problems.js';

/**
 * A library that cuts and grows regions, in its own form `Native`. Operands must stay usable, so that work can be
 * timed on operands that were made beforehand.
 */
export interface Library<Native, Given> {
  readonly name: string;
  /** Regions as one operand of the library. */
  readonly take: (regions: readonly Region[]) => Native;
  readonly subtract: (from: Native, cuts: Native) => Native;
  /** Null where the library cannot grow regions. */
  readonly grow: ((region: Native, distance: number) => Native) | null;
  /** The result as plain data. */
  readonly give: (result: Native) => Given;
  readonly areaOf: (given: Given) => number;
  /** Gives back memory that is not collected by itself. */
  readonly free: (native: Native) => void;
  /** Whether regions that overlap may be one operand. */
  readonly takesOverlaps: boolean;
  /** How far the area may be off for reasons of the library's method, in mm² for each mm of arc of radius r. */
  readonly error: (radius: number) => number;
}

/** A case for one library, ready to be run. */
export interface Contest {
  readonly library: string;
  /** From our regions to plain data. */
  readonly whole: () => unknown;
  /** The work alone, on operands that were made beforehand. */
  readonly bare: () => unknown;
  /** Area of the answer. */
  readonly answer: () => number;
  /** How far that may be off. */
  readonly slack: number;
  readonly done: () => void;
}

/** Rounding that any library may add, as a share of the squared size. */
const ROUNDING = 1e-10;

/** Sets up a case for a library; null if that cannot do it. */
export function contest<N, G>(problem: CutProblem | OffsetProblem, library: Library<N, G>): Contest | null {
  return problem.kind === 'cut' ? cutContest(problem, library) : offsetContest(problem, library);
}

function cutContest<N, G>(problem: CutProblem, library: Library<N, G>): Contest {
  const { outline, cuts } = problem;
  const { take, give, free } = library;
  const inTurn = problem.inTurn || (problem.overlap && !library.takesOverlaps);
  const operands = inTurn ? cuts.map((cut) => [cut]) : [cuts];
  const start = take([outline]);
  const taken = operands.map(take);
  const run = (): N => cutInTurn(library, start, taken);
  const whole = (): G => {
    let left = take([outline]);
    for (const operand of operands) {
      const cut = take(operand);
      const next = library.subtract(left, cut);
      free(left);
      free(cut);
      left = next;
    }
    const given = give(left);
    free(left);
    return given;
  };
  return {
    library: library.name,
    whole,
    bare: () => free(run()),
    answer: () => library.areaOf(whole()),
    slack: slackFor(library, [outline, ...cuts]),
    done: () => [start, ...taken].forEach(free),
  };
}

/** All cuts, one after another; what was left in between is given back. */
function cutInTurn<N, G>(library: Library<N, G>, start: N, cuts: readonly N[]): N {
  let left = start;
  for (const cut of cuts) {
    const next = library.subtract(left, cut);
    if (left !== start) library.free(left);
    left = next;
  }
  return left;
}

function offsetContest<N, G>(problem: OffsetProblem, library: Library<N, G>): Contest | null {
  const { take, give, free, grow } = library;
  if (grow === null) return null;
  const start = take([problem.outline]);
  const whole = (): G => {
    const region = take([problem.outline]);
    const grown = grow(region, problem.distance);
    const given = give(grown);
    free(region);
    free(grown);
    return given;
  };
  // Both the outline's arcs and the ones that the peer draws round corners are off by the tolerance.
  const slack =
    2 * slackFor(library, [problem.outline]) + 2 * Math.PI * SIZE * library.error(problem.distance);
  return {
    library: library.name,
    whole,
    bare: () => free(grow(start, problem.distance)),
    answer: () => library.areaOf(whole()),
    slack,
    done: () => free(start),
  };
}

function slackFor(
  { error }: { readonly error: (radius: number) => number },
  regions: readonly Region[],
): number {
  const arcs = regions.flatMap((region) => edgesOf(region)).filter((e): e is ArcEdge => e.kind === 'arc');
  const flattening = arcs.reduce((sum, arc) => sum + lengthOf(arc) * error(arc.radius), 0);
  return flattening + ROUNDING * SIZE * SIZE;
}

/** The library under test. It works on plain regions, so there is nothing to convert. */
export const edgebite: Library<readonly Region[], Region> = {
  name: 'edgebite',
  take: (regions) => regions,
  subtract: (from, cuts) => [subtract(from[0] ?? [], cuts)],
  grow: (region, distance) => [offset(region[0] ?? [], distance)],
  give: (result) => result[0] ?? [],
  areaOf: area,
  free: () => {},
  takesOverlaps: true,
  error: () => 0,
};
