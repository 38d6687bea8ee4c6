import type { Report, ReportPiece } from '@edgebite/core';
import { type Fills, shadeOf } from '../pen/fills.js';
import { DOUBLE_DASH_CHAIN, lined, NARROW, WIDE } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import { regionPath } from '../pen/path.js';
import type { Pen } from '../pen/pen.js';
import { clean } from '../pen/text.js';
import { roleText } from '../pen/words.js';
import type { View } from '../view/view.js';

/** How metal is drawn: in a small picture, or at the scale of the drawing. */
export interface MetalStyle {
  readonly small: boolean;
  /** Width of its edges, mm. */
  readonly edge: number;
}

/** Metal in the plan and in details. */
export const FULL: MetalStyle = { small: false, edge: WIDE };

/** Metal in a step's frame. */
export const SMALL: MetalStyle = { small: true, edge: 0.35 };

/** Draws the part as it was before the first cut: a narrow double-dash chain line. */
export function drawBefore(parent: SvgNode, report: Report, view: View, prefix: string): void {
  const path = parent.path(regionPath(report.outline, view));
  lined(path, NARROW, DOUBLE_DASH_CHAIN).attr('id', `${prefix}before`);
}

/**
 * Draws all that is left, seen from the top. First each piece's plan view as a whole; over it, where it is not the same
 * at all heights, slab after slab from the bottom up: what a higher slab covers is hidden, as it is on the part, and the deeper
 * a face lies the darker it is.
 */
export function drawMetal(
  parent: SvgNode,
  report: Report,
  view: View,
  pen: Pen,
  fills: Fills,
  style: MetalStyle = FULL,
  id = '',
): void {
  const group = parent.group().attr('id', `${pen.prefix}${id}metal`);
  const fillOf = (p: number): string => fills.face(report.pieces[p]?.role ?? 'kept', style.small);
  const flat = report.slabs.length === 1;
  report.pieces.forEach((piece, p) => {
    const d = regionPath(piece.view, view, decimalsFor(piece, view));
    if (d === '') return;
    const face = group.path(d).attr({ id: `${pen.prefix}${id}piece-${p}`, 'fill-rule': 'evenodd' });
    face.attr('data-about', clean(`piece:${piece.id}`));
    face.element('title').words(clean(`${piece.id}: ${roleText(piece.role)}`));
    if (flat) lined(face, style.edge).attr('fill', fillOf(p));
    else face.attr('fill', pen.theme.paper);
  });
  if (flat) return;
  report.slabs.forEach((slab, s) => {
    report.pieces.forEach((piece, p) => {
      // A section that goes on in the slab above is hidden by itself up there.
      const section = piece.sections.find(({ to }) => to === slab.to);
      const d = section === undefined ? '' : regionPath(section.region, view);
      if (d === '') return;
      const depth = (report.thickness - slab.to) / report.thickness;
      if (depth > 0) group.path(d).attr({ fill: fillOf(p), 'fill-rule': 'evenodd' });
      const face = lined(group.path(d), style.edge);
      face.attr(depth > 0 ? shadeOf(pen.theme, depth) : { fill: fillOf(p) }).attr('fill-rule', 'evenodd');
      face.attr({ id: `${pen.prefix}${id}piece-${p}-slab-${s}`, 'data-about': clean(`piece:${piece.id}`) });
    });
  });
}

/** Digits of an area that what is drawn has right, and the fewest and the most decimals of a millimetre that this takes. */
const DIGITS = 8;
const DECIMALS = { least: 4, most: 12 } as const;

/**
 * How many decimals a piece's path needs for its area to be right to so many digits: its rim moves by half of the last
 * one at most, so the area by the length of the rim times that. A thin sliver needs more than a block.
 */
function decimalsFor({ area, perimeter }: ReportPiece, { factor }: View): number {
  const needed = Math.ceil(DIGITS + Math.log10(perimeter / (area * factor)));
  return Math.min(Math.max(needed, DECIMALS.least), DECIMALS.most);
}
