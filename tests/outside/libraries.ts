import { area, subtract } from '@edgebite/core';
import { type CutCase, cutRegions, extentOf, familyNamed, OBLIQUE_THIRDS } from '@edgebite/core/testing';
import fc from 'fast-check';
import { cutsOf, exactCases, outlineOf } from '../tools/exact-cases.js';
import type { Peer } from '../tools/peer.js';
import { clipperPeer } from '../tools/peer-clipper.js';
import { flattenPeer } from '../tools/peer-flatten.js';
import type { Pair, Reference } from './reference.js';

/** Generated cases that each library works out. */
const CASES = 40;

/** The same cases every time: discs and rings that lie anywhere, where all libraries are at their best. */
const drawn = (): readonly CutCase[] =>
  ['generic-discs', 'generic-rings'].flatMap((name) =>
    fc.sample(familyNamed(name).cases, { numRuns: CASES / 2, seed: 11 }),
  );

/** Area left by another library, as a share of the squared extent, so that cases of all sizes can be compared. */
function against(peer: Peer): Pair[] {
  return drawn().map((one) => {
    const cuts = cutRegions(one, OBLIQUE_THIRDS);
    const operands = [one.outline, ...cuts];
    const square = extentOf(...operands) ** 2;
    return {
      got: area(subtract(one.outline, cuts)) / square,
      wanted: peer.subtract(one.outline, cuts).area / square,
      within: peer.areaSlack(operands) / square,
    };
  });
}

/** Libraries that work out the same by other means. Deviations are shares of the squared extent of a case. */
export const libraryReferences: readonly Reference[] = [
  {
    source: 'CGAL, Boolean set operations of circle and line segments, exact arithmetic',
    kind: 'library',
    checks: 'area left in 89 cases, tangent, coincident and touching ones among them',
    pairs: () =>
      exactCases().map((one) => {
        const outline = outlineOf(one);
        const cuts = cutsOf(one);
        const square = extentOf(outline, ...cuts) ** 2;
        return {
          got: area(subtract(outline, cuts)) / square,
          wanted: one.expect.remainingArea / square,
          within: 1e-9,
        };
      }),
  },
  {
    source: '@flatten-js/core 1.6.15',
    kind: 'library',
    checks: `area left in ${CASES} generated cases of discs and rings`,
    pairs: () => against(flattenPeer),
  },
  {
    source: 'Clipper2 (clipper2-wasm)',
    kind: 'library',
    checks: `the same ${CASES} cases with arcs cut into chords of a millionth of the extent`,
    pairs: async () => against(await clipperPeer()),
  },
];
