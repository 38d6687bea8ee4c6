import { examine, type JobDocument, parseJob, type Report, twinOf } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { ran } from '../../packages/previewer/fixtures/ran.js';
import { sheetCsv } from '../../packages/previewer/src/sheet/csv.js';
import { sheetHtml } from '../../packages/previewer/src/sheet/html.js';
import { sheetOf } from '../../packages/previewer/src/sheet/model.js';
import { sheetText } from '../../packages/previewer/src/sheet/text.js';
import { textReport } from '../../packages/previewer/src/text/report.js';
import { issuesOf } from '../jobs/issues-of.js';
import { AGAINST_STOP, BAR } from './bar.js';

/** A bar whose seats are placed from its right end, as long as it is, and whose height is measured too. */
function bar(length: number, block: number, height: number): JobDocument {
  return {
    ...BAR,
    repeat: [{ cuts: ['ring', 'seat'], row: { step: [38.1, 0], count: 4 } }],
    setups: [
      {
        ...AGAINST_STOP,
        zero: {
          x: [
            { touch: 'stop', tip: 10, reads: 0 },
            { bears: 'left', on: 'stop', block: [5, { measured: block, name: 'spacer' }] },
            { measured: length, from: 'left', to: 'right', name: 'length' },
          ],
          y: [{ touch: 'front', tip: 10, reads: 0 }],
          z: [
            { touch: 'bottom', reads: 0 },
            { measured: height, from: 'bottom', to: 'top', name: 'height' },
          ],
        },
      },
    ],
  } as JobDocument;
}

const PARTS = [
  ['No. 1', 160.02, 15.01, 12.03],
  ['No. 2', 159.87, 14.98, 11.95],
  ['No. 3', 160, 15, 12],
] as const;

const BATCH: JobDocument = {
  ...bar(160, 15, 12),
  batch: PARTS.map(([name, length, spacer, height]) => ({
    name,
    measured: [
      { name: 'length', measured: length },
      { name: 'spacer', measured: spacer },
      { name: 'height', measured: height },
    ],
  })),
};

const report = examine(parseJob(BATCH));

