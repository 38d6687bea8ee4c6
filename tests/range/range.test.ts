import { type Outcome, parseJob, RangeQueryError, type RangeReport, rangeOf } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/*
 * Ranges whose events are known in closed form. A circle of radius r with its centre at the height e over an edge
 * touches it at |e| = r and crosses it at the angle acos(e/r): the angle between chord and tangent is half the angle
 * at the centre (Euclid, Elements III.32; Machinery's Handbook, 31st ed., "Formulas for Segments of a Circle").
 */

const plate = {
  edgebite: 1,
  units: 'mm',
  part: { outline: { rectangle: [100, 60] }, thickness: 12 },
  limits: { web: 2, knifeEdge: 30 },
  resolution: 0.1,
};

const cos = (degrees: number) => Math.cos((degrees * Math.PI) / 180);

/** Expects events at these values, to a billionth of the range. */
function expectEvents({ events, from, to }: RangeReport, values: readonly number[]): void {
  expect(events.map(({ at }) => at.toFixed(5))).toEqual(values.map((value) => value.toFixed(5)));
  events.forEach(({ at }, k) => {
    expect(Math.abs(at - (values[k] as number)) / (to - from)).toBeLessThan(1e-9);
  });
}

const relations = ({ intervals }: RangeReport) => intervals.map(({ outcome }) => outcome.relation);
const safe = ({ intervals }: RangeReport) => intervals.map((interval) => interval.safe);
const codes = ({ findings }: Outcome) => findings.map(({ code }) => code);

