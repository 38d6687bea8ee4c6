import { clean } from '@edgebite/svg';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CSV_COLUMNS, sheetCsv } from '../../packages/previewer/src/sheet/csv.js';
import { sheetOf } from '../../packages/previewer/src/sheet/model.js';
import type { Sheet } from '../../packages/previewer/src/sheet/sheet.js';
import { runs } from '../tools/runs.js';
import { sheetReports } from './hard-jobs.js';

type Row = Readonly<Record<(typeof CSV_COLUMNS)[number], string>>;

/** Read by another parser, strictly: every row has all columns, quotes are where RFC 4180 has them. */
function read(csv: string): Row[] {
  return parse(csv, { columns: true, record_delimiter: '\r\n', relax_quotes: false, trim: false });
}

/** A text as it is shown, before the apostrophe that keeps it from being a formula. */
const plain = (text: string) => text.replace(/^'/, '');

describe.each(sheetReports())('the CSV of %s', (_, report) => {
  const sheet = sheetOf(report);
  const rows = read(sheetCsv(sheet));
  const number = (text: string) => (text === '' ? null : Number(text));

  it('gives every number of every stand back to the last bit', () => {
    const read = rows.filter(({ row }) => row === 'stand');
    const stands = sheet.blocks.flatMap((block, k) =>
      block.steps.flatMap((step) => step.stands.map((stand, s) => ({ block, k, step, stand, s }))),
    );
    expect(read).toHaveLength(stands.length);
    stands.forEach(({ block, k, step, stand, s }, i) => {
      const row = read[i] as Row;
      expect([row.block, plain(row.setup), row.step, row.stand]).toEqual([
        String(k + 1),
        block.setup,
        String(step.number),
        String(s + 1),
      ]);
      expect([row.what, row.lifted]).toEqual([stand.what, stand.lifted ? 'yes' : 'no']);
      expect([number(row.x), number(row.y)]).toEqual(stand.target);
      expect([number(row.off_x), number(row.off_y)]).toEqual(stand.off ?? [null, null]);
      const { arc } = stand;
      expect([number(row.arc_x), number(row.arc_y)]).toEqual(arc?.center ?? [null, null]);
      expect([number(row.arc_radius), row.arc_sense]).toEqual([arc?.radius ?? null, arc?.sense ?? '']);
      expect([number(row.pass), number(row.passes)]).toEqual([
        step.pass?.number ?? null,
        step.pass?.count ?? null,
      ]);
      expect([number(row.diameter), number(row.depth)]).toEqual([step.diameter, step.depth]);
      const { running } = step;
      expect([number(row.turns_per_minute_from), number(row.turns_per_minute_to)]).toEqual(
        running?.set ?? [null, null],
      );
      expect([number(row.feed_from), number(row.feed_to)]).toEqual(running?.feed ?? [null, null]);
      expect([number(row.minutes_from), number(row.minutes_to)]).toEqual(step.minutes ?? [null, null]);
      expect([plain(row.cut), plain(row.tool)]).toEqual([step.cut, running?.tool ?? ''].map(clean));
    });
  });

  it('gives what to do and to know of each step, with its number', () => {
    const told = (name: string) =>
      rows.flatMap(({ row, step, text }) => (row === name ? [[Number(step), plain(text)]] : []));
    const steps = sheet.blocks.flatMap((block) => block.steps);
    expect(told('first')).toEqual(
      steps.flatMap((step) => step.before.map((text) => [step.number, clean(text)])),
    );
    expect(told('step')).toEqual(
      steps.flatMap((step) => step.tells.map((text) => [step.number, clean(text)])),
    );
  });

  it('gives every line of text back', () => {
    const texts = (name: string) => rows.filter(({ row }) => row === name).map(({ text }) => plain(text));
    expect(texts('job')).toEqual([sheet.name, ...sheet.facts].map(clean));
    expect(texts('watch')).toEqual(sheet.blocks.flatMap(({ watch }) => watch.map(clean)));
    expect(texts('comes off')).toEqual(sheet.blocks.flatMap(({ falls }) => falls.map(clean)));
    expect(texts('caution')).toEqual([sheet.standing]);
    for (const axis of ['x', 'y'] as const) {
      const zeros = sheet.blocks.flatMap(({ zero }) => zero.filter((one) => one.axis === axis));
      expect(texts(`zero ${axis}`)).toEqual(
        zeros.flatMap(({ result, links }) => [result, ...links].map(clean)),
      );
    }
  });

  it('starts no text that a spreadsheet would work out', () => {
    for (const row of rows)
      for (const text of Object.values(row)) {
        // Numbers are numbers, negative ones too.
        if (text.trim() === text && text !== '' && Number.isFinite(Number(text))) continue;
        expect(text).not.toMatch(/^\s*[=+\-@＝＋－＠]|^[\t\r\n]/);
      }
  });
});

describe('any text', () => {
  const empty: Sheet = { name: '', facts: [], units: 'mm', blocks: [], standing: '' };

  it('comes back from another parser as it is shown, but for the apostrophe', () => {
    const sign = fc.constantFrom(
      '"',
      ',',
      '\r',
      '\n',
      '=',
      '+',
      '-',
      '@',
      "'",
      ' ',
      '\t',
      'ä',
      '織',
      '🧵',
      'x',
      '1',
    );
    fc.assert(
      fc.property(fc.array(sign), fc.boolean(), (signs, whole) => {
        const name = whole ? signs.join('') : `x${signs.join('')}`;
        const rows = read(sheetCsv({ ...empty, name }));
        const text = rows[0]?.text ?? '';
        const shown = clean(name);
        const guarded = /^(?:\s*[=+\-@]|')/.test(shown);
        expect(text).toBe(guarded ? `'${shown}` : shown);
      }),
      { numRuns: runs(500) },
    );
  });

  it('is in lines that end as RFC 4180 has them', () => {
    const csv = sheetCsv({ ...empty, name: 'plain' });
    expect(csv).toBe(
      `${CSV_COLUMNS.join(',')}\r\njob${','.repeat(CSV_COLUMNS.length - 1)}plain\r\ncaution${','.repeat(CSV_COLUMNS.length - 1)}\r\n`,
    );
  });
});
