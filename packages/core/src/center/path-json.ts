import type { Edge, Source } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import type { CenterPass, CenterPath } from './path.js';

/** An edge of a path as JSON has it; the same form as edges of jobs and reports. */
export type PathEdgeJson =
  | {
      readonly kind: 'line';
      readonly a: readonly [number, number];
      readonly b: readonly [number, number];
      readonly source?: Source;
    }
  | {
      readonly kind: 'arc';
      readonly a: readonly [number, number];
      readonly b: readonly [number, number];
      readonly center: readonly [number, number];
      readonly radius: number;
      readonly ccw: boolean;
      readonly source?: Source;
    };

/** A pass as JSON has it; see `CenterPass`. */
export interface PassJson {
  readonly leadIn: readonly PathEdgeJson[];
  readonly cut: readonly PathEdgeJson[];
  readonly leadOut: readonly PathEdgeJson[];
  readonly closed: boolean;
  readonly outer: boolean;
  readonly ccw: boolean;
}

/** Edges as JSON has them: points are pairs, -0 is 0. Can stand as the path of a swept cut in a job. */
export function edgesToJson(edges: readonly Edge[]): PathEdgeJson[] {
  return edges.map((edge): PathEdgeJson => {
    const ends = { a: pair(edge.a), b: pair(edge.b) };
    const source = edge.source === undefined ? {} : { source: edge.source };
    if (edge.kind === 'line') return { kind: 'line', ...ends, ...source };
    const { center, radius, ccw } = edge;
    return { kind: 'arc', ...ends, center: pair(center), radius, ccw, ...source };
  });
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

function pair(p: Point): readonly [number, number] {
  return [p.x + 0, p.y + 0];
}
