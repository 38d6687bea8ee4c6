/*
 * Room: how a bite is measured.
 * In: a check of a report.
 * Out: a sheet with a scene for each way.
 */

import {
  type Axes,
  axesOf,
  type Bounds,
  boxAround,
  EdgebiteError,
  joined,
  type Lie,
  type Report,
  type ReportCheck,
  type ReportWay,
} from '@edgebite/core';
import type { Fills } from '../pen/fills.js';
import { drawFrames, type Frame } from '../pen/frames.js';
import { arrowhead } from '../pen/label.js';
import { lined, NARROW, tinted, WIDE } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import { dimensionText, numberText, toMicron, unitText } from '../pen/numbers.js';
import { chainPath, regionPath } from '../pen/path.js';
import type { Pen } from '../pen/pen.js';
import { haloed, TYPE, write } from '../pen/text.js';
import { type Theme, type ThemeName, themeOf } from '../pen/theme.js';
import { boundsAsLies, lieOf, lieText } from '../plan/lie.js';
import type { Place } from '../view/edges.js';
import { type Box, onSheet, type View } from '../view/view.js';
import { type WayScene, wayScene } from './way-scene.js';

/** How the ways to measure an arc are drawn. */
export interface CheckDrawOptions {
  /** Which ways, by their numbers from 0; all of them by default. */
  readonly ways?: readonly number[] | undefined;
  /** Width of the drawing, mm; 180 by default, which goes between the margins of an A4 sheet. */
  readonly width?: number | undefined;
  /** A theme that is ready, or colours of your own; `light` by default. */
  readonly theme?: ThemeName | Theme | undefined;
  /** Put before every id in the drawing, so that several can be in one page; `edgebite-` by default. */
  readonly idPrefix?: string | undefined;
}

/** The ways to measure an arc. Throws as `drawCheck` does. */
export function checkSheetOf(report: Report, index: number, options: CheckDrawOptions): SvgNode {
  const { width = 180, idPrefix = 'edgebite-', theme = 'light' } = options;
  const check = report.checks[index];
  if (check === undefined) {
    const { length } = report.checks;
    throw refused('index', `there is no arc ${index} to measure; the report has ${length}, from 0`);
  }
  const numbers = options.ways ?? check.ways.map((_, k) => k);
  for (const number of numbers) {
    if (check.ways[number] !== undefined) continue;
    throw refused('options.ways', `there is no way ${number}; the arc has ${check.ways.length}, from 0`);
  }
  const pen: Pen = { theme: themeOf(theme), prefix: idPrefix };
  const lie = lieIn(report, check);
  const axes = axesOf(lie);
  const frames = numbers.map((number) => frameOf(report, check, number, axes, pen));
  const title = `Measuring ${check.cut}, radius ${dimensionText(check.radius, report.units)} ${unitText(report.units)}`;
  const name = report.name === '' ? 'a job without a name' : report.name;
  const description = frames.map((frame) => `${frame.name}: ${frame.words}`).join(' ');
  const whole = { title: `${title}, of ${name}`, description };
  const under = 'Stop the spindle, let the part cool, and break sharp edges before you measure.';
  const lies = lieText(lie);
  const said = lies === '' ? under : `${under} The part lies ${lies}.`;
  return drawFrames({ title, under: said, whole, frames, width }, pen);
}

function refused(argument: string, what: string): EdgebiteError {
  const remedy = 'take one that is there';
  return new EdgebiteError(`drawCheck: ${what}`, {
    code: 'argument',
    place: `drawCheck: ${argument}`,
    remedy,
  });
}

/** How the part lies when the arc is cut last. */
function lieIn(report: Report, { cut }: ReportCheck): Lie {
  const step = report.steps.filter((one) => one.cut === cut).at(-1);
  return step === undefined ? { flip: null, turn: 0 } : lieOf(report, step);
}

function frameOf(report: Report, check: ReportCheck, number: number, axes: Axes, pen: Pen): Frame {
  const way = check.ways[number] as ReportWay;
  const { units } = report;
  const length = (value: number) => numberText(value, units);
  const allowed = way.allowed === null ? '' : `, from ${length(way.allowed[0])} to ${length(way.allowed[1])}`;
  const horn = way.horn === null ? '' : ' At the horns: burrs falsify it.';
  const words = `${way.words.charAt(0).toUpperCase()}${way.words.slice(1)}: ${length(way.reading)} ${unitText(units)}${allowed}.${horn}`;
  const id = `way-${number + 1}`;
  return {
    id,
    name: `${number + 1}`,
    words,
    draw: (group, box, fills) => {
      const scene = wayScene(report, check, way);
      drawWay(group, {
        report,
        check,
        way,
        scene,
        axes,
        box,
        pen,
        fills,
        clip: `${pen.prefix}${id}-clip`,
      });
    },
  };
}

