import { axesOf, type Bounds, type Report, type ReportSetup } from '@edgebite/core';
import type { Fills } from '../pen/fills.js';
import { arrowhead } from '../pen/label.js';
import { HIDDEN, lined, NARROW, tinted, WIDE } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import { toMicron } from '../pen/numbers.js';
import { regionPath } from '../pen/path.js';
import type { Pen } from '../pen/pen.js';
import { haloed, TYPE, write } from '../pen/text.js';
import type { Place } from '../view/edges.js';
import type { Box, View } from '../view/view.js';
import { boxAsLies, placeOnFace, standingIn } from './where.js';
import { type Between, scenesOf, type ZeroAxis, type ZeroScene } from './zero-scene.js';

/** Share of the part's longer side that a stop takes up along its axis. */
const STOP = 0.12;

/** What a picture of an axis has to show in all of its scenes, in machine coordinates. */
function shownIn(report: Report, setup: ReportSetup, axis: ZeroAxis, scenes: readonly ZeroScene[]): Bounds {
  const box = sideBox(report, setup, axis);
  const stop = STOP * Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const along = scenes.flatMap(({ stop: one, spindle, blocks }) => [
    ...(one === null ? [] : [one.at, one.at - one.outward * stop]),
    ...(spindle === null ? [] : [spindle.at, spindle.touched?.at ?? spindle.at]).flatMap((at) => [
      at - (spindle?.across ?? 0) / 2,
      at + (spindle?.across ?? 0) / 2,
    ]),
    ...blocks.flatMap(({ from, to }) => [from, to]),
  ]);
  if (axis === 'x') {
    return { ...box, minX: Math.min(box.minX, ...along), maxX: Math.max(box.maxX, ...along) };
  }
  const shown = { ...box, minY: Math.min(box.minY, ...along), maxY: Math.max(box.maxY, ...along) };
  if (axis === 'y') return shown;
  // The tool comes from above, and what does not lie on the part is touched beside it.
  const width = box.maxX - box.minX;
  const level = levelOf(report, setup, scenes[0] as ZeroScene);
  return {
    ...shown,
    minX: box.minX - (level === null ? 0 : BESIDE * width),
    minY: Math.min(shown.minY, level?.from ?? shown.minY),
    maxY: shown.maxY + 0.6 * (box.maxY - box.minY),
  };
}

/** Share of the part's width that is shown beside it where something is touched there. */
const BESIDE = 0.25;

/** What is touched in Z beside the part, and how high it is; null where it is the part from above. */
function levelOf(
  report: Report,
  { zero }: ReportSetup,
  scene: ZeroScene,
): { readonly from: number; readonly to: number } | null {
  const of = zero.z?.links[0]?.of ?? '';
  if (of === 'top') return null;
  const known = report.keepOut.find(({ id }) => id === of);
  const face = scene.spindle?.touched?.face ?? 0;
  return { from: known?.from ?? face, to: known?.to ?? face };
}

/** The part seen from above, or in Z from the front: its width and its thickness. */
function sideBox(report: Report, setup: ReportSetup, axis: ZeroAxis): Bounds {
  const box = boxAsLies(report, setup);
  return axis === 'z' ? { ...box, minY: 0, maxY: report.thickness } : box;
}

/** Draws one scene in a box of the sheet. */
export function drawScene(
  parent: SvgNode,
  report: Report,
  setup: ReportSetup,
  scene: ZeroScene,
  {
    axis,
    scenes,
    box,
  }: { readonly axis: ZeroAxis; readonly scenes: readonly ZeroScene[]; readonly box: Box },
  pen: Pen,
  fills: Fills,
): void {
  const shown = shownIn(report, setup, axis, scenes);
  const factor = Math.min(box.width / (shown.maxX - shown.minX), box.height / (shown.maxY - shown.minY));
  const middle: Place = [(shown.minX + shown.maxX) / 2, (shown.minY + shown.maxY) / 2];
  const center: Place = [box.x + box.width / 2, box.y + box.height / 2];
  const on = ([x, y]: Place): Place => [
    center[0] + (x - middle[0]) * factor,
    center[1] - (y - middle[1]) * factor,
  ];
  const draw = { parent, scene, axis, on, factor, pen };
  const across = acrossOf(report, setup, axis, scenes);
  if (axis === 'z') drawSide(draw, report, setup, fills);
  else drawPart(draw, report, setup, fills, { middle, center });
  drawStop(draw, across, STOP * Math.max(shown.maxX - shown.minX, shown.maxY - shown.minY));
  for (const one of scene.blocks) drawBlock(draw, one, across);
  for (const one of scene.measured) drawMeasured(draw, one, shown);
  if (axis === 'z') drawTool(draw, across, shown);
  else drawTip(draw, across);
}

