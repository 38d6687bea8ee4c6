import { type Bounds, boxAround } from './bounds.js';
import { type BoxTree, boxTreeOf } from './box-tree.js';
import { type Nearest, nearestOnEdge } from './distance.js';
import type { ArcEdge, Edge } from './edge.js';
import { edgeBounds, onArcSide } from './measure.js';
import { meet } from './meet.js';
import { distance, type Point } from './point.js';

/** The nearest places of two edges. */
export interface Gap {
  readonly distance: number;
  readonly onFirst: Point;
  readonly onSecond: Point;
}

/**
 * How far two edges are apart, 0 where they meet. Where they do not, the shortest way between them starts at an end
 * of one, or stands upright on both: on the line from a centre.
 * @param touching what is closer than this has met
 */
export function gapBetween(e: Edge, f: Edge, touching: number): Gap {
  const met = meet(e, f, touching);
  if (met.kind === 'points') {
    const at = (met.points[0] as { at: Point }).at;
    return { distance: 0, onFirst: at, onSecond: at };
  }
  if (met.kind === 'overlap') {
    const at = (met.ends[0] as readonly [Point, Point])[0];
    return { distance: 0, onFirst: at, onSecond: at };
  }
  let best = fromPlace(e.a, f);
  const take = (gap: Gap) => {
    if (gap.distance < best.distance) best = gap;
  };
  take(fromPlace(e.b, f));
  for (const end of [f.a, f.b]) take(swapped(fromPlace(end, e)));
  if (f.kind === 'arc') for (const foot of feetOn(e, f.center)) take(fromPlace(foot, f));
  if (e.kind === 'arc') for (const foot of feetOn(f, e.center)) take(swapped(fromPlace(foot, e)));
  return best;
}

function fromPlace(p: Point, edge: Edge): Gap {
  const nearest = nearestOnEdge(edge, p);
  return { distance: nearest.distance, onFirst: p, onSecond: nearest.at };
}

function swapped({ distance: away, onFirst, onSecond }: Gap): Gap {
  return { distance: away, onFirst: onSecond, onSecond: onFirst };
}

/** The places of an edge where a line through `p` stands upright on it; on an arc there may be two. */
export function feetOn(edge: Edge, p: Point): Point[] {
  if (edge.kind === 'arc') return feetOnArc(edge, p);
  const dx = edge.b.x - edge.a.x;
  const dy = edge.b.y - edge.a.y;
  const share = ((p.x - edge.a.x) * dx + (p.y - edge.a.y) * dy) / (dx * dx + dy * dy);
  return share >= 0 && share <= 1 ? [{ x: edge.a.x + share * dx, y: edge.a.y + share * dy }] : [];
}

function feetOnArc(arc: ArcEdge, p: Point): Point[] {
  const { center, radius } = arc;
  const away = distance(center, p);
  if (away === 0) return [];
  const dx = ((p.x - center.x) / away) * radius;
  const dy = ((p.y - center.y) / away) * radius;
  return [
    { x: center.x + dx, y: center.y + dy },
    { x: center.x - dx, y: center.y - dy },
  ].filter((foot) => onArcSide(arc, foot));
}

/** A hair over a distance, so that what is as near but for rounding is looked at too. */
const hairOver = (distance: number): number => distance * (1 + 1e-12);

/** Edges with a tree of the boxes round them, to look only at those that may be near. Of equals the first counts. */
export class NearEdges {
  private readonly tree: BoxTree;

  constructor(readonly edges: readonly Edge[]) {
    this.tree = boxTreeOf(edges.map(edgeBounds));
  }

  /** The edges whose box comes within a distance of another box. */
  within(box: Bounds, reach: number): Edge[] {
    const found: number[] = [];
    this.tree.nearBox(box, reach, (k) => {
      found.push(k);
      return reach;
    });
    return found.sort((a, b) => a - b).map((k) => this.edges[k] as Edge);
  }

  /**
   * The nearest place to an edge, if it is nearer than `reach`.
   * @param touching what is closer than this has met
   */
  nearestTo(edge: Edge, reach: number, touching: number): Gap | null {
    let best: Gap | null = null;
    let which = 0;
    this.tree.nearBox(edgeBounds(edge), reach, (k) => {
      const gap = gapBetween(edge, this.edges[k] as Edge, touching);
      const isNearer = best === null ? gap.distance < reach : gap.distance < best.distance;
      if (isNearer || (gap.distance === best?.distance && k < which)) {
        best = gap;
        which = k;
      }
      return best === null ? reach : hairOver(best.distance);
    });
    return best;
  }

  /** The nearest place to a point; null where there are no edges. */
  nearestPlace(p: Point): Nearest | null {
    let best: Nearest | null = null;
    let which = 0;
    this.tree.nearBox(boxAround(p), Infinity, (k) => {
      const nearest = nearestOnEdge(this.edges[k] as Edge, p);
      if (
        best === null ||
        nearest.distance < best.distance ||
        (nearest.distance === best.distance && k < which)
      ) {
        best = nearest;
        which = k;
      }
      return hairOver(best.distance);
    });
    return best;
  }

  /** Distance from a place to the nearest edge; infinite where there is none. */
  distanceFrom(p: Point): number {
    return this.nearestPlace(p)?.distance ?? Infinity;
  }
}