describe('a batch', () => {
  it('has the targets that each part has alone, to the last digit', () => {
    expect(report.batch.map(({ name }) => name)).toEqual(PARTS.map(([name]) => name));
    PARTS.forEach(([, length, spacer, height], k) => {
      const alone = examine(parseJob(bar(length, spacer, height)));
      const steps = report.batch[k]?.steps ?? [];
      expect(steps.map(({ step, cut }) => [step, cut])).toEqual(
        alone.steps.map(({ cut }, step) => [step, cut]),
      );
      const targets = steps.map((one) =>
        one.targets.filter((_, s) => alone.steps[one.step]?.stands[s]?.what !== 'back off'),
      );
      expect(targets).toEqual(alone.steps.map((step) => step.targets));
      expect(steps.map((one) => one.targets.map(({ readout }) => readout))).toEqual(
        alone.steps.map((step) => step.stands.map(({ readout }) => readout)),
      );
      const depths = alone.setups[0]?.targets.map(({ depth }) => depth);
      expect(new Set(steps.map(({ depth }) => JSON.stringify(depth)))).toEqual(
        new Set(depths?.map((depth) => JSON.stringify(depth))),
      );
    });
  });

  it('leaves the rest of the report as the job is written', () => {
    const { batch: _, ...rest } = JSON.parse(JSON.stringify(report)) as Report;
    const { batch: none, ...written } = JSON.parse(
      JSON.stringify(examine(parseJob(bar(160, 15, 12)))),
    ) as Report;
    expect(rest).toEqual(written);
    expect(none).toEqual([]);
  });

  it('goes with a twin', () => {
    const twin = twinOf(parseJob({ ...BATCH, twin: { swaps: 'left and right' } }));
    const rows = twin === null ? [] : examine(twin).batch;
    const exact = (all: Report['batch']) =>
      all.flatMap(({ steps }) => steps.flatMap(({ targets }) => targets.map((one) => one.exact)));
    exact(rows).forEach(([x, y], k) => {
      const [px, py] = exact(report.batch)[k] as readonly [number, number];
      expect(x).toBeCloseTo(-px, 9);
      expect(y).toBeCloseTo(py, 9);
    });
  });

  it('has a table for each part on the sheet, with every number of the report', () => {
    const sheet = sheetOf(report);
    const text = sheetText(sheet);
    expect(text.replaceAll(/\s+/g, ' ')).toContain('X, Y and Z of the steps are for the lengths as written.');
    for (const { name, steps } of report.batch) {
      const [, own = ''] = text.split(`Part ${name}: length`);
      const rows = own.split('\n\n')[0]?.split('\n') ?? [];
      const numbers = rows
        .map((row) => row.match(/-?\d+\.\d{3}(?= |$)/g) ?? [])
        .filter((row) => row.length === 3);
      const wanted = steps.flatMap(({ targets, depth }) =>
        targets.map(({ readout }) => [...readout, depth?.readout ?? 0].map((value) => value.toFixed(3))),
      );
      expect(numbers).toEqual(wanted);
    }
    expect(Math.max(...text.split('\n').map(({ length }) => length))).toBeLessThanOrEqual(80);
    const html = sheetHtml(sheet);
    expect(html.match(/<h3>Part /g)).toHaveLength(3);
    const csv = sheetCsv(sheet).split('\r\n');
    const stands = report.steps.flatMap((step) => step.stands).length;
    expect(csv.filter((line) => line.startsWith('part stand,'))).toHaveLength(3 * stands);
    expect(textReport(report, { all: true })).toContain('BATCH: 3, with targets of their own');
  });

  it('tells depths on the scale of a quill as that shows them', () => {
    const setups = BATCH.setups?.map((setup) => ({ ...setup, quill: { units: 'inch', graduation: 0.01 } }));
    const written = JSON.parse(JSON.stringify({ ...BATCH, setups })) as JobDocument;
    // Two units in a setup: every length has to say its own.
    for (const axis of ['x', 'y', 'z'] as const) {
      for (const action of written.setups?.[0]?.zero[axis] ?? []) {
        if (!('set' in action) && !('move' in action)) (action as { units?: string }).units = 'mm';
      }
    }
    const told = examine(parseJob(written));
    const depth = told.batch[1]?.steps[0]?.depth?.readout ?? Number.NaN;
    const [, own = ''] = sheetText(sheetOf(told)).split('Part No. 2: ');
    expect(own.split('\n')[1]).toMatch(/quill in$/);
    expect(own.split('\n')[2]).toMatch(new RegExp(` ${depth.toFixed(2)}$`));
    expect(textReport(told, { all: true })).toContain(` ${depth.toFixed(2)}\n`);
  });

  it('says in which unit each length is', async () => {
    const inch = {
      ...BATCH,
      setups: BATCH.setups?.map((setup) => JSON.parse(JSON.stringify(setup))),
    } as JobDocument;
    for (const axis of ['x', 'y', 'z'] as const) {
      for (const action of inch.setups?.[0]?.zero[axis] ?? []) {
        if (!('set' in action) && !('move' in action)) (action as { units?: string }).units = 'inch';
      }
    }
    expect(examine(parseJob(inch)).batch[0]?.measured.map(({ units }) => units)).toEqual([
      'inch',
      'inch',
      'inch',
    ]);
    const { out } = await ran(['sheet', '-'], '.', JSON.stringify(inch));
    expect(out.replaceAll(/\s+/g, ' ')).toContain(
      'Part No. 1: length 160.02 in, spacer 15.01 in, height 12.03 in',
    );
  });

  type Batch = NonNullable<JobDocument['batch']>;
  const length = { name: 'length', measured: 160 };
  it.each<[string, Batch | unknown, string]>([
    [
      'two of one name',
      [
        { name: 'a', measured: [length] },
        { name: 'a', measured: [length] },
      ],
      '/batch/1/name: is "a" like that of part 0',
    ],
    [
      'a length of no name',
      [{ name: 'a', measured: [{ ...length, name: 'lenght' }] }],
      '/batch/0/measured/0/name: is "lenght", but no measured length of a zero has that name; there is "spacer", "length" or "height"',
    ],
    [
      'a length twice',
      [{ name: 'a', measured: [length, length] }],
      '/batch/0/measured/1/name: is "length", which this part has already',
    ],
    [
      'a part without a length',
      [
        { name: 'a', measured: [length, { ...length, name: 'spacer' }] },
        { name: 'b', measured: [length] },
      ],
      '/batch/1/measured: lacks "spacer", which part "a" has',
    ],
    [
      'a part with one more',
      [
        { name: 'a', measured: [length] },
        { name: 'b', measured: [length, { ...length, name: 'spacer' }] },
      ],
      '/batch/1/measured/1/name: is "spacer", which part "a" has not',
    ],
    [
      'a length of 0',
      [{ name: 'a', measured: [{ ...length, measured: 0 }] }],
      '/batch/0/measured/0/measured: must be over 0; it is 0',
    ],
    ['no part', [], '/batch: must have at least 1 entry; it has 0'],
    [
      'too many',
      Array.from({ length: 101 }, (_, k) => ({ name: `${k}`, measured: [length] })),
      '/batch: must have at most 100 entries; it has 101',
    ],
  ])('refuses %s', (_, batch, expected) => {
    const found = issuesOf({ ...BATCH, batch }).map(({ path, message }) => `${path}: ${message}`);
    expect(found[0], found.join('\n')).toContain(expected);
  });

  it('refuses more targets than a report can hold', () => {
    const repeat = [{ cuts: ['ring', 'seat'], row: { step: [0.5, 0], count: 600 } }];
    const batch = Array.from({ length: 100 }, (_, k) => ({ name: `${k}`, measured: [length] }));
    const found = issuesOf({ ...BATCH, repeat, batch });
    expect(found.map(({ path }) => path)).toContain('/batch');
    expect(found.find(({ path }) => path === '/batch')?.message).toContain(
      'makes 120000 targets, 1200 for each part',
    );
  });
});

