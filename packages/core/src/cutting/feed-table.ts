import { inUnit, type LengthUnit } from '../datum/length-unit.js';
import type { Metal } from './material.js';
import type { Range } from './range.js';
import type { ToolKind } from './tool.js';

/** A feed, for each tooth or for each turn. */
export interface FeedEntry {
  readonly per: 'tooth' | 'turn';
  /** In the unit of length asked for. */
  readonly range: Range;
  /** Names of its sources, explained in docs/cutting-numbers.md, or `from memory`. */
  readonly source: string;
}

/** Feed of a drill for each turn, inches, up to each diameter, inches (P, the same page). */
const DRILL_FEED: readonly (readonly [upTo: number, feed: Range])[] = [
  [1 / 8, [0.001, 0.003]],
  [1 / 4, [0.002, 0.006]],
  [1 / 2, [0.004, 0.01]],
  [1, [0.007, 0.015]],
  [Number.POSITIVE_INFINITY, [0.01, 0.025]],
];

/** Diameters of the end mill table, inches. */
const MILL_DIAMETERS = [1 / 8, 1 / 4, 1 / 2, 3 / 4, 1] as const;

/** Feed of an end mill for each tooth, inches, at those diameters (P). Metals that it lacks stand in by another. */
const MILL_FEED: Readonly<
  Record<'aluminium' | 'brass' | 'cast iron' | 'mild steel' | 'stainless steel', readonly number[]>
> = {
  // The sheet prints 0.005 at 1/8, out of order: a misprint. Half of its next figure is taken, from memory.
  aluminium: [0.001, 0.002, 0.004, 0.006, 0.008],
  brass: [0.001, 0.002, 0.003, 0.004, 0.005],
  'cast iron': [0.0005, 0.001, 0.003, 0.005, 0.007],
  'mild steel': [0.0005, 0.001, 0.003, 0.0045, 0.0065],
  'stainless steel': [0.0005, 0.001, 0.003, 0.004, 0.006],
};

/** Rows that stand in for metals which the end mill table lacks; brass and bronze share one there. */
const MILL_ROW: Readonly<Record<Metal, keyof typeof MILL_FEED>> = {
  'mild steel': 'mild steel',
  'alloy steel': 'stainless steel',
  'tool steel': 'stainless steel',
  'stainless steel': 'stainless steel',
  'cast iron': 'cast iron',
  aluminium: 'aluminium',
  brass: 'brass',
  bronze: 'brass',
  titanium: 'stainless steel',
};

/** The only figure found is the low end, for metals that harden under the edge. */
const ANNULAR_FEED: Range = [0.001, 0.003];

/** A light finishing cut of one edge. */
const BORING_FEED: Range = [0.002, 0.008];

/**
 * The feed of a tool in a metal, for each tooth or turn, in mm or inches; null for an end mill that is smaller than the
 * smallest in the table. Sources in docs/cutting-numbers.md.
 */
export function feedFor(kind: ToolKind, metal: Metal, diameter: number, units: LengthUnit): FeedEntry | null {
  const entry = inchFeed(kind, metal, inUnit(diameter, units, 'inch'));
  if (entry === null) return null;
  const [least, most] = entry.range;
  return { ...entry, range: [inUnit(least, 'inch', units), inUnit(most, 'inch', units)] };
}

function inchFeed(kind: ToolKind, metal: Metal, diameter: number): FeedEntry | null {
  switch (kind) {
    case 'drill':
      return { per: 'turn', range: drillFeed(diameter), source: 'drill feeds by diameter (P)' };
    case 'end mill': {
      const range = millFeed(MILL_FEED[MILL_ROW[metal]], diameter);
      return range === null ? null : { per: 'tooth', range, source: millSource(metal) };
    }
    case 'annular cutter':
      return {
        per: 'tooth',
        range: ANNULAR_FEED,
        source: 'low end from feed notes (F), high end from memory',
      };
    case 'boring head':
      return { per: 'turn', range: BORING_FEED, source: 'from memory' };
  }
}

function drillFeed(diameter: number): Range {
  const row = DRILL_FEED.find(([upTo]) => diameter <= upTo);
  return (row ?? (DRILL_FEED.at(-1) as (typeof DRILL_FEED)[number]))[1];
}

/**
 * Between the figures of the two diameters that it lies between; at one of them, between that and the one below. From
 * the largest on, the last two.
 */
function millFeed(row: readonly number[], diameter: number): Range | null {
  if (diameter < MILL_DIAMETERS[0]) return null;
  const found = MILL_DIAMETERS.findIndex((d) => diameter <= d);
  const above = found < 0 ? MILL_DIAMETERS.length - 1 : Math.max(found, 1);
  return [row[above - 1] as number, row[above] as number];
}

function millSource(metal: Metal): string {
  const row = MILL_ROW[metal];
  const own = row === metal || metal === 'bronze';
  return own ? 'carbide end mill table (P)' : `row of ${row} of the carbide end mill table (P), from memory`;
}
