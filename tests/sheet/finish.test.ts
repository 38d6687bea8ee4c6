import { examine, parseJob } from '@edgebite/core';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { sheetCsv } from '../../packages/previewer/src/sheet/csv.js';
import { sheetHtml } from '../../packages/previewer/src/sheet/html.js';
import { sheetOf } from '../../packages/previewer/src/sheet/model.js';
import { sheetText } from '../../packages/previewer/src/sheet/text.js';
import { textReport } from '../../packages/previewer/src/text/report.js';

const zero = { x: [{ touch: 'left', tip: 10, reads: 0 }], y: [{ touch: 'front', tip: 10, reads: 0 }] };

/** A seat of radius 15 whose centre lies 12 under the back edge: its horns have acos(12 / 15) = 36.9 degrees. */
const overhung = () =>
  examine(
    parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline: { rectangle: [80, 40] }, thickness: 10 },
      limits: { knifeEdge: 50 },
      setups: [
        { id: 'one', zero, cuts: ['seat'] },
        { id: 'two', turn: 180, zero, cuts: ['hole'] },
      ],
      cuts: [
        { id: 'seat', kind: 'bore', center: [40, 28], diameter: 30 },
        { id: 'hole', kind: 'bore', center: [10, 10], diameter: 8 },
      ],
    }),
  );

describe('breaking knife edges', () => {
  it('is told of each in the text, with what its opening grows by', () => {
    const text = textReport(overhung(), { all: true }).replaceAll('\n', ' ');
    expect(text).toContain('TO BREAK knife edges');
    expect(text).toContain(
      'K1, 36.9° at (31.000, 40.000) between cut seat and the back in setup one: chamfer 1.473 off',
    );
    expect(text).toContain('The opening of seat grows there by 1.473 mm or 1.392 mm.');
  });

  it('is on the sheet in the block in which the edge is made, in text, page and CSV', () => {
    const sheet = sheetOf(overhung());
    expect(sheet.blocks.map(({ finish }) => finish.length)).toEqual([2, 0]);
    const [line = ''] = sheet.blocks[0]?.finish ?? [];
    expect(line).toMatch(/^Break K1, 36\.9° between cut seat and the back in setup one: chamfer/);
    expect(sheetText(sheet)).toContain('Free, break and deburr\n  - Break K1, 36.9°');
    expect(sheetHtml(sheet)).toContain(`<h3>Free, break and deburr</h3>\n<ul><li>${line}</li>`);
    const rows = parse<Record<string, string>>(sheetCsv(sheet), { columns: true, record_delimiter: '\r\n' });
    expect(rows.filter(({ row }) => row === 'finish').map(({ text }) => text)).toEqual(
      sheet.blocks[0]?.finish,
    );
  });

  it('keeps to a few lines', () => {
    const cuts = Array.from({ length: 8 }, (_, k) => ({
      id: `c${k}`,
      kind: 'bore',
      center: [20 + 40 * k, 28],
      diameter: 30,
    }));
    const many = examine(
      parseJob({
        edgebite: 1,
        units: 'mm',
        part: { outline: { rectangle: [400, 40] }, thickness: 10 },
        limits: { knifeEdge: 50 },
        cuts,
      }),
    );
    const [block] = sheetOf(many).blocks;
    expect(block?.finish).toHaveLength(10);
    expect(block?.finish.at(-1)).toBe('And 7 more things: see the report.');
  });
});

describe('freeing what is held', () => {
  const report = examine(
    parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline: { rectangle: [80, 40] }, thickness: 20 },
      setups: [
        { id: 'one', turn: 180, zero, cuts: ['seat'] },
        { id: 'two', zero, cuts: ['hole'] },
      ],
      cuts: [
        { id: 'seat', kind: 'annular', center: [40, 44], diameter: 30, wall: 5, reach: 17 },
        { id: 'hole', kind: 'bore', center: [10, 10], diameter: 8 },
      ],
    }),
  );

  it('has every way on the sheet where it was left so, in readout numbers and machine directions', () => {
    const [one, two] = sheetOf(report).blocks.map(({ finish }) => finish);
    expect(two).toEqual([]);
    expect(one).toHaveLength(4);
    expect(one?.[0]).toContain(
      'Free slug-1, way 1 of 4: Saw in from the front in setup one, level with the floor, 17.000 mm under',
    );
    // Turned round, the back edge lies in front: 5 for half the tip; 40 - 9.165 + 5 from the left.
    expect(one?.[0]).toContain('From X 35.835 Y 5.000 to X 54.165 Y 5.000, to the right (0°).');
    expect(one?.[0]).toContain('Leaves: the floor, 3.000 mm thick');
  });

  it('is in the text', () => {
    const text = textReport(report);
    expect(text).toContain('TO FREE what is held, the part clamped and the spindle stopped');
    expect(text).toContain('slug-1, way 4 of 4: Mill along the kerf of seat');
  });
});
