import type { Aim } from '../aim/aim.js';
import type { CutDocument, JobDocument, SetupDocument } from '../document/schema.js';
import { tidied } from '../document/tidy.js';
import type { PlannedCut } from '../feature/cut-plan.js';

/** Cuts of an aim in their order, as an ordinary job: each names its tool of the drawer. */
export function jobOfCuts(
  { document, keep }: Aim,
  cuts: readonly PlannedCut[],
  setups?: readonly SetupDocument[],
): JobDocument {
  const { edgebite, name, units, blank, thickness, material, limits, resolution, machine, drawer } = document;
  return tidied({
    edgebite,
    name,
    units,
    part: { outline: blank, thickness, material },
    keep,
    limits,
    resolution,
    machine,
    drawer,
    setups,
    cuts: cuts.map(cutOf),
  }) as JobDocument;
}

/** A cut without what it takes from its tool. */
function cutOf({ id, tool, document }: PlannedCut): CutDocument {
  if (tool.kind === 'boring head') {
    const { diameter, ...own } = document;
    return { id, tool: tool.id, ...own, diameter, ...passesOf(document, tool.smallest) } as CutDocument;
  }
  if (tool.kind === 'annular cutter') {
    const {
      diameter: _,
      wall: __,
      reach: ___,
      ...own
    } = document as { diameter: number; wall: number; reach?: number };
    return { id, tool: tool.id, ...own } as unknown as CutDocument;
  }
  const { diameter, ...own } = document;
  const size = diameter === tool.diameter ? {} : { diameter };
  return { id, tool: tool.id, ...own, ...size, ...passesOf(document, tool.diameter) } as CutDocument;
}

/** Passes without the smallest bore, where that is the tool's own. */
function passesOf(document: PlannedCut['document'], smallest: number): object {
  const all = document.kind === 'bore' ? document.passes : undefined;
  if (all?.kind !== 'open out' || all.smallest !== smallest) return {};
  const { smallest: _, ...passes } = all;
  return { passes };
}
