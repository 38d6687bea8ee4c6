import { examine, parseJob, type Report } from '@edgebite/core';
import { draw, drawSheets, drawView, type SheetSize } from '@edgebite/svg';
import { Resvg } from '@resvg/resvg-js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pathArea } from '../../packages/svg/fixtures/path-area.js';
import { jobCases } from '../fuzz/job-cases.js';
import { runs } from '../tools/runs.js';
import { EXAMPLES, exampleReport, WORKED } from './cases.js';
import { faultsOf, letteringFaults, missingFrom } from './drawing-check.js';
import { letteringOf, overlaps } from './lettering.js';

const SHEETS: readonly (readonly [SheetSize, boolean])[] = [
  ['A4', false],
  ['A3', false],
  ['Letter', false],
  ['A4', true],
];

describe('drawings of the examples', () => {
  it.each(EXAMPLES)('%s: areas, marks and lettering are right on each sheet', (name) => {
    const report = exampleReport(name);
    for (const [sheet, upright] of SHEETS) {
      expect([sheet, upright, ...faultsOf(draw(report, { sheet, upright }), report)]).toEqual([
        sheet,
        upright,
      ]);
    }
    expect(letteringFaults(drawView(report))).toEqual([]);
  });

  // Reviewed by eye: after a change to the drawing, look at `npm run figures` before `vitest run -u` keeps the new ones.
  it.each(EXAMPLES)('%s is drawn as it was', async (name) => {
    await expect(`${draw(exampleReport(name))}\n`).toMatchFileSnapshot(`drawings/${name}.svg.snap`);
  });
});

describe('drawings of generated jobs', () => {
  it('have all pieces with their areas, all findings marked, no words over others, on a line or off the sheet', () => {
    fc.assert(
      fc.property(jobCases, fc.constantFrom(...SHEETS), (job, [sheet, upright]) => {
        const report = examine(parseJob(job));
        const sheets = drawSheets(report, { sheet, upright });
        expect(sheets[0]).toBe(draw(report, { sheet, upright }));
        expect(faultsOf(sheets[0] ?? '', report)).toEqual([]);
        expect(sheets.slice(1).flatMap(letteringFaults)).toEqual([]);
        expect(missingFrom(sheets, report)).toEqual([]);
      }),
      { numRuns: runs(25) },
    );
  });
});

describe('the lists of a drawing', () => {
  it.each(EXAMPLES)('%s: with them every mark is explained on paper, on each sheet', (name) => {
    const report = exampleReport(name);
    for (const [sheet, upright] of SHEETS) {
      const sheets = drawSheets(report, { sheet, upright });
      expect([sheet, upright, ...missingFrom(sheets, report), ...sheets.flatMap(letteringFaults)]).toEqual([
        sheet,
        upright,
      ]);
    }
  });

  it('say of a path where the tool stands and by which arc it comes there, on the readout', () => {
    const [, ...lists] = drawSheets(exampleReport('saddle-block'));
    const words = lists.flatMap((list) => letteringOf(list).map(({ text }) => text));
    // The oilway is 5 wide, from (20, 27) to (52, 27), round (52, 19) with radius 8, to (60, 19) and down to (60, 7). The zero is
    // 5 to the left of the part and 5 in front of it: the tip of 10 stands against the stop, and against the front.
    expect(words.filter((word) => word !== '').join(' ')).toContain(
      'oilway start 15.000 32.000 lifted before oilway path 47.000 32.000 oilway path 55.000 24.000 47.000 24.000 8.000 clockwise oilway path 55.000 12.000',
    );
  });

  it('go on over as many sheets as there are rows for, and none is there where all is on the drawing', () => {
    const job = {
      edgebite: 1,
      name: 'Comb',
      units: 'mm',
      part: { outline: { rectangle: [400, 60] }, thickness: 6 },
      cuts: Array.from({ length: 90 }, (_, k) => ({
        id: `hole-${k}`,
        kind: 'bore',
        center: [10 + 8.5 * (k % 45), k < 45 ? 15 : 45],
        diameter: 4,
      })),
    };
    const report = examine(parseJob(job));
    const sheets = drawSheets(report);
    expect(missingFrom(sheets, report)).toEqual([]);
    expect(sheets.length).toBeGreaterThan(2);
    const ids = sheets.flatMap((svg) => [...svg.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id));
    expect(new Set(ids).size).toBe(ids.length);
    sheets.forEach((svg, k) => {
      const head = letteringOf(svg).map(({ text }) => text);
      expect(head.some((text) => text.endsWith(`sheet ${k + 1} of ${sheets.length}`))).toBe(true);
    });
    const bare = { ...job, cuts: [] };
    expect(drawSheets(examine(parseJob(bare)))).toHaveLength(1);
  });

  it('say how many sheets they leave out, where there would be very many', () => {
    const cuts = Array.from({ length: 1200 }, (_, k) => ({
      id: `hole-${k}`,
      kind: 'bore',
      center: [5 + 5 * (k % 60), 5 + 5 * Math.floor(k / 60)],
      diameter: 3,
    }));
    const part = { outline: { rectangle: [305, 105] }, thickness: 4 };
    const sheets = drawSheets(examine(parseJob({ edgebite: 1, name: 'Grater', units: 'mm', part, cuts })));
    const told = sheets.map((svg) => letteringOf(svg).filter(({ text }) => /left out: read/.test(text)));
    expect(told.map(({ length }) => length)).toEqual(sheets.map((_, k) => (k === sheets.length - 1 ? 1 : 0)));
    expect(told.at(-1)?.[0]?.text).toMatch(/^\d+ more sheets are left out: read the rest in the report\.$/);
  });
});

