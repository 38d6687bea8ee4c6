import type { Aim } from '../aim/aim.js';
import type { CutDocument, JobDocument } from '../document/schema.js';
import { tidied } from '../document/tidy.js';
import type { PlannedCut } from './cut-plan.js';
import { jobTool } from './suits.js';

/** Cuts of an aim in their order, as an ordinary job. */
export function jobOfCuts({ document, keep }: Aim, cuts: readonly PlannedCut[]): JobDocument {
  const { edgebite, name, units, blank, thickness, material, limits, resolution, machine } = document;
  const tools = [...new Set(cuts.map(({ tool }) => tool))].map((tool) =>
    jobTool(
      tool,
      cuts.flatMap((cut) => (cut.tool === tool ? [cut.id] : [])),
    ),
  );
  return tidied({
    edgebite,
    name,
    units,
    part: { outline: blank, thickness, material },
    keep,
    limits,
    resolution,
    machine,
    tools: tools.length === 0 ? undefined : tools,
    cuts: cuts.map(({ id, document }) => ({ id, ...document }) as CutDocument),
  }) as JobDocument;
}
