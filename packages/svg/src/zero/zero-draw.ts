/*
 * Room: how each zero is found.
 * In: the setups of a report.
 * Out: a sheet with a scene for each action.
 */

import { EdgebiteError, type Report, type ReportSetup } from '@edgebite/core';
import { drawFrames, type Frame } from '../pen/frames.js';
import type { SvgNode } from '../pen/node.js';
import type { Pen } from '../pen/pen.js';
import { type Theme, type ThemeName, themeOf } from '../pen/theme.js';
import { doneText, reachedText, type ZeroLink, type ZeroScale, zeroAxes } from '../pen/zero-words.js';
import { lieText } from '../plan/lie.js';
import { drawScene } from './zero-frame.js';
import { scenesOf, type ZeroAxis, type ZeroScene } from './zero-scene.js';

/** How the zero of a setup is drawn. */
export interface ZeroDrawOptions {
  /** id of the setup; the first of the report without it. */
  readonly setup?: string | undefined;
  /** Width of the drawing, mm: 180, which goes between the margins of an A4 sheet, without it. */
  readonly width?: number | undefined;
  /** A theme that is ready, or colours of your own; `light` without it. */
  readonly theme?: ThemeName | Theme | undefined;
  /** Put before every id in the drawing, so that several can be in one page; `edgebite-` without it. */
  readonly idPrefix?: string | undefined;
}

/** One action: a picture and what is done. */
interface Action {
  readonly axis: ZeroAxis;
  readonly scene: ZeroScene;
  /** All scenes of its axis, which are shown at one scale. */
  readonly scenes: readonly ZeroScene[];
  readonly words: string;
}

/** How the zero of a setup is found. Throws as `drawZero` does. */
export function zeroSheetOf(report: Report, options: ZeroDrawOptions): SvgNode {
  const { width = 180, idPrefix = 'edgebite-', theme = 'light' } = options;
  const setup = setupOf(report, options.setup);
  const pen: Pen = { theme: themeOf(theme), prefix: idPrefix };
  return drawn(report, setup, width, pen);
}

function setupOf({ setups }: Report, id: string | undefined): ReportSetup {
  const found = id === undefined ? setups[0] : setups.find((one) => one.id === id);
  if (found !== undefined) return found;
  const known = setups.map((one) => one.id).join(', ');
  const isNone = setups.length === 0;
  throw new EdgebiteError(
    isNone
      ? 'drawZero: the report has no setups'
      : `drawZero: setup is ${JSON.stringify(id)}; the report has ${known}`,
    {
      code: 'argument',
      place: isNone ? 'drawZero: report.setups' : 'drawZero: options.setup',
      remedy: isNone ? 'give a report on a job with setups' : `take one of ${known}`,
    },
  );
}

function drawn(report: Report, setup: ReportSetup, width: number, pen: Pen): SvgNode {
  const actions = actionsOf(report, setup);
  const lies = lieText(setup);
  const frames = actions.map(({ axis, scene, scenes, words }): Frame => {
    return {
      id: `zero-${axis}-${scene.action + 1}`,
      name: `${axis.toUpperCase()} ${scene.action + 1}`,
      words,
      draw: (group, box, fills) => drawScene(group, report, setup, scene, { axis, scenes, box }, pen, fills),
    };
  });
  const under = lies === '' ? '' : `The part lies ${lies}.`;
  const whole = wordsOf(report, setup, actions);
  return drawFrames({ title: titleOf(setup), under, whole, frames, width }, pen);
}

/** The actions of all axes in order. */
function actionsOf(report: Report, setup: ReportSetup): Action[] {
  return (['x', 'y', 'z'] as const).flatMap((axis) => {
    const scenes = scenesOf(report, setup, axis);
    return scenes.map((scene): Action => ({ axis, scene, scenes, words: captionOf(setup, axis, scene) }));
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
      .map(({ axis, scene, words }) => `${axis.toUpperCase()} ${scene.action + 1}: ${words}`)
      .join(' '),
  };
}
