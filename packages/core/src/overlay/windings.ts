import type { Subdivision } from './label.js';

/** For each face, how many times the chosen operands go round it counter-clockwise, in all. */
export function windings(subdivision: Subdivision, counts: (operand: number) => boolean): Int32Array {
  const { graph, order, via, faceOf, faceCount } = subdivision;
  const winding = new Int32Array(faceCount);
  for (let k = 0; k < order.length; k++) {
    const half = via[k] as number;
    const edge = half >> 1;
    let change = 0;
    for (let m = graph.start[edge] as number; m < (graph.start[edge + 1] as number); m++) {
      if (counts(graph.curves.operand[graph.member[m] as number] as number))
        change += graph.sign[m] as number;
    }
    const across = winding[faceOf[half ^ 1] as number] as number;
    winding[order[k] as number] = across + (half & 1 ? -change : change);
  }
  return winding;
}
