import type { Cut } from '../cut/cut.js';
import { drillPoint } from '../datum/keep-out.js';
import { checkNotNegative, checkOverZero } from '../geometry/checks.js';
import type { Edge } from '../geometry/edge.js';
import { edgeLength } from '../geometry/measure.js';
import type { ToolKind } from './tool.js';

/**
 * What a tool does in a step: a drill drills; a hollow cutter and a boring head go straight down on their circle; an end
 * mill plunges into a bore of its own size, mills round inside of a wider one, or along a path.
 */
export const DOINGS = ['drills', 'rings', 'bores', 'plunges', 'mills round', 'mills along'] as const;

/** What a tool does in a step. */
export type Doing = (typeof DOINGS)[number];

/** What a tool does in a cut, or in a pass of it. */
export function doingOf(
  tool: { readonly kind: ToolKind; readonly diameter: number },
  cut: { readonly kind: Cut['kind']; readonly diameter: number },
): Doing {
  switch (tool.kind) {
    case 'drill':
      return 'drills';
    case 'annular cutter':
      return 'rings';
    case 'boring head':
      return 'bores';
    case 'end mill':
      if (cut.kind === 'swept') return 'mills along';
      return tool.diameter < cut.diameter ? 'mills round' : 'plunges';
  }
}

/** One pass, by what its travel depends on; lengths in one unit. */
export type PassTravel =
  | { readonly doing: 'rings' | 'bores' | 'plunges'; readonly depth: number }
  | { readonly doing: 'drills'; readonly depth: number; readonly diameter: number }
  /** `diameter` is that of the bore after this pass. */
  | { readonly doing: 'mills round'; readonly diameter: number; readonly toolDiameter: number }
  /** Where the tool's centre goes at its feed in this pass: leads and cut. */
  | { readonly doing: 'mills along'; readonly edges: readonly Edge[] };

/**
 * How far a tool goes at its feed in one pass. Straight down: the depth, and for a drill its point besides, which meets
 * the metal first. Inside of a bore: once round, with the tool at its wall. Along a path: its length. That of a cut is
 * the sum of its passes'.
 *
 * Source: definition; a tool of diameter d at the wall of a bore of diameter D has its centre on a circle of D - d.
 * @throws RangeError if a length is not a finite number over 0 (a depth: 0 or more), or a tool that mills round is not
 *   smaller than the bore.
 */
export function travelOfPass(pass: PassTravel): number {
  switch (pass.doing) {
    case 'drills':
      checkNotNegative('travelOfPass', 'depth', pass.depth);
      checkOverZero('travelOfPass', 'diameter', pass.diameter);
      return pass.depth + drillPoint(pass.diameter);
    case 'rings':
    case 'bores':
    case 'plunges':
      checkNotNegative('travelOfPass', 'depth', pass.depth);
      return pass.depth;
    case 'mills round': {
      const { diameter, toolDiameter } = pass;
      checkOverZero('travelOfPass', 'diameter', diameter);
      checkOverZero('travelOfPass', 'toolDiameter', toolDiameter);
      if (!(toolDiameter < diameter)) {
        throw new RangeError(
          `travelOfPass: toolDiameter is ${toolDiameter}; it must be under the diameter, ${diameter}, to go round`,
        );
      }
      return Math.PI * (diameter - toolDiameter);
    }
    case 'mills along':
      return pass.edges.reduce((sum, edge) => sum + edgeLength(edge), 0);
  }
}
