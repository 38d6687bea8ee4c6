import { type Report, type ReportCut, type ReportSetup, toStep } from '@edgebite/core';
import { decimalsOf } from '../text/decimals.js';
import { fallsOf } from './falls.js';
import type { SheetBlock, SheetStep } from './model.js';
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
  const steps = targets.flatMap(({ cut: cutId, pass, point, readout: target, worst }) => {
    const cut = shop.cuts.get(cutId);
    return cut === undefined ? [] : [stepOf(shop, cut, { pass, point, target, off: worst })];
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
  const at = (place: readonly [number, number], pass: number | null, point: number | null) =>
    stepOf(shop, cut, { pass, point, target: near(place), off: null });
  if (cut.path !== null) {
    const [first] = cut.path;
    const places = first === undefined ? [] : [first.a, ...cut.path.map(({ b }) => b)];
    return places.map((place, k) => at(place, null, k));
  }
  const passes = cut.passes?.list ?? [];
  if (passes.length > 0) return passes.map(({ center }, k) => at(center, k + 1, null));
  return cut.center === null ? [] : [at(cut.center, null, null)];
}

function stepOf(
  shop: Shop,
  cut: ReportCut,
  where: Pick<SheetStep, 'point' | 'target' | 'off'> & { readonly pass: number | null },
): Omit<SheetStep, 'number'> {
  const { pass, point, target, off } = where;
  const list = cut.passes?.list ?? [];
  const row = pass === null ? undefined : list[pass - 1];
  return {
    cut: cut.id,
    kind: cut.kind,
    pass: pass === null || row === undefined ? null : { number: pass, count: list.length, role: row.role },
    point,
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