describe('the check itself', () => {
  const svg = draw(exampleReport('saddle-block'));

  it('sees words moved over others, and off the sheet', () => {
    const words = letteringOf(svg).find(({ text }) => text === 'KEPT');
    if (words === undefined) throw new Error('the kept piece is named');
    const twice = svg.replace('</svg>', `${/<text[^>]*>KEPT<\/text>/.exec(svg)?.[0]}</svg>`);
    expect(overlaps(letteringOf(twice)).map(([a, b]) => [a.text, b.text])).toEqual([['KEPT', 'KEPT']]);
    const away = svg.replace(/<text [^>]*>KEPT</, '<text x="296" y="50" font-size="3">KEPT<');
    expect(letteringFaults(away)).toEqual(['"KEPT" leaves the sheet']);
  });

  it('sees a piece of another size, and a finding without its mark', () => {
    const report = exampleReport('saddle-block');
    const [kept, ...rest] = report.pieces;
    if (kept === undefined) throw new Error('something is kept');
    const other: Report = { ...report, pieces: [{ ...kept, area: kept.area * (1 + 2e-6) }, ...rest] };
    expect(faultsOf(svg, other)).toEqual([expect.stringMatching(/^kept: /)]);
    const bare = svg.replaceAll('data-about="finding:0"', '');
    expect(faultsOf(bare, report)).toEqual([expect.stringMatching(/^finding 0, .* has no mark$/)]);
  });
});

describe('the steps', () => {
  const texts = (svg: string): string[] => letteringOf(svg).map(({ text }) => text);

  it('have a picture each, in their order, with numbers, setups and how the part lies', () => {
    const svg = draw(exampleReport('treadle-bracket-inch'), { sheet: 'A3' });
    const steps = [...svg.matchAll(/ id="edgebite-step-(\d+)"/g)].map(([, step]) => step);
    expect(steps).toEqual(['0', '1', '2']);
    expect(texts(svg)).toEqual(
      expect.arrayContaining([
        '1 shaft',
        '2 cord',
        '3 seat',
        'turned over about y',
        'slug-1 lets go at 0.5 deep',
      ]),
    );
  });

  it('that have no frame are named, and those where something comes loose or lies in the way have one', () => {
    const report = exampleReport('saddle-block');
    const svg = draw(report, { upright: true });
    const left = texts(svg).find((text) => text.startsWith('no frame: ')) ?? '';
    const framed = [...svg.matchAll(/ id="edgebite-step-(\d+)"/g)].map(([, step]) => Number(step));
    report.steps.forEach(({ frees, meets }, i) => {
      if (frees.length > 0 || meets.length > 0) expect(framed).toContain(i);
    });
    for (const { id } of report.cuts) {
      const named = texts(svg).some((text) => new RegExp(`^\\d+(–\\d+)? .*\\b${id}`).test(text));
      expect(named || left.includes(id)).toBe(true);
    }
  });

  it('show what stands after the first cut, at the scale of what stands after the others', () => {
    const svg = draw(exampleReport('row-of-bites'), { sheet: 'A3' });
    const area = (step: number): number => {
      const [, own = ''] = svg.split(`id="edgebite-step-${step}-metal"`);
      const [, d] = /<path d="([^"]*)"[^>]*data-role="kept"/.exec(own) ?? [];
      return -pathArea(d ?? '');
    };
    // A circle of 14 whose centre lies 2 in from the edge: less the segment beyond it (Machinery's Handbook, circle segments).
    const segment = 49 * Math.acos(2 / 7) - 2 * Math.sqrt(45);
    const bite = Math.PI * 49 - segment;
    expect(area(1) / area(0)).toBeCloseTo((120 * 24 - 2 * bite) / (120 * 24 - bite), 4);
  });
});

describe('how cuts are made', () => {
  const report = examine(parseJob(WORKED));
  const svg = draw(report);

  it('is drawn where the report says it: passes with their bites, the path of the tool with its leads', () => {
    const passes = report.cuts[0]?.passes?.list ?? [];
    expect(passes.length).toBeGreaterThan(2);
    expect(svg.match(/ data-pass="\d+"/g)).toHaveLength(passes.length - 1);
    const words = letteringOf(svg).map(({ text }) => text);
    passes.forEach((pass) => {
      expect(words).toContain(pass.bite === null ? 'none' : pass.bite.size.toFixed(3));
    });
    expect(svg).toContain('data-path="tool-centre"');
    expect(faultsOf(svg, report)).toEqual([]);
  });
});

describe('what is drawn is safe to put in a page', () => {
  const HOSTILE = '"><script>alert(1)</script>&amp;<!--]]>\'';

  it('keeps hostile names as text, in the sheet and in the view', () => {
    const job = {
      edgebite: 1,
      name: HOSTILE,
      units: 'mm',
      part: { outline: { rectangle: [60, 30] }, thickness: 5, material: 'brass' },
      cuts: [
        { id: `a${HOSTILE}`, kind: 'annular', center: [60, 15], diameter: 20, wall: 3 },
        { id: `b${HOSTILE}`, kind: 'bore', center: [20, 25.4], diameter: 8, depth: 2 },
      ],
    };
    const report = examine(parseJob(job));
    for (const svg of [draw(report), drawView(report)]) {
      new Resvg(svg, { font: { loadSystemFonts: false } });
      expect(svg).not.toMatch(/<script|<!--|<style|<image|<foreignObject| on\w+=| href=/);
      expect(svg.replace('http://www.w3.org/2000/svg', '')).not.toMatch(/https?:/);
      expect(svg.match(/<svg/g)).toHaveLength(1);
    }
  });
});
