import { type EdgeJson, edgeToJson } from '../format/json.js';
import type { Edge } from '../geometry/edge.js';
import type { CenterPass, CenterPath } from './path.js';

/** A pass as JSON has it; see `CenterPass`. */
export interface PassJson {
  readonly leadIn: readonly EdgeJson[];
  readonly cut: readonly EdgeJson[];
  readonly leadOut: readonly EdgeJson[];
  readonly closed: boolean;
  readonly outer: boolean;
  readonly ccw: boolean;
}

/** Edges as JSON has them: points are pairs, -0 is 0. Can stand as the path of a swept cut in a job. */
export function edgesToJson(edges: readonly Edge[]): EdgeJson[] {
  return edges.map(edgeToJson);
}

/** The passes of a path as JSON has them. */
export function passesToJson(passes: CenterPath['passes']): PassJson[] {
  return passes.map(({ leadIn, cut, leadOut, closed, outer, ccw }: CenterPass) => ({
    leadIn: edgesToJson(leadIn),
    cut: edgesToJson(cut),
    leadOut: edgesToJson(leadOut),
    closed,
    outer,
    ccw,
  }));
}
