import {
  areaOf,
  type CutCase,
  commonExtent,
  cutRegions,
  edgesOf,
  OBLIQUE_THIRDS,
  printsOf,
} from '@edgebite/core/testing';
import { type Region, subtract } from '../region/kernel.js';
import { agreesWithSlabs } from './law-run.js';
import type { Peer, PeerAnswer } from './peer.js';

/** Where a peer differs, and what a third computation, by slabs, says about it. */
export interface Disagreement {
  readonly peer: string;
  readonly family: string;
  readonly verdict: Verdict;
  readonly what: string;
  readonly cutCase: CutCase;
}

/**
 * - `peer threw`: it gave no answer; the slabs confirm ours.
 * - `peer area wrong`: its area differs from ours by more than its method explains; the slabs confirm ours.
 * - `peer counts differ`: areas agree, its pieces or holes do not; the slabs count as we do.
 * - `contact at a point`: areas agree; our loops or pieces touch at a point, where the peer joins them into one
 *   or cannot see the contact; the slabs count as we do.
 * - `at the weld tolerance`: the case plants a gap that the tolerance may close; all areas agree.
 */
export type Verdict =
  | 'peer threw'
  | 'peer area wrong'
  | 'peer counts differ'
  | 'contact at a point'
  | 'at the weld tolerance';

/**
 * Compares our answer to a case with a peer's, circles written as three arcs. Returns null if they agree.
 * Throws Error if they disagree and the slabs do not bear us out: then the fault is ours.
 */
export function comparePeer(peer: Peer, cutCase: CutCase, marginal: boolean): Disagreement | null {
  const { outline, family } = cutCase;
  const cuts = cutRegions(cutCase, OBLIQUE_THIRDS);
  const left = subtract(outline, cuts);
  const ours = countsOf(left, peer.thin * commonExtent(outline, ...cuts));
  const report = (verdict: Verdict, what: string): Disagreement => {
    agreesWithSlabs(left, outline, cuts, marginal);
    return { peer: peer.name, family, verdict, what, cutCase };
  };
  let theirs: PeerAnswer;
  try {
    theirs = peer.subtract(outline, cuts);
  } catch (error) {
    return report('peer threw', error instanceof Error ? error.message : String(error));
  }
  if (!(Math.abs(theirs.area - ours.area) <= peer.areaSlack([outline, ...cuts]))) {
    return report('peer area wrong', `area ${theirs.area} against ${ours.area}`);
  }
  if (theirs.pieces === ours.pieces && theirs.holes === ours.holes) return null;
  const counts = `${theirs.pieces} pieces and ${theirs.holes} holes against ${ours.pieces} and ${ours.holes}`;
  if (marginal) return report('at the weld tolerance', counts);
  return report(touches(left) ? 'contact at a point' : 'peer counts differ', counts);
}

/** True if any joint belongs to more than one loop. */
function touches(region: Region): boolean {
  const joints = edgesOf(region).map((edge) => `${edge.a.x},${edge.a.y}`);
  return new Set(joints).size < joints.length;
}

function countsOf(left: Region, thin: number): PeerAnswer {
  const thick = printsOf(left).filter(({ area, perimeter }) => (2 * area) / perimeter > thin);
  return {
    area: areaOf(left),
    pieces: thick.length,
    holes: thick.reduce((sum, print) => sum + print.holes, 0),
  };
}
