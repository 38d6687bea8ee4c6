import { numberText } from '@edgebite/svg';
import { fixedTable, inPage, PAGE, paragraph } from './fit.js';
import type { Sheet, SheetBlock, SheetStep } from './model.js';
import { arcNote, betweenText, depthText, newRunning, offText, targetText, whichText } from './words.js';

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
    'Comes off',
    ...block.falls.map((line) => paragraph('  - ', line)),
    'Watch',
    ...(block.watch.length === 0
      ? ['  - nothing found']
      : block.watch.map((line) => paragraph('  - ', line))),
  ];
}

function stepsText(sheet: Sheet, block: SheetBlock): string[] {
  const unit = block.units === 'mm' ? 'mm' : 'in';
  const columns = inPage<SheetStep>(
    [
      { head: 'No.', align: 'right', cell: ({ number }) => String(number) },
      { head: 'cut', align: 'left', cell: (step) => cutText(step, block, sheet) },
      { head: `X ${unit}`, align: 'right', cell: ({ target }) => targetText(target[0], block) },
      { head: `Y ${unit}`, align: 'right', cell: ({ target }) => targetText(target[1], block) },
      { head: 'to ±', align: 'right', cell: (step) => offText(step, block) },
      { head: 'size', align: 'right', cell: ({ diameter }) => numberText(diameter, sheet.units) },
      { head: 'depth', align: 'left', cell: (step) => depthText(step, block, sheet) },
    ],
    'cut',
    block.steps,
  );
  const [head = '', ...rows] = block.steps.flatMap((step, k) => {
    const [heads = '', ...row] = fixedTable(columns, [step]).split('\n');
    const over = [newRunning(block.steps, k), arcNote(block.steps, k)].filter((text) => text !== null);
    const lines = [...over.map((text) => paragraph('     > ', text)), ...row];
    return k === 0 ? [heads, ...lines] : lines;
  });
  return [paragraph('', betweenText(block)), head, ...rows];
}

function cutText(step: SheetStep, block: SheetBlock, sheet: Sheet): string {
  const which = whichText(step, block, sheet);
  return which === '' ? step.cut : `${step.cut}, ${which}`;
}
