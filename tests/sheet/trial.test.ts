import { examine, parseJob } from '@edgebite/core';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { sheetCsv } from '../../packages/previewer/src/sheet/csv.js';
import { columnsOf, PAGE } from '../../packages/previewer/src/sheet/fit.js';
import { sheetHtml } from '../../packages/previewer/src/sheet/html.js';
import { sheetOf } from '../../packages/previewer/src/sheet/model.js';
import { sheetText } from '../../packages/previewer/src/sheet/text.js';

const bore = (id: string, depth: number | 'through', diameter: number) => ({
  id,
  kind: 'bore',
  center: [40, 44],
  diameter,
  depth,
});

/** A seat in two heights, the upper one cut in the same setup or in another one. */
const report = (cuts: readonly (readonly string[])[]) =>
  examine(
    parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline: { rectangle: [80, 40] }, thickness: 20 },
      tools: [
        {
          id: 'head <1>',
          kind: 'boring head',
          toolMaterial: 'HSS',
          maxSpeed: 500,
          dial: { step: 0.05, on: 'radius' },
          cuts: ['seat', 'upper'],
        },
      ],
      setups: cuts.map((own, k) => ({
        id: `s${k}`,
        turn: k * 90,
        zero: { x: [{ touch: 'left', tip: 10, reads: 0 }], y: [{ touch: 'front', tip: 10, reads: 0 }] },
        cuts: own,
      })),
      cuts: [bore('seat', 'through', 30), bore('upper', 8, 34)],
    }),
  );

describe('the trial cuts of a sheet', () => {
  it('stand in the block in which the cut is made', () => {
    const cutsOf = (cuts: readonly (readonly string[])[]) =>
      sheetOf(report(cuts)).blocks.map(({ trials }) => trials.map(({ cut }) => cut));
    expect(cutsOf([['seat', 'upper']])).toEqual([['seat', 'upper']]);
    expect(cutsOf([['seat'], ['upper']])).toEqual([['seat'], ['upper']]);
  });

  const sheet = sheetOf(report([['seat', 'upper']]));
  const trials = sheet.blocks.flatMap((block) => block.trials);

  it('are whole in the text, in 80 columns', () => {
    const text = sheetText(sheet);
    for (const line of text.split('\n')) expect(columnsOf(line), line).toBeLessThanOrEqual(PAGE);
    expect(text).toMatch(/Trial cut of seat\n {2}- Set head <1> to 29\.000 mm, 0\.500 mm short in radius/);
    for (const { rows } of trials) {
      for (const row of rows)
        expect(text).toMatch(new RegExp(`^ +${row.join(' +').replaceAll('.', '\\.')}$`, 'm'));
    }
  });

  it('are a table in the page, its texts escaped', () => {
    const html = sheetHtml(sheet);
    expect(html).toContain('<h3>Trial cut of seat</h3>');
    expect(html).toContain('Set head &lt;1&gt; to 29.000 mm');
    const tables = [...html.matchAll(/<table class="trial">[\s\S]*?<\/table>/g)].map(([text]) => text);
    expect(tables).toHaveLength(2);
    tables.forEach((table, k) => {
      const cells = [...table.matchAll(/<td class="n">(.*?)<\/td>/g)].map(([, cell]) => cell);
      expect(cells).toEqual(trials[k]?.rows.flat());
    });
  });

  it('are rows of their own in the CSV, with their cut', () => {
    const rows = parse<Record<string, string>>(sheetCsv(sheet), { columns: true, record_delimiter: '\r\n' });
    const own = rows.filter(({ row }) => row === 'trial');
    expect(own.map(({ cut }) => cut)).toEqual(
      trials.flatMap(({ cut, lines, rows: all }) => [...lines, ...all].map(() => cut)),
    );
    const [first] = trials[0]?.rows ?? [];
    expect(own[2]?.text).toContain(`reads mm ${first?.[0]}`);
    expect(own[2]?.text).toContain(`open by ${first?.[2]}`);
  });
});
