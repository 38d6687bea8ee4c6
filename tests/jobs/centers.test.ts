import {
  area,
  disc,
  engagementOf,
  examine,
  footprint,
  gouges,
  intersect,
  type JobDocument,
  parseJob,
  type Region,
  type Report,
  subtract,
} from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../tools/runs.js';

type Plain = Record<string, unknown>;

const RECTANGLE = { rectangle: [80, 30] };

function reportOn(cuts: readonly Plain[], over: Plain = {}, outline: unknown = RECTANGLE): Report {
  return examine(parseJob({ edgebite: 1, units: 'mm', part: { outline, thickness: 12 }, ...over, cuts }));
}

const bore = (center: unknown, over: Plain = {}): Plain => ({
  id: 'a',
  kind: 'bore',
  diameter: 10,
  center,
  ...over,
});
const swept = (path: Plain, over: Plain = {}): Plain => ({
  id: 'a',
  kind: 'swept',
  diameter: 6,
  path,
  ...over,
});
const first = (report: Report) => report.cuts[0] as Report['cuts'][number];
const codes = (report: Report) => report.findings.map(({ code }) => code);
const messageOf = (report: Report, code: string) =>
  report.findings.find((finding) => finding.code === code)?.message ?? '';

/** All numbers as near as rounding allows. */
function nearTo(value: readonly number[] | null | undefined, wanted: readonly number[]): void {
  expect(value).not.toBeNull();
  wanted.forEach((number, k) => {
    expect(value?.[k]).toBeCloseTo(number, 10);
  });
}

// c = 2 sqrt(h (2 r - h)), Machinery's Handbook, 31st ed., p. 83.
const chord = (radius: number, depth: number): number => 2 * Math.sqrt(depth * (2 * radius - depth));

const FACE = { on: 'outline:1', along: 15 };

describe('a centre placed by', () => {
  it('depth on a face', () => {
    const report = reportOn([bore({ ...FACE, depth: 4 })]);
    nearTo(first(report).center, [81, 15]);
    const { placement } = first(report);
    expect(placement).toMatchObject({ form: 'depth', about: ['outline:1'], pick: null, bites: 1 });
    const [bite] = first(report).bites;
    nearTo([bite?.depth ?? 0, bite?.opening ?? 0], [4, chord(5, 4)]);
    // sin(half the included angle) = half the chord over the radius; the corner is what that lacks to half a turn.
    const half = Math.asin(chord(5, 4) / 10);
    nearTo(
      [placement?.includedAngle ?? 0, placement?.arcLength ?? 0],
      [(2 * half * 180) / Math.PI, 10 * half],
    );
    nearTo(placement?.entry?.at, [80, 15 - chord(5, 4) / 2]);
    nearTo(placement?.exit?.at, [80, 15 + chord(5, 4) / 2]);
    nearTo([placement?.entry?.angle ?? 0], [180 - (half * 180) / Math.PI]);
    expect(placement?.entry?.source).toBe('outline:1');
  });

  it('depth, measured from the other end of the face, of a ring too', () => {
    const report = reportOn([
      {
        id: 'a',
        kind: 'annular',
        diameter: 10,
        wall: 2,
        center: { on: 'outline:0', along: 30, from: 'end', depth: 6 },
      },
    ]);
    nearTo(first(report).center, [50, 1]);
  });

  it('opening: the answer that is named, or nearest to a place', () => {
    for (const [choice, x] of [
      [{ pick: 'outside' }, 83],
      [{ pick: 'inside' }, 77],
      [{ near: [74, 12] }, 77],
      [{ near: [90, 15] }, 83],
    ] as const) {
      const { center, placement, bites } = first(reportOn([bore({ ...FACE, opening: 8, ...choice })]));
      nearTo(center, [x, 15]);
      expect(placement?.pick).toBe(x === 83 ? 'outside' : 'inside');
      nearTo([bites[0]?.opening ?? 0, bites[0]?.depth ?? 0], [8, x === 83 ? 2 : 8]);
    }
  });

  it('an opening as wide as the circle, which has one answer', () => {
    const { center, placement } = first(reportOn([bore({ ...FACE, opening: 10 })]));
    nearTo(center, [80, 15]);
    expect(placement?.pick).toBeNull();
  });

  it('three points: the diameter follows, or is that of the drawing within the resolution', () => {
    const through = [
      [80, 10],
      [75, 15],
      [80, 20],
    ];
    const free = first(reportOn([bore({ through }, { diameter: undefined })]));
    nearTo([...(free.center ?? []), free.diameter], [80, 15, 10]);
    expect(free.placement?.form).toBe('through');
    expect(first(reportOn([bore({ through }, { diameter: 10.004 })])).diameter).toBe(10.004);
  });

  it('touching two edges: a full hole in a corner, or the answer that is named', () => {
    const corner = first(reportOn([bore({ tangent: ['outline:0', 'outline:1'] })]));
    nearTo(corner.center, [75, 5]);
    expect(corner.placement).toMatchObject({ pick: 'inside inside', entry: null });
    expect(corner.bites).toEqual([]);
    const outside = reportOn([bore({ tangent: ['outline:0', 'outline:1'], pick: 'outside outside' })]);
    nearTo(first(outside).center, [85, -5]);
    expect(first(outside).placement).toMatchObject({ bites: 0, arcLength: 0 });
  });

  it('distances from edges and ends', () => {
    const fromEdges = first(
      reportOn([
        bore({
          distances: [
            { edge: 'outline:0', distance: 12 },
            { edge: 'outline:1', distance: 3, side: 'outside' },
          ],
        }),
      ]),
    );
    nearTo(fromEdges.center, [83, 12]);
    // 3-4-5: 15 in from the front edge and 25 from its corner is 20 along.
    const hypotenuse = {
      distances: [
        { edge: 'outline:0', distance: 15 },
        { corner: 'outline:0', end: 'start', distance: 25 },
      ],
    };
    nearTo(first(reportOn([bore({ ...hypotenuse, near: [24, 10] })])).center, [20, 15]);
    const along = {
      distances: [
        { along: 'outline:1', end: 'end', distance: 10 },
        { edge: 'outline:1', distance: 1 },
      ],
    };
    nearTo(first(reportOn([bore(along)])).center, [79, 20]);
  });

  it('a depth whose opening goes past the end of the face, which a note tells', () => {
    const report = reportOn([bore({ on: 'outline:1', along: 2, depth: 4 })]);
    expect(codes(report)).toContain('opening-past-face');
    expect(first(report).placement?.entry?.source).toBe('outline:0');
    expect(messageOf(report, 'opening-past-face')).toContain('past the end of the right end');
    expect(codes(reportOn([bore({ ...FACE, depth: 4 })]))).not.toContain('opening-past-face');
  });
});

