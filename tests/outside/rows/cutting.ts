import {
  densityOf,
  elasticMoment,
  feedFor,
  feedPerTurnOf,
  feedRate,
  METALS,
  type Metal,
  minutesFor,
  plasticMoment,
  shearForce,
  speedEntry,
  spindleSpeed,
  strengthOf,
  TOOL_KINDS,
  travelOfPass,
} from '@edgebite/core';
import { CARBIDE_FIGURES, DENSITIES, type Figure, HSS_FIGURES, STRENGTHS } from '../../cutting/figures.js';
import { P_DRILL, P_FEED, P_SIZES } from '../../cutting/sheets.js';
import { exact, type Pair, printed, type Reference, toShare } from '../reference.js';

const one = (value: number) => [value, value] as const;

const ends = (got: readonly number[], wanted: readonly number[]): Pair[] =>
  wanted.map((value, k) => exact(got[k] ?? Number.NaN, value));

/** HSS rows whose figures the sheets bear out, or those that are from memory. */
function hssRows(from: Figure['from']): Pair[] {
  return TOOL_KINDS.flatMap((kind) =>
    METALS.filter((metal) => HSS_FIGURES[kind][metal].from === from).flatMap((metal) =>
      ends(speedEntry(kind, 'HSS', metal).range, HSS_FIGURES[kind][metal].range),
    ),
  );
}

function carbideRows(): Pair[] {
  return TOOL_KINDS.flatMap((kind) =>
    METALS.flatMap((metal) => {
      const own = CARBIDE_FIGURES[kind]?.[metal];
      return own === undefined ? [] : ends(speedEntry(kind, 'carbide', metal).range, own.range);
    }),
  );
}

/** Carbide that no sheet has: A and C say about twice HSS. */
function doubledRows(): Pair[] {
  return TOOL_KINDS.flatMap((kind) =>
    METALS.flatMap((metal) => {
      if (CARBIDE_FIGURES[kind]?.[metal] !== undefined) return [];
      return ends(
        speedEntry(kind, 'carbide', metal).range,
        HSS_FIGURES[kind][metal].range.map((speed) => 2 * speed),
      );
    }),
  );
}

function millFeeds(): Pair[] {
  return (Object.keys(P_FEED) as (keyof typeof P_FEED)[]).flatMap((metal) =>
    P_SIZES.flatMap((size, k) => {
      const wanted = P_FEED[metal][k] ?? null;
      // The high end of the feed at a size is its own figure; at the smallest the low end is.
      const range = feedFor('end mill', metal, size, 'inch')?.range ?? [];
      return wanted === null ? [] : [exact(range[k === 0 ? 0 : 1] ?? Number.NaN, wanted)];
    }),
  );
}

const drillFeeds = (): Pair[] =>
  P_DRILL.flatMap(({ upTo, feed }) =>
    ends(feedFor('drill', 'mild steel', Number.isFinite(upTo) ? upTo : 2, 'inch')?.range ?? [], feed),
  );

/** Metals with a figure of a sheet, and those that are wholly from memory or by ratio. */
const ON_SHEETS: readonly Metal[] = ['mild steel', 'stainless steel', 'aluminium', 'brass'];

function strengths(onSheets: boolean): Pair[] {
  return METALS.filter((metal) => ON_SHEETS.includes(metal) === onSheets).flatMap((metal) => {
    const [got, wanted] = [strengthOf(metal), STRENGTHS[metal]];
    return (['shear', 'tensile'] as const).flatMap((key) =>
      wanted[key].map((value, k) => toShare(got[key][k] as number, value, 1e-7)),
    );
  });
}