interface Drawing {
  readonly parent: SvgNode;
  readonly scene: ZeroScene;
  readonly axis: ZeroAxis;
  readonly on: (place: Place) => Place;
  readonly factor: number;
  readonly pen: Pen;
}

/** Where across the axis it is done: at the face that is touched or that bears, over the middle that is dialled in. */
function acrossOf(report: Report, setup: ReportSetup, axis: ZeroAxis, scenes: readonly ZeroScene[]): number {
  const box = boxAsLies(report, setup);
  const width = box.maxX - box.minX;
  const first = scenes[0] as ZeroScene;
  if (axis === 'z') {
    const isOn = levelOf(report, setup, first) === null;
    return isOn ? box.minX + width * 0.35 : box.minX - width * (BESIDE / 2);
  }
  const isDialled = (one: ZeroScene | undefined) => one?.links[0]?.kind === 'dial in';
  const [other] = isDialled(first) ? scenesOf(report, setup, axis === 'x' ? 'y' : 'x') : [];
  if (other?.spindle != null && isDialled(other)) return other.spindle.at;
  const bearing = first.stop === null ? undefined : scenes.find(({ isThere }) => isThere);
  const at = bearing?.reached.at ?? first.spindle?.touched?.face ?? first.reached.at;
  return placeOnFace(report, setup, axis, at);
}

/** A place by how far it lies along the axis and across it. */
function pointAt(axis: ZeroAxis, along: number, across: number): Place {
  return axis === 'x' ? [along, across] : [across, along];
}

function drawPart(
  { parent, scene, factor, pen }: Drawing,
  report: Report,
  setup: ReportSetup,
  fills: Fills,
  { middle, center }: { readonly middle: Place; readonly center: Place },
): void {
  const axes = axesOf(setup);
  // The middle of the picture as a place of the drawing.
  const [u, v] = middle;
  const drawn: Place = [axes.x.dx * u + axes.y.dx * v, axes.x.dy * u + axes.y.dy * v];
  const view: View = { middle: drawn, at: center, factor, axes };
  if (!scene.isThere) {
    const ghost = tinted(parent.group(), pen.theme.soft).attr('data-role', 'part to come');
    lined(ghost.path(regionPath(report.outline, view)), NARROW, HIDDEN);
    return;
  }
  for (const region of standingIn(report, setup)) {
    const path = lined(parent.path(regionPath(region, view)), WIDE);
    path.attr({ fill: fills.face('kept', true), 'fill-rule': 'evenodd', 'data-role': 'part' });
  }
}

/** In Z the part is seen from the front, on what it lies on. */
function drawSide(draw: Drawing, report: Report, setup: ReportSetup, fills: Fills): void {
  const { minX, maxX } = boxAsLies(report, setup);
  rect(draw, [minX, 0], [maxX, report.thickness], WIDE).attr({
    fill: fills.face('kept', true),
    'data-role': 'part',
  });
  const level = levelOf(report, setup, draw.scene);
  if (level === null) return;
  const width = maxX - minX;
  const shape = rect(draw, [minX - BESIDE * width, level.from], [maxX, level.to], WIDE);
  shape.attr({ fill: draw.pen.theme.soft, 'data-role': 'level' });
}

function rect({ parent, on }: Drawing, a: Place, b: Place, width: number) {
  const [[x0, y0], [x1, y1]] = [on(a), on(b)];
  const [w, h] = [Math.abs(x1 - x0), Math.abs(y1 - y0)];
  const shape = parent.rect(toMicron(w), toMicron(h));
  shape.attr({ x: toMicron(Math.min(x0, x1)), y: toMicron(Math.min(y0, y1)) });
  return lined(shape, width);
}

/** A stop, solid, with its name in it. */
function drawStop(draw: Drawing, across: number, size: number): void {
  const { scene, axis, pen } = draw;
  if (scene.stop === null) return;
  const { at, outward, id } = scene.stop;
  const [a, b] = [pointAt(axis, at, across - size), pointAt(axis, at - outward * size, across + size)];
  const shape = rect(draw, a, b, WIDE);
  shape.attr({ fill: pen.theme.soft, 'data-role': 'stop' });
  const [x, y] = draw.on(pointAt(axis, at - (outward * size) / 2, across - size * 0.6));
  haloed(write(draw.parent, id, x, y + 1, { size: TYPE.small, anchor: 'middle' }), pen.theme);
}

