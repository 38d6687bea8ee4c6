import { examine, type Job, parseJob, type RangeQuery, type Report, rangeOf } from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../tools/runs.js';

/*
 * A range is never safe where the whole report has a danger. Asked from outside: the job is written down with the cut at
 * a value, read again and examined. Where a circle meets a straight jaw is elementary: at the height of its radius.
 */

const PLATE = { outline: { rectangle: [100, 60] }, thickness: 10 };

const jobOf = (cuts: readonly object[], more: object = {}): Job =>
  parseJob({ edgebite: 1, units: 'mm', part: PLATE, limits: { web: 1, knifeEdge: 20 }, cuts, ...more });

const strap = { id: 'strap', kind: 'clamp', shape: { rectangle: [12, 30], at: [60, 20] }, from: 10, to: 20 };
const bore = { id: 'a', kind: 'bore', center: [40, 30], diameter: 10 };

describe('a range past what is in the way', () => {
  it('is not safe where the cutter runs into a clamp', () => {
    const answer = rangeOf(jobOf([bore], { keepOut: [strap] }), { cut: 'a', along: 'x', from: 20, to: 85 });
    expect(answer.events.map(({ at }) => at)).toEqual([expect.closeTo(55, 9), expect.closeTo(77, 9)]);
    expect(answer.intervals.map(({ safe }) => safe)).toEqual([true, false, true]);
    expect(answer.intervals[1]?.adds.map(({ code }) => code)).toEqual(['hits-clamp']);
  });

  it('is not safe where it may run into one by what the spindle may be off', () => {
    const stop = (to: string) => [
      { touch: to, tip: 10, then: 'move half the tip and set 0', tolerance: 0.3 },
    ];
    const setups = [
      { id: 'one', zero: { x: stop('left'), y: stop('front') }, readout: { resolution: 0.1 }, cuts: ['a'] },
    ];
    const job = jobOf([bore], { keepOut: [strap], setups });
    const answer = rangeOf(job, { cut: 'a', along: 'x', from: 20, to: 57 });
    // Off by 0.3 and a step of the readout of 0.1 along both axes.
    const off = Math.hypot(0.4, 0.4);
    expect(answer.events.map(({ at }) => at)).toEqual([expect.closeTo(55 - off, 9), expect.closeTo(55, 9)]);
    expect(answer.intervals.map(({ adds }) => adds.map(({ code }) => code))).toEqual([
      [],
      ['may-hit-clamp'],
      ['hits-clamp'],
    ]);
  });

  it('is not safe past where it may run into one, although it ends before it could touch it', () => {
    // The tolerances of both axes and a step of the readout along each, as above; the cutter ends 0.3 short of the clamp.
    const off = Math.hypot(0.4, 0.4);
    const ranges = [
      { center: [40, 30], along: 'x', from: 20, to: 54.7, at: 55 - off },
      { center: [72 + 5 + 15, 30], along: 'x', from: 77.3, to: 95, at: 77 + off },
      { center: [66, 8], along: 'y', from: 6, to: 14.7, at: 15 - off },
      { center: [66, 54], along: 'y', from: 55.3, to: 60, at: 55 + off },
      { center: [50, 30], along: 'diameter', from: 4, to: 19.4, at: 20 - 2 * off },
    ] as const;
    for (const { center, along, from, to, at } of ranges) {
      const touch = (side: string) => [
        { touch: side, tip: 10, then: 'move half the tip and set 0', tolerance: 0.3 },
      ];
      const setups = [
        {
          id: 'one',
          zero: { x: touch('left'), y: touch('front') },
          readout: { resolution: 0.1 },
          cuts: ['a'],
        },
      ];
      const cuts = [{ ...bore, center, diameter: 10 }];
      const job = jobOf(cuts, { keepOut: [strap], setups, limits: { web: 0.01, knifeEdge: 1 } });
      const answer = rangeOf(job, { cut: 'a', along, from, to });
      const hits = answer.intervals.filter(({ adds }) => adds.some(({ code }) => code === 'may-hit-clamp'));
      expect(hits, `${along} to ${to}`).toHaveLength(1);
      const ends = at - from < to - at ? [from, at] : [at, to];
      expect([hits[0]?.from, hits[0]?.to]).toEqual(ends.map((end) => expect.closeTo(end, 9)));
    }
  });

  it('is not safe where a hole grows so wide that the point of its drill comes down to a parallel', () => {
    const parallel = { id: 'rail', kind: 'parallel', shape: { rectangle: [80, 20] }, from: -20, to: -4 };
    const own = { ...bore, center: [40, 12] };
    const answer = rangeOf(jobOf([own], { keepOut: [parallel] }), {
      cut: 'a',
      along: 'diameter',
      from: 2,
      to: 20,
    });
    // The point of 118 degrees is as deep as half the diameter over the tangent of 59.
    const at = 2 * 4 * Math.tan((59 * Math.PI) / 180);
    expect(answer.events.map((event) => event.at)).toContainEqual(expect.closeTo(at, 9));
    expect(answer.intervals.map(({ safe }) => safe)).toEqual([true, false]);
  });

  it('is not safe where what a clamp bears on is cut off', () => {
    const job = jobOf([{ ...bore, center: [50, 30], diameter: 64 }], {
      keepOut: [{ ...strap, shape: { rectangle: [8, 8], at: [1, 26] } }],
      keep: [95, 30],
    });
    const answer = rangeOf(job, { cut: 'a', along: 'x', from: 41, to: 60 });
    for (const { safe, adds } of answer.intervals) {
      expect(safe).toBe(false);
      expect(adds.map(({ code }) => code)).toContain('grip-lost');
    }
  });

  it('says what it did not ask', () => {
    const { notAsked } = rangeOf(jobOf([bore]), { cut: 'a', along: 'x', from: 20, to: 85 });
    expect(notAsked).toContain('tools');
    expect(notAsked.join()).not.toMatch(/clamp|jaw/);
  });
});

