import { clean, numberText } from '@edgebite/svg';
import { shownText } from '../step/readout.js';
import { partDepth, partNumber, partWords } from './parts.js';
import type { BlockPictures } from './pictures.js';
import { rowsOf, type SheetRow } from './rows.js';
import type { Sheet, SheetBlock, SheetPart, SheetStep, ZeroAxis } from './sheet.js';
import { STYLE, STYLE_HASH } from './style.js';
import { offText, overStep, overTexts } from './words.js';

/**
 * A sheet as one HTML page to print on A4 or Letter: black and white, a page for each setup. It holds no script and
 * loads nothing; a policy in it forbids both. All text is escaped.
 * @param pictures of the blocks, in their order; without them it has words and numbers alone
 */
export function sheetHtml(sheet: Sheet, pictures: readonly BlockPictures[] = []): string {
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy()}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(sheet.name)}: readout sheet</title>
<style>${STYLE}</style>
</head>
<body>
${sheetBody(sheet, pictures)}
</body>
</html>
`;
}

/** What is in the body of that page. */
export function sheetBody(sheet: Sheet, pictures: readonly BlockPictures[] = []): string {
  return `<header>
<h1>${escaped(sheet.name)}</h1>
<p>${escaped(sheet.facts.join('; '))}</p>
<p class="standing">${escaped(sheet.standing)}</p>
</header>
<main>
${sheet.blocks.map((block, k) => blockHtml(sheet, block, pictures[k])).join('\n')}
</main>`;
}

/** Nothing but this one style, known by its hash (W3C Content Security Policy Level 3). */
function policy(): string {
  return `default-src 'none'; style-src 'sha256-${STYLE_HASH}'; base-uri 'none'; form-action 'none'`;
}

function blockHtml(sheet: Sheet, block: SheetBlock, pictures: BlockPictures | undefined): string {
  return `<section>
<h2>${escaped(block.title)}</h2>
${figureHtml('lies', pictures?.lies ?? null)}<p>${escaped(block.lies)}</p>
${block.zero.map(zeroHtml).join('\n')}
${figureHtml('zeros', pictures?.zero ?? null)}${block.steps.length === 0 ? '<p>No cut to make here.</p>' : tableHtml(sheet, block)}
${block.trials.map(trialHtml).join('')}${block.parts.map((part) => partHtml(part, block)).join('\n')}<h3>Comes off</h3>
<ul>${block.falls.map(itemHtml).join('')}</ul>
${measureHtml(block)}${finishHtml(block)}<h3>Watch</h3>
<ul class="watch">${(block.watch.length === 0 ? ['Nothing found.'] : block.watch).map(itemHtml).join('')}</ul>
</section>`;
}

/** A picture, which is markup of ours with all its text escaped. */
function figureHtml(kind: string, svg: string | null): string {
  return svg === null ? '' : `<figure class="${kind}">${svg}</figure>\n`;
}

function measureHtml({ measure }: SheetBlock): string {
  if (measure.length === 0) return '';
  return `<h3>Measure, with the spindle stopped</h3>
<ul>${measure.map(itemHtml).join('')}</ul>
`;
}

function finishHtml({ finish }: SheetBlock): string {
  if (finish.length === 0) return '';
  return `<h3>Free, break and deburr</h3>
<ul>${finish.map(itemHtml).join('')}</ul>
`;
}

function trialHtml({ cut, lines, heads, rows }: SheetBlock['trials'][number]): string {
  const cells = (tag: string, texts: readonly string[]) =>
    `<tr>${texts.map((text) => `<${tag} class="n">${escaped(text)}</${tag}>`).join('')}</tr>`;
  return `<h3>Trial cut of ${escaped(cut)}</h3>
<ul>${lines.map(itemHtml).join('')}</ul>
<table class="trial">
<thead>${cells('th', heads)}</thead>
<tbody>${rows.map((row) => cells('td', row)).join('')}</tbody>
</table>
`;
}

function zeroHtml({ axis, result, links }: ZeroAxis): string {
  const list = links.length === 0 ? '' : `<ol>${links.map(itemHtml).join('')}</ol>`;
  return `<h3>Zero ${axis.toUpperCase()}: ${escaped(result)}</h3>${list}`;
}

function itemHtml(text: string): string {
  return `<li>${escaped(text)}</li>`;
}

function tableHtml(sheet: Sheet, block: SheetBlock): string {
  const unit = block.units === 'mm' ? 'mm' : 'in';
  const head = [
    ['no', 'No.'],
    ['cut', 'Cut'],
    ['target', `X ${unit}`],
    ['target', `Y ${unit}`],
    ['off', 'to ±'],
    ['size', 'Size'],
    ['depth', 'Depth'],
    ['done', '✓'],
  ]
    .map(([name, text]) => `<th scope="col" class="${name}">${text}</th>`)
    .join('');
  return `${overTexts(block)
    .map((text) => `<p>${escaped(text)}</p>`)
    .join('\n')}
