import type { Job } from '../job/job.js';
import type { Region } from '../region/region.js';
import type { AimDocument } from './schema-aim.js';
import type { DrawerTool } from './schema-drawer.js';

/** An aim that has been checked, with its shapes worked out and its defaults filled in. */
export interface Aim {
  /** The blank as a job without cuts. */
  readonly job: Job;
  readonly finished: Region;
  /** What is to go: the blank without the finished part. */
  readonly rest: Region;
  /** A place on the finished part: what is there is kept. */
  readonly keep: readonly [number, number];
  readonly drawer: readonly DrawerTool[];
  /** What roughing leaves on the radius, and the deepest bite of a boring head. */
  readonly allowance: number;
  readonly bite: number;
  /** Minutes for a change of tool, and for turning the part over. */
  readonly toolChange: number;
  readonly turning: number;
  /** How many ways are told at most. */
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
