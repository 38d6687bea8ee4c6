import type { ToolKind } from '../cutting/tool.js';
import type { ReportCut, ReportEdge } from '../report/report-schema.js';

/**
 * How far a tool goes at its feed in a cut, in the unit of the report. Straight down: the depth. An end mill goes along
 * its path at one depth, or once round inside of a bore that is wider than itself. Once for each pass.
 */
export function travelOf(
  kind: ToolKind,
  diameter: number,
  cut: Pick<ReportCut, 'kind' | 'diameter' | 'depth' | 'passes' | 'path' | 'toolPath'>,
): number {
  const passes = Math.max(1, cut.passes?.list.length ?? 1);
  if (cut.kind === 'swept') {
    const edges = cut.toolPath?.passes.flatMap(({ leadIn, cut, leadOut }) => [...leadIn, ...cut, ...leadOut]);
    return lengthOf(edges ?? cut.path ?? []);
  }
  if (kind !== 'end mill' || diameter >= cut.diameter) return cut.depth * passes;
  return Math.PI * (cut.diameter - diameter) * passes;
}

function lengthOf(edges: readonly ReportEdge[]): number {
  return edges.reduce((sum, edge) => sum + edgeLength(edge), 0);
}

function edgeLength(edge: ReportEdge): number {
  if (edge.kind === 'line') return Math.hypot(edge.b[0] - edge.a[0], edge.b[1] - edge.a[1]);
  const { a, b, center, radius, ccw } = edge;
  const [ax, ay] = [a[0] - center[0], a[1] - center[1]];
  const [bx, by] = [b[0] - center[0], b[1] - center[1]];
  const turn = Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
  const sweep = ccw ? turn : -turn;
  return radius * (sweep < 0 ? sweep + 2 * Math.PI : sweep);
}