interface Picture {
  readonly report: Report;
  readonly check: ReportCheck;
  readonly way: ReportWay;
  readonly scene: WayScene | null;
  readonly axes: Axes;
  readonly box: Box;
  readonly pen: Pen;
  readonly fills: Fills;
  readonly clip: string;
}

/** Room round what is shown, as a share of the radius. */
const ROUND = 0.45;

/** The arc and what is read, with so much round it. */
function viewOf({ check, scene, axes, box }: Picture): View {
  const { center, radius } = check;
  const around = ([x, y]: Place, by: number): Bounds => boxAround({ x, y }, by);
  const shown = (scene?.ends ?? []).reduce(
    (box, end) => joined(box, around(end, radius * ROUND)),
    around(center, radius * (1 + ROUND)),
  );
  const lying = boundsAsLies(shown, axes);
  return {
    middle: [(shown.minX + shown.maxX) / 2, (shown.minY + shown.maxY) / 2],
    at: [box.x + box.width / 2, box.y + box.height / 2],
    factor: Math.min(box.width / (lying.maxX - lying.minX), box.height / (lying.maxY - lying.minY)),
    axes,
  };
}

function drawWay(group: SvgNode, picture: Picture): void {
  const { report, check, way, scene, box, pen, fills, clip } = picture;
  const view = viewOf(picture);
  group
    .clip()
    .attr('id', clip)
    .rect(toMicron(box.width), toMicron(box.height))
    .attr({ x: toMicron(box.x), y: toMicron(box.y) });
  const inside = group.group().attr('clip-path', `url(#${clip})`);
  const height = (way.from + way.to) / 2;
  const kept = report.pieces.find(({ role }) => role === 'kept');
  const section = kept?.sections.find(({ from, to }) => from <= height && height <= to);
  if (section !== undefined) {
    const path = lined(inside.path(regionPath(section.region, view)), NARROW * 1.4);
    path.attr({ fill: fills.face('kept', true), 'fill-rule': 'evenodd', 'data-role': 'part' });
  }
  drawArc(tinted(inside.group(), pen.theme.tool), check, view);
  if (scene !== null) drawScene(inside, scene, dimensionText(way.reading, report.units), view, pen);
}

/** The arc that is measured, drawn over the edge of the metal. */
function drawArc(group: SvgNode, { center, radius, spans }: ReportCheck, view: View): void {
  const degree = Math.PI / 180;
  for (const [from, to] of spans) {
    const at = (angle: number): [number, number] => [
      center[0] + radius * Math.cos(angle * degree),
      center[1] + radius * Math.sin(angle * degree),
    ];
    const edge = {
      kind: 'arc',
      a: at(from),
      b: at(to),
      center: [...center] as [number, number],
      radius,
      ccw: true,
    } as const;
    lined(group.path(chainPath([edge], view)), WIDE).attr('data-role', 'arc');
  }
}

/** The reading as a dimension, with its base line and the pins. */
function drawScene(
  parent: SvgNode,
  { ends, pins, base }: WayScene,
  text: string,
  view: View,
  { theme }: Pen,
): void {
  const on = (place: Place) => onSheet(view, place).map(toMicron) as [number, number];
  const soft = tinted(parent.group(), theme.ink);
  for (const { center, radius } of pins) {
    const [cx, cy] = on(center);
    const shape = lined(soft.circle(toMicron(2 * radius * view.factor)), NARROW * 1.4);
    shape.attr({ cx, cy, fill: theme.paper, 'data-role': 'pin' });
  }
  if (base !== null) lined(soft.line(...on(base[0]), ...on(base[1])), NARROW).attr('data-role', 'base');
  const ink = tinted(parent.group(), theme.warning).attr('data-role', 'reading');
  const [a, b] = [on(ends[0]), on(ends[1])];
  const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const [ux, uy] = long === 0 ? [0, 1] : [(b[0] - a[0]) / long, (b[1] - a[1]) / long];
  // Where it is too short for both arrowheads they come from outside.
  const out = long < SHORTEST ? OUTSIDE : 0;
  const from: Place = [a[0] - ux * out, a[1] - uy * out];
  const to: Place = [b[0] + ux * out, b[1] + uy * out];
  lined(
    ink.line(...(from.map(toMicron) as [number, number]), ...(to.map(toMicron) as [number, number])),
    NARROW,
  );
  arrowhead(ink, a, out === 0 ? b : from);
  arrowhead(ink, b, out === 0 ? a : to);
  const isUp = Math.abs(uy) > Math.abs(ux);
  const [x, y]: Place = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const figure = isUp
    ? write(ink, text, x + 1.4, y + 1, { size: TYPE.small })
    : write(ink, text, x, y - 1.2, { size: TYPE.small, anchor: 'middle' });
  haloed(figure, theme);
}

/** The shortest dimension line with both arrowheads inside, and how far it goes on where they are outside, mm. */
const SHORTEST = 6;
const OUTSIDE = 5;
