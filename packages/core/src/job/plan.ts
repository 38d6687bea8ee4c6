import type { Cut } from '../cut/cut.js';
import type { JobDocument } from '../document/schema.js';
import type { CenterPass } from '../path/path.js';
import type { Milling, ToolSide } from '../path/path-curve.js';
import type { OutlineStretch } from '../path/path-stretch.js';

/** How the centre of a cut was given. */
export interface CenterPlan {
  readonly form: 'depth' | 'opening' | 'through' | 'tangent' | 'distances';
  /** Names of the edges that it is given by. */
  readonly about: readonly string[];
  /** Name of this answer, where there are others; null where it is the only one. */
  readonly pick: string | null;
}

/** The passes in which a bore is to be cut. Lengths in the unit of the job. */
export interface PassesPlan {
  readonly kind: 'step in' | 'open out';
  readonly bite: number;
  readonly finish: number;
  readonly spring: boolean;
  /** Degrees; null for the smoothest. */
  readonly approach: number | null;
  /** Smallest radius that the tool can be set to. */
  readonly smallest: number;
  readonly feed: { readonly perTurn: number; readonly rpm: number } | null;
}

/** How a swept cut follows the outline. */
export interface AlongPlan {
  readonly side: ToolSide;
  readonly milling: Milling;
  readonly allowance: number;
  /** Null where it goes all the way round. */
  readonly stretch: OutlineStretch | null;
  /** The loops that it is to go round: `outline`, `hole:2`. */
  readonly loops: readonly string[];
  readonly passes: readonly CenterPass[];
}

/** What a job says of how a cut is placed and made, beyond what it cuts. */
export interface CutPlan {
  readonly center: CenterPlan | null;
  readonly passes: PassesPlan | null;
  /** The gap to the wall before the tool is lifted. */
  readonly clearance: number;
  readonly along: AlongPlan | null;
  /** The side of the outline on which the whole tool is meant to stay; null if that is not said. */
  readonly stays: ToolSide | null;
}

/** A cut of a job; `plan` is there only where the job says more of it than what it cuts. */
export type JobCut = Cut & { readonly plan?: CutPlan | undefined };

/** The gap to the wall before a tool is lifted: clear of its runout and of the burr; common practice, no source. */
export const DEFAULT_CLEARANCE: Readonly<Record<JobDocument['units'], number>> = { mm: 0.2, inch: 0.01 };

/** The same cuts without what is said of how they are made. */
export function withoutPlans(cuts: readonly JobCut[]): Cut[] {
  return cuts.map(({ plan: _, ...cut }) => cut as Cut);
}
