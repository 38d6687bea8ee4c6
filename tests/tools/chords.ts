import { type Edge, edgeLength, type Point, pointAlong, type Region } from '@edgebite/core';

/** Loops of points, each outer loop with its holes. */
export type Polygons = readonly (readonly (readonly Point[])[])[];

/** A region with its arcs given as chords, at most `sagitta` off; the ends of all edges are kept. */
export function polygonsOf(region: Region, sagitta: number): Polygons {
  return region.map(({ outer, holes }) =>
    [outer, ...holes].map((loop) => loop.flatMap((edge) => chordStarts(edge, sagitta))),
  );
}

/** The first points of the chords of an edge. */
export function chordStarts(edge: Edge, sagitta: number): Point[] {
  const count = edge.kind === 'line' ? 1 : chordCount(edge.radius, edgeLength(edge) / edge.radius, sagitta);
  return Array.from({ length: count }, (_, k) => pointAlong(edge, k / count));
}

/** How many equal chords an arc needs to stay within `sagitta` of them; r (1 - cos(t/2)) is the height of each. */
export function chordCount(radius: number, turn: number, sagitta: number): number {
  const each = 2 * Math.acos(Math.max(0, 1 - sagitta / radius));
  return Math.max(1, Math.ceil(turn / each));
}

/** A loop of a polygonal result. */
export interface LoopMeasure {
  /** Over 0 for an outer loop, under 0 for a hole. */
  readonly signedArea: number;
  readonly perimeter: number;
}

/** A polygonal result, as far as it can be compared. */
export interface PolygonAnswer {
  readonly area: number;
  readonly loops: readonly LoopMeasure[];
}

/** Signed area, over 0 counter-clockwise, and length of the closed polygon through some points. */
export function measuredLoop(points: readonly Point[]): LoopMeasure {
  const origin = points[0] as Point;
  let twice = 0;
  let perimeter = 0;
  points.forEach((p, k) => {
    const q = points[(k + 1) % points.length] as Point;
    twice += (p.x - origin.x) * (q.y - origin.y) - (p.y - origin.y) * (q.x - origin.x);
    perimeter += Math.hypot(q.x - p.x, q.y - p.y);
  });
  return { signedArea: twice / 2, perimeter };
}

/** Loops and their area in all. */
export function totalOf(loops: readonly LoopMeasure[]): PolygonAnswer {
  return { loops, area: loops.reduce((sum, loop) => sum + loop.signedArea, 0) };
}
