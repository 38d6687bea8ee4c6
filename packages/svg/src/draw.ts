import type { Report } from '@edgebite/core';
import { SVG, type Svg, withWindow } from '@svgdotjs/svg.js';
import { descriptionOf, titleOf } from './describe.js';
import { drawFrame } from './frame.js';
import { addHatches } from './hatch.js';
import { layOut } from './layout.js';
import { drawPlan } from './plan.js';
import { drawSection } from './section.js';
import { frameOf, type SheetSize, sheetSize } from './sheet.js';
import { drawSide } from './side.js';
import { drawTable } from './table.js';
import { clean } from './text.js';

/** How a report is drawn. */
export interface DrawOptions {
  /** Sheet of the ISO A series; `A4` without it. */
  readonly sheet?: SheetSize;
  /** Stands the sheet upright; it lies without it. */
  readonly upright?: boolean;
  /** Put before every id in the drawing, so that several can be in one page; `edgebite-` without it. */
  readonly idPrefix?: string;
}

/** What an id may start with, so that references to it need no quoting. */
const ID_PREFIX = /^[A-Za-z][A-Za-z0-9_-]*$/;

/** Sans serif faces that most machines have; nothing is fetched. */
const FACES = 'Arial, Helvetica, sans-serif';

/**
 * Draws a report into the DOM of a window and returns the SVG as text.
 * @throws RangeError if `idPrefix` is not a letter followed by letters, digits, `-` and `_`.
 */
export function drawIn(window: Window, report: Report, options: DrawOptions): string {
  const { sheet = 'A4', upright = false, idPrefix = 'edgebite-' } = options;
  if (!ID_PREFIX.test(idPrefix)) {
    throw new RangeError(
      `draw: idPrefix is ${JSON.stringify(idPrefix)}; it must be a letter, then letters, digits, - or _`,
    );
  }
  return withWindow(window, () => {
    const size = sheetSize(sheet, upright);
    const root = rootOf(size, report, idPrefix);
    const layout = layOut(report, frameOf(size), idPrefix);
    addHatches(root, idPrefix);
    root.rect(size[0], size[1]).attr('fill', '#fff');
    drawPlan(root, report, layout, idPrefix);
    drawSection(root, report, layout, idPrefix);
    drawSide(root, report, layout, idPrefix);
    for (const { table, x, y } of layout.tables) drawTable(root, table, x, y);
    drawFrame(root, report, layout, sheet, idPrefix);
    return serialized(root, window);
  });
}

// One unit of the drawing is a millimetre of the sheet, so it prints at its true scale.
function rootOf([width, height]: readonly [number, number], report: Report, prefix: string): Svg {
  const root = SVG().attr({
    width: `${width}mm`,
    height: `${height}mm`,
    viewBox: `0 0 ${width} ${height}`,
    role: 'img',
    'aria-labelledby': `${prefix}title ${prefix}description`,
    'font-family': FACES,
    fill: '#000',
  });
  // Namespaces belong to the elements; as plain attributes they would be written a second time.
  for (const name of ['xmlns', 'xmlns:xlink', 'version']) root.node.removeAttribute(name);
  root
    .element('title')
    .attr('id', `${prefix}title`)
    .words(clean(titleOf(report)));
  root
    .element('desc')
    .attr('id', `${prefix}description`)
    .words(clean(descriptionOf(report)));
  return root;
}

// In a page outerHTML follows the rules of HTML, which are not those of an SVG file.
function serialized(root: Svg, window: Window): string {
  const { XMLSerializer } = window as Window & {
    XMLSerializer?: new () => { serializeToString(node: Node): string };
  };
  return XMLSerializer === undefined ? root.svg() : new XMLSerializer().serializeToString(root.node);
}
