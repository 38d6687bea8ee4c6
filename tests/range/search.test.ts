import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { presentAmong } from '../../packages/core/src/range/present.js';
import { rootsIn } from '../../packages/core/src/range/roots.js';
import { type Found, type Probe, search } from '../../packages/core/src/range/search.js';

interface Plan {
  readonly candidates?: readonly (readonly [at: number, isLong?: boolean, blur?: number])[];
  readonly fine?: number;
}

/** A search from 0 to 100 with a blur of 0.01 over outcomes that are known for every value. */
function searched(keyAt: (at: number) => string, { candidates = [], fine = 1e-9 }: Plan) {
  let count = 0;
  const probe = (at: number): Probe<string> => {
    count += 1;
    return { at, outcome: keyAt(at), key: keyAt(at) };
  };
  const found: Found<string> = search({
    from: 0,
    to: 100,
    candidates: candidates.map(([at, isLong = false, blur]) => ({ at, isLong, blur })),
    blur: 0.01,
    fine,
    probe,
    sideOf: () => null,
  });
  const steps = found.switches.map(({ at, before, after }) => [before.outcome, at, after.outcome]);
  return { first: found.first.outcome, steps, count };
}

it('is asked before each probe but the first two whether to stop, in the midst of a bracketing too', () => {
  let [probes, asked] = [0, 0];
  const keyAt = (at: number) => (at < 40.5 ? 'a' : at < 70 ? 'b' : 'c');
  const stopping = (most: number) => {
    [probes, asked] = [0, 0];
    return search({
      from: 0,
      to: 100,
      candidates: [40, 60, 70].map((at) => ({ at, isLong: false })),
      blur: 0.01,
      fine: 1e-9,
      probe: (at) => {
        probes += 1;
        return { at, outcome: keyAt(at), key: keyAt(at) };
      },
      sideOf: () => null,
      isOver: () => {
        asked += 1;
        return asked > most;
      },
    });
  };
  const whole = stopping(Number.POSITIVE_INFINITY);
  expect(asked).toBe(probes - 2);
  for (let most = 0; most < asked; most++) {
    const short = stopping(most);
    expect(probes).toBe(most + 2);
    expect(short.knownTo).toBeLessThan(100);
    expect(short.switches).toEqual(whole.switches.slice(0, short.switches.length));
    const next = whole.switches[short.switches.length];
    if (next !== undefined) expect(short.knownTo).toBeLessThan(next.at);
    expect(stopping(Number.POSITIVE_INFINITY)).toEqual(whole);
  }
});

