import { meetsMetal } from '../sim/clear.js';
import type { Tool } from '../sim/job.js';
import { between, inWords } from '../sim/lie.js';
import { loadIn, type SimLoad } from '../sim/load.js';
import { type Metal, metalAt } from '../sim/metal.js';
import type { Done, Run } from '../sim/run.js';
import { depthAfter, takenBy } from '../sim/steps.js';
import type { ToldLoad, ToldStep } from './told.js';
import type { Verdict } from './verdict.js';

/** Sampling of the width of a ring, and rounding. */
const SHARE = 1e-4;
/** A share of a turn that is untold by more than this tells no first, worst or last height. */
const TOLD = 1e-3;

const SIDE = { disc: 1e-5, ring: 2e-4 };

/** Where a side load is as small as this, its direction is not compared. */
const WEAK = 0.02;

interface Found {
  /** Depths of the tool. */
  readonly from: number;
  readonly to: number;
  readonly load: SimLoad;
  /** Whether any metal is under the tool, be it within a circle that meets none; null if that is not told. */
  readonly meets: boolean | null;
}

/** Load of a standing tool, height by height. */
export function compareLoad(verdict: Verdict, run: Run, done: Done, told: ToldStep): void {
  const { step, before } = done;
  const { tool } = step;
  if (tool.kind !== 'disc' && tool.kind !== 'ring') {
    verdict.check('load', told.load === null, () => 'a load is told of a path');
    return;
  }
  const { load } = told;
  if (load === null) {
    verdict.check('load', false, () => 'none is told of a tool that stands');
    return;
  }
  const standing = {
    center: tool.center,
    radius: tool.radius,
    wall: tool.kind === 'ring' ? tool.wall : null,
  };
  const found = takenBy(step, run.slabs).map((s): Found => {
    const slab = run.slabs[s] as (typeof run.slabs)[number];
    const to = depthAfter(run.job, step, slab);
    const metal = metalAt(run, before, s, () => true);
    const sim = loadIn(metal, standing, step.lie);
    return { from: to - (slab.to - slab.from), to, load: sim, meets: meetsIn(metal, tool, sim) };
  });
  const side = SIDE[tool.kind];
  for (const one of found) {
    const middle = (one.from + one.to) / 2;
    const row = load.heights.find(({ from, to }) => from < middle && middle < to);
    verdict.check('height', row !== undefined, () => `no load is told at depth ${middle}`);
    if (row !== undefined) compareAt(verdict, 'load', one, row, side);
  }
  compareChoice(verdict, found, told, side, step.depth > run.job.part.thickness - 1e-9);
  const first = found[0]?.meets ?? null;
  if (first === null) verdict.skip('starts');
  else verdict.check('starts', (told.starts === 'metal') === first, () => `told ${told.starts}`);
}

/** A tool that meets metal by less than this is left open. */
const GRAZE = 0.02;

function meetsIn(metal: Metal, tool: Tool, load: SimLoad): boolean | null {
  if (load.share > 0.01) return true;
  const deep = meetsMetal(tool, metal, GRAZE);
  if (deep !== 'clear') return deep === 'meets' ? true : null;
  if (load.share > 0 || load.slack > 1e-4) return null;
  // What is nearer to the tool's own wall than the sampling tells may be met or not.
  return meetsMetal(tool, metal, GRAZE / 4) === 'clear' ? false : null;
}

function compareAt(
  verdict: Verdict,
  what: string,
  { load, from }: Found,
  told: ToldLoad,
  side: number,
): void {
  if (load.slack > 0.01) {
    verdict.skip(what);
    return;
  }
  const where = () => `at depth ${from}`;
  verdict.near(`${what}, share`, told.share, load.share, load.slack + SHARE);
  if (load.strikes === null) verdict.skip(`${what}, strikes`);
  else
    verdict.check(
      `${what}, strikes`,
      told.strikes === load.strikes,
      () => `told ${told.strikes}, found ${load.strikes} ${where()}`,
    );
  if (load.loadSlack > 0.05) {
    verdict.skip(`${what}, side load`);
    return;
  }
  verdict.near(`${what}, side load`, told.sideLoad, load.sideLoad, load.loadSlack + side);
  if (load.push === null || load.sideLoad < WEAK) return;
  const off = ((load.loadSlack + side) / load.sideLoad) * (180 / Math.PI) + 1e-6;
  const { push } = told;
  verdict.check(`${what}, push`, push !== null && between(push.degrees, load.push) <= off, () => {
    return `told ${push?.degrees} (${push?.words}), found ${load.push} ${where()}`;
  });
  if (push !== null) {
    const words = inWords(Math.round(push.degrees * 1e6) / 1e6);
    verdict.check(
      `${what}, words`,
      push.words === words,
      () => `${push.degrees} is called ${push.words}, not ${words}`,
    );
  }
}

/** Entry, worst and break-through are the right ones of the heights. */
function compareChoice(
  verdict: Verdict,
  found: readonly Found[],
  told: ToldStep,
  side: number,
  isThrough: boolean,
): void {
  const load = told.load as NonNullable<ToldStep['load']>;
  if (found.some((one) => one.load.slack > TOLD || one.meets === null)) {
    verdict.skip('entry, worst, break-through');
    return;
  }
  const met = found.filter(({ meets }) => meets);
  const check = (what: string, right: Found | undefined, row: ToldLoad | null) => {
    verdict.check(what, (right === undefined) === (row === null), () => {
      return `told ${row === null ? 'none' : `at ${row.from}`}, found ${right === undefined ? 'none' : `at ${right.from}`}`;
    });
    if (right === undefined || row === null) return;
    const middle = (right.from + right.to) / 2;
    const isSame = row.from < middle && middle < row.to;
    verdict.check(
      what,
      isSame,
      () => `told at ${row.from} to ${row.to}, found at ${right.from} to ${right.to}`,
    );
    if (isSame) compareAt(verdict, what, right, row, side);
  };
  check('entry', met[0], load.entry);
  const worst = met.reduce<Found | undefined>(
    (best, one) => (best === undefined || one.load.sideLoad > best.load.sideLoad ? one : best),
    undefined,
  );
  const off = 3 * side + (worst?.load.loadSlack ?? 0);
  const isTie = met.some(
    (one) => one !== worst && Math.abs(one.load.sideLoad - (worst?.load.sideLoad ?? 0)) <= off,
  );
  if (isTie) {
    verdict.skip('worst');
    verdict.check(
      'worst',
      load.worst !== null && load.worst.sideLoad > (worst?.load.sideLoad ?? 0) - off,
      () => 'not the worst',
    );
  } else check('worst', worst, load.worst);
  const last = met.at(-1);
  const comesOut = last !== undefined && (isThrough || last !== found.at(-1));
  check('break-through', comesOut ? last : undefined, load.breakThrough);
}
