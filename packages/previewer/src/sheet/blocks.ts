import { pathStands, type Report, type ReportCut, type ReportSetup, toStep } from '@edgebite/core';
import { decimalsOf } from '../text/decimals.js';
import { fallsOf } from './falls.js';
import type { MoveArc, PathMove, SheetBlock, SheetStep } from './model.js';
import { watchOf } from './watch.js';
import { lieText, zeroOf } from './zero.js';

/** A report, and what is looked up in it. */
interface Shop {
  readonly report: Report;
  /** By id. */
  readonly cuts: ReadonlyMap<string, ReportCut>;
  /** By id of a cut: the loose pieces that it frees. */
  readonly frees: ReadonlyMap<string, readonly string[]>;
}

function shopOf(report: Report): Shop {
  const frees = new Map<string, string[]>();
  for (const { id, role, freedBy } of report.pieces) {
    if (freedBy === null || (role !== 'slug' && role !== 'offcut')) continue;
    const known = frees.get(freedBy);
    if (known === undefined) frees.set(freedBy, [id]);
    else known.push(id);
  }
  return { report, cuts: new Map(report.cuts.map((cut) => [cut.id, cut])), frees };
}

/** The blocks of a sheet: each setup, then cuts that are in none; all cuts where the job has no setups. */
export function blocksOf(report: Report): SheetBlock[] {
  const used = new Set(report.setups.flatMap(({ cuts }) => cuts));
  const rest = report.cuts.filter(({ id }) => !used.has(id));
  const shop = shopOf(report);
  return [
    ...report.setups.map((setup, k) => setupBlock(shop, setup, k)),
    ...(rest.length > 0 || report.setups.length === 0 ? [plainBlock(shop, rest)] : []),
  ];
}

function setupBlock(shop: Shop, setup: ReportSetup, number: number): SheetBlock {
  const { report } = shop;
  const { id, name, readout, targets } = setup;
  const named = name === null || name === '' ? id : `${id}: ${name}`;
  const steps = targets.flatMap(({ cut: cutId, pass, path, readout: target, worst }) => {
    const cut = shop.cuts.get(cutId);
    if (cut === undefined) return [];
    const move =
      path === null ? null : moveOf(cut, path, path.arc && { ...path.arc, center: path.arc.exact });
    return stepsAt(shop, cut, { pass, move, target, off: worst }, path?.lift ?? false);
  });
  return {
    setup: id,
    title: `Setup ${number + 1} of ${report.setups.length}, ${named}`,
    lies: lieText(setup),
    up: setup.up,
    units: readout.units,
    decimals: decimalsOf(readout.resolution),
    zero: zeroOf(setup),
    ...rows(report, steps, setup.cuts, id),
  };
}

/** Cuts without a setup: in the coordinates of the part as drawn. */
function plainBlock(shop: Shop, cuts: readonly ReportCut[]): SheetBlock {
  const { report } = shop;
  const { resolution, units, setups } = report;
  return {
    setup: null,
    title: setups.length === 0 ? 'All cuts, in the coordinates of the drawing' : 'Cuts in no setup',
    lies: 'The part as drawn, top face up.',
    up: 'top',
    units,
    decimals: decimalsOf(resolution),
    zero: [
      { axis: 'x', result: 'the zero of the drawing', links: [] },
      { axis: 'y', result: 'the zero of the drawing', links: [] },
    ],
    ...rows(
      report,
      cuts.flatMap((cut) => plainSteps(shop, cut)),
      cuts.map(({ id }) => id),
      null,
    ),
  };
}

function rows(
  report: Report,
  steps: readonly Omit<SheetStep, 'number'>[],
  cuts: readonly string[],
  setup: string | null,
): Pick<SheetBlock, 'steps' | 'falls' | 'watch'> {
  return {
    steps: steps.map((step, k) => ({ ...step, number: k + 1 })),
    falls: fallsOf(report, cuts),
    watch: watchOf(report, cuts, setup),
  };
}

function plainSteps(shop: Shop, cut: ReportCut): Omit<SheetStep, 'number'>[] {
  const near = ([x, y]: readonly [number, number]): [number, number] => [
    toStep(x, shop.report.resolution),
    toStep(y, shop.report.resolution),
  ];
  if (cut.path !== null) {
    return pathStands(cut).flatMap((stand) => {
      const move = moveOf(cut, stand, stand.arc);
      return stepsAt(shop, cut, { pass: null, move, target: near(stand.at), off: null }, stand.lift);
    });
  }
  const at = (place: readonly [number, number], pass: number | null) =>
    stepOf(shop, cut, { pass, move: null, target: near(place), off: null });
  const passes = cut.passes?.list ?? [];
  if (passes.length > 0) return passes.map(({ center }, k) => at(center, k + 1));
  return cut.center === null ? [] : [at(cut.center, null)];
}

function moveOf(
  { path, toolPath }: ReportCut,
  { run, move }: { readonly run: number; readonly move: 'down' | 'line' | 'arc' },
  arc: MoveArc | null,
): PathMove {
  const runs = toolPath?.passes.length ?? (path === null ? 0 : 1);
  return { kind: move, run, runs, arc: arc && { center: arc.center, radius: arc.radius, ccw: arc.ccw } };
}

/** Going to a place; and lifting the tool there, where it has to be: a step of its own, which can be ticked off. */
function stepsAt(shop: Shop, cut: ReportCut, where: Where, lift: boolean): Omit<SheetStep, 'number'>[] {
  const there = stepOf(shop, cut, where);
  if (!lift || where.move === null) return [there];
  return [there, { ...there, move: { ...where.move, kind: 'lift', arc: null } }];
}

type Where = Pick<SheetStep, 'move' | 'target' | 'off'> & { readonly pass: number | null };

function stepOf(shop: Shop, cut: ReportCut, { pass, move, target, off }: Where): Omit<SheetStep, 'number'> {
  const list = cut.passes?.list ?? [];
  const row = pass === null ? undefined : list[pass - 1];
  return {
    cut: cut.id,
    kind: cut.kind,
    pass: pass === null || row === undefined ? null : { number: pass, count: list.length, role: row.role },
    move,
    target,
    off,
    diameter: row?.diameter ?? cut.diameter,
    depth: cut.depth,
    through: cut.through,
    from: cut.from,
    running: cut.running,
    frees: shop.frees.get(cut.id) ?? [],
  };
}
