import { grown } from '../geometry/bounds.js';
import { type BoxTree, boxTreeOf } from '../geometry/box-tree.js';
import type { Edge } from '../geometry/edge.js';
import { edgeBounds, edgeLength, onArcSide, pointAlong } from '../geometry/measure.js';
import type { Point } from '../geometry/point.js';
import { windingRound } from './contains.js';
import { loopArea, loopBounds } from './measure.js';
import type { Loop } from './region.js';

/**
 * For each hole, the number of the smallest outer loop that it lies in, -1 for none; they may touch in joints.
 * @param near how near to a crossing or a joint a ray is not trusted
 */
export function homesOf(outers: readonly Loop[], holes: readonly Loop[], near: number): Int32Array {
  const within = outers.map((outer) => new Whereabouts([outer], near));
  const homes = new Int32Array(holes.length);
  const sizes = outers.map(loopArea);
  const tree = boxTreeOf(outers.map(loopBounds));
  holes.forEach((hole, k) => {
    // Loops touch at joints only, and this is as far from any as it can be.
    const at = pointAlong(longestOf(hole), 0.5);
    let home = -1;
    tree.toTheLeft(at.x, at.y, at.x, (outer) => {
      const isSmaller = home < 0 || (sizes[outer] as number) < (sizes[home] as number);
      if (isSmaller && (within[outer] as Whereabouts).isInside(1, () => at)) home = outer;
      return at.x;
    });
    homes[k] = home;
  });
  return homes;
}

function longestOf(loop: Loop): Edge {
  return loop.reduce((longest, edge) => (edgeLength(edge) > edgeLength(longest) ? edge : longest));
}

/** A tree of the edges is not worth its making until so many edges have been looked at one by one. */
const PATIENCE = 2000;

/** Tells whether places lie in what loops enclose. */
export class Whereabouts {
  private tree: BoxTree | null = null;
  private readonly edges: Edge[] = [];
  private looked = 0;

  /**
   * @param loops outer loops and holes of a region
   * @param near how near to a crossing or a joint a ray is not trusted
   */
  constructor(
    private readonly loops: readonly Loop[],
    private readonly near: number,
  ) {}

  /**
   * Whether places that are on no loop and all on one side of each lie inside.
   * @param count how many there are; the next is asked about where a ray from one is not trusted
   */
  isInside(count: number, placeOf: (k: number) => Point): boolean {
    if (this.looked > PATIENCE) {
      for (let k = 0; k < count; k++) {
        const inside = this.byRay(placeOf(k));
        if (inside !== null) return inside;
      }
    }
    return this.isWound(placeOf(0));
  }

  /** Null if the ray is not trusted. */
  private byRay(at: Point): boolean | null {
    const { edges, near } = this;
    if (this.tree === null) {
      for (const loop of this.loops) for (const edge of loop) edges.push(edge);
      this.tree = boxTreeOf(edges.map((edge) => grown(edgeBounds(edge), near)));
    }
    // What a ray to the left comes to first has the place on its left or on its right.
    let nearest = -Infinity;
    let isFalling = false;
    let isSure = true;
    this.tree.toTheLeft(at.x, at.y, -Infinity, (k) => {
      const edge = edges[k] as Edge;
      if (Math.min(Math.abs(edge.a.y - at.y), Math.abs(edge.b.y - at.y)) <= near) isSure = false;
      for (const { x, falls } of levelCrossings(edge, at.y)) {
        if (x > at.x) continue;
        if (Math.abs(x - nearest) <= near) isSure = false;
        if (x <= nearest) continue;
        nearest = x;
        isFalling = falls;
      }
      return isSure ? nearest - near : Infinity;
    });
    return isSure ? isFalling : null;
  }

  private isWound(at: Point): boolean {
    let winding = 0;
    for (const loop of this.loops) {
      winding += windingRound(loop, at);
      this.looked += loop.length;
    }
    return winding !== 0;
  }
}

interface LevelCrossing {
  readonly x: number;
  /** Whether the edge goes down there. */
  readonly falls: boolean;
}

/** Where an edge crosses a height that is none of its ends'. */
function levelCrossings(edge: Edge, y: number): LevelCrossing[] {
  const { a, b } = edge;
  if (edge.kind === 'line') {
    if (a.y > y === b.y > y) return [];
    return [{ x: a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x), falls: b.y < a.y }];
  }
  const { center, radius, ccw } = edge;
  const up = y - center.y;
  if (Math.abs(up) >= radius) return [];
  const half = Math.sqrt((radius - up) * (radius + up));
  const both = [
    { x: center.x - half, falls: ccw },
    { x: center.x + half, falls: !ccw },
  ];
  return both.filter(({ x }) => onArcSide(edge, { x, y }));
}
