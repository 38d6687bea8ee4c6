import { Groups } from '../region/groups.js';
import { facesToTheLeft } from './locate.js';
import type { Graph } from './merge.js';
import { type Rotation, rotate } from './rotate.js';
import { Strands } from './strands.js';

/** A planar subdivision: what the overlay of all operands cuts the plane into. */
export interface Subdivision {
  readonly graph: Graph;
  readonly strands: Strands;
  readonly rotation: Rotation;
  /** The face to the left of each half-edge; face 0 is the unbounded one. */
  readonly faceOf: Int32Array;
  readonly faceCount: number;
  /**
   * Every face but the unbounded one, each after a neighbour that is listed or unbounded: `via[k]` is a half-edge
   * with face `order[k]` to its left and that neighbour to its right.
   */
  readonly order: Int32Array;
  readonly via: Int32Array;
}

/** The half-edge that follows along the border of the face to the left. */
export function follow(rotation: Rotation, half: number): number {
  return rotation.cw[half ^ 1] as number;
}

/**
 * Traces the faces of a graph.
 * @returns null if the order round the vertices is not that of a plane (Euler's formula fails for some
 *   component), which rounding of nearly coincident input can cause
 */
export function subdivide(graph: Graph): Subdivision | null {
  const strands = new Strands(graph);
  const rotation = rotate(graph, strands);
  const halves = graph.count * 2;
  const cycleOf = new Int32Array(halves).fill(-1);
  let cycles = 0;
  for (let half = 0; half < halves; half++) {
    if (cycleOf[half] !== -1) continue;
    for (let h = half; cycleOf[h] === -1; h = follow(rotation, h)) cycleOf[h] = cycles;
    cycles++;
  }
  const components = componentsOf(graph, rotation);
  // Euler's formula, V - E + F = 2 for each component. None can have more than 2, so the sum tells of all.
  if (components.vertices - graph.count + cycles !== 2 * components.count) return null;

  const faces = new Groups(cycles + 1);
  const unbounded = cycles;
  const outer = outerHalves(strands, rotation, components);
  const beyond = facesToTheLeft(graph, strands, outer);
  for (let k = 0; k < outer.length; k++) {
    const other = beyond[k] as number;
    faces.join(cycleOf[outer[k] as number] as number, other < 0 ? unbounded : (cycleOf[other] as number));
  }
  return numberFaces(graph, strands, rotation, cycleOf, faces, unbounded);
}

/** Connected components: the component of each vertex in use, numbered from 0; -1 for points not in use. */
interface Components {
  readonly of: Int32Array;
  readonly count: number;
  /** How many vertices are in use. */
  readonly vertices: number;
}

function componentsOf(graph: Graph, rotation: Rotation): Components {
  const groups = new Groups(rotation.anyAt.length);
  for (let e = 0; e < graph.count; e++) groups.join(graph.from[e] as number, graph.to[e] as number);
  const of = new Int32Array(rotation.anyAt.length).fill(-1);
  let count = 0;
  let vertices = 0;
  // A leader is the smallest of its group, so it is met first.
  for (let v = 0; v < of.length; v++) {
    if ((rotation.anyAt[v] as number) < 0) continue;
    vertices++;
    const leader = groups.leader(v);
    of[v] = leader === v ? count++ : (of[leader] as number);
  }
  return { of, count, vertices };
}

/** For each component, a half-edge with the face outside of it to the left: the leftmost that leaves its lowest vertex. */
function outerHalves(strands: Strands, rotation: Rotation, components: Components): Int32Array {
  const lowest = new Int32Array(components.count).fill(-1);
  for (let v = 0; v < components.of.length; v++) {
    const c = components.of[v] as number;
    if (c < 0) continue;
    const best = lowest[c] as number;
    if (best < 0 || strands.isBefore(v, best)) lowest[c] = v;
  }
  return lowest.map((v) => rotation.anyAt[v] as number);
}

function numberFaces(
  graph: Graph,
  strands: Strands,
  rotation: Rotation,
  cycleOf: Int32Array,
  faces: Groups,
  unbounded: number,
): Subdivision | null {
  const halves = graph.count * 2;
  const numberOf = new Int32Array(unbounded + 1).fill(-1);
  numberOf[faces.leader(unbounded)] = 0;
  let faceCount = 1;
  for (let cycle = 0; cycle < unbounded; cycle++) {
    const leader = faces.leader(cycle);
    if (numberOf[leader] === -1) numberOf[leader] = faceCount++;
    numberOf[cycle] = numberOf[leader] as number;
  }
  const faceOf = cycleOf;
  for (let half = 0; half < halves; half++) faceOf[half] = numberOf[cycleOf[half] as number] as number;
  // Breadth first from the unbounded face across edges.
  const firstOf = new Int32Array(faceCount).fill(-1);
  const nextOf = new Int32Array(halves);
  for (let half = 0; half < halves; half++) {
    const face = faceOf[half] as number;
    nextOf[half] = firstOf[face] as number;
    firstOf[face] = half;
  }
  const order = new Int32Array(faceCount - 1);
  const via = new Int32Array(faceCount - 1);
  const seen = new Uint8Array(faceCount);
  seen[0] = 1;
  let reached = 0;
  for (let at = -1; at < reached; at++) {
    const face = at < 0 ? 0 : (order[at] as number);
    for (let half = firstOf[face] as number; half >= 0; half = nextOf[half] as number) {
      const across = faceOf[half ^ 1] as number;
      if (seen[across] === 1) continue;
      seen[across] = 1;
      order[reached] = across;
      via[reached] = half ^ 1;
      reached++;
    }
  }
  return reached === faceCount - 1 ? { graph, strands, rotation, faceOf, faceCount, order, via } : null;
}
