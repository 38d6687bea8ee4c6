import { examine, parseJob, type RangeQuery, type RangeReport, type Report, rangeOf } from '@edgebite/core';
import { type DrawOptions, draw } from '@edgebite/svg';
import { Resvg } from '@resvg/resvg-js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jobCases } from '../fuzz/job-cases.js';
import { runs } from '../tools/runs.js';
import { faultsOf } from './drawing-check.js';

const plate = {
  edgebite: 1,
  name: 'Breast beam cap',
  units: 'mm',
  part: { outline: { rectangle: [100, 30] }, thickness: 12 },
  limits: { web: 2, knifeEdge: 30 },
  cuts: [
    { id: 'hole', kind: 'bore', center: [50, 12], diameter: 16 },
    { id: 'groove', kind: 'swept', diameter: 4, depth: 3, path: { svgPath: 'M8 8 L30 8' } },
  ],
};
const report = examine(parseJob(plate));
const ask = (query: RangeQuery): RangeReport => rangeOf(parseJob(plate), query);
const answer = ask({ cut: 'hole', along: 'y', from: -20, to: 30 });

/** What the legend says of the strip: that it is drawn, or left out. */
const DRAWN = 'safe, of the strip';
const LEFT_OUT = /no room here for the safe values of [^<]*: left out/;

const hasStrip = (svg: string): boolean => svg.includes('id="edgebite-range"');

function expectSaid(svg: string): void {
  expect(svg.includes(DRAWN)).toBe(hasStrip(svg));
  expect(LEFT_OUT.test(svg)).toBe(!hasStrip(svg));
}

