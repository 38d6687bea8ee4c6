import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { columnsOf, fitted, PAGE } from '../../packages/previewer/src/sheet/fit.js';
import { sheetOf } from '../../packages/previewer/src/sheet/model.js';
import { sheetText } from '../../packages/previewer/src/sheet/text.js';
import { shownText } from '../../packages/previewer/src/step/readout.js';
import { sheetReports } from './hard-jobs.js';

describe.each(sheetReports())('the text sheet of %s', (_, report) => {
  const sheet = sheetOf(report);
  const text = sheetText(sheet);

  it('keeps to 80 columns, without idle spaces or control characters', () => {
    for (const line of text.split('\n')) {
      expect(columnsOf(line), line).toBeLessThanOrEqual(PAGE);
      expect(line).toBe(line.trimEnd());
    }
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for.
    expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e]/);
    expect(text).not.toMatch(/NaN|Infinity|undefined|null/);
  });

  it('has every target whole, on one line', () => {
    const targets = sheet.blocks.flatMap((block) =>
      block.steps.flatMap(({ stands }) => stands.map(({ target }) => ({ block, target }))),
    );
    expect(targets.length).toBe(report.steps.flatMap(({ stands }) => stands).length);
    for (const { block, target } of targets)
      for (const value of target)
        expect(text).toMatch(new RegExp(`(^| )${shownText(value, block)}( |$)`, 'm'));
  });

  it('has the steps in their order, a block for those that follow each other in one setup', () => {
    const setups = report.steps.map(({ setup }) => setup);
    const runs = setups.filter((setup, k) => setup !== setups[k - 1]);
    expect(sheet.blocks.map(({ setup }) => setup)).toEqual(runs.length === 0 ? ['as drawn'] : runs);
    const numbers = sheet.blocks.flatMap(({ steps }) => steps.map(({ number }) => number));
    expect(numbers).toEqual(report.steps.map((_, k) => k + 1));
  });

  it('goes to every cut', () => {
    const gone = new Set(sheet.blocks.flatMap(({ steps }) => steps.map(({ cut }) => cut)));
    expect([...gone].sort()).toEqual(report.cuts.map(({ id }) => id).sort());
  });
});

describe('the sheet', () => {
  const reports = new Map(sheetReports());

  it('shows the targets of the setups as the report has them', () => {
    const report = reports.get('saddle-block.json');
    if (report === undefined) throw new Error('the example is not there');
    const targets = report.setups.map((setup) => setup.targets.map(({ cut, readout }) => [cut, readout]));
    const shown = sheetOf(report).blocks.map(({ steps }) =>
      steps.flatMap(({ cut, stands }) =>
        stands.flatMap(({ what, target }) => (what === 'back off' ? [] : [[cut, target]])),
      ),
    );
    expect(shown).toEqual(targets);
  });

  it('tells what comes off and what it takes to break it', () => {
    const report = reports.get('held-slug.json');
    if (report === undefined) throw new Error('the example is not there');
    const falls = sheetOf(report).blocks.flatMap((block) => block.falls);
    expect(falls.join(' ')).toMatch(
      /held slug, stays after cut drum on a floor 3\.000 mm thick\. To shear it about/,
    );
    expect(falls.join(' ')).toContain('A saw cut through it, the part clamped, is 87.965 mm long.');
  });

  it('adds up the floors of a slug', () => {
    // A bore from below thins some of the floor, so that two floors hold one slug.
    const report = examine(
      parseJob({
        edgebite: 1,
        units: 'mm',
        part: { outline: { rectangle: [80, 40] }, thickness: 10, material: 'mild steel' },
        cuts: [
          { id: 'ring', kind: 'annular', center: [40, 20], diameter: 30, wall: 4, depth: 7 },
          { id: 'hole', kind: 'bore', center: [53, 20], diameter: 8, depth: 1, from: 'bottom' },
        ],
      }),
    );
    const held = report.floors.filter(({ holds }) => holds !== null);
    expect(held.map(({ thickness }) => Math.round(thickness)).sort()).toEqual([2, 3]);
    const [line = ''] = sheetOf(report).blocks[0]?.falls ?? [];
    expect(line).toContain('on 2 floors, 2.000 mm to 3.000 mm thick.');
    const length = held.reduce((sum, { kerfLength }) => sum + (kerfLength ?? 0), 0);
    expect(line).toContain(`A saw cut through it, the part clamped, is ${length.toFixed(3)} mm long.`);
    const least = held.reduce((sum, { breakOff }) => sum + (breakOff?.force[0] ?? 0), 0);
    expect(line).toContain(`about ${Number(least.toPrecision(2))} to `);
  });

  it('never has more lines on what to watch than fit, and says how many more there are', () => {
    for (const [, report] of reports)
      for (const { watch } of sheetOf(report).blocks) expect(watch.length).toBeLessThanOrEqual(10);
    const holes = reports.get('sixty holes');
    if (holes === undefined) throw new Error('the job is not there');
    expect(sheetOf(holes).blocks[0]?.watch.at(-1)).toMatch(/^And \d+ more things: see the report\.$/);
  });

  it('of a setup speaks of its own cuts only', () => {
    const report = reports.get('saddle-block.json');
    if (report === undefined) throw new Error('the example is not there');
    for (const [k, { watch, falls }] of sheetOf(report).blocks.entries()) {
      const others = report.setups.filter((_, s) => s !== k).flatMap(({ cuts }) => cuts);
      for (const line of [...watch, ...falls]) {
        const named = [...(line.split(':')[0]?.matchAll(/\bcuts? (.*)/gi) ?? [])].flatMap(([, ids]) =>
          (ids as string).split(/, | and /),
        );
        for (const id of others) {
          expect(named).not.toContain(id);
          expect(line).not.toMatch(new RegExp(`\\bcut ${id}\\b(?!-)`));
        }
      }
    }
  });
});

