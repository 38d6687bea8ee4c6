import type { Edge } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import type { Burrs } from '../load/burrs.js';
import type { LoadByHeight } from '../load/by-height.js';
import type { PlaceFact } from '../load/tool-place.js';
import type { Underneath } from '../load/underneath.js';
import type { WayOff } from '../load/way-off.js';
import type { ClearStand } from '../passes/clear-stand.js';
import type { Region } from '../region/region.js';
import type { PassesStart } from '../result/passes-row.js';
import type { Approach } from './order.js';
import type { Pace } from './pace.js';
import type { Stand } from './stands.js';

/** One approach of one tool, in the drawing's frame. Lengths in the unit of the job. */
export interface Step {
  readonly approach: Approach;
  /** Number of the pass, from 0, and how many the cut has. */
  readonly pass: number;
  readonly passes: number;
  /** Of a round cut; null for a path. */
  readonly center: Point | null;
  readonly path: readonly Edge[] | null;
  readonly diameter: number;
  /** What the tool takes up while it is down, seen from above. */
  readonly body: Region;
  /** The lowest place that it comes to, over the face that the part lies on. */
  readonly lowest: number;
  /** Plan area and volume of what it takes, loose metal included. */
  readonly area: number;
  readonly volume: number;
  /** What there is once it is done; what is held or hangs counts as kept. */
  readonly volumes: { readonly kept: number; readonly loose: number; readonly removed: number };
  /** Null for a path. */
  readonly load: LoadByHeight | null;
  /** Null for a path. */
  readonly burrs: Burrs | null;
  /** What is amiss with the tool in its place, or to be known of it. */
  readonly footing: readonly PlaceFact[];
  readonly under: Underneath;
  readonly wayOff: WayOff | null;
  /** Where the tool stands clear before the first pass of a cut; null for all other steps. */
  readonly clear: { readonly kind: PassesStart['kind']; readonly stand: ClearStand } | null;
  readonly stands: readonly Stand[];
  /** Null where the job names no tool. */
  readonly pace: Pace | null;
}
