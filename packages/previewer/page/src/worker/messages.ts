import type {
  JobIssue,
  Measured,
  Measuring,
  RangeQuery,
  RangeReport,
  Report,
  ReportCheck,
  ReportCut,
  ReportPiece,
  WayRow,
} from '@edgebite/core';
import type { Json, JsonObject } from '../document/json.js';
import type { Found, OutlineAnswer } from './outline.js';
import type { Patch } from './patch.js';
import type { Sketch } from './sketch.js';
import type { Worked } from './worked.js';

/** What the page asks of its worker. Every question carries a number, and its answer the same one. */
export type Question =
  /** The job as what leads to it from the last one that this worker was asked for, and from null at first. */
  | { readonly kind: 'examine'; readonly number: number; readonly change: Patch | null }
  | { readonly kind: 'report'; readonly number: number; readonly job: Json }
  | { readonly kind: 'open'; readonly number: number; readonly text: string }
  | { readonly kind: 'outline'; readonly number: number; readonly found: Found }
  | { readonly kind: 'range'; readonly number: number; readonly job: Json; readonly query: RangeQuery }
  | { readonly kind: 'measure'; readonly number: number; readonly job: Json; readonly asked: Measuring }
  | { readonly kind: 'propose'; readonly number: number; readonly aim: Json }
  | { readonly kind: 'check'; readonly number: number; readonly aim: Json };

/** Of a report what a reader needs at once, without shapes: small enough to hand over at every move. */
export type Summary = Pick<
  Report,
  | 'units'
  | 'resolution'
  | 'limits'
  | 'names'
  | 'massUnit'
  | 'removedVolume'
  | 'webs'
  | 'knifeEdges'
  | 'floors'
  | 'findings'
> & {
  readonly pieces: readonly Pick<ReportPiece, 'id' | 'label' | 'role' | 'area' | 'volume' | 'mass'>[];
  readonly cuts: readonly (Pick<
    ReportCut,
    'id' | 'relation' | 'depth' | 'through' | 'from' | 'removedVolume'
  > & { readonly worked: Worked })[];
};

/** What came out for a job: its figures and its shapes, or all that is wrong with it. */
export type Outcome =
  | { readonly summary: Summary; readonly sketch: Sketch; readonly issues: null }
  | { readonly summary: null; readonly sketch: null; readonly issues: readonly JobIssue[] };

/** What comes of a job over a range, or why that cannot be told. */
export type RangeAnswer =
  | { readonly report: RangeReport; readonly fault: null }
  | { readonly report: null; readonly fault: string };

/** How to measure the arcs of a cut, and what readings say of the one that was asked for. */
export interface MeasureAnswer {
  /** Of that cut; none if it leaves no hollow arc, or while the job has faults. */
  readonly checks: readonly ReportCheck[];
  /** null without readings, and where nothing can be made of them. */
  readonly measured: Measured | null;
  /** Why not; null where it can. */
  readonly fault: string | null;
}

/** A way to make a part: the job, how it looks, and its figures. */
export interface WayAnswer {
  readonly job: JsonObject;
  readonly sketch: Sketch;
  readonly row: WayRow;
}

/** The ways to make a part, or what no tool can make, or what is wrong with the aim. */
export interface WaysAnswer {
  readonly units: Report['units'];
  readonly ways: readonly WayAnswer[];
  readonly refusals: readonly string[];
  readonly issues: readonly JobIssue[];
}

/** What the worker answers. The schemas of jobs and of aims come once, unasked, as soon as it runs. */
export type Answer =
  | { readonly kind: 'schema'; readonly schema: JsonObject; readonly aimSchema: JsonObject }
  | { readonly kind: 'checked'; readonly number: number; readonly issues: readonly JobIssue[] }
  /** The outcome as what leads to it from the last one that this worker gave, and from null at first. */
  | { readonly kind: 'examined'; readonly number: number; readonly change: Patch | null }
  | { readonly kind: 'report'; readonly number: number; readonly report: Report | null }
  | { readonly kind: 'outline'; readonly number: number; readonly outline: OutlineAnswer }
  | { readonly kind: 'range'; readonly number: number; readonly range: RangeAnswer }
  | { readonly kind: 'measure'; readonly number: number; readonly measure: MeasureAnswer }
  | { readonly kind: 'ways'; readonly number: number; readonly ways: WaysAnswer }
  | {
      readonly kind: 'opened';
      readonly number: number;
      /** The text's value; null if it is none that a form can show. */
      readonly job: JsonObject | null;
      /** Whether that is no job but an aim: what is to come out, and the tools. */
      readonly isAim: boolean;
      readonly issues: readonly JobIssue[];
    };