const KINDS = ['jaw', 'stop', 'parallel', 'clamp'] as const;

const whole = (min: number, max: number) => fc.integer({ min, max });

const inTheWay = fc.record({
  kind: fc.constantFrom(...KINDS),
  shape: fc.oneof(
    fc.record({
      rectangle: fc.tuple(whole(5, 40), whole(5, 30)),
      at: fc.tuple(whole(-30, 95), whole(-20, 55)),
    }),
    fc.record({ circle: whole(6, 30), at: fc.tuple(whole(-10, 110), whole(-10, 70)) }),
  ),
  from: whole(-20, 12),
  high: whole(2, 30),
});

const round = fc.record({
  center: fc.tuple(whole(-5, 105), whole(-5, 65)),
  diameter: whole(4, 40),
  wall: fc.option(fc.constant(1.5), { nil: undefined }),
  depth: fc.option(whole(1, 9), { nil: undefined }),
});

const lie = fc.record({
  turn: fc.constantFrom(0, 90, 180, 33),
  flip: fc.constantFrom(null, 'x', 'y'),
  tolerance: fc.constantFrom(0, 0.02, 0.5),
});

const shop = fc.record({
  things: fc.array(inTheWay, { minLength: 1, maxLength: 3 }),
  cuts: fc.array(round, { minLength: 1, maxLength: 3 }),
  lie: fc.option(lie, { nil: null }),
  along: fc.constantFrom('x', 'y', 'diameter'),
  from: whole(5, 40),
  wide: whole(5, 50),
  shares: fc.array(fc.double({ min: 0.001, max: 0.999, noNaN: true }), { minLength: 3, maxLength: 3 }),
});

type Shop = typeof shop extends fc.Arbitrary<infer T> ? T : never;

function documentOf({ things, cuts, lie: lies }: Shop): Readonly<Record<string, unknown>> {
  const ids = cuts.map((_, k) => `cut-${k}`);
  const zero = (to: string) => [
    { touch: to, tip: 10, then: 'move half the tip and set 0', tolerance: lies?.tolerance ?? 0 },
  ];
  return {
    edgebite: 1,
    units: 'mm',
    part: PLATE,
    keep: [50, 30],
    cuts: cuts.map(({ center, diameter, wall, depth }, k) => ({
      id: ids[k],
      center,
      diameter,
      ...(wall === undefined ? { kind: 'bore' } : { kind: 'annular', wall, reach: 15 }),
      ...(depth === undefined ? {} : { depth }),
    })),
    ...(cuts[0]?.wall === undefined
      ? { tools: [{ id: 'drill', kind: 'drill', toolMaterial: 'HSS', cuts: [ids[0]] }] }
      : {}),
    keepOut: things.map(({ from, high, ...one }, k) => ({ id: `thing-${k}`, from, to: from + high, ...one })),
    ...(lies === null
      ? {}
      : {
          setups: [
            {
              id: 'one',
              turn: lies.turn,
              ...(lies.flip === null ? {} : { flip: lies.flip }),
              zero: { x: zero('left'), y: zero('front') },
              cuts: ids,
            },
          ],
        }),
  };
}

/** The job with its first cut at a value, written down and read again. */
function reportAt(given: Shop, at: number): Report {
  const document = documentOf(given);
  const [first, ...others] = given.cuts as [Shop['cuts'][number], ...Shop['cuts']];
  const [x, y] = first.center;
  const moved =
    given.along === 'diameter'
      ? { ...first, diameter: at }
      : { ...first, center: (given.along === 'x' ? [at, y] : [x, at]) as [number, number] };
  return examine(parseJob({ ...document, cuts: documentOf({ ...given, cuts: [moved, ...others] }).cuts }));
}

const IN_THE_WAY = /^(may-)?hits?-|^grip-/;

const told = (findings: readonly { code: string; about: readonly string[] }[]) =>
  findings
    .filter(({ code }) => IN_THE_WAY.test(code))
    .map(({ code, about }) =>
      [code, ...about.filter((name) => /^(cut|keepOut):/.test(name)).sort()].join(' '),
    )
    .sort();

describe('ranges of jobs with jaws, stops, parallels and clamps', () => {
  it('have no danger where they are safe, and tell of what is in the way at every value', () => {
    let safe = 0;
    let met = 0;
    fc.assert(
      fc.property(shop, (given) => {
        const query = {
          cut: 'cut-0',
          along: given.along,
          from: given.from,
          to: given.from + given.wide,
        } as RangeQuery;
        const { intervals } = rangeOf(parseJob(documentOf(given)), query);
        for (const { from, to, safe: isSafe, outcome } of intervals) {
          for (const share of given.shares) {
            const at = from + share * (to - from);
            if (Math.min(at - from, to - at) < 1e-4) continue;
            const { findings } = reportAt(given, at);
            expect(told(outcome.findings), `at ${at}`).toEqual(told(findings));
            if (outcome.findings.some(({ code }) => IN_THE_WAY.test(code))) met += 1;
            if (!isSafe) continue;
            safe += 1;
            const dangers = findings.filter(
              ({ level, about }) => level === 'danger' && about.includes('cut:cut-0'),
            );
            expect(dangers, `at ${at}`).toEqual([]);
          }
        }
      }),
      { numRuns: runs(60) },
    );
    expect(Math.min(safe, met)).toBeGreaterThan(3);
  }, 600_000);
});
