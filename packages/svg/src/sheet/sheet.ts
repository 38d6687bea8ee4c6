/*
 * Room: a sheet of paper: frame, layout, legend, columns, tables.
 * In: a report and a paper size.
 * Out: boxes for the pictures, and the columns of text.
 */

import type { Box } from '../view/view.js';

/** Trimmed sizes, mm: width and height of the upright sheet. Of ISO 216, and the letter of ANSI/ASME Y14.1 (8.5 by 11 inches). */
const SIZES = {
  A4: [210, 297],
  Letter: [215.9, 279.4],
  A3: [297, 420],
  A2: [420, 594],
  A1: [594, 841],
  A0: [841, 1189],
} as const;

/** A sheet of the ISO A series, or a letter sheet. */
export type SheetSize = keyof typeof SIZES;

/** All sheet sizes, smallest first. */
export const SHEET_SIZES = Object.keys(SIZES) as readonly SheetSize[];

/** Margin at the left, for filing, and at the other sides, mm (ISO 5457, from memory). */
const LEFT = 20;
const OTHER = 10;

/** Width and height of a sheet, mm; lying unless `upright`. */
export function sheetSize(size: SheetSize, upright: boolean): readonly [number, number] {
  const [width, height] = SIZES[size];
  return upright ? [width, height] : [height, width];
}

/** The frame inside a sheet's margins. */
export function frameOf([width, height]: readonly [number, number]): Box {
  return { x: LEFT, y: OTHER, width: width - LEFT - OTHER, height: height - 2 * OTHER };
}