describe('the load of a cut', () => {
  const loadOf = (cuts: Plain[], step = 0) => reportOn(cuts).steps[step]?.load;

  // Half a circle has 2 / pi, a full one 0: integral of the definition.
  it('is that of the arcs in metal, for a spindle that turns clockwise seen from where it starts', () => {
    const half = loadOf([bore([80, 15])])?.entry;
    nearTo([half?.share ?? 0, half?.sideLoad ?? 0], [0.5, 2 / Math.PI]);
    expect(half?.strikes).toBe(1);
    expect(half).toMatchObject({ pushDrawn: 90, push: { words: 'away from you', degrees: 90 } });
    // From below the part lies turned over about y: what is drawn as pushed down is pushed towards the person.
    const below = loadOf([bore([80, 15], { from: 'bottom', depth: 5 })])?.entry;
    expect(below).toMatchObject({ pushDrawn: 270, push: { words: 'towards you', degrees: 270 } });
    expect(loadOf([bore([20, 15])])?.entry).toMatchObject({ share: 1, strikes: 0, sideLoad: 0, push: null });
    expect(loadOf([bore([200, 15])])).toMatchObject({ entry: null, worst: null, breakThrough: null });
  });

  it('heeds what the cuts before it have taken, height by height', () => {
    const before = { id: 'b', kind: 'bore', diameter: 10, center: [26, 15] };
    // Two circles of one radius r, d apart: the arc in the other is 2 acos(d / (2 r)) (elementary).
    const outside = 1 - (2 * Math.acos(6 / 10)) / (2 * Math.PI);
    nearTo([loadOf([before, bore([20, 15])], 1)?.entry?.share ?? 0], [outside]);
    const fromBelow = loadOf([{ ...before, depth: 3, from: 'bottom' }, bore([20, 15])], 1);
    expect(fromBelow?.entry?.share).toBe(1);
    nearTo([fromBelow?.breakThrough?.share ?? 0], [outside]);
    nearTo([loadOf([{ ...before, depth: 3 }, bore([20, 15])], 1)?.entry?.share ?? 0], [outside]);
    const report = reportOn([before, bore([20, 15])]);
    expect(messageOf(report, 'interrupted-cut')).toContain('Cut a runs into what earlier cuts have opened');
    expect(codes(report)).not.toContain('partial-hole');
  });

  it('is told once for all cuts of one cause', () => {
    const ids = ['a', 'b', 'c'];
    const report = reportOn(ids.map((id, k) => bore([10 + 20 * k, -1], { id })));
    const told = report.findings.filter(({ code }) => ['partial-hole', 'one-sided-load'].includes(code));
    expect(told.map(({ code, about }) => [code, about])).toEqual([
      ['partial-hole', ids.map((id) => `cut:${id}`)],
      ['one-sided-load', ids.map((id) => `cut:${id}`)],
    ]);
  });

  it('is not told of a cut that only grazes', () => {
    const report = reportOn([bore([84.998, 15])]);
    expect(report.steps[0]?.load?.entry?.strikes).toBe(1);
    expect(codes(report)).toContain('cut-grazes');
    expect(codes(report)).not.toContain('one-sided-load');
  });

  it('is that of the whole part, though only what is near is looked at', () => {
    const coordinate = fc.integer({ min: -10, max: 130 });
    const cut = fc.record({
      x: coordinate,
      y: coordinate,
      r: fc.integer({ min: 2, max: 14 }),
      depth: fc.integer({ min: 1, max: 12 }),
    });
    let interrupted = 0;
    fc.assert(
      fc.property(fc.array(cut, { minLength: 1, maxLength: 8 }), (drawn) => {
        const holes = Array.from({ length: 36 }, (_, k) => ({
          circle: 6,
          at: [10 + 20 * (k % 6), 10 + 20 * Math.floor(k / 6)],
        }));
        const cuts = drawn.map(({ x, y, r, depth }, k) =>
          bore([x, y], { id: `c${k}`, diameter: 2 * r, depth }),
        );
        const part = { outline: { rectangle: [120, 120], holes }, thickness: 12 };
        const job = parseJob({ edgebite: 1, units: 'mm', part, cuts } as unknown as JobDocument);
        examine(job).steps.forEach(({ load, center, diameter }, k) => {
          // All cuts start from the top, so each one before it is there at the height where this one starts.
          const section: Region = subtract(job.outline, job.cuts.slice(0, k).map(footprint));
          const [x, y] = center as readonly [number, number];
          const whole = engagementOf(section, { x, y }, diameter / 2);
          const [top] = load?.heights ?? [];
          expect(top?.share).toBeCloseTo(whole.share, 8);
          expect(top?.strikes).toBe(whole.entries);
          expect(top?.sideLoad).toBeCloseTo(whole.sideLoad.size, 8);
          if (whole.interrupted) interrupted++;
        });
      }),
      { numRuns: runs(12) },
    );
    expect(interrupted).toBeGreaterThan(runs(12));
  });
});