/** Speeds, feeds, times, strengths, breaking forces. */
export const cuttingReferences: readonly Reference[] = [
  {
    quantity: 'spindle speed',
    source: 'F. D. Jones, Turning and Boring (1914); page of a tool maker; page on hole saws',
    kind: 'worked example',
    checks: '60 ft/min on 5 in: 46; 25 m/min with 12 mm: 663; 80 ft/min with 3/4 in: 410, rounded to ten',
    pairs: () => [
      printed(spindleSpeed(one(60), 5, 'inch')[0], 46, 0),
      printed(spindleSpeed(one(25), 12, 'mm')[0], 663, 0),
      printed(spindleSpeed(one(80), 0.75, 'inch')[0], 410, -1),
    ],
  },
  {
    quantity: 'feed by tooth, feed in a minute',
    source: 'page of a tool maker; milling handbook of 1973 (niagaracutter.com)',
    kind: 'worked example',
    checks:
      '663 turns: 86, 129, 159 mm/min with 2, 3, 4 teeth; 32 teeth of 0.004 in: 0.128 in a turn, at 88 turns 11.2 in/min',
    pairs: () => [
      ...[
        [2, 0.065, 86],
        [3, 0.065, 129],
        [4, 0.06, 159],
      ].map(([teeth = 0, each = 0, wanted = 0]) =>
        printed(feedRate(one(663), feedPerTurnOf(one(each), teeth))[0], wanted, 0),
      ),
      printed(feedPerTurnOf(one(0.004), 32)[0], 0.128, 3),
      // Cut off and not rounded there: 11.264.
      { got: feedRate(one(88), feedPerTurnOf(one(0.004), 32))[0], wanted: 11.2, within: 0.1 },
    ],
  },
  {
    quantity: 'surface speed, HSS',
    source: 'sheets A, B, C, M and H of docs/cutting-numbers.md',
    kind: 'second copy',
    checks: 'from the lowest figure of the sheets that a row names to the highest',
    pairs: () => hssRows('sheets'),
  },
  {
    quantity: 'surface speed, HSS',
    source: 'from memory',
    kind: 'second copy',
    checks: 'rows of annular cutters that no sheet has: a slip of the hand only',
    pairs: () => hssRows('from memory'),
  },
  {
    quantity: 'surface speed, carbide',
    source: 'sheets P and M',
    kind: 'second copy',
    checks: 'end mills and boring heads',
    pairs: carbideRows,
  },
  {
    quantity: 'surface speed, carbide',
    source: 'sheets A and C: carbide about twice HSS',
    kind: 'closed form of our own',
    checks: 'all rows that P and M lack',
    pairs: doubledRows,
  },
  {
    quantity: 'feed by tooth, feed by turn',
    source: 'sheet P',
    kind: 'second copy',
    checks:
      'end mills at all its sizes but the misprint, 0.005 for aluminium at 1/8 in; drills in all its ranges',
    pairs: () => [...millFeeds(), ...drillFeeds()],
  },
  {
    quantity: 'travel, minutes',
    source: 'circle of D - d, and length over feed',
    kind: 'closed form of our own',
    checks: 'a mill of 8 round in 20: 12 pi, at 48 a minute pi / 4; straight down 12 at 30: 0.4',
    pairs: () => {
      const round = travelOfPass({ doing: 'mills round', diameter: 20, toolDiameter: 8 });
      const down = travelOfPass({ doing: 'bores', depth: 12 });
      return [
        exact(round, 12 * Math.PI),
        exact(minutesFor(round, one(48))[0], Math.PI / 4),
        exact(minutesFor(down, [20, 30])[0], 0.4),
        exact(minutesFor(down, [20, 30])[1], 0.6),
      ];
    },
  },
  {
    quantity: 'strength',
    source: 'sheets S of single grades, R for stainless steel',
    kind: 'second copy',
    checks:
      'shear and tensile of mild and stainless steel, aluminium, brass; soft ends of the last two from memory',
    pairs: () => strengths(true),
  },
  {
    quantity: 'strength',
    source:
      'tensile from memory, shear by ratio R (of copper alloys doubtful, as its page says); titanium from memory',
    kind: 'second copy',
    checks: 'alloy and tool steel, cast iron, bronze, titanium: a slip of the hand only',
    pairs: () => strengths(false),
  },
  {
    quantity: 'density',
    source: 'from memory',
    kind: 'second copy',
    checks: 'every metal: a slip of the hand only',
    pairs: () =>
      Object.entries(DENSITIES).map(([metal, wanted]) => exact(densityOf(metal) ?? Number.NaN, wanted)),
  },
  {
    quantity: 'force to shear',
    source: 'byjus.com, a hole of 50 mm punched through 2 mm at 3.1 kN/mm2',
    kind: 'worked example',
    checks: '973.894 kN: the stress is not of this world, the arithmetic is right',
    pairs: () => [printed(shearForce(one(3100), Math.PI * 50 * 2)[0] / 1000, 973.894, 3)],
  },
  {
    quantity: 'moment to bend over',
    source: 'examoo.com, plastic and elastic section modulus of a rectangle',
    kind: 'printed value',
    checks: 'their ratio, 1.5',
    pairs: () => [exact(plasticMoment(235, 7, 3) / elasticMoment(235, 7, 3), 1.5)],
  },
  {
    quantity: 'moment to bend over',
    source: 's b t^2 / 4',
    kind: 'closed form of our own',
    checks: 'a strap of 10 by 1 of 276 MPa: 690 N mm; first yield 460',
    pairs: () => [exact(plasticMoment(276, 10, 1), 690), exact(elasticMoment(276, 10, 1), 460)],
  },
];
