import type { Report, ReportCut } from '@edgebite/core';
import type { Container } from '@svgdotjs/svg.js';
import type { Hatching } from '../pen/hatch.js';
import { lined, NARROW, tinted } from '../pen/lines.js';
import { dimensionText, toMicron } from '../pen/numbers.js';
import type { Pen } from '../pen/pen.js';
import { clean, fitted, TYPE, textWidth, write } from '../pen/text.js';
import { drawCross, drawFootprints, drawKerf } from '../plan/cuts.js';
import { drawMetal, SMALL } from '../plan/metal.js';
import { drawKeepOuts, drawLoad, keepOutsFor } from '../plan/working.js';
import { middleOf, type StepBand, shownBounds } from '../sheet/layout.js';
import { targetText } from '../sheet/readouts.js';
import type { Place } from '../view/edges.js';
import { type Box, onSheet, type View } from '../view/view.js';
import { type State, stepsOf } from './states.js';

/** Room round what a frame holds, and for the lines over and under its picture, mm. */
const PAD = 1.6;
const HEAD = 7.4;
const LINE = 3.1;

/** Size of the lesser lettering, mm. */
const SMALL_TYPE = 2.5;

/** Draws the part before, after each cut that has room for a frame, and at the end; says which cuts have none. */
export function drawSteps(
  parent: Container,
  report: Report,
  { box, way, frames, most }: StepBand,
  pen: Pen,
  hatching: Hatching,
): void {
  const steps = stepsOf(report, frames);
  const group = parent.group().attr({ id: `${pen.prefix}steps`, role: 'group', 'aria-label': 'Steps' });
  const many = steps.leftOut.length > 0;
  const note = many ? LINE + 1.5 : 0;
  const count = steps.states.length;
  const length = Math.min(most, (way === 'down' ? box.height - note : box.width) / count);
  const cells = steps.states.map(
    (_, i): Box =>
      way === 'down'
        ? { ...box, y: box.y + length * i, height: length }
        : { ...box, x: box.x + length * i, width: length, height: box.height - note },
  );
  const factor = Math.min(...cells.map((cell) => factorIn(report, pictureIn(cell))));
  steps.states.forEach((state, i) => {
    drawStep(group, report, state, cells[i] as Box, factor, pen, hatching);
    if (i > 0) rule(group, cells[i] as Box, way, pen);
  });
  if (many) {
    const names = steps.leftOut.map((k) => report.cuts[k]?.id).join(', ');
    const at = box.y + box.height - 1.6;
    write(group, fitted(`no frame: ${names}`, box.width - 2 * PAD, SMALL_TYPE), box.x + PAD, at, {
      size: SMALL_TYPE,
    });
  }
  const edge = tinted(group.group(), pen.theme.soft);
  if (way === 'down')
    lined(edge.line(box.x + box.width, box.y, box.x + box.width, box.y + box.height), NARROW);
  else lined(edge.line(box.x, box.y + box.height, box.x + box.width, box.y + box.height), NARROW);
}

function rule(group: Container, { x, y, width, height }: Box, way: StepBand['way'], { theme }: Pen): void {
  const soft = tinted(group.group(), theme.soft);
  const [at, end] = way === 'down' ? [x + PAD, x + width - PAD] : [y + PAD, y + height - PAD];
  const line =
    way === 'down'
      ? soft.line(at, toMicron(y), end, toMicron(y))
      : soft.line(toMicron(x), at, toMicron(x), end);
  lined(line, NARROW * 0.6);
}