<table>
<thead><tr>${head}</tr></thead>
${block.steps.map((step, k) => stepHtml(sheet, block, step, k)).join('\n')}
</table>`;
}

/** A step is a body of its own, which a page break spares where it can. */
function stepHtml(sheet: Sheet, block: SheetBlock, step: SheetStep, k: number): string {
  const line = (name: string) => (text: string) =>
    `<tr class="${name}"><td colspan="8">${escaped(text)}</td></tr>`;
  return `<tbody>
${[
  ...overStep(block.steps, k).map(line('tool')),
  ...rowsOf(step, block, sheet).map((row) => rowHtml(sheet, block, step, row)),
  ...step.tells.map(line('tell')),
].join('\n')}
</tbody>`;
}

/** The table of a part of a batch: the numbers to go by, and nothing else. */
function partHtml({ name, measured, depths, rows }: SheetPart, block: SheetBlock): string {
  const unit = block.units === 'mm' ? 'mm' : 'in';
  const isDeep = rows.some(({ depth }) => depth !== null);
  const heads = [
    ['no', 'No.'],
    ['cut', 'Cut'],
    ...[`X ${unit}`, `Y ${unit}`, ...(isDeep ? [depths.head] : [])].map((text) => ['target', text]),
    ['done', '✓'],
  ];
  const body = rows.map((row) => {
    const shown = row.target.map((value) => shownText(value, block));
    const numbers = [...shown, ...(isDeep ? [partDepth(row, depths)] : [])].map(targetHtml);
    return `<tr><td class="n">${partNumber(row)}</td><td class="c">${escaped(partWords(row))}</td>${numbers.join('')}<td></td></tr>`;
  });
  return `<h3>Part ${escaped(name)}: ${escaped(measured)}</h3>
<table>
<thead><tr>${heads.map(([kind, text]) => `<th scope="col" class="${kind}">${text}</th>`).join('')}</tr></thead>
<tbody>
${body.join('\n')}
</tbody>
</table>`;
}

function targetHtml(text: string): string {
  return `<td class="t${lengthClass(text)}">${text}</td>`;
}

function rowHtml(sheet: Sheet, block: SheetBlock, step: SheetStep, row: SheetRow): string {
  const { number, words, stand, depth } = row;
  const cut = `${escaped(step.cut)}${words === '' ? '' : ` <span>${escaped(words)}</span>`}`;
  const target = (value: number) => targetHtml(shownText(value, block));
  return `<tr><td class="n">${number}</td><td class="c">${cut}</td>${target(stand.target[0])}${target(
    stand.target[1],
  )}${cellHtml('n', offText(stand, block))}${cellHtml('n', numberText(step.diameter, sheet.units))}${cellHtml(
    'd',
    depth,
  )}<td></td></tr>`;
}

/** Signs of a word that fit in the narrower columns in ordinary type. */
const NARROW_FITS = 8;

function cellHtml(name: string, text: string): string {
  const isLong = text.split(' ').some((word) => word.length > NARROW_FITS);
  return `<td class="${name}${isLong ? ' small' : ''}">${escaped(text)}</td>`;
}

/** Signs of a target that fit in its column in the largest type, and in the middle one. */
const FITS = { large: 9, middle: 12 } as const;

function lengthClass(text: string): string {
  if (text.length <= FITS.large) return '';
  return text.length <= FITS.middle ? ' long' : ' longer';
}

/** Text that HTML may hold between tags and in quoted attributes. */
function escaped(text: string): string {
  const signs: Readonly<Record<string, string>> = {
    '&': '&amp;',
    '<': '&lt;',
    '>': '&gt;',
    '"': '&quot;',
    "'": '&#39;',
  };
  return clean(text).replace(/[&<>"']/g, (sign) => signs[sign] as string);
}