describe('a batch with lengths in the other unit', () => {
  it('tells each length in the unit that its action has, and moves the targets by it', () => {
    // Bars of 6.3 and 6.4 inches against a stop at the left: from the right end all lies 0.1 inch, 2.54 mm, further right.
    const units = 'mm';
    const x = [
      { touch: 'stop', tip: 10, reads: 0, units },
      { bears: 'left', on: 'stop', units, block: [5, { measured: 15, name: 'spacer', units }] },
      { measured: 6.3, units: 'inch', from: 'left', to: 'right', name: 'length' },
    ];
    const y = [{ touch: 'front', tip: 10, reads: 0, units }];
    const z = [
      { touch: 'bottom', reads: 0, units },
      { measured: 12, from: 'bottom', to: 'top', name: 'height', units },
    ];
    const names = ['short', 'long'];
    const made = examine(
      parseJob({
        ...bar(160, 15, 12),
        setups: [{ ...AGAINST_STOP, zero: { x, y, z } }],
        batch: [6.3, 6.4].map((length, k) => ({
          name: names[k],
          measured: [
            { name: 'length', measured: length },
            { name: 'spacer', measured: 15 },
            { name: 'height', measured: 12 },
          ],
        })),
      } as unknown as JobDocument),
    );
    expect(
      made.batch.map(({ measured }) => measured.map(({ name, units }) => `${name} ${units}`).sort()),
    ).toEqual([
      ['height mm', 'length inch', 'spacer mm'],
      ['height mm', 'length inch', 'spacer mm'],
    ]);
    const text = textReport(made, { all: true });
    expect(text).toContain('length 6.4 in');
    expect(text).toContain('spacer 15 mm');
    const [short, long] = made.batch.map(({ steps }) =>
      steps.map(({ targets }) => targets[0]?.exact[0] as number),
    );
    expect(short?.length).toBeGreaterThan(3);
    for (const [k, at] of (short ?? []).entries()) expect((long?.[k] as number) - at).toBeCloseTo(2.54, 9);
  });
});
