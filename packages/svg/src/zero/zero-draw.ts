import type { Report, ReportSetup } from '@edgebite/core';
import { type Container, type Svg, withWindow } from '@svgdotjs/svg.js';
import { type Hatching, hatchingIn } from '../pen/hatch.js';
import { lined, NARROW, tinted } from '../pen/lines.js';
import type { Pen } from '../pen/pen.js';
import { checkIdPrefix, rootOf, serialized } from '../pen/root.js';
import { clean, fitted, TYPE, wrapped, write } from '../pen/text.js';
import { type Theme, type ThemeName, themeOf } from '../pen/theme.js';
import { doneText, reachedText, type ZeroLink, type ZeroScale, zeroAxes } from '../pen/zero-words.js';
import { lieText } from '../plan/lie.js';
import type { Box } from '../view/view.js';
import { drawScene } from './zero-frame.js';
import { scenesOf, type ZeroAxis, type ZeroScene } from './zero-scene.js';

/** How the zero of a setup is drawn. */
export interface ZeroDrawOptions {
  /** id of the setup; the first of the report without it. */
  readonly setup?: string | undefined;
  /** Width of the drawing, mm: 180, which goes between the margins of an A4 sheet, without it. */
  readonly width?: number;
  /** A theme that is ready, or colours of your own; `light` without it. */
  readonly theme?: ThemeName | Theme;
  /** Put before every id in the drawing, so that several can be in one page; `edgebite-` without it. */
  readonly idPrefix?: string;
}

/** Narrower, there is no room for a picture with its words; wider, pictures would only stand further apart. */
const NARROWEST = 100;
const WIDEST = 1000;

/** Room round everything and between frames, width of a frame at least, height of its picture, and of a line, mm. */
const MARGIN = 4;
const GAP = 3;
const FRAME = 55;
const PICTURE = 34;
const LINE = 3.4;

/** One action: a picture and what is done. */
interface Action {
  readonly axis: ZeroAxis;
  readonly scene: ZeroScene;
  /** All scenes of its axis, which are shown at one scale. */
  readonly scenes: readonly ZeroScene[];
  readonly words: readonly string[];
}

/** Draws how the zero of a setup is found into the DOM of a window and returns the SVG as text. Throws as `drawZero` does. */
export function drawZeroIn(window: Window, report: Report, options: ZeroDrawOptions): string {
  const { width = 180, idPrefix = 'edgebite-', theme = 'light' } = options;
  checkIdPrefix('drawZero', idPrefix);
  if (!(width >= NARROWEST && width <= WIDEST)) {
    throw new RangeError(`drawZero: width is ${width}; it must be from ${NARROWEST} to ${WIDEST} mm`);
  }
  const setup = setupOf(report, options.setup);
  const pen: Pen = { theme: themeOf(theme), prefix: idPrefix };
  return withWindow(window, () => serialized(drawn(report, setup, width, pen), window));
}

function setupOf({ setups }: Report, id: string | undefined): ReportSetup {
  const found = id === undefined ? setups[0] : setups.find((one) => one.id === id);
  if (found !== undefined) return found;
  const known = setups.map((one) => one.id).join(', ');
  throw new RangeError(
    setups.length === 0
      ? 'drawZero: the report has no setups'
      : `drawZero: setup is ${JSON.stringify(id)}; the report has ${known}`,
  );
}

