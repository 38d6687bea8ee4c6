import type { Report, ReportCut, ReportKeepOut, ReportStep } from '@edgebite/core';
import { arrowhead, type Label } from '../pen/label.js';
import { CHAIN, DOUBLE_DASH_CHAIN, HIDDEN, lined, NARROW, tinted } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import { toMicron } from '../pen/numbers.js';
import { chainPath, regionPath } from '../pen/path.js';
import { clean } from '../pen/text.js';
import type { Theme } from '../pen/theme.js';
import type { Place } from '../view/edges.js';
import { placeInside } from '../view/scan.js';
import { onSheet, type View } from '../view/view.js';

/** Length of the arrow by which a tool comes off its wall, and of a full side load, mm. */
export const ARROW_LENGTH = { backOff: 6, load: 8 } as const;

/** Length of the longest tick of a bite, mm. */
export const TICK = 4;

/** Draws how the cuts are made, as far as the report says: passes, tool paths with their leads, ways off the wall. */
export function drawWorking(
  parent: SvgNode,
  report: Report,
  cuts: readonly ReportCut[],
  view: View,
  theme: Theme,
): void {
  // Of a cut with passes the last, which is at the wall that it leaves.
  const steps = new Map(report.steps.map((step) => [step.cut, step]));
  for (const cut of cuts) {
    const group = tinted(parent.group(), theme.tool).attr('data-about', clean(`cut:${cut.id}`));
    drawPasses(group, cut, view);
    drawToolPath(group, cut, view, theme);
    drawBackOff(group, steps.get(cut.id), view);
    if (group.children.length === 0) group.remove();
  }
}

/** The circle of every pass but the last, which is the cut's own, dashed; and a tick where each bites most. */
function drawPasses(group: SvgNode, { passes }: ReportCut, view: View): void {
  const list = passes?.list ?? [];
  list.forEach(({ center, diameter, bite }, i) => {
    const at = onSheet(view, center);
    if (i + 1 < list.length) {
      const circle = group
        .circle(toMicron(diameter * view.factor))
        .attr({ cx: toMicron(at[0]), cy: toMicron(at[1]) });
      lined(circle, NARROW * 0.8, HIDDEN).attr('data-pass', i + 1);
    }
    if (bite === null) return;
    const [x, y] = onSheet(view, bite.at);
    const long = Math.min(bite.size * view.factor, TICK);
    const [dx, dy] = toward([x, y], at);
    lined(group.line(toMicron(x), toMicron(y), toMicron(x + dx * long), toMicron(y + dy * long)), NARROW * 2);
  });
}

function drawToolPath(group: SvgNode, { toolPath, path }: ReportCut, view: View, theme: Theme): void {
  if (toolPath === null) return;
  for (const { leadIn, cut, leadOut } of toolPath.passes) {
    if (path === null) lined(group.path(chainPath(cut, view)), NARROW, CHAIN);
    for (const lead of [leadIn, leadOut]) {
      if (lead.length > 0) lined(group.path(chainPath(lead, view)), NARROW, HIDDEN);
    }
    const end = leadOut[leadOut.length - 1] ?? cut[cut.length - 1];
    const start = leadIn[0] ?? cut[0];
    if (start !== undefined) {
      const [x, y] = onSheet(view, start.a);
      group.circle(1.2).attr({ cx: toMicron(x), cy: toMicron(y), fill: 'currentColor' });
    }
    if (end !== undefined) arrowhead(group, onSheet(view, end.b), onSheet(view, end.a));
  }
  const left = tinted(group.group(), theme.warning);
  for (const { region } of toolPath.unreached) lined(left.path(regionPath(region, view)), NARROW * 2);
}

/** An arrow from the centre the way that the tool comes off its wall. */
function drawBackOff(group: SvgNode, step: ReportStep | undefined, view: View): void {
  if (step === undefined || step.center === null || step.backOff.drawn === null) return;
  drawArrow(group, onSheet(view, step.center), step.backOff.drawn, ARROW_LENGTH.backOff);
}

/** Draws an arrow from a place of the sheet, so many degrees counter-clockwise from the right; returns its ends. */
export function drawArrow(
  group: SvgNode,
  [x, y]: Place,
  degrees: number,
  length: number,
): readonly [Place, Place] {
  const angle = (degrees * Math.PI) / 180;
  const tip: Place = [x + length * Math.cos(angle), y - length * Math.sin(angle)];
  lined(group.line(toMicron(x), toMicron(y), toMicron(tip[0]), toMicron(tip[1])), NARROW * 1.6);
  arrowhead(group, tip, [x, y]);
  return [[x, y], tip];
}

/** Draws jaws, stops, parallels and clamps as neighbouring parts, in double-dash chain lines. */
export function drawKeepOuts(parent: SvgNode, keepOuts: readonly ReportKeepOut[], view: View): void {
  for (const { id, region } of keepOuts) {
    const path = parent.path(regionPath(region, view)).attr('data-about', clean(`keepOut:${id}`));
    lined(path, NARROW, DOUBLE_DASH_CHAIN);
  }
}

/** Those that a finding speaks of: the others would only be in the way. */
export function namedKeepOuts(report: Report): readonly ReportKeepOut[] {
  const named = new Set(report.findings.flatMap(({ about }) => about));
  return report.keepOut.filter(({ id }) => named.has(`keepOut:${id}`));
}

/** Those beside the part in a setup: what lies under it is not seen from the top. */
export function keepOutsFor(report: Report, setup: string): readonly ReportKeepOut[] {
  return report.keepOut.filter(
    ({ setup: own, kind }) => kind !== 'parallel' && (own === null || own === setup),
  );
}

/** Labels of jaws, stops, parallels and clamps. */
export function keepOutLabels(keepOuts: readonly ReportKeepOut[], view: View): readonly Label[] {
  return keepOuts.flatMap(({ id, kind, region }): readonly Label[] => {
    const about = `keepOut:${id}`;
    const inside = placeInside(region);
    if (inside === null) return [];
    return [
      { text: id, more: kind === id ? [] : [kind], at: onSheet(view, inside), end: 'dot', about: [about] },
    ];
  });
}

function toward([x, y]: Place, [tx, ty]: Place): Place {
  const length = Math.hypot(tx - x, ty - y);
  return length === 0 ? [0, 0] : [(tx - x) / length, (ty - y) / length];
}
