import type { Report, ReportCut } from '@edgebite/core';
import type { Label } from '../pen/label.js';
import { arrowhead } from '../pen/label.js';
import { CHAIN, HIDDEN, lined, NARROW } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import { dimensionText, toMicron } from '../pen/numbers.js';
import { chainPath, pathNumber, regionPath } from '../pen/path.js';
import type { Pen } from '../pen/pen.js';
import { clean } from '../pen/text.js';
import { depthText } from '../pen/words.js';
import type { Place } from '../view/edges.js';
import { boundsOfRegion } from '../view/scan.js';
import { type Box, holds, onSheet, type View } from '../view/view.js';
import { directionAt } from './directions.js';

/** With more cuts than this, names far from their places would hide more than they tell. */
const CROWD = 12;

/** Longest arm of a centre cross, mm. */
export const LONGEST_ARM = 9;

/** How far a centre cross goes past its circle, mm. */
const PAST = 2.5;

/** Draws what the cuts take: tinted where it lies in the part, with nothing on it where the metal is gone. */
export function drawKerf(
  parent: SvgNode,
  report: Report,
  cuts: readonly ReportCut[],
  view: View,
  { prefix, theme }: Pen,
  id = '',
): void {
  const clip = `${prefix}${id}part-clip`;
  parent.clip().attr('id', clip).path(regionPath(report.outline, view)).attr('clip-rule', 'evenodd');
  // Outer loops turn one way and holes the other, so all cuts are one path, wherever they overlap.
  const d = cuts.map((cut) => regionPath(cut.footprint, view)).join('');
  parent.path(d).attr({ fill: theme.kerf, 'clip-path': `url(#${clip})` });
}

/** Draws what each cutter covers in narrow lines: dashed where it works from below and does not come through. */
export function drawFootprints(
  parent: SvgNode,
  report: Report,
  cuts: readonly ReportCut[],
  view: View,
  prefix: string,
): void {
  const numbers = new Map(report.cuts.map((cut, k) => [cut, k]));
  cuts.forEach((cut) => {
    const id = `${prefix}cut-${numbers.get(cut)}`;
    const about = clean(`cut:${cut.id}`);
    const hidden = cut.from === 'bottom' && !cut.through;
    const rim = lined(parent.path(regionPath(cut.footprint, view)), NARROW, hidden ? HIDDEN : []);
    rim.attr({ id, 'data-about': about });
    rim.element('title').words(clean(`cut ${cut.id}: ${cut.kind}, ${depthText(cut, report.units)}`));
    if (cut.path !== null) drawPath(parent.group().attr('data-about', about), cut, view);
  });
}

/** Draws a chain-line cross at every centre in sight, and returns a label for each with the cuts that share it. */
export function drawCentres(
  parent: SvgNode,
  report: Report,
  cuts: readonly ReportCut[],
  view: View,
  plan: Box,
): readonly Label[] {
  const labels: Label[] = [];
  const crowded = cuts.length > CROWD;
  for (const centre of sharedCentres(cuts, view)) {
    const seen = holds(plan, centre.at);
    if (seen) {
      const radius = (Math.max(...centre.cuts.map((cut) => cut.diameter)) / 2) * view.factor;
      drawCross(parent, centre.at, Math.min(radius + PAST, LONGEST_ARM));
    }
    const pointed = seen ? centre.at : placeInSight(centre.cuts, view, plan);
    if (pointed === null) continue;
    labels.push({
      text: centre.cuts.map((cut) => cut.id).join(', '),
      more: sizesOf(report, centre.cuts),
      at: pointed,
      end: seen ? 'none' : 'arrow',
      near: crowded,
      about: centre.cuts.map((cut) => `cut:${cut.id}`),
    });
  }
  return labels;
}

/**
 * What stands under the name of cuts about one centre: the diameter of each, of a bore that breaks out its radius, as an arc is
 * dimensioned (ISO 129-1); and how deep the last of them bites from the face that it opens widest, and how wide.
 */
function sizesOf({ units }: Report, cuts: readonly ReportCut[]): readonly string[] {
  const number = (value: number): string => dimensionText(value, units);
  const size = ({ kind, bites, diameter }: ReportCut): string =>
    kind === 'bore' && bites.length > 0 ? `R${number(diameter / 2)}` : `\u00d8${number(diameter)}`;
  const [widest] = [...(cuts.at(-1)?.bites ?? [])].sort((a, b) => b.opening - a.opening);
  const sizes = cuts.map(size).join(', ');
  return widest === undefined
    ? [sizes]
    : [sizes, `${number(widest.depth)} deep, opens ${number(widest.opening)}`];
}

/** A cross at a centre, each arm so long, of a chain line unless it is too small for one. */
export function drawCross(parent: SvgNode, at: Place, arm: number, dashes: readonly number[] = CHAIN): void {
  const [x, y] = at;
  const ends: readonly Place[] = [
    [x + arm, y],
    [x - arm, y],
    [x, y + arm],
    [x, y - arm],
  ];
  const path = parent.path(ends.map((end) => `M${point(at)}L${point(end)}`).join(''));
  // Half a long dash out from the middle, so that the dashes of the four arms cross there.
  lined(path, NARROW, dashes);
  if (dashes.length > 0) path.attr('stroke-dashoffset', toMicron((CHAIN[0] as number) / 2));
}

/** Draws the path of a cut as a chain line with an arrowhead at its end. */
export function drawPath(parent: SvgNode, cut: ReportCut, view: View): void {
  const edges = cut.path ?? [];
  lined(parent.path(chainPath(edges, view)), NARROW, CHAIN).attr('data-path', 'tool-centre');
  const last = edges[edges.length - 1];
  if (last === undefined) return;
  const [dx, dy] = directionAt(last, 'end');
  arrowhead(parent, onSheet(view, last.b), onSheet(view, [last.b[0] + dx, last.b[1] + dy]));
}

interface Centre {
  readonly at: Place;
  readonly cuts: readonly ReportCut[];
}

// Concentric cuts share one cross; a swept cut is named where its path starts.
function sharedCentres(cuts: readonly ReportCut[], view: View): readonly Centre[] {
  const centres = new Map<string, { at: Place; cuts: ReportCut[] }>();
  for (const cut of cuts) {
    const place = cut.center ?? cut.path?.[0]?.a;
    if (place === undefined) continue;
    const at = onSheet(view, place);
    const key = at.map((n) => n.toFixed(2)).join(' ');
    const centre = centres.get(key) ?? { at, cuts: [] };
    centre.cuts.push(cut);
    centres.set(key, centre);
  }
  return [...centres.values()];
}

// A centre off the plan: its circle is named where it comes nearest to the middle of the plan, if that is in sight.
function placeInSight(cuts: readonly ReportCut[], view: View, plan: Box): Place | null {
  const cut = cuts[0];
  const box = cut === undefined ? null : boundsOfRegion(cut.footprint);
  if (cut === undefined || box === null) return null;
  const centre: Place = cut.center ?? [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
  const dx = view.middle[0] - centre[0];
  const dy = view.middle[1] - centre[1];
  const length = Math.hypot(dx, dy);
  if (length === 0) return null;
  const share = cut.diameter / 2 / length;
  const at = onSheet(view, [centre[0] + dx * share, centre[1] + dy * share]);
  return holds(plan, at) ? at : null;
}

function point([x, y]: Place): string {
  return `${pathNumber(x)} ${pathNumber(y)}`;
}
