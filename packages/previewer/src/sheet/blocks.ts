import type { Report, ReportCut, ReportSetup, ReportStep } from '@edgebite/core';
import { lengthText } from '@edgebite/svg';
import { decimalsOf } from '../columns/decimals.js';
import { shownIn, shownText } from '../step/readout.js';
import { toldOf } from '../step/told.js';
import { fallsOf } from './falls.js';
import { finishOf } from './finish.js';
import { measuringOf, trialsOf } from './measuring.js';
import { partsOf } from './parts.js';
import type { SheetBlock, SheetStand, SheetStep } from './sheet.js';
import { watchOf } from './watch.js';
import { lieText, zeroOf } from './zero.js';

/** The blocks of a sheet: steps that follow each other in one setup. */
export function blocksOf(report: Report): SheetBlock[] {
  const runs = runsOf(report.steps);
  if (runs.length === 0) return [blockOf(report, [], false)];
  const begun = new Set<string>();
  return runs.map((run) => {
    const setup = setupOf(report, run);
    const isContinued = begun.has(setup);
    begun.add(setup);
    return blockOf(report, run, isContinued);
  });
}

/** Indices of steps, by setup. */
function runsOf(steps: Report['steps']): number[][] {
  const runs: number[][] = [];
  steps.forEach(({ setup }, index) => {
    if (index > 0 && steps[index - 1]?.setup === setup) runs.at(-1)?.push(index);
    else runs.push([index]);
  });
  return runs;
}

/** What the core calls the setup of a job that has none. */
const AS_DRAWN = 'as drawn';

function setupOf({ steps }: Report, [first = 0]: readonly number[]): string {
  return steps[first]?.setup ?? AS_DRAWN;
}

function blockOf(report: Report, indices: readonly number[], isContinued: boolean): SheetBlock {
  const setup = setupOf(report, indices);
  const number = report.setups.findIndex(({ id }) => id === setup);
  const row = report.setups[number];
  const up = row?.up ?? report.steps[indices[0] ?? 0]?.up ?? 'top';
  const title = row === undefined ? drawnTitle(report, up) : setupTitle(report, row, number);
  const shown = shownIn(report, setup);
  return {
    setup,
    title: isContinued ? `${title}, continued` : title,
    lies: lieText(row ?? { flip: up === 'top' ? null : 'y', turn: 0, up }),
    up,
    ...shown,
    zero: row === undefined ? drawnZero(up, shownText(0, shown)) : zeroOf(row),
    steps: indices.map((index) => stepOf(report, index, row !== undefined)),
    parts: partsOf(report, indices),
    falls: fallsOf(report, indices),
    trials: trialsOf(report, indices),
    measure: measuringOf(report, indices),
    finish: finishOf(report, indices),
    watch: watchOf(report, indices),
  };
}

function setupTitle({ setups }: Report, { id, name }: ReportSetup, number: number): string {
  const named = name === null || name === '' ? id : `${id}: ${name}`;
  return `Setup ${number + 1} of ${setups.length}, ${named}`;
}

function drawnTitle({ setups, steps }: Report, up: 'top' | 'bottom'): string {
  const isAll = setups.length === 0 && steps.every((step) => step.up === 'top');
  if (isAll) return 'All cuts, in the coordinates of the drawing';
  const which = setups.length === 0 ? 'Cuts' : 'Cuts in no setup,';
  return up === 'top' ? `${which} from the top, as drawn` : `${which} from the bottom, turned over`;
}

/** Turned over about the y axis, what is to the right on the drawing lies to the left. */
function drawnZero(up: 'top' | 'bottom', zero: string): SheetBlock['zero'] {
  const result = `with the spindle over the zero of the drawing the readout shows ${zero}`;
  const over = up === 'top' ? '' : '; X is that of the drawing with the other sign';
  return [
    { axis: 'x', result: `${result}${over}`, links: [] },
    { axis: 'y', result, links: [] },
  ];
}

function stepOf(report: Report, index: number, isSetUp: boolean): SheetStep {
  const step = report.steps[index] as ReportStep;
  const cut = report.cuts.find(({ id }) => id === step.cut) as ReportCut;
  const { before, lines } = toldOf(report, index);
  return {
    number: index + 1,
    cut: step.cut,
    kind: cut.kind,
    pass: passOf(step, cut),
    diameter: step.diameter,
    depth: step.reaches,
    through: cut.through,
    from: step.up,
    running: cut.running,
    minutes: step.minutes,
    stands: standsOf(step, isSetUp),
    before,
    tells: [...depthLines(report, step), ...lines],
  };
}

/** What the readout is to show in Z when the tool is as deep as it goes, where the setup has a zero there. */
function depthLines(report: Report, { setup, cut, pass }: ReportStep): string[] {
  const row = report.setups.find(({ id }) => id === setup);
  const target = row?.targets.find((one) => one.cut === cut && (pass === null || one.pass === pass));
  const depth = target?.depth ?? null;
  if (row === undefined || depth === null) return [];
  const { on, resolution, units } = row.heights;
  const decimals = decimalsOf(resolution);
  const off = depth.worst === 0 ? '' : ` ±${depth.worst.toFixed(decimals + 1)}`;
  const shown = (depth.readout + 0).toFixed(decimals);
  const where =
    on === 'readout'
      ? `Z ${shown}${off} on the readout`
      : `${shown}${off} ${units === 'mm' ? 'mm' : 'in'} on the scale of the quill`;
  const past = depth.below === 0 ? '' : `, ${lengthText(depth.below, report.units)} below the part`;
  return [`Down to ${where}${past}.`];
}

function passOf({ pass, passes }: ReportStep, cut: ReportCut): SheetStep['pass'] {
  if (pass === null) return null;
  return { number: pass, count: passes, role: cut.passes?.list[pass - 1]?.role ?? null };
}

/** Backing off has no target of its own, and needs none: what it is off by does not matter there. */
function standsOf({ stands, targets }: ReportStep, isSetUp: boolean): SheetStand[] {
  return stands.map(({ what, readout, arc, lifted }, k) => ({
    what,
    target: readout,
    off: isSetUp && what !== 'back off' ? (targets[k]?.worst ?? null) : null,
    arc,
    lifted,
  }));
}