/** The numbers of the attributes of some elements in the block of the strip. */
function shapes(svg: string, tag: string): Record<string, string>[] {
  const block = svg.slice(svg.indexOf('id="edgebite-range"'), svg.indexOf('id="edgebite-legend"'));
  return [...block.matchAll(new RegExp(`<${tag} ([^>]*)>`, 'g'))].map(([, attributes = '']) =>
    Object.fromEntries([...attributes.matchAll(/([\w-]+)="([^"]*)"/g)].map(([, key, value]) => [key, value])),
  );
}

describe('a range of a path', () => {
  // From (8, 8): the second edge begins elsewhere in both.
  const bent = (d: string) => ({
    ...plate,
    cuts: [{ id: 'groove', kind: 'swept', diameter: 4, depth: 3, path: { svgPath: d } }],
  });
  const drawn = bent('M8 8 L30 9 L31 20');

  it.each([
    ['x', 6, 9],
    ['y', 7, 12],
  ] as const)('along %s is counted from where the path starts', (along, from, to) => {
    const range = rangeOf(parseJob(drawn), { cut: 'groove', along, from, to });
    expect(range.now).toBe(8);
    expect(hasStrip(draw(examine(parseJob(drawn)), { range, sheet: 'A3' }))).toBe(true);
  });

  it('is refused once the path was moved, along that axis only', () => {
    const range = rangeOf(parseJob(drawn), { cut: 'groove', along: 'y', from: 7, to: 12 });
    const moved = (d: string) => draw(examine(parseJob(bent(d))), { range, sheet: 'A3' });
    expect(() => moved('M8 8.5 L30 9.5 L31 20')).toThrow(/of cut groove at 8; it is 8.5 in the report/);
    expect(hasStrip(moved('M9 8 L31 9 L32 20'))).toBe(true);
  });
});

describe('the strip on the sheet', () => {
  const svg = draw(report, { range: answer, sheet: 'A3' });

  it('has the safe stretches, the events and the present value where they lie', () => {
    expect(hasStrip(svg)).toBe(true);
    const rects = shapes(svg, 'rect');
    const strip = rects.find((one) => one.height === '4.4' && one.fill === 'none') ?? {};
    const place = (value: number) => Number(strip.x) + (Number(strip.width) * (value + 20)) / 50;
    const safe = answer.intervals.filter((one) => one.safe);
    expect(safe.length).toBeGreaterThan(0);
    const hatched = rects.filter((one) => one.fill === 'url(#edgebite-hatch-safe)');
    expect(hatched.length).toBe(safe.length);
    for (const [k, { from, to }] of safe.entries()) {
      expect(Number(hatched[k]?.x)).toBeCloseTo(place(from), 2);
      expect(Number(hatched[k]?.width)).toBeCloseTo(place(to) - place(from), 2);
    }
    const ticks = shapes(svg, 'line').filter((one) => one.x1 === one.x2);
    expect(answer.events.length).toBeGreaterThan(3);
    for (const { at } of answer.events) {
      expect(ticks.some((one) => Math.abs(Number(one.x1) - place(at)) < 0.001)).toBe(true);
    }
    expect(svg).toContain('now 12.000');
    // Every event is told after its number.
    for (const k of answer.events.keys()) expect(svg).toMatch(new RegExp(`>${k + 1} +-?\\d`));
  });

  it('is in the description, whether there is room or not, and in no drawing without it', () => {
    for (const sheet of ['A4', 'A3'] as const) {
      expect(/<desc[^>]*>([^<]*)</.exec(draw(report, { range: answer, sheet }))?.[1]).toContain('12.000');
    }
    const plain = draw(report);
    expect(hasStrip(plain) || plain.includes(DRAWN) || LEFT_OUT.test(plain)).toBe(false);
    expect(draw(report, { range: undefined })).toBe(plain);
    expect(() => new Resvg(svg, { font: { loadSystemFonts: false } })).not.toThrow();
  });

  it('says where the present value lies outside, of a diameter, and of a path', () => {
    const outside = draw(report, { range: ask({ cut: 'hole', along: 'x', from: 60, to: 99 }), sheet: 'A3' });
    expect(outside).toContain('now 50.000, outside');
    for (const query of [
      { cut: 'hole', along: 'diameter', from: 4, to: 40 },
      { cut: 'groove', along: 'x', from: 0, to: 80 },
    ] as const) {
      expectSaid(draw(report, { range: ask(query), sheet: 'A3' }));
    }
  });

  it('is refused where it is of another job, or from before a change', () => {
    const refused = (range: RangeReport, words: RegExp) => {
      expect(() => draw(report, { range })).toThrow(RangeError);
      expect(() => draw(report, { range })).toThrow(words);
    };
    refused({ ...answer, cut: 'eye' }, /draw: range is of cut eye in mm, which the report does not have/);
    refused({ ...answer, units: 'inch' }, /cut hole in inch/);
    refused({ ...answer, now: 12.005 }, /at 12.005; it is 12 in the report, so find it anew/);
  });
});

describe('a sheet that is full', () => {
  // Many cuts with findings: nothing is free on A4 between the tables, the findings and the plan.
  const full = {
    ...plate,
    cuts: Array.from({ length: 7 }, (_, k) => ({
      id: `bite-${k + 1}`,
      kind: 'bore',
      center: [8 + 14 * k, 29],
      diameter: 12.6,
    })),
  };
  const made = examine(parseJob(full));
  const range = rangeOf(parseJob(full), { cut: 'bite-4', along: 'x', from: 40, to: 60 });
  const scaleOf = (svg: string) => /SCALE (\d+):(\d+)/.exec(svg)?.slice(1).map(Number) ?? [];

  it.each<DrawOptions>([{}, { sheet: 'Letter' }, { upright: true }])(
    'has the strip in a band of its own, at most a scale smaller: %j',
    (options) => {
      const svg = draw(made, { ...options, range });
      expect(hasStrip(svg)).toBe(true);
      expectSaid(svg);
      expect(faultsOf(svg, made)).toEqual([]);
      const [over = 0, under = 0] = scaleOf(svg);
      const [before = 0, beside = 0] = scaleOf(draw(made, options));
      expect(over / under / (before / beside)).toBeGreaterThanOrEqual(0.4);
      // The frame, the strip in it, and both ends of the range.
      const [frame, ...inside] = shapes(svg, 'rect').map((one) => ({
        left: Number(one.x),
        right: Number(one.x) + Number(one.width),
        top: Number(one.y),
        bottom: Number(one.y) + Number(one.height),
      }));
      expect(inside.length).toBeGreaterThan(0);
      for (const box of inside) {
        expect(box.left).toBeGreaterThan(frame?.left ?? Number.NaN);
        expect(box.right).toBeLessThan(frame?.right ?? Number.NaN);
        expect(box.top).toBeGreaterThan(frame?.top ?? Number.NaN);
        expect(box.bottom).toBeLessThan(frame?.bottom ?? Number.NaN);
      }
      for (const words of ['40.000 mm', '60.000 mm', 'now 50.000']) expect(svg).toContain(`${words}<`);
    },
  );
});

describe('drawings with a strip', () => {
  const SHEETS: readonly DrawOptions[] = [{}, { sheet: 'A3' }, { sheet: 'Letter' }, { upright: true }];

  /** A range of the first cut that has one: a diameter to either side of its place. */
  function rangeIn(job: ReturnType<typeof parseJob>, made: Report): RangeReport | null {
    const cut = made.cuts.find(({ center }) => center !== null);
    if (cut?.center == null) return null;
    const [x] = cut.center;
    return rangeOf(job, { cut: cut.id, along: 'x', from: x - cut.diameter, to: x + cut.diameter });
  }

  it('have it or say that it is left out, and no words over others or off the sheet', () => {
    let drawn = 0;
    let all = 0;
    fc.assert(
      fc.property(jobCases, fc.constantFrom(...SHEETS), (document, options) => {
        const job = parseJob(document);
        const made = examine(job);
        const range = rangeIn(job, made);
        if (range === null) return;
        const svg = draw(made, { ...options, range });
        expect(faultsOf(svg, made)).toEqual([]);
        expectSaid(svg);
        all++;
        if (hasStrip(svg)) drawn++;
      }),
      { numRuns: runs(6) },
    );
    expect(all).toBeGreaterThan(0);
    // Only one that would cost the drawing more than one step of its scale is left out.
    expect(drawn).toBeGreaterThan((3 * all) / 4);
  });
});
