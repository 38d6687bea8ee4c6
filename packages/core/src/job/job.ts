/*
 * Room: a job as it is worked with: `Job`, and what all readers share.
 * In: parts of a document.
 * Out: shapes, edges and ids read; one list of faults.
 */

import type { ToleranceClass } from '../datum/general-tolerance.js';
import type { KeepOut } from '../datum/keep-out.js';
import type { Setup } from '../datum/setup.js';
import type { JobDocument, MachineDocument, ToolDocument } from '../document/schema.js';
import type { Point } from '../geometry/point.js';
import type { Gauges } from '../measure/ways.js';
import type { Region } from '../region/region.js';
import type { JobCut } from './plan.js';

/** The unit of every length of a job. */
export type Units = JobDocument['units'];

/** The limits at which thin metal, sharp corners and lack of room are reported. */
export interface Limits {
  /** Metal thinner than this is reported. */
  readonly web: number;
  /** Metal thinner than this holds nothing. */
  readonly hold: number;
  /** Room that a tool needs below the part where it comes out. */
  readonly breakThrough: number;
  /** Interior angles under this many degrees are reported. */
  readonly knifeEdge: number;
}

/** A name that a job gives an edge or a hole of its part. */
export interface PartName {
  /** The named thing: `outline:2`, `hole:0`, `hole:0:1`. */
  readonly of: string;
  readonly name: string;
}

/** A part of a batch, with the setups of the job as its measured lengths have them. */
export interface BatchPart {
  readonly name: string;
  /** The lengths that are its own, by their names in the zeros. */
  readonly measured: readonly { readonly name: string; readonly measured: number; readonly units: Units }[];
  readonly setups: readonly Setup[];
}

/** A job that has been checked, with its shapes worked out and its defaults filled in. Plain data throughout. */
export interface Job {
  /** Empty if the job has none. */
  readonly name: string;
  readonly units: Units;
  /** The part seen from above, before any cut. */
  readonly outline: Region;
  /** Empty if the job names none. */
  readonly names: readonly PartName[];
  readonly thickness: number;
  /** How far it may be off, to either side: as the job says, or the general one of its class, or 0. */
  readonly thicknessTolerance: number;
  readonly material: string | null;
  /** A place on the part that is held; null if the job does not say. */
  readonly keep: Point | null;
  readonly limits: Limits;
  /** The smallest step that the shop can set or read. */
  readonly resolution: number;
  readonly cuts: readonly JobCut[];
  /** Class of ISO 2768-1 for lengths without a tolerance; null if the job names none. */
  readonly tolerances: ToleranceClass | null;
  /** How far the part's own sizes may be off, to either side; null where those of its class hold. */
  readonly sizeTolerance: number | null;
  /** Empty if the job has none. */
  readonly setups: readonly Setup[];
  /** Empty if the job has none. */
  readonly batch: readonly BatchPart[];
  readonly keepOuts: readonly KeepOut[];
  /** Empty if the job has none. */
  readonly tools: readonly ToolDocument[];
  /** The gauges at hand. */
  readonly gauges: Gauges;
  /** Without keys if the job does not say. */
  readonly machine: MachineDocument;
  /** The job as written: `parseJob` makes the same job from it again. */
  readonly document: JobDocument;
  /** The same with each copy of a cut written out; `document` itself where nothing is repeated. Its cuts are those of the job. */
  readonly plain: JobDocument;
}

/** Metal thinner than this is easily bent or pushed away by the cutter; common practice, no source. */
export const DEFAULT_WEB: Readonly<Record<Units, number>> = { mm: 1, inch: 0.04 };

/** Room below the part for a tool that comes out there; common practice, no source. */
export const DEFAULT_BREAK_THROUGH: Readonly<Record<Units, number>> = { mm: 1, inch: 0.04 };

/** An edge sharper than this, in degrees, chips or cuts a hand; common practice, no source. */
export const DEFAULT_KNIFE_EDGE = 30;

/** The usual step of a digital readout on a mill; common practice, no source. */
export const DEFAULT_RESOLUTION: Readonly<Record<Units, number>> = { mm: 0.005, inch: 0.0002 };

/** No gauge that reads the height over a chord stands on a shorter one, as a rule; common practice, no source. */
export const SHORTEST_CHORD: Readonly<Record<Units, number>> = { mm: 10, inch: 0.4 };
