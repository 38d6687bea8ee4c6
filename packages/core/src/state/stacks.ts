import type { Cells } from '../left/cells.js';
import type { Joint } from './members.js';
import { eachBeside } from './timeline.js';

/** Heights that differ by no more than this share of the thickness are the same: sums of depths are rounded. */
const SAME_HEIGHT = 1e-9;

/** The metal over each face as stacks of cells on one another, and which of them are thick enough to hold. */
export class Stacks {
  /** By cell: 1 where its stack is high enough, as last looked at. */
  readonly thick: Uint8Array;
  /** Cells that became thick when they were last looked at. */
  readonly fresh = new Set<number>();
  private readonly least: number;

  /**
   * @param present by cell: 1 where there is metal; read anew at every call
   * @param hold height from which on metal holds; that of the part does in any case
   */
  constructor(
    readonly cells: Cells,
    private readonly present: Uint8Array,
    hold: number,
  ) {
    const height = cells.slabs[cells.slabs.length - 1]?.to ?? 0;
    this.least = Math.min(hold, height) - SAME_HEIGHT * height;
    this.thick = new Uint8Array(present.length);
  }

  /** The faces of some cells. */
  facesOf(cells: Iterable<number>): Set<number> {
    const faces = new Set<number>();
    for (const cell of cells) faces.add(Math.floor(cell / this.cells.slabs.length));
    return faces;
  }

  /** Which cells of some faces hold which: within a stack, and from stack to stack along walls high enough. */
  jointsOf(faces: Iterable<number>): Joint[] {
    const n = this.cells.slabs.length;
    const joints: Joint[] = [];
    this.fresh.clear();
    for (const face of faces) {
      for (const [from, to] of this.runs((s) => this.present[face * n + s] === 1)) {
        for (let s = from; s < to; s++) {
          if (this.thick[face * n + s] !== 1) this.fresh.add(face * n + s);
          this.thick[face * n + s] = 1;
          if (s > from) joints.push([face * n + s, face * n + s - 1]);
        }
      }
    }
    for (const face of faces) this.joinBeside(face, joints);
    return joints;
  }

  private joinBeside(face: number, joints: Joint[]): void {
    const n = this.cells.slabs.length;
    const seen = new Set<number>();
    eachBeside(this.cells, face * n, (first) => {
      const other = Math.floor(first / n);
      if (other === face || seen.has(other)) return;
      seen.add(other);
      const both = (s: number) => this.present[face * n + s] === 1 && this.present[other * n + s] === 1;
      for (const [from] of this.runs(both)) joints.push([face * n + from, other * n + from]);
    });
  }

  /** Stretches of layers one upon another that are high enough. */
  private runs(has: (slab: number) => boolean): (readonly [number, number])[] {
    const { slabs } = this.cells;
    const runs: (readonly [number, number])[] = [];
    for (let s = 0; s < slabs.length; s++) {
      if (!has(s)) continue;
      const from = s;
      while (s + 1 < slabs.length && has(s + 1)) s++;
      if ((slabs[s]?.to ?? 0) - (slabs[from]?.from ?? 0) >= this.least) runs.push([from, s + 1]);
    }
    return runs;
  }
}
