/*
 * A part and tools as shapes at a machine, to try a printed sheet on. A part is a block of small cells, and a question:
 * is there metal at a place? Nothing here comes from the library.
 */

export type Pair = readonly [number, number];

/** How a part lies: flipped over an axis of the drawing, then turned by quarters, counter-clockwise. */
export interface Lie {
  readonly turn: number;
  readonly flip: 'x' | 'y' | null;
}

/** Tool that goes straight down; `inner` is 0 unless it is hollow. */
export interface Tool {
  readonly at: Pair;
  readonly radius: number;
  readonly inner: number;
}

/** What a tool meets in one layer, at the machine. */
export interface Met {
  readonly share: number;
  readonly strikes: number;
  readonly sideLoad: number;
  /** Degrees counter-clockwise from X+. */
  readonly push: number;
}

/** Side of a cell in plan; none has its middle on an edge of the parts that are tried here. */
const CELL = 0.83;

const ANGLES = 720;

/** A part with corners at whole millimetres, in layers of one millimetre. */
export class Mill {
  private readonly cells: { readonly at: Pair; readonly stands: Uint8Array }[] = [];
  private readonly columns: number;
  private readonly rows: number;
  private readonly cuts: { readonly tool: Tool; readonly low: number; readonly high: number }[] = [];
  private lie: Lie = { turn: 0, flip: null };
  private zero: Pair = [0, 0];

  constructor(
    private readonly corners: readonly Pair[],
    readonly thickness: number,
    private readonly keep: Pair,
  ) {
    const [wide, high] = [0, 1].map((axis) => Math.max(...corners.map((corner) => corner[axis as 0 | 1])));
    this.columns = Math.floor((wide as number) / CELL);
    this.rows = Math.floor((high as number) / CELL);
    for (let j = 0; j < this.rows; j++)
      for (let i = 0; i < this.columns; i++) {
        const at: Pair = [(i + 0.5) * CELL, (j + 0.5) * CELL];
        this.cells.push({ at, stands: new Uint8Array(thickness).fill(this.isInside(at) ? 1 : 0) });
      }
  }

  /** Lays the part as a setup has it; its leftmost and its foremost place are the zeros. */
  lay(lie: Lie): void {
    this.lie = lie;
    const all = this.corners.map((corner) => this.turned(corner));
    this.zero = [Math.min(...all.map(([x]) => x)), Math.min(...all.map(([, y]) => y))];
  }

  private isInside([x, y]: Pair): boolean {
    let inside = false;
    this.corners.forEach(([ax, ay], k) => {
      const [bx, by] = this.corners[(k + 1) % this.corners.length] as Pair;
      if (ay > y !== by > y && x < ax + ((y - ay) * (bx - ax)) / (by - ay)) inside = !inside;
    });
    return inside;
  }

  private turned([x, y]: Pair): Pair {
    const [fx, fy] = [this.lie.flip === 'y' ? -x : x, this.lie.flip === 'x' ? -y : y];
    const quarters: Readonly<Record<number, Pair>> = {
      0: [fx, fy],
      90: [-fy, fx],
      180: [-fx, -fy],
      270: [fy, -fx],
    };
    return quarters[this.lie.turn] as Pair;
  }

  /** From the readout to the drawing. */
  onDrawing([x, y]: Pair): Pair {
    const [zx, zy] = this.zero;
    const [tx, ty] = [x + zx, y + zy];
    const [fx, fy] = turnedBack(this.lie.turn, tx, ty);
    return [this.lie.flip === 'y' ? -fx : fx, this.lie.flip === 'x' ? -fy : fy];
  }

  /** Number of the layer that is so deep below the face that lies up, from 0; layers are counted from the bottom as drawn. */
  private layer(depth: number): number {
    return this.lie.flip === null ? this.thickness - 1 - depth : depth;
  }

  private cellAt([x, y]: Pair) {
    const [i, j] = [Math.floor(x / CELL), Math.floor(y / CELL)];
    return i < 0 || j < 0 || i >= this.columns || j >= this.rows
      ? undefined
      : this.cells[j * this.columns + i];
  }

  /** Whether there is metal at a place of the drawing, exactly; but for what has been taken out, which goes by cells. */
  private isMetal(place: Pair, layer: number, without: ReadonlySet<number>): boolean {
    if (!this.isInside(place)) return false;
    for (const { tool, low, high } of this.cuts) {
      if (layer < low || layer >= high) continue;
      const away = Math.hypot(place[0] - tool.at[0], place[1] - tool.at[1]);
      if (away < tool.radius && away > tool.inner) return false;
    }
    const cell = this.cellAt(place);
    if (cell === undefined) return true;
    return cell.stands[layer] !== 2 && !without.has(this.numberOf(cell, layer));
  }

  private numberOf(cell: { readonly at: Pair }, layer: number): number {
    const [i, j] = [Math.floor(cell.at[0] / CELL), Math.floor(cell.at[1] / CELL)];
    return (j * this.columns + i) * this.thickness + layer;
  }

