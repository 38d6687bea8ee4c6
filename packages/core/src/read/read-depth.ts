import type { EveryCut } from '../cut/cut.js';
import type { CutDocument } from '../document/schema.js';

/** Depths that differ by less than this share are one: what sums of drawing numbers round away. */
const SAME_DEPTH = 1e-9;

/**
 * How deep a cut of a job really goes: no deeper than its cutter reaches, and through where that is all of the
 * part. A depth over the thickness is how a shop asks for a clean break-through, so it is through as well.
 * @param thickness of the part; null if it is at fault itself
 */
export function readDepth(
  document: CutDocument,
  thickness: number | null,
): Pick<EveryCut, 'depth' | 'through'> {
  const whole = thickness ?? Infinity;
  const asked = document.depth === undefined || document.depth === 'through' ? whole : document.depth;
  const reach = (document.kind === 'annular' ? document.reach : undefined) ?? Infinity;
  const depth = Math.min(asked, reach);
  const through = depth >= whole * (1 - SAME_DEPTH);
  return { depth: through ? whole : depth, through };
}