describe('backing off', () => {
  const offOf = (cuts: Plain[], step = 0) => reportOn(cuts).steps[step]?.backOff;

  it('clears the wall by the gap asked for, or by the usual one', () => {
    const off = offOf([bore([80, 15], { clearance: 0.5 })]);
    // Half a circle, moved s straight back: at its ends the gap is sqrt(r^2 + s^2) - r (Pythagoras).
    nearTo([off?.drawn ?? 1, off?.by ?? 0, off?.gap ?? 0], [0, Math.sqrt(5.5 ** 2 - 25), 0.5]);
    nearTo([offOf([bore([80, 15])])?.gap ?? 0], [0.2]);
  });

  it('has no way in a full hole, nor round a core, and needs none in air', () => {
    expect(offOf([bore([20, 15])])).toMatchObject({
      by: null,
      why: expect.stringMatching(/all the way round/),
    });
    const ring = { id: 'a', kind: 'annular', diameter: 20, wall: 3, center: [80, 15] };
    expect(offOf([ring])).toMatchObject({ by: null, why: expect.stringMatching(/core stands/) });
    expect(offOf([bore([200, 15])])).toMatchObject({ by: 0, why: null });
  });

  it('looks at every height that the tool passes', () => {
    const slot = { id: 'b', kind: 'bore', diameter: 30, center: [20, 15], depth: 4 };
    expect(offOf([slot, bore([20, 15])], 1)?.by).toBeNull();
    expect(offOf([slot, bore([20, 15], { depth: 3 })], 1)?.by).toBe(0);
    // Wide open below and closed above: a pocket from the other side is no way out.
    const under = { ...slot, from: 'bottom', depth: 4 };
    expect(offOf([under, bore([20, 15])], 1)?.by).toBeNull();
  });
});