describe('a range of one number of a cut', () => {
  it('follows a hole that walks in over an edge: clear, grazes, breaks out, sharp, inside but thin, inside', () => {
    const job = parseJob({ ...plate, cuts: [{ id: 'hole', kind: 'bore', center: [50, 20], diameter: 16 }] });
    const answer = rangeOf(job, { cut: 'hole', along: 'y', from: -20, to: 30 });
    expectEvents(answer, [-8.1, -7.9, 8 * cos(30), 8, 10]);
    expect(relations(answer)).toEqual(['clear', 'grazes', 'breaks out', 'breaks out', 'inside', 'inside']);
    expect(safe(answer)).toEqual([false, false, true, false, false, true]);
    expect(answer.intervals.map(({ adds }) => adds.map(({ code }) => code))).toEqual([
      ['cut-misses'],
      ['cut-grazes'],
      [],
      ['knife-edge', 'knife-edge'],
      ['thin-web'],
      [],
    ]);
    expect(answer.now).toBe(20);
    expect(answer.events[4]?.changes).toEqual([
      { what: 'web', change: 'goes', between: ['cut:hole', 'outline:0'], slab: 0 },
      { what: 'finding', change: 'goes', level: 'check', code: 'thin-web', about: ['cut:hole', 'outline:0'] },
    ]);
  });

  it('follows a diameter that grows: to a thin web, through the edge, and on to a blunter corner', () => {
    const job = parseJob({ ...plate, cuts: [{ id: 'hole', kind: 'bore', center: [50, 20], diameter: 16 }] });
    const answer = rangeOf(job, { cut: 'hole', along: 'diameter', from: 10, to: 60 });
    expectEvents(answer, [2 * (20 - 2), 2 * 20, (2 * 20) / cos(30)]);
    expect(relations(answer)).toEqual(['inside', 'inside', 'breaks out', 'breaks out']);
    expect(safe(answer)).toEqual([true, false, false, true]);
  });

  it('tells the angle acos(e/r) at an edge that lies at 3 in 4', () => {
    const triangle = [
      [0, 0],
      [80, 0],
      [80, 60],
    ];
    const edges = triangle.map((a, k) => ({ kind: 'line', a, b: triangle[(k + 1) % 3] }));
    const job = parseJob({
      ...plate,
      part: { outline: { edges }, thickness: 12 },
      limits: { web: 2, knifeEdge: 40 },
      cuts: [{ id: 'hole', kind: 'bore', center: [45, 20], diameter: 20 }],
    });
    // The centre (x, 20) is (3 x - 4 * 20) / 5 from the long edge.
    const x = (e: number) => (5 * e + 80) / 3;
    const answer = rangeOf(job, { cut: 'hole', along: 'x', from: 30, to: 60 });
    expectEvents(answer, [10 * cos(40), 10, 12].map(x));
    // The corner at the origin, of atan(3/4) = 36.87 degrees, is sharp with the hole and without it.
    const ofHole = ({ outcome }: { readonly outcome: Outcome }) =>
      outcome.knifeEdges.filter(({ between }) => between.includes('cut:hole')).length;
    expect(answer.intervals.map(ofHole)).toEqual([0, 2, 0, 0]);
    expect(answer.intervals.map(({ outcome }) => outcome.knifeEdges.length)).toEqual([1, 3, 1, 1]);
  });

  it('tells when a pocket from below lets the slug of a ring loose: while it takes in the whole core', () => {
    const job = parseJob({
      ...plate,
      cuts: [
        { id: 'ring', kind: 'annular', center: [50, 30], diameter: 30, wall: 4, depth: 6 },
        { id: 'pocket', kind: 'bore', center: [50, 30], diameter: 40, depth: 6, from: 'bottom' },
      ],
    });
    const answer = rangeOf(job, { cut: 'pocket', along: 'x', from: 30, to: 70 });
    // The core has radius 15 - 4, so the pocket of radius 20 covers it within 9 of its centre.
    const loosened = answer.events.filter(({ changes }) =>
      changes.some((change) => change.what === 'pieces' && change.role === 'slug'),
    );
    expect(loosened.map(({ at }) => at.toFixed(6))).toEqual(['41.000000', '59.000000']);
    expect(loosened[0]?.changes).toContainEqual({ what: 'pieces', role: 'slug', from: 0, to: 1 });
    expect(loosened[0]?.changes).toContainEqual({ what: 'pieces', role: 'held slug', from: 1, to: 0 });
    const between = answer.intervals.filter(({ from, to }) => from > 40.9 && to < 59.1);
    for (const { outcome } of between) expect(codes(outcome)).toContain('loose-slug');
  });

  it('tells when a ring that moves off the part has no slug any more, and no metal under its pin', () => {
    const job = parseJob({
      ...plate,
      cuts: [{ id: 'ring', kind: 'annular', center: [80, 30], diameter: 30, wall: 4 }],
    });
    const answer = rangeOf(job, { cut: 'ring', along: 'x', from: 90, to: 120 });
    const at = (code: string) =>
      answer.events
        .filter(({ changes }) => changes.some((change) => change.what === 'finding' && change.code === code))
        .map((event) => Number(event.at.toFixed(6)));
    expect(at('loose-slug')).toEqual([111]);
    // Once the ring misses, no pin is needed.
    expect(at('no-metal-under-centre')).toEqual([100, 115]);
  });

  it('tells how many pieces a slot that moves across a bar leaves', () => {
    const job = parseJob({
      ...plate,
      part: { outline: { rectangle: [100, 20] }, thickness: 12 },
      cuts: [{ id: 'slot', kind: 'swept', diameter: 8, path: { svgPath: 'M50 -10 L50 14' } }],
    });
    // The tool's centre goes 24 up from its start. The bar is parted when that end comes within 4 of its top, and
    // whole again when the other is 4 over its bottom.
    const answer = rangeOf(job, { cut: 'slot', along: 'y', from: -24, to: 12 });
    const parted = answer.events.filter(({ changes }) => changes.some(({ what }) => what === 'pieces'));
    expect(parted.map(({ at }) => Number(at.toFixed(6)))).toEqual([20 - 4 - 24, 4]);
  });

  it('takes a web exactly as thick as the limit for none, wherever rounding puts it', () => {
    const job = parseJob({
      ...plate,
      limits: { web: 2.5, knifeEdge: 10 },
      cuts: [{ id: 'fork', kind: 'swept', diameter: 4.5, path: { svgPath: 'M40 20 L20 20 L20 27 L40 27' } }],
    });
    const answer = rangeOf(job, { cut: 'fork', along: 'y', from: 10.1, to: 40.3 });
    expect(answer.events.filter(({ at }) => at > 12.3 && at < 37.7)).toEqual([]);
  });

  it('tells of a touch at a slant where it is, though the report tells of touching long before', () => {
    // The line between the centres is half of 41 long, and the cut goes 9 in 41 its way: a triangle of 9, 40 and 41.
    const cuts = [
      { id: 'hole', kind: 'bore', center: [40, 20], diameter: 16 },
      { id: 'other', kind: 'bore', center: [60, 40], diameter: 25 },
    ];
    const answer = rangeOf(parseJob({ ...plate, cuts }), { cut: 'hole', along: 'x', from: 40, to: 80 });
    const thin = Math.sqrt((20.5 + 2) ** 2 - 20 ** 2);
    expectEvents(answer, [60 - thin, 60 - 4.5, 60 + 4.5, 60 + thin]);
  });

  it.each([
    [20, 11.5],
    [8, 5.5],
  ])('tells where a web beside a hole of %i slips from an edge onto the round beside it', (diameter, y) => {
    const job = parseJob({
      ...plate,
      part: { outline: { rectangle: [100, 60], corner: 14 }, thickness: 12 },
      cuts: [{ id: 'hole', kind: 'bore', center: [20, y], diameter }],
    });
    const answer = rangeOf(job, { cut: 'hole', along: 'x', from: 13.1, to: 40 });
    // The line from the centre square to the edge meets it in its end, 14 from the corner.
    expectEvents(answer, [14]);
    expect(answer.intervals.map(({ outcome }) => outcome.webs.map(({ between }) => between[1]))).toEqual([
      ['outline:7'],
      ['outline:0'],
    ]);
  });

  it('is safe where the job has the same findings without the cut', () => {
    const near = { id: 'near', kind: 'bore', center: [12, 6], diameter: 10 };
    const cuts = [near, { id: 'hole', kind: 'bore', center: [50, 30], diameter: 10 }];
    const answer = rangeOf(parseJob({ ...plate, cuts }), { cut: 'hole', along: 'x', from: 40, to: 60 });
    expect(answer.events).toEqual([]);
    expect(answer.intervals).toHaveLength(1);
    expect(answer.intervals[0]).toMatchObject({ from: 40, to: 60, safe: true, adds: [] });
    expect(codes(answer.intervals[0]?.outcome as Outcome)).toEqual(['thin-web']);
  });

  it('says the same of the job turned, mirrored or in other places', () => {
    const cuts = [
      { id: 'hole', kind: 'bore', center: [50, 20], diameter: 16 },
      { id: 'other', kind: 'bore', center: [63, 9], diameter: 9 },
    ];
    const answer = rangeOf(parseJob({ ...plate, cuts }), { cut: 'hole', along: 'y', from: -20, to: 30 });
    // Mirrored at the diagonal: x becomes y.
    const swapped = {
      ...plate,
      part: { outline: { rectangle: [60, 100] }, thickness: 12 },
      cuts: cuts.map((cut) => ({ ...cut, center: [...cut.center].reverse() })),
    };
    const other = rangeOf(parseJob(swapped), { cut: 'hole', along: 'x', from: -20, to: 30 });
    expect(other.events.length).toBe(answer.events.length);
    other.events.forEach(({ at }, k) => {
      expect(Math.abs(at - (answer.events[k]?.at as number))).toBeLessThan(5e-8);
    });
    const shifted = {
      ...plate,
      part: { outline: { rectangle: [100, 60], at: [1000, -2000] }, thickness: 12 },
      cuts: cuts.map(({ center: [x = 0, y = 0], ...cut }) => ({ ...cut, center: [x + 1000, y - 2000] })),
    };
    const far = rangeOf(parseJob(shifted), { cut: 'hole', along: 'y', from: -2020, to: -1970 });
    expect(far.events.map(({ changes }) => changes)).toEqual(answer.events.map(({ changes }) => changes));
    far.events.forEach(({ at }, k) => {
      expect(Math.abs(at + 2000 - (answer.events[k]?.at as number))).toBeLessThan(5e-8);
    });
  });
});

