import type { Proposal } from '@edgebite/core';
import fc from 'fast-check';
import { bestByTrying, countByTrying } from './brute.js';
import { betterOrder, leavesThePart, proposed, respectsTools } from './checks.js';
import { mixedParts } from './mixed-parts.js';
import { drawers, madeParts } from './parts.js';
import { wrongRefusals } from './reasons.js';

/** What a count of parts has found. */
export interface PartsCount {
  parts: number;
  /** Parts whose outline touches itself: no aim. */
  none: number;
  ways: number;
  /** Of them, those with cuts along a path, and those with blind cuts. */
  swept: number;
  blind: number;
  /** Ways that have a danger, and those of them that were tried in all orders. */
  dangerous: number;
  tried: number;
  /** Ways with dangers and too many cuts to try all orders. */
  large: number;
  /** Refused parts, and refusals by their code. */
  refused: number;
  codes: Record<string, number>;
  readonly faults: string[];
}

/** Makes parts, forgets how, has ways proposed and looks at each. */
export function countParts(count: number, seed: number, mostOrdered = 6, first = 0): PartsCount {
  const found: PartsCount = {
    parts: 0,
    none: 0,
    ways: 0,
    swept: 0,
    blind: 0,
    dangerous: 0,
    tried: 0,
    large: 0,
    refused: 0,
    codes: {},
    faults: [],
  };
  const arbitrary = mixedParts(4, drawers(2, 8));
  for (let k = first; k < first + count; k++) {
    const [part] = fc.sample(arbitrary, { numRuns: 1, seed: seed * 100_000 + k });
    if (part === undefined) continue;
    found.parts += 1;
    const fault = (what: string) => found.faults.push(`part ${k} of seed ${seed}: ${what}`);
    const proposal = proposed(part.aim);
    if (proposal === null) {
      found.none += 1;
      continue;
    }
    const { ways, refusals } = proposal;
    if (ways.length > 0 === refusals.length > 0) fault('neither ways nor refusals, or both');
    found.ways += ways.length;
    for (const way of ways) {
      found.swept += Number(way.job.cuts.some(({ kind }) => kind === 'swept'));
      found.blind += Number(way.job.cuts.some(({ depth }) => typeof depth === 'number'));
      for (const wrong of [...leavesThePart(part, way), ...respectsTools(part, way)]) fault(wrong);
      if (way.row.dangers.length > 0) found.dangerous += 1;
      const better = betterOrder(way, mostOrdered);
      if (better === null) found.large += 1;
      else if (way.row.dangers.length > 0) found.tried += 1;
      for (const order of better ?? []) fault(order);
    }
    if (refusals.length > 0) found.refused += 1;
    for (const { code } of refusals) found.codes[code] = (found.codes[code] ?? 0) + 1;
    if (refusals.length > 0) for (const wrong of wrongRefusals(part, refusals)) fault(wrong);
  }
  return found;
}

/** What a count of the best ways has found. */
export interface BestCount {
  parts: number;
  /** Parts tried with all tools and orders, and the jobs that were examined for it. */
  tried: number;
  jobs: number;
  refused: number;
  readonly faults: string[];
}

/** Compares the best way that is proposed with the best of all tools in all orders, where these are at most so many jobs. */
export function countBest(count: number, seed: number, mostJobs: number): BestCount {
  const found: BestCount = { parts: 0, tried: 0, jobs: 0, refused: 0, faults: [] };
  const arbitrary = madeParts(2, drawers(1, 4));
  for (let k = 0; found.tried < count; k++) {
    const [part] = fc.sample(arbitrary, { numRuns: 1, seed: seed * 100_000 + k });
    if (part === undefined) continue;
    found.parts += 1;
    const jobs = countByTrying(part);
    const proposal = jobs > mostJobs ? null : proposed(part.aim);
    if (proposal === null) continue;
    found.tried += 1;
    found.jobs += jobs;
    const wrong = unlikeBest(proposal, bestByTrying(part));
    if (proposal.ways.length === 0) found.refused += 1;
    if (wrong !== null) found.faults.push(`part ${k} of seed ${seed}: ${wrong}`);
  }
  return found;
}

/** Minutes closer than this are the same. */
const SAME_MINUTES = 1e-6;

/**
 * How the first way differs from the best one by trying; null where it does not. Tools that go along a wall are not tried: a
 * way with such may be better, and never worse.
 */
export function unlikeBest(
  { ways: [first] }: Proposal,
  best: ReturnType<typeof bestByTrying>,
): string | null {
  if (first === undefined) return best === null ? null : 'no way, one by trying';
  const isTried = first.job.cuts.every(({ kind }) => kind !== 'swept');
  if (best === null) return isTried ? 'a way, none by trying' : null;
  const dangers = first.row.dangers.length;
  if (dangers !== best.dangers) {
    return dangers < best.dangers && !isTried ? null : `${dangers} dangers, ${best.dangers} by trying`;
  }
  const { minutes } = first.row;
  const middle = minutes === null ? best.time : (minutes[0] + minutes[1]) / 2;
  const over = middle - best.time;
  const isSame = isTried ? Math.abs(over) <= SAME_MINUTES : over <= SAME_MINUTES;
  return isSame ? null : `${middle} minutes, ${best.time} by trying`;
}
