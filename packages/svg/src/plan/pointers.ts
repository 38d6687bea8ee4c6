import { knifeMarks, type Report, webMarks } from '@edgebite/core';
import { arrowhead, type Label } from '../pen/label.js';
import { lined, NARROW } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import { angleText, dimensionText, numberText, toMicron } from '../pen/numbers.js';
import type { Theme } from '../pen/theme.js';
import { roleText } from '../pen/words.js';
import type { Place } from '../view/edges.js';
import { placeInside } from '../view/scan.js';
import { onSheet, type View } from '../view/view.js';
import { ownerOf } from './owner.js';

/** A web thinner than this on the sheet, mm, is ringed: two arrowheads would be one blot. */
const THINNEST_SHOWN = 0.3;

/** Draws two arrowheads at every web, one against each face, and returns a label for each with its thickness. */
export function drawWebs(parent: SvgNode, report: Report, view: View, theme: Theme): readonly Label[] {
  return webMarks(report).map(({ id, web, members }): Label => {
    const at = onSheet(view, web.at);
    const about = members.map((member) => `web:${member}`);
    const group = parent.group().attr({ 'data-mark': id, 'data-about': about[0] });
    drawNeck(group, onSheet(view, web.ends[0]), onSheet(view, web.ends[1]));
    const more = webLines(web, report);
    return { text: id, more, at, end: 'none', about, colour: theme.warning };
  });
}

/** Two arrowheads against the faces of a neck; a ring round one too thin for them. */
export function drawNeck(group: SvgNode, a: Place, b: Place): void {
  if (Math.hypot(a[0] - b[0], a[1] - b[1]) < THINNEST_SHOWN) {
    lined(group.circle(2), NARROW).attr({ cx: (a[0] + b[0]) / 2, cy: (a[1] + b[1]) / 2 });
    return;
  }
  arrowhead(group, a, [2 * a[0] - b[0], 2 * a[1] - b[1]]);
  arrowhead(group, b, [2 * b[0] - a[0], 2 * b[1] - a[1]]);
}

/** A web's thickness, `touch` for one without any, and between what it can lie if that is known: `1.200`, `1.080 to 1.320`. */
export function webLines(
  { thickness, interval }: Report['webs'][number],
  { units }: Report,
): readonly string[] {
  // The boundary touches itself there: no metal at all is as little as can be told, and no rounding of it.
  const own = thickness === 0 ? 'touch' : numberText(thickness, units);
  return withInterval(own, interval, (n) => numberText(n, units));
}

/** A knife edge's angle, between what it can lie if that is known, and its piece: `28.4°`, `27.9° to 28.9°`, `on SLUG 1`. */
export function knifeLines(report: Report, knifeEdge: Report['knifeEdges'][number]): readonly string[] {
  const { angle, interval } = knifeEdge;
  const text = (degrees: number): string => `${angleText(degrees)}°`;
  const owner = ownerOf(report, knifeEdge);
  return [...withInterval(text(angle), interval, text), ...(owner === null ? [] : [`on ${owner}`])];
}

function withInterval(
  text: string,
  interval: Report['webs'][number]['interval'],
  shown: (value: number) => string,
): readonly string[] {
  return interval === null ? [text] : [text, `${shown(interval.worst[0])} to ${shown(interval.worst[1])}`];
}

/** A label for every knife edge, with its angle and an arrow at its tip. */
export function drawKnives(parent: SvgNode, report: Report, view: View, theme: Theme): readonly Label[] {
  return knifeMarks(report).map(({ id, knifeEdge, members }): Label => {
    const at = onSheet(view, knifeEdge.at);
    const about = members.map((member) => `knifeEdge:${member}`);
    // A dot at the tip, so that it has a mark even where there is no room for its label.
    parent
      .circle(1)
      .attr({ cx: toMicron(at[0]), cy: toMicron(at[1]), 'data-mark': id, 'data-about': about[0] });
    return { text: id, more: knifeLines(report, knifeEdge), at, end: 'arrow', about, colour: theme.warning };
  });
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
    const about = [`piece:${piece.id}`];
    const label = { text: piece.label, at: onSheet(view, inside), end: 'dot', about } as const;
    return [role === piece.label.toLowerCase() ? label : { ...label, more: [role] }];
  });
}
