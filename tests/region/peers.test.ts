import { families } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { comparePeer } from '../tools/compare-peers.js';
import { clipperPeer } from '../tools/peer-clipper.js';
import { flattenPeer } from '../tools/peer-flatten.js';
import { longRun, runs } from '../tools/runs.js';

/** Cases a family and peer; the long run takes more, and lists every disagreement with its explanation. */
const CASES = runs(15);

const clipper = await clipperPeer();

describe.each([
  ['clipper2-wasm, arcs as chords', clipper],
  ['@flatten-js/core, circles of three arcs', flattenPeer],
])('%s', (_, peer) => {
  it.each(families.map((family) => [family.name, family] as const))(
    'agrees, or is wrong, in %s',
    (name, family) => {
      const cases = fc.sample(family.cases, {
        ...(longRun() ? {} : { seed: name.length * 7919 }),
        numRuns: CASES,
      });
      // Throws where the peer is borne out against us.
      const differing = cases.map((cutCase) => comparePeer(peer, cutCase, family.marginal));
      expect(differing).toHaveLength(CASES);
    },
  );

  it('agrees in all but a few of the cases without planted contacts', () => {
    const plain = families.filter((f) =>
      ['generic-discs', 'generic-rings', 'outside', 'split'].includes(f.name),
    );
    expect(plain).toHaveLength(4);
    const found = plain.flatMap((family) =>
      fc.sample(family.cases, { seed: 5, numRuns: 30 }).map((c) => comparePeer(peer, c, family.marginal)),
    );
    expect(found.filter((d) => d !== null).length).toBeLessThanOrEqual(found.length * 0.05);
  });
});
