import type { CutDocument, EdgeDocument } from '../document/schema.js';
import type { Edge } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import type { JobCut } from '../job/plan.js';
import { angleMovedBy, isMirrored, type Motion, movedBy } from './motion.js';

/**
 * A cut written out where motions take it: its place as a point or as edges, all else as it was written. A path is gone
 * along so that the metal stays on the same side of the tool's way, since the spindle turns the same way.
 * @param written as it stands in the job
 * @param read what it comes to
 */
export function plainCut(
  written: CutDocument,
  read: JobCut,
  id: string,
  motions: readonly Motion[],
): CutDocument {
  if (written.kind === 'swept') {
    const edges = read.kind === 'swept' ? read.path : [];
    return { ...written, id, path: { edges: pathMovedBy(motions, edges) } };
  }
  const center = read.kind === 'swept' ? { x: 0, y: 0 } : read.center;
  const placed = { id, center: pair(movedBy(motions, center)), diameter: read.diameter };
  if (written.kind === 'annular') return { ...written, ...placed };
  const { passes } = written;
  if (passes?.kind !== 'step in' || typeof passes.approach !== 'number') return { ...written, ...placed };
  const approach = angleMovedBy(motions, passes.approach);
  return { ...written, ...placed, passes: { ...passes, approach } };
}

/** Edges where motions take them; mirrored they run from end to start, so that left of the way stays left of it. */
export function pathMovedBy(motions: readonly Motion[], edges: readonly Edge[]): EdgeDocument[] {
  const moved = edges.map((edge) => edgeMovedBy(motions, edge));
  return isMirrored(motions) ? moved.reverse() : moved;
}

/** An edge where motions take it; mirrored it runs from end to start. */
export function edgeMovedBy(motions: readonly Motion[], edge: Edge): EdgeDocument {
  const ends = isMirrored(motions) ? [edge.b, edge.a] : [edge.a, edge.b];
  const [a, b] = ends.map((p) => pair(movedBy(motions, p))) as [[number, number], [number, number]];
  if (edge.kind === 'line') return { kind: 'line', a, b };
  // Mirrored and run the other way, an arc turns as it did.
  return { kind: 'arc', a, b, center: pair(movedBy(motions, edge.center)), ccw: edge.ccw };
}

/** A place as a job has it. */
export function pair({ x, y }: Point): [number, number] {
  return [x + 0, y + 0];
}
