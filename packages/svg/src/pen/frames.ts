import type { Box } from '../view/view.js';
import { type Fills, fillsIn } from './fills.js';
import { lined, NARROW, tinted } from './lines.js';
import type { SvgNode } from './node.js';
import type { Pen } from './pen.js';
import { rootOf } from './root.js';
import { clean, fitted, TYPE, wrapped, write } from './text.js';

/** One picture with a name and words under it. */
export interface Frame {
  /** Of the group, after the prefix. */
  readonly id: string;
  readonly name: string;
  readonly words: string;
  /** Draws the picture in a box of the sheet. */
  readonly draw: (group: SvgNode, box: Box, fills: Fills) => void;
}

/** A drawing made of frames: in rows, as many in each as there is room for. */
export interface Frames {
  readonly title: string;
  /** What is said under the title; empty for nothing. */
  readonly under: string;
  /** For those who do not see it. */
  readonly whole: { readonly title: string; readonly description: string };
  readonly frames: readonly Frame[];
  readonly width: number;
}

/** Narrower, there is no room for a picture with its words; wider, pictures would only stand further apart. */
export const FRAMES_WIDTHS = [100, 1000] as const;

/** Room round everything and between frames, width of a frame at least, height of its picture, and of a line, mm. */
const MARGIN = 4;
const GAP = 3;
const FRAME = 55;
const PICTURE = 34;
const LINE = 3.4;

/** Room for the name of a frame before its words, mm. */
const INDENT = 8;

/** Draws frames with their words; as high as they need. */
export function drawFrames({ title, under, whole, frames, width }: Frames, pen: Pen): SvgNode {
  const across = Math.max(1, Math.floor((width - 2 * MARGIN + GAP) / (FRAME + GAP)));
  const wide = (width - 2 * MARGIN - (across - 1) * GAP) / across;
  const set = frames.map((frame) => ({
    frame,
    lines: wrapped(frame.words, wide - INDENT - 1.5, TYPE.small),
  }));
  const rows = Array.from({ length: Math.ceil(set.length / across) }, (_, k) =>
    set.slice(k * across, (k + 1) * across),
  );
  const heights = rows.map((row) => PICTURE + Math.max(...row.map(({ lines }) => lines.length)) * LINE + 1.5);
  const said = under === '' ? [] : wrapped(under, width - 2 * MARGIN, TYPE.small);
  const head = MARGIN + TYPE.title + 2 + said.length * LINE;
  const height = Math.ceil(head + heights.reduce((sum, one) => sum + one + GAP, 0) + MARGIN - GAP);
  const root = rootOf([width, height], whole, pen.prefix, pen.theme);
  root.rect(width, height).attr('fill', pen.theme.paper);
  const fills = fillsIn(root, pen);
  const y = MARGIN + TYPE.title * 0.8;
  write(root, fitted(title, width - 2 * MARGIN, TYPE.title, true), MARGIN, y, {
    size: TYPE.title,
    bold: true,
  });
  said.forEach((line, k) => {
    write(root, line, MARGIN, y + (k + 1) * LINE + 0.6, { size: TYPE.small });
  });
  let top = head;
  rows.forEach((row, r) => {
    const high = heights[r] as number;
    row.forEach(({ frame, lines }, k) => {
      const box: Box = { x: MARGIN + k * (wide + GAP), y: top, width: wide, height: high };
      drawFrame(root, frame, lines, box, pen, fills);
    });
    top += high + GAP;
  });
  return root;
}

function drawFrame(
  root: SvgNode,
  { id, name, draw }: Frame,
  lines: readonly string[],
  box: Box,
  pen: Pen,
  fills: Fills,
): void {
  const group = root.group().attr({
    id: `${pen.prefix}${id}`,
    role: 'group',
    'aria-label': clean(`${name}: ${lines.join(' ')}`),
  });
  const rim = tinted(group.group(), pen.theme.soft);
  lined(rim.rect(box.width, box.height).attr({ x: box.x, y: box.y }), NARROW * 0.6);
  draw(group, { x: box.x + 4, y: box.y + 4, width: box.width - 8, height: PICTURE - 7 }, fills);
  write(group, name, box.x + 1.5, box.y + PICTURE + LINE - 1, { size: TYPE.small, bold: true });
  lines.forEach((line, k) => {
    write(group, line, box.x + INDENT, box.y + PICTURE + (k + 1) * LINE - 1, { size: TYPE.small });
  });
}
