import {
  type ArcEdge,
  area,
  type Edge,
  offset,
  offsetPath,
  type Region,
  subtract,
  xor,
} from '@edgebite/core';
import { edgesOf, lengthOf } from '@edgebite/core/testing';
import { type CutProblem, type OffsetProblem, SIZE } from './problems.js';
import type { SweptProblem, XorProblem } from './shape-problems.js';

/** Any case that libraries are compared on. */
export type Problem = CutProblem | OffsetProblem | XorProblem | SweptProblem;

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
  /** What lies in one of two only, and what a round tool takes along a path; left out where the library is not asked. */
  readonly xor?: (one: Native, other: Native) => Native;
  readonly sweep?: (path: readonly Edge[], radius: number) => Native;
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

/** Sets up a case for a library; null if that cannot do it, or is not asked. */
export function contest<N, G>(problem: Problem, library: Library<N, G>): Contest | null {
  const { name } = library;
  const isAsked = !('peers' in problem) || problem.peers?.some((peer) => name.startsWith(peer)) !== false;
  if (name !== 'edgebite' && !isAsked) return null;
  switch (problem.kind) {
    case 'cut':
      return cutContest(problem, library);
    case 'offset':
      return offsetContest(problem, library);
    case 'xor':
      return xorContest(problem, library);
    case 'swept':
      return sweptContest(problem, library);
  }
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

function xorContest<N, G>({ operands }: XorProblem, library: Library<N, G>): Contest | null {
  const { take, give, free, xor: work } = library;
  if (work === undefined) return null;
  const [one, other] = operands.map((operand) => take([operand])) as [N, N];
  const whole = (): G => {
    const both = operands.map((operand) => take([operand])) as [N, N];
    const result = work(...both);
    const given = give(result);
    for (const native of [...both, result]) free(native);
    return given;
  };
  return {
    library: library.name,
    whole,
    bare: () => free(work(one, other)),
    answer: () => library.areaOf(whole()),
    slack: slackFor(library, operands),
    done: () => [one, other].forEach(free),
  };
}

function sweptContest<N, G>({ path, radius }: SweptProblem, library: Library<N, G>): Contest | null {
  const { give, free, sweep: work } = library;
  if (work === undefined) return null;
  const whole = (): G => {
    const result = work(path, radius);
    const given = give(result);
    free(result);
    return given;
  };
  const around: Region = [{ outer: path, holes: [] }];
  return {
    library: library.name,
    whole,
    bare: () => free(work(path, radius)),
    answer: () => library.areaOf(whole()),
    // Both sides of each arc, and the round ends.
    slack: 4 * slackFor(library, [around]) + 2 * Math.PI * SIZE * library.error(radius),
    done: () => {},
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
  xor: (one, other) => [xor([one[0] ?? [], other[0] ?? []])],
  sweep: (path, radius) => [offsetPath(path, radius)],
  give: (result) => result[0] ?? [],
  areaOf: area,
  free: () => {},
  takesOverlaps: true,
  error: () => 0,
};
