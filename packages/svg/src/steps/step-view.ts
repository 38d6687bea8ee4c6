import {
  type Bounds,
  boxAround,
  EdgebiteError,
  extentOf,
  joined,
  type Report,
  type ReportStep,
} from '@edgebite/core';
import { fillsIn } from '../pen/fills.js';
import type { SvgNode } from '../pen/node.js';
import type { Pen } from '../pen/pen.js';
import { rootOf } from '../pen/root.js';
import { type Theme, type ThemeName, themeOf } from '../pen/theme.js';
import { axesOfStep } from '../plan/lie.js';
import { shownBounds } from '../sheet/layout.js';
import { type Box, shrunk } from '../view/view.js';
import { drawPicture, factorIn } from './step-picture.js';
import { headText, linesOf, setupText } from './step-words.js';

/** How one step is drawn for a screen. */
export interface StepViewOptions {
  /** Width and height of the picture's own coordinates, in which lettering is 2.5 high; 120 by 80 by default. */
  readonly size?: readonly [number, number] | undefined;
  /** A theme that is ready, or colours of your own, which may be `var(--name)`; `light` by default. */
  readonly theme?: ThemeName | Theme | undefined;
  /** Put before every id in the drawing, so that several can be in one page; `edgebite-step-` by default. */
  readonly idPrefix?: string | undefined;
}

/** Room round the picture. */
const ROUND = 2;

/**
 * The picture of one step.
 * @throws EdgebiteError as `drawStep` does.
 */
export function stepViewOf(report: Report, index: number, options: StepViewOptions): SvgNode {
  const { size = [120, 80], theme = 'light', idPrefix = 'edgebite-step-' } = options;
  const step = report.steps[index];
  if (step === undefined) {
    const { length } = report.steps;
    throw refused(
      'index',
      `there is no step ${index}; the report has ${length}, from 0`,
      'take another step',
    );
  }
  if (step.before === null || step.after === null) {
    const what = 'the job is too large for its steps to be drawn';
    throw refused('report', what, 'draw a job with fewer cuts or simpler shapes');
  }
  const pen: Pen = { theme: themeOf(theme), prefix: idPrefix };
  return treeOf(report, index, step, size, pen);
}

function refused(argument: string, what: string, remedy: string): EdgebiteError {
  return new EdgebiteError(`drawStep: ${what}`, { code: 'argument', place: `drawStep: ${argument}`, remedy });
}

/** How much larger than the part with what is shown of it anyway a picture is at most, so that all of the tool is in it. */
const LARGER = 1.6;

/** What is shown, and the tool where it stands, as long as the part does not become too small by that. */
function withTool(shown: Bounds, { center, diameter }: ReportStep): Bounds {
  if (center === null) return shown;
  const [x, y] = center;
  const all = joined(shown, boxAround({ x, y }, diameter / 2));
  return extentOf(all) <= LARGER * extentOf(shown) ? all : shown;
}

function treeOf(
  report: Report,
  index: number,
  step: ReportStep,
  size: readonly [number, number],
  pen: Pen,
): ReturnType<typeof rootOf> {
  const picture = { steps: [index], grave: false, weight: 0 };
  const { lie } = setupText(report, picture);
  const description = [lie, ...linesOf(report, picture).map(({ text }) => text)].filter(
    (text) => text !== '',
  );
  const words = { title: `Step ${headText(report, picture)}`, description: description.join('; ') };
  const root = rootOf(size, words, pen.prefix, pen.theme);
  root.attr({ width: '100%', height: '100%', preserveAspectRatio: 'xMidYMid meet' });
  const box: Box = shrunk({ x: 0, y: 0, width: size[0], height: size[1] }, ROUND);
  const frame = { box, shown: withTool(shownBounds(report, true), step), axes: axesOfStep(report, step) };
  const group = root.group().attr({ id: `${pen.prefix}picture`, 'data-about': `step:${index}` });
  drawPicture(group, report, picture, { ...frame, factor: factorIn(frame) }, pen, fillsIn(root, pen));
  return root;
}