function drawStep(
  parent: Container,
  report: Report,
  state: State,
  cell: Box,
  factor: number,
  pen: Pen,
  hatching: Hatching,
): void {
  const { after, cut } = state;
  const id = `step-${after}-`;
  const group = parent.group().attr({ id: `${pen.prefix}step-${after}`, role: 'group' });
  if (cut !== null) group.attr('data-about', clean(`cut:${cut.id}`));
  const head = headOf(state);
  group.attr('aria-label', clean(head));
  const width = cell.width - 2 * PAD;
  const [left, top] = [cell.x + PAD, cell.y + PAD];
  const last = cut !== null && after === report.cuts.length ? 'final' : '';
  const second = fitted(secondLine(report, cut), width - textWidth(last, SMALL_TYPE) - 1, SMALL_TYPE);
  write(group, second, left, top + 5.4, { size: SMALL_TYPE });
  if (last !== '')
    write(group, last, left + width, top + 5.4, { size: SMALL_TYPE, anchor: 'end', bold: true });
  const outcome = outcomeOf(report, cut);
  const aside = tinted(group.group(), outcome.grave ? pen.theme.warning : pen.theme.soft);
  const style = { size: SMALL_TYPE, bold: outcome.grave, anchor: 'end' } as const;
  const wanted = textWidth(head, TYPE.small, true) + 2;
  const own = Math.min(
    textWidth(outcome.text, SMALL_TYPE, outcome.grave),
    Math.max(width - wanted, width * 0.45),
  );
  write(aside, fitted(outcome.text, own + 0.01, SMALL_TYPE, outcome.grave), left + width, top + 2.2, style);
  const name = fitted(head, width - own - 2, TYPE.small, true);
  write(group, name, left, top + 2.2, { size: TYPE.small, bold: true });

  const picture = pictureIn(cell);
  const clip = `${pen.prefix}${id}clip`;
  group
    .clip()
    .attr('id', clip)
    .rect(toMicron(picture.width), toMicron(picture.height))
    .attr({
      x: toMicron(picture.x),
      y: toMicron(picture.y),
    });
  const inside = group.group().attr('clip-path', `url(#${clip})`);
  const view: View = {
    middle: middleOf(shownBounds(report, true)),
    at: [picture.x + picture.width / 2, picture.y + picture.height / 2],
    factor,
  };
  if (cut !== null) drawKerf(inside, report, [cut], view, pen, id);
  drawMetal(inside, state.report, view, pen, hatching, SMALL, id);
  if (cut !== null) drawKeepOuts(tinted(inside.group(), pen.theme.soft), keepOutsFor(report, cut.id), view);
  if (cut !== null) drawTool(inside, report, cut, view, pen, id);
}

function drawTool(
  parent: Container,
  report: Report,
  cut: ReportCut,
  view: View,
  { theme, prefix }: Pen,
  id: string,
): void {
  const tool = tinted(parent.group(), theme.tool);
  drawFootprints(tool, report, [cut], view, `${prefix}${id}`);
  const centre: Place | undefined = cut.center ?? cut.path?.[0]?.a;
  if (centre !== undefined) drawCross(tool, onSheet(view, centre), 2.2, []);
  drawLoad(tinted(parent.group(), theme.ink), cut, view);
}

function headOf({ after, cut }: State): string {
  return cut === null ? 'before' : `${after} ${cut.id}`;
}

/** The tool and where it stands: on the readout if that is known, else from the zero of the coordinates. */
function secondLine(report: Report, cut: ReportCut | null): string {
  const length = (value: number): string => dimensionText(value, report.units);
  if (cut === null) {
    const [minX, minY, maxX, maxY] = Object.values(shownPart(report)) as [number, number, number, number];
    return `${length(maxX - minX)} × ${length(maxY - minY)} × ${length(report.thickness)}`;
  }
  const target = targetText(report, cut.id);
  const size = `\u00d8${length(cut.diameter)}`;
  if (target !== null) return `${size}  ${target}`;
  const at = cut.center ?? cut.path?.[0]?.a;
  return at === undefined ? size : `${size}  ${length(at[0])}, ${length(at[1])}`;
}

function shownPart(report: Report): { minX: number; minY: number; maxX: number; maxY: number } {
  const { minX, minY, maxX, maxY } = shownBounds({ ...report, cuts: [] });
  return { minX, minY, maxX, maxY };
}

/** What comes of a cut, in a few words: what it sets loose, else how it stands to the part. */
function outcomeOf(
  report: Report,
  cut: ReportCut | null,
): { readonly text: string; readonly grave: boolean } {
  if (cut === null) return { text: '', grave: false };
  const loose = report.pieces.filter(({ freedBy, role }) => freedBy === cut.id && role !== 'kept');
  const held = loose.every(({ role }) => role === 'held slug');
  const names = loose.map(({ label }) => label).join(', ');
  if (loose.length > 0) return { text: held ? `${names} on a floor` : `loose: ${names}`, grave: !held };
  if (cut.relation === 'clear') return { text: 'misses the part', grave: false };
  const { relation } = cut;
  return {
    text: cut.through ? relation : `${relation}, ${dimensionText(cut.depth, report.units)} deep`,
    grave: false,
  };
}

function pictureIn(cell: Box): Box {
  const height = Math.max(cell.height - 2 * PAD - HEAD, 1);
  return { x: cell.x + PAD, y: cell.y + PAD + HEAD, width: cell.width - 2 * PAD, height };
}

function factorIn(report: Report, { width, height }: Box): number {
  const { minX, minY, maxX, maxY } = shownBounds(report, true);
  return Math.min((width - 1) / (maxX - minX), (height - 1) / (maxY - minY));
}