/** Blocks between part and stop, each with its length. */
function drawBlock(draw: Drawing, { from, to, link }: Between, across: number): void {
  const { axis, pen } = draw;
  const half = Math.max(Math.abs(to - from) * 0.3, 1.2 / draw.factor);
  const shape = rect(
    draw,
    pointAt(axis, from, across - half),
    pointAt(axis, to, across + half),
    NARROW * 1.4,
  );
  shape.attr({ fill: pen.theme.paper, 'data-role': 'block' });
  const [x, y] = draw.on(pointAt(axis, (from + to) / 2, across + half));
  lettered(
    draw,
    lengthOf(link),
    axis === 'x' ? [x, y - 1] : [x + 2, y + 1],
    axis === 'x' ? 'middle' : 'start',
  );
}

function lengthOf({ length }: Between['link']): string {
  return String(Number((length ?? 0).toPrecision(12)));
}

function lettered(
  draw: Drawing,
  text: string,
  [x, y]: Place,
  anchor: 'start' | 'middle' | 'end' = 'middle',
): void {
  haloed(write(draw.parent, text, x, y, { size: TYPE.small, anchor }), draw.pen.theme);
}

/** A measured length from face to face, as a dimension over the part. */
function drawMeasured(draw: Drawing, { from, to, link }: Between, shown: Bounds): void {
  const { axis, parent, pen } = draw;
  const over =
    axis === 'x'
      ? shown.minY + (shown.maxY - shown.minY) * 0.15
      : shown.minX + (shown.maxX - shown.minX) * 0.88;
  const [a, b] = [draw.on(pointAt(axis, from, over)), draw.on(pointAt(axis, to, over))];
  const group = tinted(parent.group(), pen.theme.ink).attr('data-role', 'measured');
  lined(group.line(toMicron(a[0]), toMicron(a[1]), toMicron(b[0]), toMicron(b[1])), NARROW);
  arrowhead(group, a, b);
  arrowhead(group, b, a);
  const [x, y]: Place = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  lettered(
    draw,
    lengthOf(link),
    axis === 'x' ? [x, y - 1] : [x - 1.5, y + 1],
    axis === 'x' ? 'middle' : 'end',
  );
}

/** Least size of what touches, mm on the sheet, so that it is seen. */
const SEEN = 1.6;

/** The tip where it touched and where it has gone, or the cross of the spindle over a middle. */
function drawTip(draw: Drawing, across: number): void {
  const { scene, axis, pen, factor } = draw;
  if (scene.spindle === null) return;
  const { at, across: wide, touched } = scene.spindle;
  const group = tinted(draw.parent.group(), pen.theme.tool).attr('data-role', 'spindle');
  const radius = ((wide ?? 0) * factor) / 2;
  const circle = (along: number, role: string, dashes: readonly number[] = []) => {
    const [x, y] = draw.on(pointAt(axis, along, across));
    const shape = lined(group.circle(toMicron(2 * radius)), WIDE, dashes);
    shape.attr({ cx: toMicron(x), cy: toMicron(y), fill: pen.theme.paper, 'fill-opacity': 0.5 });
    shape.attr('data-role', role);
  };
  const hasGone = touched !== null && touched.at !== at;
  if (wide !== null && touched !== null) circle(touched.at, 'touch');
  if (wide !== null && (touched === null || hasGone)) circle(at, 'gone', [1, 0.8]);
  const [x, y] = draw.on(pointAt(axis, at, across));
  const arm = Math.max(radius, SEEN) + 1.5;
  lined(group.line(toMicron(x - arm), toMicron(y), toMicron(x + arm), toMicron(y)), NARROW);
  lined(group.line(toMicron(x), toMicron(y - arm), toMicron(x), toMicron(y + arm)), NARROW);
}

/** The end of the tool over a face, with the feeler under it. */
function drawTool(draw: Drawing, across: number, shown: Bounds): void {
  const { scene, pen, factor } = draw;
  if (scene.spindle === null) return;
  const { at, touched } = scene.spindle;
  const half = (shown.maxX - shown.minX) * 0.04;
  const top = shown.maxY;
  const shape = rect(draw, [across - half, Math.min(at, top)], [across + half, top], WIDE);
  shape.attr({ stroke: pen.theme.tool, fill: pen.theme.paper, 'data-role': 'spindle' });
  if (scene.feeler === 0 || touched === null) return;
  const thick = Math.max(scene.feeler, 0.5 / factor);
  const feeler = rect(draw, [across - 2 * half, touched.face], [across + 2 * half, touched.face + thick], 0);
  feeler.attr({ fill: pen.theme.tool, stroke: 'none', 'data-role': 'feeler' });
}