describe('depths', () => {
  const zero = (axis: 'x' | 'y') => [
    { touch: axis === 'x' ? 'left' : 'front', tip: 10, then: 'move half the tip and set 0', tolerance: 0 },
  ];
  const sides = (flip: object) =>
    sheetText(
      sheetOf(
        examine(
          parseJob({
            edgebite: 1,
            units: 'mm',
            part: { outline: { rectangle: [80, 40] }, thickness: 10 },
            cuts: [
              { id: 'over', kind: 'bore', center: [20, 20], diameter: 8, depth: 3 },
              { id: 'under', kind: 'bore', center: [60, 20], diameter: 8, depth: 4, from: 'bottom' },
            ],
            setups: [{ id: 'a', ...flip, zero: { x: zero('x'), y: zero('y') }, cuts: ['over', 'under'] }],
          }),
        ),
      ),
    );

  it('are from the face that lies up, as it lies', () => {
    expect(sides({})).toMatch(/over .* 3\.000\n +\. In metal/m);
    expect(sides({})).toMatch(/under .* 4\.000\n +from\n +below$/m);
    expect(sides({ flip: 'x' })).toMatch(/under .* 4\.000$/m);
    expect(sides({ flip: 'x' })).toMatch(/over .* 3\.000\n +from\n +below$/m);
  });
});

describe('fitting', () => {
  it('loses no sign, and breaks long words only', () => {
    const text = `short ${'x'.repeat(95)} 織機の部品を支える and the rest of it`;
    for (const columns of [1, 2, 7, 40, 80]) {
      const lines = fitted(text, columns);
      expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''));
      // A sign of two columns has no room in one.
      for (const line of lines) expect(columnsOf(line)).toBeLessThanOrEqual(Math.max(2, columns));
    }
    expect(fitted('as it is', 80)).toEqual(['as it is']);
  });

  // Unicode Annex 11: East Asian Wide characters take up two columns, combining marks none.
  it('counts columns as a terminal does', () => {
    expect(columnsOf('abc')).toBe(3);
    expect(columnsOf('部品')).toBe(4);
    expect(columnsOf('e\u0301')).toBe(1);
    expect(columnsOf('🧵')).toBe(2);
  });
});
