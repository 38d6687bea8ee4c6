import { Groups } from '../region/groups.js';
import type { Subdivision } from './label.js';

/** The border of some faces: half-edges with a kept face to the left and none to the right. */
export interface Border {
  readonly halves: readonly number[];
  /** Whether a half-edge is one of them. */
  readonly isBorder: Uint8Array;
  /** How many of them leave each vertex: over 1 where parts of the border touch. */
  readonly leaving: Int32Array;
  /** A number that faces connected through kept edges have in common. */
  readonly bodyOf: (face: number) => number;
}

/** Finds the border of the faces marked in `kept`, and which of them hang together. */
export function borderOf(subdivision: Subdivision, kept: Uint8Array): Border {
  const { graph, faceOf, faceCount } = subdivision;
  const halves: number[] = [];
  const isBorder = new Uint8Array(graph.count * 2);
  const leaving = new Int32Array(graph.curves.points.x.length);
  const bodies = new Groups(faceCount);
  for (let e = 0; e < graph.count; e++) {
    const left = faceOf[2 * e] as number;
    const right = faceOf[2 * e + 1] as number;
    if (kept[left] === 1 && kept[right] === 1) {
      bodies.join(left, right);
    } else if (kept[left] === 1) {
      halves.push(2 * e);
      isBorder[2 * e] = 1;
      const v = graph.from[e] as number;
      leaving[v] = (leaving[v] as number) + 1;
    } else if (kept[right] === 1) {
      halves.push(2 * e + 1);
      isBorder[2 * e + 1] = 1;
      const v = graph.to[e] as number;
      leaving[v] = (leaving[v] as number) + 1;
    }
  }
  return { halves, isBorder, leaving, bodyOf: (face) => bodies.leader(face) };
}