describe('the search for changes', () => {
  it('takes a candidate for the place of a change beside it, and looks only twice more', () => {
    const { first, steps, count } = searched((at) => (at < 40.003 ? 'a' : 'b'), {
      candidates: [[20], [40], [60]],
    });
    expect([first, steps]).toEqual(['a', [['a', 40, 'b']]]);
    // One in each of four gaps, one at each end, and two beside the candidate.
    expect(count).toBe(8);
  });

  it('brackets a change that is not at a candidate, even between two that have nothing to do with it', () => {
    const { steps } = searched((at) => (at < 40.5 ? 'a' : 'b'), { candidates: [[40], [60]] });
    expect(steps).toHaveLength(1);
    expect(Math.abs((steps[0]?.[1] as number) - 40.5)).toBeLessThan(1e-9);
    expect(searched((at) => (at < 0.5 ? 'a' : 'b'), {}).steps).toHaveLength(1);
    expect(searched((at) => (at < 99.5 ? 'a' : 'b'), {}).steps).toHaveLength(1);
  });

  it('does not tell of an outcome that is only that of touching', () => {
    const touching = (at: number) => (Math.abs(at - 40) < 0.009 ? 'touching' : 'a');
    expect(searched(touching, { candidates: [[40]] }).steps).toEqual([]);
    expect(searched(touching, { candidates: [[40, true]] }).steps).toEqual([]);
  });

  it('looks beside a candidate where touching goes on for long, though both gaps come to the same', () => {
    const { steps } = searched((at) => (Math.abs(at - 40) < 3 ? 'b' : 'a'), { candidates: [[40, true]] });
    expect(steps.map(([before, , after]) => [before, after])).toEqual([
      ['a', 'b'],
      ['b', 'a'],
    ]);
    expect(Math.abs((steps[0]?.[1] as number) - 37)).toBeLessThan(1e-8);
    expect(Math.abs((steps[1]?.[1] as number) - 43)).toBeLessThan(1e-8);
  });

  it('chooses the candidate of several close together at which the outcome changes', () => {
    const candidates = [[40], [40.02], [40.04]] as const;
    for (const [at] of candidates) {
      expect(searched((value) => (value < at + 0.001 ? 'a' : 'b'), { candidates }).steps).toEqual([
        ['a', at, 'b'],
      ]);
    }
  });

  it('chooses it where an outcome of touching lies before it, as far from the one before', () => {
    const keyAt = (at: number) => (at < 40.011 ? 'a' : at < 40.0205 ? 'touching' : at < 40.021 ? 'a' : 'b');
    expect(searched(keyAt, { candidates: [[40.002], [40.02]] }).steps).toEqual([['a', 40.02, 'b']]);
  });

  it('takes all outcomes within the blur of a candidate for those of touching, also where it is a wide one', () => {
    // On, off, on and off again within 1 of it, as a web does that slips off the end of an edge.
    const keyAt = (at: number) => (at < 39.5 || (at > 40.2 && at < 40.8) ? 'a' : 'b');
    expect(searched(keyAt, { candidates: [[40, false, 1]] }).steps).toEqual([['a', 40, 'b']]);
    expect(searched(keyAt, { candidates: [[39.2], [40, false, 1]] }).steps).toEqual([['a', 40, 'b']]);
    // Of one that is not wide the search comes upon the first of these changes.
    expect(searched(keyAt, { candidates: [[40]] }).steps).toEqual([['a', expect.closeTo(39.5, 6), 'b']]);
  });

  it('finds every change that is wider apart than the blur, at the candidates, and no others', () => {
    const places = fc.uniqueArray(fc.integer({ min: 1, max: 99 }), { maxLength: 20 });
    fc.assert(
      fc.property(places, places, (changing, idle) => {
        const keyAt = (at: number) => String(changing.filter((place) => place < at).length);
        const all = [...new Set([...changing, ...idle])].sort((a, b) => a - b);
        const { steps } = searched(keyAt, { candidates: all.map((at) => [at]) });
        expect(steps.map(([, at]) => at)).toEqual([...changing].sort((a, b) => a - b));
      }),
    );
  });
});

describe('bracketed roots', () => {
  it('are those of a polynomial', () => {
    const roots = fc.uniqueArray(fc.integer({ min: -9, max: 9 }), { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(roots, (all) => {
        const f = (s: number) => all.reduce((product, root) => product * (s - root), 1);
        const found = rootsIn(f, -10.3, 10.1, 40);
        expect(found.map((root) => root.toFixed(12).replace('-0.000000000000', '0.000000000000'))).toEqual(
          [...all].sort((a, b) => a - b).map((root) => root.toFixed(12)),
        );
      }),
    );
  });

  it('are both found where a function dips below zero between two places', () => {
    const found = rootsIn((s) => (s - 0.53) ** 2 - 1e-4, 0, 1, 2);
    expect(found.map((root) => root.toFixed(9))).toEqual(['0.520000000', '0.540000000']);
  });

  it('are none where the function stays away from zero, and end where it is without bounds', () => {
    expect(rootsIn((s) => (s - 0.53) ** 2 + 1e-4, 0, 1, 8)).toEqual([]);
    expect(rootsIn(() => Number.POSITIVE_INFINITY, 0, 1, 8)).toEqual([]);
  });
});

describe('the present value', () => {
  const among = { from: 0, to: 100, places: [10, 40], near: 0.1 };

  it.each([
    [5, { interval: 0, event: null, below: null, above: 5 }],
    [15, { interval: 1, event: null, below: 5, above: 25 }],
    [90, { interval: 2, event: null, below: 50, above: null }],
    [0, { interval: 0, event: null, below: null, above: 10 }],
    [40.0625, { interval: null, event: 1, below: 30.0625, above: null }],
    [10, { interval: null, event: 0, below: null, above: 30 }],
    [-1, { interval: null, event: null, below: null, above: null }],
    [101, { interval: null, event: null, below: null, above: null }],
  ])('at %d', (now, place) => {
    expect(presentAmong(now, among)).toEqual(place);
  });
});
