import { type Region, subtract } from '@edgebite/core';
import type { Points } from '../../packages/core/src/noding/points.js';
import type { Figure } from './figures.js';
import { inner } from './inner.js';
import type { Problem } from './library.js';
import { type Effort, type Timing, timed } from './measure.js';

/*
 * What it costs that an overlay proves its answer: the time of the certificate over that of all the rest. Where a direct way
 * answers, no overlay is made in earnest; the figure is that of the one that would be.
 */

const {
  gather,
  node,
  merge,
  subdivide,
  arrange,
  certify,
  regionFault,
  borderOf,
  collect,
  windings,
  loopsOf,
  loopArea,
} = await inner();

/** The figure of a case that an overlay can do; none for others. */
export function proofFigures(problem: Problem, effort: Effort): Figure[] {
  const operands = operandsOf(problem);
  if (operands === null) return [];
  const loops = operands.map(loopsOf);
  const given = gather(loops);
  const subdivision = subdivide(merge(node({ ...given, points: copyOf(given.points) })));
  if (subdivision === null) throw new Error(`${problem.name}: an overlay that is in no order`);
  const count = windings(subdivision, () => true);
  const kept = Uint8Array.from(count, (times, face) => (face > 0 && times % 2 === 1 ? 1 : 0));
  const border = borderOf(subdivision, kept);
  const parts = collect(subdivision, kept);
  // What goes round a loop has to be known for the region itself: to tell holes, and what is next to nothing.
  const sizes = loopsOf(parts).map(loopArea);
  const whole = () => collect(arrange(loops), kept);
  const proof = () => certify(subdivision, given) ?? regionFault(subdivision, border, parts, 0, sizes);
  if (proof() !== null) throw new Error(`${problem.name}: an overlay that is not proven`);
  const [all, own] = timed([whole, proof], effort) as [Timing, Timing];
  return [{ kind: 'proof', case: problem.name, share: own.cpu / (all.cpu - own.cpu) }];
}

function copyOf({ x, y, given, isSeam }: Points): Points {
  return { x: x.slice(), y: y.slice(), given: given.slice(), isSeam: isSeam.slice() };
}

function operandsOf(problem: Problem): readonly Region[] | null {
  if (problem.kind === 'xor') return problem.operands;
  if (problem.kind !== 'cut') return null;
  const { outline, cuts, inTurn } = problem;
  return inTurn ? [subtract(outline, cuts.slice(1)), ...cuts.slice(0, 1)] : [outline, ...cuts];
}
