import type { Aim } from '../aim/aim.js';
import type { DrawerTool } from '../document/schema-drawer.js';
import { toolDocument } from '../read/read-drawer.js';
import { spindleSetOf } from '../result/running.js';
import type { PlannedCut } from './cut-plan.js';
import type { Feature } from './features.js';

/** Whether the spindle has a speed for a tool at a diameter; true where none is known of either. */
export function spindleSuits({ job }: Aim, tool: DrawerTool, diameter: number): boolean {
  const { spindle, range, limitedBy } = spindleSetOf(job, toolDocument(tool, []), diameter);
  const isHeadOfUnknownSpeed = tool.kind === 'boring head' && tool.maxSpeed === undefined;
  return spindle === null || range !== null || (isHeadOfUnknownSpeed && limitedBy === 'tool');
}

/** How far cuts from both sides overlap in the middle, of the thickness; common practice, no source. */
const OVERLAP_SHARE = 1 / 20;

/** One of the descents in which a tool gets to the depth of a feature. */
export interface Descent {
  readonly side: PlannedCut['side'];
  /** As a job has it. */
  readonly depth: { readonly from?: PlannedCut['side']; readonly depth?: number };
  /** What is put behind the name of its cut. */
  readonly word: string;
}

/** Whether a tool gets to the depth of a feature: through from one side, or from both. */
export function reaches(aim: Aim, tool: DrawerTool, feature: Feature): boolean {
  return descentsOf(aim, tool, feature).length > 0;
}

/** How a tool gets to the depth of a feature: once, or half way from each side; none where it does not. */
export function descentsOf(
  aim: Aim,
  tool: DrawerTool,
  { layer: { from, depth } }: Feature,
): readonly Descent[] {
  const { thickness } = aim.job;
  const most = tool.kind === 'boring head' ? tool.bar : tool.reach;
  // The head itself must stay off the part.
  const comes = (deep: number) => (tool.kind === 'boring head' ? most > deep : most >= deep);
  if (depth !== null) return comes(depth) ? [{ side: from, depth: { from, depth }, word: '' }] : [];
  if (comes(thickness)) return [{ side: 'top', depth: {}, word: '' }];
  if (!comes(thickness / 2)) return [];
  const wanted = (1 / 2 + OVERLAP_SHARE) * thickness;
  const half = comes(wanted) ? wanted : tool.kind === 'boring head' ? thickness / 2 : most;
  return (['top', 'bottom'] as const).map((side) => ({
    side,
    depth: { from: side, depth: half },
    word: ` from ${side}`,
  }));
}

/** A round cut as it is planned, but for how deep it goes. */
export interface PlannedBore extends Pick<PlannedCut, 'id' | 'stage' | 'isLast'> {
  readonly at: readonly [number, number];
  readonly diameter: number;
  readonly passes?: object;
}

/** A bore in the descents that its tool needs: one cut, or one from each side. */
export function boresOf(
  aim: Aim,
  tool: DrawerTool,
  feature: Feature,
  { id, stage, isLast, at, diameter, passes }: PlannedBore,
): PlannedCut[] {
  return descentsOf(aim, tool, feature).map(({ side, depth, word }) => ({
    id: `${id}${word}`,
    tool,
    feature: feature.id,
    stage,
    side,
    isLast,
    document: {
      kind: 'bore',
      center: at,
      diameter,
      ...(passes === undefined ? {} : { passes }),
      ...depth,
    } as PlannedCut['document'],
  }));
}
