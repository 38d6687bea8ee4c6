import { parseJob, rangeOf } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/*
 * A bore beside a drawn hole, both of them within a pocket: under the pocket's floor metal stands, and thins out as the
 * bore comes nearer. Through the whole thickness the pocket would have taken all of it.
 */

const BORE = { id: 'a', kind: 'bore', center: [50, 30], diameter: 10 };
const HOLE = { circle: 6, at: [60, 30] };

function eventsOf(pocket: object, order: 'before' | 'after') {
  const own = { id: 'pocket', kind: 'bore', center: [60, 30], diameter: 36, ...pocket };
  const job = parseJob({
    edgebite: 1,
    units: 'mm',
    part: { outline: { rectangle: [100, 60], holes: [HOLE] }, thickness: 10 },
    limits: { web: 1, knifeEdge: 20 },
    keep: [5, 5],
    cuts: order === 'before' ? [own, BORE] : [BORE, own],
  });
  const { events, intervals } = rangeOf(job, { cut: 'a', along: 'x', from: 48, to: 53 });
  return { at: events.map(({ at }) => at), safe: intervals.map(({ safe }) => safe) };
}

describe('a range of a bore within another cut', () => {
  it('has a web to a hole under the floor of a blind one, whichever is cut first', () => {
    // Radii of 5 and 3: a web of 1 at 9 between the centres, and none at 8. Then they cross, and a tip of 20 degrees lies
    // between them where the radii do at 160 (law of cosines).
    const crossed = 60 - Math.sqrt(34 + 30 * Math.cos(Math.PI / 9));
    for (const order of ['before', 'after'] as const) {
      const { at, safe } = eventsOf({ depth: 4 }, order);
      expect(at, order).toEqual([51, 52, crossed].map((x) => expect.closeTo(x, 9)));
      expect(safe.slice(0, 2), order).toEqual([true, false]);
    }
  });

  it('has no web where the other has gone through', () => {
    for (const order of ['before', 'after'] as const) {
      const { at, safe } = eventsOf({}, order);
      expect(at.filter((x) => x < 51.9)).toEqual([]);
      expect(safe[0]).toBe(true);
    }
  });
});
