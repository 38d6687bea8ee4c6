import { offset } from '../combine/offset.js';
import { type Axes, along, onPart } from '../datum/lie.js';
import { lineEdge } from '../geometry/edge.js';
import { meet } from '../geometry/meet.js';
import type { Point } from '../geometry/point.js';
import { contains } from '../region/contains.js';
import { loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';
import type { Face } from '../setups/faces.js';

/** A stretch of a face: from where to where it runs across the axis, from the zero of the drawing. */
export type Stretch = readonly [number, number];

/** A face seen along an axis of a setup. */
export interface FaceView {
  readonly face: Face;
  readonly axes: Axes;
  readonly axis: 'x' | 'y';
  /** Lengths that differ by no more are one. */
  readonly slack: number;
}

/** Where of a face a section has metal up to it, in order. */
export function standingOn(section: Region, view: FaceView): Stretch[] {
  const { face, axes, axis, slack } = view;
  const direction = axes[axis];
  const found = loopsOf(section)
    .flat()
    .flatMap((edge): Stretch[] => {
      if (edge.kind !== 'line') return [];
      const off = [edge.a, edge.b].map((p) => Math.abs(along(p, direction) - face.at));
      // Metal lies to the left of an edge.
      const out = along({ x: edge.b.y - edge.a.y, y: edge.a.x - edge.b.x }, direction);
      if (Math.max(...off) > slack || out * face.outward <= 0) return [];
      const ends = [across(edge.a, view), across(edge.b, view)];
      return [[Math.min(...ends), Math.max(...ends)]];
    });
  return joined(found, slack);
}

/** How far a place lies across the axis. */
export function across(p: Point, { axes, axis }: Pick<FaceView, 'axes' | 'axis'>): number {
  return along(p, axes[axis === 'x' ? 'y' : 'x']);
}

/** The place on the part so far along the axis and across it. */
export function placeAt(at: number, sideways: number, { axes, axis }: FaceView): Point {
  const { dx, dy } = axis === 'x' ? onPart(axes, at, sideways) : onPart(axes, sideways, at);
  return { x: dx + 0, y: dy + 0 };
}

function joined(stretches: readonly Stretch[], slack: number): Stretch[] {
  const all: [number, number][] = [];
  for (const [from, to] of [...stretches].sort((a, b) => a[0] - b[0])) {
    const last = all.at(-1);
    if (last !== undefined && from <= last[1] + slack) last[1] = Math.max(last[1], to);
    else all.push([from, to]);
  }
  return all;
}

/** Length of stretches together. */
export function lengthOf(stretches: readonly Stretch[]): number {
  return stretches.reduce((sum, [from, to]) => sum + to - from, 0);
}

/** What two lists of stretches have in common. */
export function common(one: readonly Stretch[], other: readonly Stretch[]): Stretch[] {
  return one.flatMap(([a, b]) =>
    other.flatMap(([c, d]): Stretch[] => {
      const [from, to] = [Math.max(a, c), Math.min(b, d)];
      return from < to ? [[from, to]] : [];
    }),
  );
}

/** What of stretches others leave. */
export function without(all: readonly Stretch[], taken: readonly Stretch[], slack: number): Stretch[] {
  return all.flatMap(([from, to]): Stretch[] => {
    const cuts = common([[from, to]], taken);
    const ends = [from, ...cuts.flat(), to];
    return Array.from(
      { length: cuts.length + 1 },
      (_, k): Stretch => [ends[2 * k] as number, ends[2 * k + 1] as number],
    ).filter(([a, b]) => b - a > slack);
  });
}

/** Share of its radius by which a tip may be in metal that it touches: what is left of the arithmetic of an offset. */
const TOUCHING = 1e-6;

/**
 * Whether a round tip finds a place somewhere along a stretch of a face, outside of it and out of the way of what
 * stands there. Where the line of its centre crosses the obstacles grown by its radius, it gets free or is stopped; one
 * place between each two is asked.
 */
export function fits(radius: number, stretch: Stretch, view: FaceView, obstacles: Region): boolean {
  const { face, slack } = view;
  const at = face.at + face.outward * radius;
  const grown = offset(obstacles, radius * (1 - TOUCHING));
  const line = lineEdge(placeAt(at, stretch[0], view), placeAt(at, stretch[1], view));
  const stops = loopsOf(grown)
    .flat()
    .flatMap((edge) => {
      const meeting = meet(line, edge, slack);
      if (meeting.kind === 'apart') return [];
      const points = meeting.kind === 'points' ? meeting.points.map((one) => one.at) : meeting.ends.flat();
      return points.map((p) => across(p, view));
    });
  const all = [...stretch, ...stops].sort((a, b) => a - b);
  return all.slice(1).some((to, k) => {
    const from = all[k] as number;
    return to - from > slack && contains(grown, placeAt(at, (from + to) / 2, view)) === 'outside';
  });
}
