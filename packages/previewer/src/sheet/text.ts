import { clean, numberText } from '@edgebite/svg';
import { tableText } from '../columns/table.js';
import { shownText } from '../step/readout.js';
import { fixedTable, inPage, PAGE, paragraph } from './fit.js';
import { partDepth, partNumber, partWords } from './parts.js';
import { rowsOf, type SheetRow } from './rows.js';
import type { Sheet, SheetBlock, SheetPart, SheetPartRow, SheetStep } from './sheet.js';
import { offText, overStep, overTexts } from './words.js';

/** A sheet as plain text of 80 columns, for a terminal or a printer. The same sheet gives the same text. */
export function sheetText(sheet: Sheet): string {
  return `${[
    paragraph('', sheet.name),
    paragraph('', sheet.facts.join('; ')),
    '',
    ...sheet.blocks.flatMap((block) => [...blockText(sheet, block), '']),
    paragraph('', sheet.standing),
  ].join('\n')}\n`;
}

function blockText(sheet: Sheet, block: SheetBlock): string[] {
  return [
    '='.repeat(PAGE),
    paragraph('', block.title),
    paragraph('', block.lies),
    ...block.zero.flatMap(({ axis, result, links }) => [
      paragraph(`Zero ${axis.toUpperCase()}: `, result),
      ...links.map((link, k) => paragraph(`  ${k + 1}. `, link)),
    ]),
    '',
    ...(block.steps.length === 0 ? ['No cut to make here.'] : stepsText(sheet, block)),
    '',
    ...block.trials.flatMap(trialText),
    ...block.parts.flatMap((part) => [...partText(part, block), '']),
    'Comes off',
    ...block.falls.map((line) => paragraph('  - ', line)),
    ...(block.measure.length === 0
      ? []
      : ['Measure, with the spindle stopped', ...block.measure.map((line) => paragraph('  - ', line))]),
    ...(block.finish.length === 0
      ? []
      : ['Free, break and deburr', ...block.finish.map((line) => paragraph('  - ', line))]),
    'Watch',
    ...(block.watch.length === 0
      ? ['  - nothing found']
      : block.watch.map((line) => paragraph('  - ', line))),
  ];
}

function trialText({ cut, lines, heads, rows }: SheetBlock['trials'][number]): string[] {
  const table = tableText<readonly string[]>(
    heads.map((head, k) => ({ head, align: 'right', cell: (row) => row[k] as string })),
    rows,
  );
  return [
    `Trial cut of ${clean(cut)}`,
    ...lines.map((line) => paragraph('  - ', line)),
    ...table.split('\n').map((line) => `    ${line}`),
    '',
  ];
}

function partText({ name, measured, depths, rows }: SheetPart, block: SheetBlock): string[] {
  const unit = block.units === 'mm' ? 'mm' : 'in';
  const isDeep = rows.some(({ depth }) => depth !== null);
  const columns = inPage<SheetPartRow>(
    [
      { head: 'No.', align: 'right', cell: partNumber },
      { head: 'cut', align: 'left', cell: partWords },
      { head: `X ${unit}`, align: 'right', cell: ({ target }) => shownText(target[0], block) },
      { head: `Y ${unit}`, align: 'right', cell: ({ target }) => shownText(target[1], block) },
      ...(isDeep
        ? [
            {
              head: depths.head,
              align: 'right' as const,
              cell: (row: SheetPartRow) => partDepth(row, depths),
            },
          ]
        : []),
    ],
    'cut',
    rows,
  );
  return [paragraph('', `Part ${name}: ${measured}`), ...fixedTable(columns, rows).split('\n')];
}

/** A row, with the step that it is of. */
interface StepRow extends SheetRow {
  readonly step: SheetStep;
}

function stepsText(sheet: Sheet, block: SheetBlock): string[] {
  const unit = block.units === 'mm' ? 'mm' : 'in';
  const rows = block.steps.map((step) =>
    rowsOf(step, block, sheet).map((row): StepRow => ({ ...row, step })),
  );
  const columns = inPage<StepRow>(
    [
      { head: 'No.', align: 'right', cell: ({ number }) => number },
      { head: 'cut', align: 'left', cell: cutText },
      { head: `X ${unit}`, align: 'right', cell: ({ stand }) => shownText(stand.target[0], block) },
      { head: `Y ${unit}`, align: 'right', cell: ({ stand }) => shownText(stand.target[1], block) },
      { head: 'to ±', align: 'right', cell: ({ stand }) => offText(stand, block) },
      { head: 'size', align: 'right', cell: ({ step }) => numberText(step.diameter, sheet.units) },
      { head: 'depth', align: 'left', cell: ({ depth }) => depth },
    ],
    'cut',
    rows.flat(),
  );
  const [heads = ''] = fixedTable(columns, []).split('\n');
  return [
    ...overTexts(block).map((text) => paragraph('', text)),
    heads,
    ...block.steps.flatMap((step, k) => [
      ...overStep(block.steps, k).map((text) => paragraph('     > ', text)),
      ...fixedTable(columns, rows[k] as StepRow[])
        .split('\n')
        .slice(1),
      ...step.tells.map((text) => paragraph('     . ', text)),
    ]),
  ];
}

function cutText({ step, words }: StepRow): string {
  return words === '' ? step.cut : `${step.cut}, ${words}`;
}
