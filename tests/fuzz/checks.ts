import type { JobDocument } from '@edgebite/core';
import { type CutCase, familyNamed } from '@edgebite/core/testing';
import { comparePeer } from '../tools/compare-peers.js';
import { obeysAllLaws } from '../tools/law-run.js';
import { clipperPeer } from '../tools/peer-clipper.js';
import { checkJob } from './job-check.js';
import { SECOND_CUTS } from './second-cuts.js';

/** What a case can be put through; throws what is wrong. */
export interface Checks {
  /** The laws of cutting, and the slab reference. */
  readonly laws: (cutCase: CutCase) => void;
  /** Against clipper2-wasm; where it differs, the slab reference decides. */
  readonly peer: (cutCase: CutCase) => void;
  /** All that must hold for a report. */
  readonly job: (document: JobDocument) => void;
}

/** The name of a check. */
export type CheckName = keyof Checks;

/** All checks, the peer loaded. */
export async function loadedChecks(): Promise<Checks> {
  const clipper = await clipperPeer();
  return {
    laws: (cutCase) => {
      const slack = cutCase.family === SECOND_CUTS ? SLIVERS : undefined;
      obeysAllLaws(cutCase, { marginal: isMarginal(cutCase) }, slack);
    },
    peer: (cutCase) => {
      comparePeer(clipper, cutCase, isMarginal(cutCase));
    },
    job: checkJob,
  };
}

/**
 * Of the areas: a cut made again beside a near one can leave a sliver at the limit up to which slivers are dropped,
 * which is another one for the part alone and for the part with a larger cut.
 */
const SLIVERS = 4e-9;

function isMarginal({ family }: CutCase): boolean {
  return family !== SECOND_CUTS && familyNamed(family).marginal;
}

/** A failure as it is kept: a file of its own in tests/regressions/. */
export interface KeptFailure {
  readonly check: CheckName;
  /** What was wrong when it was found. */
  readonly message: string;
  readonly seed: number;
  readonly case: CutCase | JobDocument;
}

/** Puts a kept failure through its check again. */
export function checkAgain(checks: Checks, kept: KeptFailure): void {
  // Written by the fuzz run together with the name of the check that it was made for.
  (checks[kept.check] as (one: unknown) => void)(kept.case);
}
