import type { LengthUnit } from '../datum/length-unit.js';
import { checkOverZero } from '../geometry/checks.js';
import type { Doing } from './doing.js';
import { type FeedEntry, feedFor } from './feed-table.js';
import type { Metal } from './material.js';
import { type Range, scaled } from './range.js';
import { feedPerTurnOf, feedRate, minutesFor } from './speed.js';
import type { ToolKind } from './tool.js';

/** What a feed depends on. */
export interface FeedTask {
  readonly doing: Doing;
  readonly kind: ToolKind;
  /** Null where the material is not in the tables. */
  readonly metal: Metal | null;
  /** Of the tool; of a boring head that of its circle. */
  readonly diameter: number;
  readonly teeth: number | null;
  readonly units: LengthUnit;
  /** Turns in a minute that are set; null where none are known. */
  readonly spindle: Range | null;
  /** Feed per turn and turns in a minute that the job gives; null where it gives none. */
  readonly own: { readonly perTurn: number; readonly rpm: number } | null;
}

/** A feed for what a tool does, in the unit of length asked for; null where it is not known. */
export interface FeedOfDoing {
  /** Of a tool with teeth that share the cut. */
  readonly perTooth: Range | null;
  readonly perTurn: Range | null;
  /** In a minute. */
  readonly rate: Range | null;
  /** Names of its sources; null with `perTurn`, and where the number of teeth is all that is missing, of `perTooth`. */
  readonly source: string | null;
}

/**
 * A plunge, against the feed of the same end mill along its side: its teeth cut with their ends, near the middle hardly
 * at all, and chips have no way out. Common practice, no source.
 */
const PLUNGE_SHARE: Range = [1 / 4, 1 / 2];

/** What a source is told as where the job gives the feed. */
export const OWN_FEED = 'given by the job';

/**
 * The feed for what a tool does: the job's own where it gives one, else that of the tables; an end mill that plunges has
 * a quarter to a half of its feed along its side. Sources in docs/cutting-numbers.md.
 * @throws RangeError if the diameter, or a number that the job gives, is not a finite number over 0.
 */
export function feedOfDoing(task: FeedTask): FeedOfDoing {
  const { doing, kind, metal, diameter, teeth, units, spindle, own } = task;
  checkOverZero('feedOfDoing', 'diameter', diameter);
  if (own !== null) return ownFeed(own);
  const entry = metal === null ? null : entryFor(doing, feedFor(kind, metal, diameter, units));
  if (entry === null) return { perTooth: null, perTurn: null, rate: null, source: null };
  const perTurn = perTurnOf(entry, teeth);
  return {
    perTooth: entry.per === 'tooth' ? entry.range : null,
    perTurn,
    rate: perTurn === null || spindle === null ? null : feedRate(spindle, perTurn),
    source: entry.source,
  };
}

/** Minutes that a pass takes at a feed in a minute; null where that is not known. */
export function minutesOfPass(travel: number, rate: Range | null): Range | null {
  return rate === null ? null : minutesFor(travel, rate);
}

function ownFeed({ perTurn, rpm }: NonNullable<FeedTask['own']>): FeedOfDoing {
  checkOverZero('feedOfDoing', 'own.perTurn', perTurn);
  checkOverZero('feedOfDoing', 'own.rpm', rpm);
  const rate = perTurn * rpm;
  return { perTooth: null, perTurn: [perTurn, perTurn], rate: [rate, rate], source: OWN_FEED };
}

function entryFor(doing: Doing, entry: FeedEntry | null): FeedEntry | null {
  if (entry === null || doing !== 'plunges') return entry;
  const [low, high] = PLUNGE_SHARE;
  return {
    per: entry.per,
    range: [entry.range[0] * low, entry.range[1] * high],
    source: `a quarter to a half, common practice, no source, of: ${entry.source}`,
  };
}

function perTurnOf({ per, range }: FeedEntry, teeth: number | null): Range | null {
  if (per === 'turn') return scaled(range, 1);
  return teeth === null ? null : feedPerTurnOf(range, teeth);
}
