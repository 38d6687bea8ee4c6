import type { Report, ReportPiece } from '@edgebite/core';
import type { Container } from '@svgdotjs/svg.js';
import { hatchFill } from './hatch.js';
import { DOUBLE_DASH_CHAIN, lined, NARROW, WIDE } from './lines.js';
import { regionPath } from './path.js';
import { clean } from './text.js';
import type { View } from './view.js';
import { roleText } from './words.js';

/** Draws the part as it was before the first cut: a narrow double-dash chain line. */
export function drawBefore(parent: Container, report: Report, view: View, prefix: string): void {
  const path = parent.path(regionPath(report.outline, view));
  lined(path, NARROW, DOUBLE_DASH_CHAIN).attr('id', `${prefix}before`);
}

/**
 * Draws all that is left, seen from the top. Slab after slab is painted from the bottom up, each over the last:
 * what a higher slab covers is hidden, as it is on the part.
 */
export function drawMetal(parent: Container, report: Report, view: View, prefix: string): void {
  const group = parent.group().attr('id', `${prefix}metal`);
  report.slabs.forEach((slab, s) => {
    report.pieces.forEach((piece, p) => {
      // A section that goes on in the slab above is hidden by itself up there.
      const section = piece.sections.find(({ to }) => to === slab.to);
      if (section === undefined) return;
      const d = regionPath(section.region, view);
      if (d === '' || d === pathAbove(piece, section.to, view)) return;
      const fill = hatchFill(prefix, piece.role, section.to < report.thickness);
      drawFace(group, piece, d, fill).attr('id', `${prefix}piece-${p}-slab-${s}`);
    });
  });
}

function drawFace(group: Container, piece: ReportPiece, d: string, fill: string): Container {
  const face = group.group();
  face.element('title').words(clean(`${piece.id}: ${roleText(piece.role)}`));
  face.path(d).attr({ fill: '#fff', 'fill-rule': 'evenodd' });
  lined(face.path(d), WIDE).attr({ fill, 'fill-rule': 'evenodd' });
  return face;
}

function pathAbove(piece: ReportPiece, to: number, view: View): string | null {
  const above = piece.sections.find(({ from }) => from === to);
  return above === undefined ? null : regionPath(above.region, view);
}