function drawn(report: Report, setup: ReportSetup, width: number, pen: Pen): Svg {
  const across = Math.max(1, Math.floor((width - 2 * MARGIN + GAP) / (FRAME + GAP)));
  const frame = (width - 2 * MARGIN - (across - 1) * GAP) / across;
  const actions = actionsOf(report, setup, frame - INDENT - 1.5);
  const rows = Array.from({ length: Math.ceil(actions.length / across) }, (_, k) =>
    actions.slice(k * across, (k + 1) * across),
  );
  const heights = rows.map((row) => PICTURE + Math.max(...row.map(({ words }) => words.length)) * LINE + 1.5);
  const lies = lieText(setup);
  const head = MARGIN + TYPE.title + 2 + (lies === '' ? 0 : LINE);
  const height = Math.ceil(head + heights.reduce((sum, one) => sum + one + GAP, 0) + MARGIN - GAP);
  const root = rootOf([width, height], wordsOf(report, setup, actions), pen.prefix, pen.theme);
  root.rect(width, height).attr('fill', pen.theme.paper);
  const hatching = hatchingIn(root, pen);
  const y = MARGIN + TYPE.title * 0.8;
  const title = fitted(titleOf(setup), width - 2 * MARGIN, TYPE.title, true);
  write(root, title, MARGIN, y, { size: TYPE.title, bold: true });
  if (lies !== '') write(root, `The part lies ${lies}.`, MARGIN, y + LINE + 0.6, { size: TYPE.small });
  let top = head;
  rows.forEach((row, r) => {
    const high = heights[r] as number;
    row.forEach((action, k) => {
      const box: Box = { x: MARGIN + k * (frame + GAP), y: top, width: frame, height: high };
      drawFrame(root, report, setup, action, box, pen, hatching);
    });
    top += high + GAP;
  });
  return root;
}

/** The actions of all axes in order, with their words broken to a width. */
function actionsOf(report: Report, setup: ReportSetup, width: number): Action[] {
  return (['x', 'y', 'z'] as const).flatMap((axis) => {
    const scenes = scenesOf(report, setup, axis);
    return scenes.map((scene): Action => {
      return { axis, scene, scenes, words: wrapped(captionOf(setup, axis, scene), width, TYPE.small) };
    });
  });
}

/** Room for the axis and the number of an action before its words, mm. */
const INDENT = 8;

function drawFrame(
  root: Container,
  report: Report,
  setup: ReportSetup,
  { axis, scene, scenes, words }: Action,
  box: Box,
  pen: Pen,
  hatching: Hatching,
): void {
  const name = `${axis.toUpperCase()} ${scene.action + 1}`;
  const group = root.group().attr({
    id: `${pen.prefix}zero-${axis}-${scene.action + 1}`,
    role: 'group',
    'aria-label': clean(`${name}: ${words.join(' ')}`),
  });
  const rim = tinted(group.group(), pen.theme.soft);
  lined(rim.rect(box.width, box.height).attr({ x: box.x, y: box.y }), NARROW * 0.6);
  const picture: Box = { x: box.x + 4, y: box.y + 4, width: box.width - 8, height: PICTURE - 7 };
  drawScene(group, report, setup, scene, { axis, scenes, box: picture }, pen, hatching);
  write(group, name, box.x + 1.5, box.y + PICTURE + LINE - 1, { size: TYPE.small, bold: true });
  words.forEach((line, k) => {
    write(group, line, box.x + INDENT, box.y + PICTURE + (k + 1) * LINE - 1, { size: TYPE.small });
  });
}

/** What is done, and what the readout shows then. */
function captionOf(setup: ReportSetup, axis: ZeroAxis, { links, reached }: ZeroScene): string {
  const scale = zeroAxes(setup).find((one) => one.axis === axis)?.scale as ZeroScale;
  const shown = (value: number) => (value + 0).toFixed(decimalsOf(scale.resolution));
  const done = links.map((link: ZeroLink) => doneText(link, shown, scale)).join('; ');
  if (reached.reads === null) return `${capital(done)}.`;
  const stands = `${reachedText(reached.of)} stands at ${axis.toUpperCase()}\u00a0${shown(reached.reads)}`;
  return `${capital(done)}. ${capital(stands)}.`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Decimals of a readout's step: 3 of 0.005. */
function decimalsOf(resolution: number): number {
  const [, fraction = ''] = resolution.toFixed(10).replace(/0+$/, '').split('.');
  return fraction.length;
}

function titleOf({ id, name }: ReportSetup): string {
  return `Zero of ${id}${name === null || name === '' ? '' : `: ${name}`}`;
}

function wordsOf(report: Report, setup: ReportSetup, actions: readonly Action[]) {
  const name = report.name === '' ? 'a job without a name' : report.name;
  return {
    title: `${titleOf(setup)}, of ${name}`,
    description: actions
      .map(({ axis, scene }) => `${axis.toUpperCase()} ${scene.action + 1}: ${captionOf(setup, axis, scene)}`)
      .join(' '),
  };
}
