import type { Laid } from '../datum/setup.js';
import { type Target, targetAt } from '../datum/target.js';
import type { ArcEdge, Edge } from '../geometry/edge.js';
import { type Point, samePoint } from '../geometry/point.js';
import type { CenterPass } from '../path/path.js';

/** What a tool does where it stands. */
export type StandKind = 'center' | 'start' | 'lead in' | 'path' | 'lead out' | 'back off';

/** A place where a tool is while it is down. */
export interface Stand {
  readonly what: StandKind;
  readonly target: Target;
  /** The arc that it comes along from the stand before; null for a straight way, and where it is lifted. */
  readonly arc: StandArc | null;
  /** Whether the tool is lifted before it goes there. */
  readonly lifted: boolean;
}

/** An arc as a person at the machine sees it. */
export interface StandArc {
  readonly edge: ArcEdge;
  readonly center: Target;
  readonly sense: 'clockwise' | 'counter-clockwise';
}

/** The one stand of a tool that goes straight down. */
export function standAt(lay: Laid, center: Point): Stand {
  return { what: 'center', target: targetAt(lay, center), arc: null, lifted: true };
}

/** Where the centre of a tool stands along a path: at each start, and at the end of each edge. */
export function standsAlong(lay: Laid, path: readonly Edge[]): Stand[] {
  return standsOf(
    lay,
    path.map((edge) => ({ edge, what: 'path' })),
  );
}

/** The same of runs with leads, between which the tool is lifted. */
export function standsOfRuns(lay: Laid, runs: readonly CenterPass[]): Stand[] {
  return runs.flatMap(({ leadIn, cut, leadOut }) =>
    standsOf(lay, [
      ...leadIn.map((edge) => ({ edge, what: 'lead in' as const })),
      ...cut.map((edge) => ({ edge, what: 'path' as const })),
      ...leadOut.map((edge) => ({ edge, what: 'lead out' as const })),
    ]),
  );
}

function standsOf(lay: Laid, legs: readonly { readonly edge: Edge; readonly what: StandKind }[]): Stand[] {
  let at: Point | null = null;
  return legs.flatMap(({ edge, what }): Stand[] => {
    const isStart = at === null || !samePoint(at, edge.a);
    at = edge.b;
    const start: Stand[] = isStart
      ? [{ what: 'start', target: targetAt(lay, edge.a), arc: null, lifted: true }]
      : [];
    return [...start, { what, target: targetAt(lay, edge.b), arc: arcOf(lay, edge), lifted: false }];
  });
}

/** A part that is turned over turns the sense of its arcs round. */
function arcOf(lay: Laid, edge: Edge): StandArc | null {
  if (edge.kind === 'line') return null;
  const isMirrored = lay.setup.lie.flip !== null;
  const sense = edge.ccw !== isMirrored ? 'counter-clockwise' : 'clockwise';
  return { edge, center: targetAt(lay, edge.center), sense };
}