describe('passes', () => {
  const RING = { id: 'ring', kind: 'annular', diameter: 24, wall: 4, center: [80, 15] };
  const OPEN = { kind: 'open out', bite: 0.5, finish: 0.2 };

  it('step in from first touch to the true centre', () => {
    const asked = { kind: 'step in', bite: 1, finish: 0.25, approach: 180, feed: { perTurn: 0.1, rpm: 400 } };
    const report = reportOn([bore({ ...FACE, depth: 4 }, { passes: asked })]);
    const { passes, removedVolume } = first(report);
    expect(passes).toMatchObject({ kind: 'step in', approach: 180 });
    nearTo([passes?.travel ?? 0, passes?.minutes ?? 0], [4, 5 * (12 / 40)]);
    expect(passes?.list.map(({ role }) => role)).toEqual(['rough', 'rough', 'rough', 'rough', 'finish']);
    expect(passes?.list.at(-1)?.center).toEqual(first(report).center);
    for (const { bite } of passes?.list ?? []) expect(bite?.size).toBeLessThanOrEqual(1 + 1e-9);
    nearTo([(passes?.list ?? []).reduce((sum, { volume }) => sum + volume, 0)], [removedVolume]);
  });

  it('start from what a ring has left, its loose core lifted out', () => {
    const report = reportOn([RING, bore([80, 15], { id: 'b', diameter: 26, passes: OPEN })], {
      keep: [5, 5],
    });
    const passes = report.cuts[1]?.passes;
    nearTo([passes?.travel ?? 0], [1]);
    expect(passes?.list.map(({ diameter }) => Number(diameter.toFixed(9)))).toEqual([24.8, 25.6, 26]);
    // A ring between radii 12 and 13, in part of which the face cuts it off.
    const metal = intersect([parseJob(report0()).outline, disc({ x: 80, y: 15 }, 13)]);
    const wall = area(subtract(metal, [disc({ x: 80, y: 15 }, 12)]));
    nearTo([(passes?.list ?? []).reduce((sum, { area: size }) => sum + size, 0)], [wall]);
  });

  it('leave a core that is held, or is the piece that is kept', () => {
    const again = bore([80, 15], { id: 'b', diameter: 26, passes: OPEN });
    const held = reportOn(
      [
        { ...RING, depth: 8 },
        { ...again, depth: 8 },
      ],
      { keep: [5, 5] },
    ).cuts[1]?.passes;
    expect(held?.list.length).toBeGreaterThan(10);
    const within = bore([80, 15], { id: 'b', passes: OPEN });
    expect(reportOn([RING, within], { keep: [73, 15] }).cuts[1]?.passes?.list.length).toBeGreaterThan(9);
    expect(reportOn([RING, within], { keep: [5, 5] }).cuts[1]?.passes?.list).toEqual([]);
  });

  it('heed the layer with the most metal, and add up what they take in each', () => {
    const pocket = { id: 'p', kind: 'bore', diameter: 8, center: [80, 15], depth: 5 };
    const report = reportOn([pocket, bore([80, 15], { id: 'b', passes: { kind: 'open out', bite: 1 } })]);
    const cut = report.cuts[1];
    expect(cut?.passes?.list.length).toBe(5);
    nearTo(
      [(cut?.passes?.list ?? []).reduce((sum, { volume }) => sum + volume, 0)],
      [cut?.removedVolume ?? 0],
    );
  });

  it('are left out with a reason where they cannot be', () => {
    const report = reportOn([bore([78, 15], { passes: { kind: 'step in', bite: 0.1, approach: 180 } })]);
    expect(first(report).passes).toBeNull();
    expect(messageOf(report, 'passes-not-possible')).toMatch(
      /^The passes of cut a cannot be made: .* come from another side, open out/,
    );
    expect(
      first(reportOn([bore([78, 15], { passes: { kind: 'open out', bite: 0.5 } })])).passes,
    ).not.toBeNull();
  });

  it('are none where there is nothing to cut', () => {
    const away = first(reportOn([bore([200, 15], { passes: { kind: 'step in', bite: 1 } })]));
    expect(away.passes).toMatchObject({ list: [], travel: 0 });
  });
});

/** The plain part. */
function report0(): Plain {
  return { edgebite: 1, units: 'mm', part: { outline: RECTANGLE, thickness: 12 }, cuts: [] };
}