  /** What a tool on the table meets in the layer at a depth, where some bodies have been lifted out. */
  meets(tool: Tool, depth: number, without: ReadonlySet<number>): Met {
    const layer = this.layer(depth);
    const widths = Array.from({ length: ANGLES }, (_, k) => {
      const a = ((k + 0.5) * 2 * Math.PI) / ANGLES;
      const at = (r: number) =>
        this.isMetal(
          this.onDrawing([tool.at[0] + r * Math.cos(a), tool.at[1] + r * Math.sin(a)]),
          layer,
          without,
        );
      if (tool.inner === 0) return at(tool.radius - 1e-3) && at(tool.radius + 1e-3) ? 1 : 0;
      const steps = 30;
      const wide = tool.radius - tool.inner;
      let met = 0;
      for (let s = 0; s < steps; s++) if (at(tool.inner + ((s + 0.5) * wide) / steps)) met += wide / steps;
      return met;
    });
    const total = widths.reduce((sum, w) => sum + w, 0);
    // A tooth of a tool that turns clockwise goes down on its right and up on its left.
    const pull = (part: (a: number) => number) =>
      widths.reduce((sum, w, k) => sum + w * part(((k + 0.5) * 2 * Math.PI) / ANGLES), 0) / (total || 1);
    const [dx, dy] = [pull((a) => Math.sin(a)), pull((a) => -Math.cos(a))];
    const strikes = widths.filter((w, k) => w > 0 && widths[(k + ANGLES - 1) % ANGLES] === 0).length;
    return {
      share: widths.filter((w) => w > 0).length / ANGLES,
      strikes,
      sideLoad: Math.hypot(dx, dy),
      push: ((Math.atan2(dy, dx) * 180) / Math.PI + 360) % 360,
    };
  }

  /** Takes what a tool on the table takes, down to a depth; returns whether that is any metal. */
  cut(tool: Tool, depth: number): boolean {
    let any = false;
    const at = this.onDrawing(tool.at);
    const [low, high] = this.lie.flip === null ? [this.thickness - depth, this.thickness] : [0, depth];
    this.cuts.push({ tool: { ...tool, at }, low, high });
    for (const cell of this.cells) {
      const away = Math.hypot(cell.at[0] - at[0], cell.at[1] - at[1]);
      if (away >= tool.radius || away <= tool.inner) continue;
      for (let layer = low; layer < high; layer++) {
        if (cell.stands[layer] !== 1) continue;
        cell.stands[layer] = 0;
        any = true;
      }
    }
    return any;
  }

  /** Names what stands in the layer at a depth: layers of the same name are the same. */
  nameOf(depth: number, without: ReadonlySet<number>): string {
    const layer = this.layer(depth);
    const here = this.cuts.flatMap(({ low, high }, k) => (layer >= low && layer < high ? [k] : []));
    const gone = [...without].filter((number) => number % this.thickness === layer).length;
    return `${here.join()} ${gone}`;
  }

  /** Cells (numbers) that a tool on the table goes through. */
  through(tool: Tool, depth: number): Set<number> {
    const at = this.onDrawing(tool.at);
    const taken = new Set<number>();
    for (const cell of this.cells) {
      const away = Math.hypot(cell.at[0] - at[0], cell.at[1] - at[1]);
      if (away >= tool.radius || away <= tool.inner) continue;
      for (let d = 0; d < depth; d++) {
        const layer = this.layer(d);
        if (cell.stands[layer] === 1) taken.add(this.numberOf(cell, layer));
      }
    }
    return taken;
  }

  /** The bodies that hang together with nothing that is kept: numbers of their cells. */
  loose(): Set<number>[] {
    const { columns, thickness } = this;
    const stands = Uint8Array.from({ length: this.cells.length * thickness }, (_, number) =>
      this.cells[Math.floor(number / thickness)]?.stands[number % thickness] === 1 ? 1 : 0,
    );
    const fill = (first: number): number[] => {
      const body = [first];
      stands[first] = 0;
      const step = (next: number) => {
        if (stands[next] !== 1) return;
        stands[next] = 0;
        body.push(next);
      };
      for (let k = 0; k < body.length; k++) {
        const number = body[k] as number;
        const layer = number % thickness;
        const column = Math.floor(number / thickness) % columns;
        if (layer > 0) step(number - 1);
        if (layer < thickness - 1) step(number + 1);
        if (column > 0) step(number - thickness);
        if (column < columns - 1) step(number + thickness);
        step(number - columns * thickness);
        step(number + columns * thickness);
      }
      return body;
    };
    const kept = this.cellAt(this.keep);
    if (kept === undefined) throw new Error('nothing is kept');
    fill(this.numberOf(kept, 0));
    const bodies: Set<number>[] = [];
    for (let first = stands.indexOf(1); first >= 0; first = stands.indexOf(1, first)) {
      bodies.push(new Set(fill(first)));
    }
    return bodies;
  }

  volumeOf(body: ReadonlySet<number>): number {
    return body.size * CELL * CELL;
  }

  /** Lifts a body out of the part. */
  takeOut(body: ReadonlySet<number>): void {
    for (const number of body) {
      const cell = this.cells[Math.floor(number / this.thickness)];
      if (cell !== undefined) cell.stands[number % this.thickness] = 2;
    }
  }

  /** Smallest distance from a place on the table to metal, at all depths down to one, without some bodies. */
  nearest(place: Pair, depth: number, without: ReadonlySet<number>): number {
    const at = this.onDrawing(place);
    let least = Number.POSITIVE_INFINITY;
    for (const cell of this.cells) {
      const away = Math.hypot(cell.at[0] - at[0], cell.at[1] - at[1]);
      if (away >= least) continue;
      for (let d = 0; d < depth; d++) {
        const layer = this.layer(d);
        if (cell.stands[layer] === 1 && !without.has(this.numberOf(cell, layer))) {
          least = away;
          break;
        }
      }
    }
    return least;
  }
}

function turnedBack(turn: number, x: number, y: number): Pair {
  switch (turn) {
    case 90:
      return [y, -x];
    case 180:
      return [-x, -y];
    case 270:
      return [-y, x];
    default:
      return [x, y];
  }
}
