import type { Report } from '@edgebite/core';
import type { Container } from '@svgdotjs/svg.js';
import type { Place } from './edges.js';
import { arrowhead, type Label } from './label.js';
import { lined, NARROW } from './lines.js';
import { knifeMarks, webMarks } from './marks.js';
import { dimensionText } from './numbers.js';
import { placeInside } from './scan.js';
import { onSheet, type View } from './view.js';
import { roleText } from './words.js';

/** A web thinner than this on the sheet, mm, is ringed: two arrowheads would be one blot. */
const THINNEST_SHOWN = 0.3;

/** Draws two arrowheads at every web, one against each face, and returns a label for each. */
export function drawWebs(parent: Container, report: Report, view: View): readonly Label[] {
  return webMarks(report).map(({ id, web }): Label => {
    const at = onSheet(view, web.at);
    const [a, b] = web.ends.map((end) => onSheet(view, end)) as [Place, Place];
    const group = parent.group().attr('data-mark', id);
    if (Math.hypot(a[0] - b[0], a[1] - b[1]) < THINNEST_SHOWN) {
      lined(group.circle(2), NARROW).attr({ cx: at[0], cy: at[1] });
    } else {
      arrowhead(group, a, [2 * a[0] - b[0], 2 * a[1] - b[1]]);
      arrowhead(group, b, [2 * b[0] - a[0], 2 * b[1] - a[1]]);
    }
    return { text: id, at, end: 'none', must: true };
  });
}

/** A label for every knife edge, with an arrow at its tip. */
export function knifeLabels(report: Report, view: View): readonly Label[] {
  return knifeMarks(report).map(({ id, knifeEdge }) => ({
    text: id,
    at: onSheet(view, knifeEdge.at),
    end: 'arrow',
    must: true,
  }));
}

/** A label for every piece: its name, and what it is to the shop. */
export function pieceLabels(report: Report, view: View): readonly Label[] {
  return report.pieces.flatMap((piece): readonly Label[] => {
    const top = piece.sections[piece.sections.length - 1];
    const inside = top === undefined ? null : placeInside(top.region);
    if (inside === null) return [];
    const floor = report.floors.find(({ holds }) => holds === piece.id);
    const role =
      floor === undefined
        ? roleText(piece.role)
        : `held by a floor of ${dimensionText(floor.thickness, report.units)}`;
    const label = { text: piece.label, at: onSheet(view, inside), end: 'dot', must: true } as const;
    return [role === piece.label.toLowerCase() ? label : { ...label, more: role }];
  });
}
