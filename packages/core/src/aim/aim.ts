/*
 * Room: what is to be made: finished outline, blank, drawer of tools.
 * In: JSON text or a value.
 * Out: an `Aim`, or faults.
 */

import { subtract } from '../combine/subtract.js';
import type { Side } from '../cut/cut.js';
import type { DrawerTool } from '../document/schema-drawer.js';
import type { Job } from '../job/job.js';
import type { Region } from '../region/region.js';
import type { AimDocument } from './schema-aim.js';

/** A side that a stop bears on. */
export type AimStop = NonNullable<AimDocument['stops']>[number];

/** A recess that does not go through. */
export interface Pocket {
  readonly region: Region;
  readonly from: Side;
  readonly depth: number;
}

/** The metal to remove to one depth from one side. */
export interface AimLayer {
  readonly from: Side;
  /** Null where it goes through. */
  readonly depth: number | null;
  /** The metal to remove; its edges are named `finished` where they are walls to make, `blank` where it is open. */
  readonly rest: Region;
  /** The metal to keep at these heights. */
  readonly stays: Region;
}

/** An aim that has been checked, with its shapes worked out and its defaults filled in. */
export interface Aim {
  /** The blank as a job without cuts. */
  readonly job: Job;
  /** The finished part seen from above, and its pockets. */
  readonly finished: Region;
  readonly pockets: readonly Pocket[];
  /** The metal to remove, by depth: through layers first. */
  readonly layers: readonly AimLayer[];
  /** A point on the finished part, on metal that is kept. */
  readonly keep: readonly [number, number];
  readonly drawer: readonly DrawerTool[];
  /** Sides that stops bear on, as the part lies. */
  readonly stops: readonly AimStop[];
  /** Diameter of the tip with which a zero is found; null where jobs are to have no setups. */
  readonly tip: number | null;
  /** Whether the machine can lead an end mill along arcs. */
  readonly arcs: boolean;
  /** What roughing leaves on the radius, and the deepest bite of a boring head. */
  readonly allowance: number;
  readonly bite: number;
  /** Minutes for a change of tool, and for turning the part over. */
  readonly toolChange: number;
  readonly turning: number;
  /** The most ways to return. */
  readonly ways: number;
  readonly document: AimDocument;
}

/** What roughing leaves for a tool that finishes; common practice, no source. */
export const DEFAULT_ALLOWANCE = { mm: 0.5, inch: 0.02 } as const;

/** The deepest bite of a boring head; common practice, no source. */
export const DEFAULT_HEAD_BITE = { mm: 0.5, inch: 0.02 } as const;

/** Minutes to change a tool, and to turn a part over and find its zero again; common practice, no source. */
export const DEFAULT_MINUTES = { toolChange: 3, turning: 10 } as const;

/** So many ways are told where nothing else is asked for. */
export const DEFAULT_WAYS = 4;

/** Regions differ by no more than rounding where less than this share of the blank's area lies between them. */
export const SAME_SHARE = 1e-9;

/** The finished section at a height above the bottom. */
export function finishedAt({ job: { thickness }, finished, pockets }: Aim, height: number): Region {
  const open = pockets.filter(({ from, depth }) =>
    from === 'top' ? height > thickness - depth : height < depth,
  );
  return subtract(
    finished,
    open.map(({ region }) => region),
  );
}
