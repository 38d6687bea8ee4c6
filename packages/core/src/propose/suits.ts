import type { Aim } from '../aim/aim.js';
import type { DrawerTool } from '../aim/schema-drawer.js';
import type { ToolDocument } from '../document/schema.js';
import { spindleSetOf } from '../result/running.js';
import type { PlannedCut } from './cut-plan.js';
import type { Feature } from './features.js';

/** The tool as a job has it, with the cuts that it makes. */
export function jobTool(tool: DrawerTool, cuts: readonly string[]): ToolDocument {
  const { id, kind, toolMaterial, maxSpeed } = tool;
  const common = { id, kind, toolMaterial, ...(maxSpeed === undefined ? {} : { maxSpeed }), cuts };
  switch (tool.kind) {
    case 'boring head': {
      const { smallest, largest, bar, dial } = tool;
      return { ...common, smallest, largest, bar, ...(dial === undefined ? {} : { dial }) };
    }
    case 'drill':
      return { ...common, diameter: tool.diameter };
    case 'annular cutter':
      return {
        ...common,
        diameter: tool.diameter,
        ...(tool.teeth === undefined ? {} : { teeth: tool.teeth }),
      };
    case 'end mill':
      return {
        ...common,
        diameter: tool.diameter,
        centerCutting: tool.centerCutting ?? false,
        ...(tool.teeth === undefined ? {} : { teeth: tool.teeth }),
      };
  }
}

/** Whether the spindle has a speed for a tool at a diameter; true where none is known of either. */
export function spindleSuits({ job }: Aim, tool: DrawerTool, diameter: number): boolean {
  const { spindle, range, limitedBy } = spindleSetOf(job, jobTool(tool, []), diameter);
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
