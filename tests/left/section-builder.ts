import {
  arcEdge,
  circleLoop,
  disc,
  type Edge,
  type Loop,
  lineEdge,
  type Point,
  type Region,
} from '@edgebite/core';
import { placed, restarted, type Similarity, transformed, UNMOVED } from '@edgebite/core/testing';

/** A point from two numbers. */
export function at(x: number, y: number): Point {
  return { x, y };
}

/** One step along a loop: a corner to go straight to, or an arc to a corner round a centre. */
export type Step =
  | readonly [x: number, y: number]
  | readonly [x: number, y: number, center: readonly [number, number], ccw: boolean];

/** A closed loop through corners, its edges named `NAME:0`, `NAME:1`, ... from the one that leaves the first corner. */
export function loopThrough(steps: readonly Step[], name = 'outline'): Loop {
  return steps.map((step, k): Edge => {
    const next = steps[(k + 1) % steps.length] as Step;
    const [a, b] = [at(step[0], step[1]), at(next[0], next[1])];
    const source = `${name}:${k}`;
    return next[2] === undefined
      ? lineEdge(a, b, source)
      : arcEdge(a, b, at(next[2][0], next[2][1]), next[3] as boolean, source);
  });
}

/** A rectangle from the origin; edge 0 is its bottom, then counter-clockwise. */
export function box(width: number, height: number): Loop {
  return loopThrough([
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ]);
}

/** A round hole as a loop of a region. */
export function hole(x: number, y: number, radius: number, id = 'hole'): Loop {
  return circleLoop(at(x, y), radius, false, `cut:${id}`);
}

/** A round-ended hole between two centres on a level, the lower one of its straight walls first. */
export function slotHole(x0: number, x1: number, y: number, radius: number, id = 'slot'): Loop {
  const source = `cut:${id}`;
  return [
    lineEdge(at(x1, y - radius), at(x0, y - radius), source),
    arcEdge(at(x0, y - radius), at(x0, y + radius), at(x0, y), false, source),
    lineEdge(at(x0, y + radius), at(x1, y + radius), source),
    arcEdge(at(x1, y + radius), at(x1, y - radius), at(x1, y), false, source),
  ];
}

/** One part with holes. */
export function section(outer: Loop, ...holes: Loop[]): Region {
  return [{ outer, holes }];
}

/** A disc as an outline with one name. */
export function round(x: number, y: number, radius: number): Loop {
  return (disc(at(x, y), radius, 'outline:0')[0] as Region[number]).outer;
}

/** Where every case is tried again: turned, mirrored, in inches, larger, far from the origin. */
export const PLACEMENTS: readonly (readonly [string, Similarity])[] = [
  ['as drawn', UNMOVED],
  ['turned by a 3-4-5 triangle', { ...UNMOVED, turn: [0.6, 0.8] }],
  ['turned by 1 radian', { ...UNMOVED, turn: [Math.cos(1), Math.sin(1)] }],
  ['mirrored', { ...UNMOVED, mirror: true }],
  ['in inches', { ...UNMOVED, scale: 1 / 25.4 }],
  [
    'a thousand times as large, turned and mirrored',
    { mirror: true, turn: [-0.8, 0.6], scale: 1e3, shift: [7, -9] },
  ],
  ['far from the origin', { ...UNMOVED, turn: [5 / 13, 12 / 13], shift: [3e5, -2e5] }],
];

/** Every way to write a section down that changes nothing: placements, and loops begun one or two edges later. */
export function everyWay(region: Region): { how: string; by: Similarity; region: Region }[] {
  const ways = PLACEMENTS.map(([how, by]) => ({ how, by, region: transformed(region, by) }));
  const later = [1, 2].map((k) => ({ how: `begun ${k} later`, by: UNMOVED, region: restarted(region, k) }));
  return [...ways, ...later];
}

/** Rounding of a coordinate under a placement, to be allowed for in every length: some units in the last place. */
export function roundingUnder({ scale, shift }: Similarity): number {
  return 32 * Number.EPSILON * (100 * scale + Math.hypot(...shift));
}

/** A place under a placement. */
export function seen(p: readonly [number, number], by: Similarity): Point {
  return placed(at(p[0], p[1]), by);
}

/** A part of a region as the outline of a job, in either direction. */
export function outlineJson(
  part: Region[number],
  turnedRound: boolean,
): { edges: unknown[]; holes: { edges: unknown[] }[] } {
  return {
    edges: edgesJson(part.outer, turnedRound),
    holes: part.holes.map((loop) => ({ edges: edgesJson(loop, turnedRound) })),
  };
}

function edgesJson(loop: Loop, turnedRound: boolean): unknown[] {
  const edges = loop.map((edge) => {
    const ends = { a: [edge.a.x, edge.a.y], b: [edge.b.x, edge.b.y] };
    if (edge.kind === 'line') return { kind: 'line', ...ends };
    return { kind: 'arc', ...ends, center: [edge.center.x, edge.center.y], ccw: edge.ccw };
  });
  if (!turnedRound) return edges;
  return edges
    .map((edge) => ({ ...edge, a: edge.b, b: edge.a, ...('ccw' in edge ? { ccw: !edge.ccw } : {}) }))
    .reverse();
}
