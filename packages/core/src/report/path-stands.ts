import type { ReportCut, ReportEdge } from './report-schema.js';

/** A place that a tool comes to along the path of a swept cut, and how. Lengths in the unit of the report. */
export interface PathStand {
  /** On the part as drawn. */
  readonly at: readonly [number, number];
  /** Which run of the path, from 1: the tool goes down where a run starts, and is lifted where it ends. */
  readonly run: number;
  /** How it comes there: lifted and then straight down, or at depth along a line or an arc. */
  readonly move: 'down' | 'line' | 'arc';
  /** Of a move along an arc, as drawn; else null. */
  readonly arc: PathArc | null;
  /** Whether the tool is lifted there before it goes anywhere else. */
  readonly lift: boolean;
}

/** An arc that the middle of a tool goes along. */
export interface PathArc {
  readonly center: readonly [number, number];
  readonly radius: number;
  readonly ccw: boolean;
}

/**
 * Where the tool of a swept cut goes, place by place: the start of every run and the end of each of its edges, leads
 * among them. A drawn path is one run; a path along the outline has one for each of its passes, between which metal
 * may stand. Empty for cuts that are not swept.
 */
export function pathStands({ path, toolPath }: Pick<ReportCut, 'path' | 'toolPath'>): PathStand[] {
  return runsOf(path, toolPath).flatMap((edges, k) => {
    const run = k + 1;
    const [first] = edges as [ReportEdge];
    return [
      { at: first.a, run, move: 'down' as const, arc: null, lift: false },
      ...edges.map((edge, e) => ({
        at: edge.b,
        run,
        move: edge.kind,
        arc: edge.kind === 'line' ? null : { center: edge.center, radius: edge.radius, ccw: edge.ccw },
        lift: e === edges.length - 1,
      })),
    ];
  });
}

function runsOf(path: ReportCut['path'], toolPath: ReportCut['toolPath']): (readonly ReportEdge[])[] {
  if (path === null) return [];
  const runs =
    toolPath === null
      ? [path]
      : toolPath.passes.map(({ leadIn, cut, leadOut }) => [...leadIn, ...cut, ...leadOut]);
  return runs.filter(({ length }) => length > 0);
}
