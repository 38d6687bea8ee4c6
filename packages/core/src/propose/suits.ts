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

/** The side that a feature is made from, and its depth as a job has it. */
export function depthOf({ layer: { from, depth } }: Feature): {
  readonly side: PlannedCut['side'];
  readonly depth: { readonly from?: PlannedCut['side']; readonly depth?: number };
} {
  return { side: from, depth: depth === null ? {} : { from, depth } };
}