describe('a path along the outline', () => {
  // An L: a square corner inward at (10, 10), edge 3 to edge 4.
  const ELL = { svgPath: 'M0 0 H40 V10 H10 V40 H0 Z' };

  it('goes round outside, and tells what it does not reach', () => {
    const report = reportOn([swept({ along: { side: 'outside', lead: 'none' } })], {}, ELL);
    const { toolPath, path } = first(report);
    expect(toolPath).toMatchObject({ side: 'outside', milling: 'conventional', allowance: 0, missed: [] });
    expect(toolPath?.passes).toHaveLength(1);
    expect(toolPath?.passes[0]).toMatchObject({ closed: true, outer: true, ccw: true, leadIn: [] });
    expect(path?.length).toBe(toolPath?.passes[0]?.cut.length);
    expect(path?.every((edge) => edge.source === undefined)).toBe(true);
    // What a disc leaves in a square corner: r^2 - pi r^2 / 4 (elementary).
    nearTo([toolPath?.unreached[0]?.area ?? 0], [9 - (9 * Math.PI) / 4]);
    expect(toolPath?.unreached).toHaveLength(1);
    expect(toolPath?.unreached[0]).toMatchObject({ largestTool: 0, by: 'corner', at: [10, 10] });
    expect(messageOf(report, 'path-leaves-metal')).toContain('No round tool reaches all of a sharp corner');
  });

  it('has leads outside, and cuts none of the part with them', () => {
    const job = parseJob({
      ...report0(),
      cuts: [swept({ along: { side: 'outside' } })],
    } as unknown as JobDocument);
    const [cut] = job.cuts;
    const [pass] = first(examine(job)).toolPath?.passes ?? [];
    expect(pass?.leadIn).toHaveLength(1);
    expect(cut?.kind === 'swept' ? gouges(cut.path, 3, job.outline) : null).toEqual([]);
    expect(first(examine(job)).removedArea).toBeCloseTo(0, 9);
  });

  it('asks for no room for its leads along loops that it does not follow', () => {
    const outline = { ...RECTANGLE, holes: [{ circle: 12, at: [50, 15] }] };
    const { toolPath } = first(reportOn([swept({ along: { side: 'outside', lead: 8 } })], {}, outline));
    expect(toolPath?.passes.map(({ outer }) => outer)).toEqual([true]);
    expect(toolPath?.passes[0]?.leadIn).toMatchObject([{ kind: 'arc', radius: 8 }]);
  });

  it('follows a stretch between places on edges, and names no corner off it', () => {
    const along = {
      side: 'outside',
      from: { edge: 'outline:0', distance: 5 },
      to: { edge: 'outline:0', end: 'end', distance: 10 },
      lead: 'none',
    };
    const { path, toolPath } = first(reportOn([swept({ along })], {}, ELL));
    expect(path).toEqual([{ kind: 'line', a: [5, -3], b: [30, -3] }]);
    expect(toolPath?.unreached).toEqual([]);
    const climbing = first(reportOn([swept({ along: { ...along, milling: 'climb' } })], {}, ELL));
    expect(climbing.path?.[0]).toMatchObject({ a: [30, -3], b: [5, -3] });
    // From below the spindle turns the other way as seen from above, so climbing does too.
    const below = first(
      reportOn([swept({ along: { ...along, milling: 'climb' } }, { from: 'bottom', depth: 4 })], {}, ELL),
    );
    expect(below.path?.[0]).toMatchObject({ a: [5, -3], b: [30, -3] });
    expect(below.toolPath?.milling).toBe('climb');
  });

  it('goes round all loops that it fits along, and tells of the others', () => {
    const outline = {
      ...RECTANGLE,
      holes: [
        { circle: 4, at: [20, 15] },
        { circle: 12, at: [50, 15] },
      ],
    };
    const report = reportOn([swept({ along: { side: 'outside', loop: 'all', lead: 'none' } })], {}, outline);
    expect(first(report).toolPath?.passes.map(({ outer }) => outer)).toEqual([false, true]);
    expect(first(report).toolPath?.missed).toEqual(['hole:0']);
    expect(messageOf(report, 'path-misses-loop')).toContain('does not fit along hole:0');
    const hole = first(
      reportOn([swept({ along: { side: 'inside', loop: 'hole:1', allowance: 1 } })], {}, outline),
    );
    // A ring between radii 6 + 1 and 6 + 1 + 6, round the hole.
    expect(hole.removedArea).toBeCloseTo(Math.PI * (13 ** 2 - 7 ** 2), 8);
  });

  it('finds a drawn path that leaves the side that it is to stay on', () => {
    const stray = reportOn([swept({ svgPath: 'M10 10 H78' }, { stays: 'inside', depth: 3 })]);
    expect(messageOf(stray, 'gouge')).toContain('goes 1.000 mm past the outline');
    expect(stray.findings.find(({ code }) => code === 'gouge')?.about).toContain('outline:1');
    expect(codes(reportOn([swept({ svgPath: 'M10 10 H77' }, { stays: 'inside', depth: 3 })]))).not.toContain(
      'gouge',
    );
    expect(codes(reportOn([swept({ svgPath: 'M10 10 H78' }, { depth: 3 })]))).not.toContain('gouge');
  });
});
