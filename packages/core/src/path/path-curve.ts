import { offset } from '../combine/offset.js';
import type { Edge } from '../geometry/edge.js';
import { reversed } from '../geometry/parts.js';
import { samePoint } from '../geometry/point.js';
import type { OutlineEdge, Tagged } from './path-tags.js';

/**
 * Where the tool runs: `outside` of the region, which is metal that stays; or `inside` of it, where it is metal that
 * goes, such as a pocket.
 */
export type ToolSide = 'outside' | 'inside';

/**
 * Which way round, for a spindle that turns clockwise as seen from above: in `climb` milling the metal that stays is
 * on the right of the direction of travel, so that teeth and feed of the work go the same way; in `conventional`
 * milling it is on the left.
 * Source: common practice, no source.
 */
export type Milling = 'climb' | 'conventional';

/** A closed curve that the centre of the tool can go round, in the direction of the outline. */
export interface CenterLoop {
  /** Named by the numbers of the outline edges that they run beside. */
  readonly edges: readonly Edge[];
  /** Whether it runs along outer loops of the region; else it runs along holes. */
  readonly outer: boolean;
}

/** All places of the centre at a distance from an outline, on one side. */
export function centerLoops(tags: Tagged, side: ToolSide, distance: number): CenterLoop[] {
  const beside = offset(tags.region, side === 'outside' ? distance : -distance);
  return beside.flatMap(({ outer, holes }) => [
    { edges: outer, outer: true },
    ...holes.map((edges) => ({ edges, outer: false })),
  ]);
}

/**
 * Whether the tool runs against the direction of the outline, which has the region on its left. Outside of it, what
 * stays is on the left then; inside of it, on the right.
 */
export function runsBackwards(side: ToolSide, milling: Milling): boolean {
  return (side === 'outside') === (milling === 'climb');
}

/** A chain run the other way, if asked. */
export function directed(edges: readonly Edge[], backwards: boolean): readonly Edge[] {
  return backwards ? edges.map(reversed).reverse() : edges;
}

/** Whether an edge of a centre loop goes round the end of an outline edge, instead of beside the edge. */
export function pivots(edge: Edge, { edge: beside }: OutlineEdge): boolean {
  return edge.kind === 'arc' && samePoint(edge.center, beside.b);
}