describe('a range that is none', () => {
  const job = parseJob({
    ...plate,
    cuts: [
      { id: 'ring', kind: 'annular', center: [50, 30], diameter: 30, wall: 4 },
      { id: 'slot', kind: 'swept', diameter: 6, path: { svgPath: 'M10 10 L40 10' } },
    ],
  });

  it.each([
    [{ cut: 'rings', along: 'x', from: 0, to: 1 }, 'cut: there is no cut rings; the job has ring, slot'],
    [{ cut: 'ring', along: 'z', from: 0, to: 1 }, 'along: is z; it must be x, y or diameter'],
    [{ cut: 'slot', along: 'diameter', from: 1, to: 2 }, 'along: cut slot is swept'],
    [{ cut: 'ring', along: 'x', from: 5, to: 5 }, 'to: is 5; it must be over from, 5'],
    [{ cut: 'ring', along: 'x', from: 6, to: 5 }, 'to: is 5; it must be over from, 6'],
    [{ cut: 'ring', along: 'x', from: Number.NaN, to: 5 }, 'from: is NaN'],
    [{ cut: 'ring', along: 'x', from: 0, to: Number.POSITIVE_INFINITY }, 'to: is Infinity'],
    [{ cut: 'ring', along: 'diameter', from: 8, to: 20 }, 'from: with diameter 8 cut ring leaves no core'],
    [{ cut: 'ring', along: 'diameter', from: -3, to: 20 }, 'from: with diameter -3 cut ring is too small'],
  ])('is refused: %j', (query, message) => {
    const ask = () => rangeOf(job, query as Parameters<typeof rangeOf>[1]);
    expect(ask).toThrow(RangeQueryError);
    expect(ask).toThrow(message);
  });

  it('is refused where the job has no cuts', () => {
    const none = parseJob({ ...plate, cuts: [] });
    expect(() => rangeOf(none, { cut: 'ring', along: 'x', from: 0, to: 1 })).toThrow('the job has none');
  });
});
