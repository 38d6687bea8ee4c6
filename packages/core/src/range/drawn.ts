import type { Cut } from '../cut/cut.js';
import { footprint } from '../cut/footprint.js';
import { boxesMeet } from '../geometry/bounds.js';
import type { Edge } from '../geometry/edge.js';
import { directionAtEnd, directionAtStart, edgeBounds } from '../geometry/measure.js';
import { meet } from '../geometry/meet.js';
import { distance, type Point } from '../geometry/point.js';
import { turnBetween } from '../left/interior-angle.js';
import { SAME_DIRECTION } from '../left/walls.js';
import { loopsOf } from '../region/measure.js';
import { circleLoop, type Loop } from '../region/region.js';
import { type Curve, circle, curveOf } from './curves.js';

/** A corner of a boundary, a joint between two of its names, or a crossing of two boundaries. */
export interface Corner {
  readonly at: Point;
  /** The curves that end or cross there. */
  readonly curves: readonly Curve[];
  /** Whether it points into metal. */
  readonly isReflex: boolean;
}

/** An edge of a boundary, and the curve that it is of: a whole circle where it is one arc of two. */
export interface DrawnEdge {
  readonly edge: Edge;
  readonly curve: Curve;
  /** Which boundary it is of: edges of one cross no others of the same. */
  readonly owner: number;
}

/** A boundary as edges and corners. */
export interface Drawn {
  readonly edges: readonly DrawnEdge[];
  readonly corners: readonly Corner[];
}

/** The loops of an outline. */
export function drawnOutline(loops: readonly Loop[], owner: number): Drawn {
  const all = loops.map((loop) => drawnLoop(loop, owner));
  return { edges: all.flatMap(({ edges }) => edges), corners: all.flatMap(({ corners }) => corners) };
}

/** The rims of a cut. Its corners never point into metal: they are where what it takes away is narrow. */
export function drawnCut(cut: Cut, owner: number): Drawn {
  if (cut.kind === 'swept') {
    const { edges, corners } = drawnOutline(loopsOf(footprint(cut)), owner);
    return { edges, corners: corners.map((corner) => ({ ...corner, isReflex: false })) };
  }
  const rim = (radius: number, way: 1 | -1): DrawnEdge[] => {
    const curve = circle(cut.center, radius, way);
    return circleLoop(cut.center, radius, way > 0).map((edge) => ({ edge, curve, owner }));
  };
  const outer = rim(cut.diameter / 2, 1);
  if (cut.kind === 'bore') return { edges: outer, corners: [] };
  return { edges: [...outer, ...rim(cut.diameter / 2 - cut.wall, -1)], corners: [] };
}

function drawnLoop(loop: Loop, owner: number): Drawn {
  const edges = loop.map((edge) => ({ edge, curve: curveOf(edge), owner }));
  const corners = edges.flatMap(({ edge, curve }, k): Corner[] => {
    const next = edges[(k + 1) % edges.length] as DrawnEdge;
    const turn = turnBetween(directionAtEnd(edge), directionAtStart(next.edge));
    if (Math.abs(turn) <= SAME_DIRECTION && edge.source === next.edge.source) return [];
    // The inside is to the left, so a turn to the right points into it.
    return [{ at: edge.b, curves: [curve, next.curve], isReflex: turn < -SAME_DIRECTION }];
  });
  return { edges, corners };
}

/** Where edges of different boundaries meet. */
export function crossingsOf(edges: readonly DrawnEdge[], tolerance: number): Corner[] {
  const boxed = edges
    .map((drawn) => ({ ...drawn, box: edgeBounds(drawn.edge) }))
    .sort((a, b) => a.box.minX - b.box.minX);
  const found: Corner[] = [];
  boxed.forEach((one, k) => {
    for (let n = k + 1; n < boxed.length; n++) {
      const other = boxed[n] as (typeof boxed)[number];
      if (other.box.minX > one.box.maxX + tolerance) break;
      if (other.owner === one.owner || !boxesMeet(one.box, other.box)) continue;
      for (const at of placesWhereMeet(one.edge, other.edge, tolerance)) {
        found.push({ at, curves: [one.curve, other.curve], isReflex: false });
      }
    }
  });
  return withoutRepeats(found, tolerance);
}

function placesWhereMeet(e: Edge, f: Edge, tolerance: number): readonly Point[] {
  const meeting = meet(e, f, tolerance);
  if (meeting.kind === 'apart') return [];
  return meeting.kind === 'points' ? meeting.points.map(({ at }) => at) : meeting.ends.flat();
}

/** One of each: a crossing at the joint of two arcs is found on both. */
function withoutRepeats(corners: readonly Corner[], near: number): Corner[] {
  const sorted = [...corners].sort((a, b) => a.at.x - b.at.x);
  return sorted.filter((corner, k) => {
    for (let n = k - 1; n >= 0; n--) {
      const other = sorted[n] as Corner;
      if (corner.at.x - other.at.x > near) return true;
      const isSame = corner.curves.every((curve) => other.curves.includes(curve));
      if (isSame && distance(corner.at, other.at) <= near) return false;
    }
    return true;
  });
}
