/*
 * A setup done with shapes on a plane: part, stop, blocks and tip are placed where they bear on each other or touch, and
 * none may lie in another. Which side a tip stands on comes out of that, and of nothing else. The readout is an offset
 * that a set changes. Written for the tests: nothing here comes from the library.
 */

export type XY = readonly [number, number];
type Polygon = readonly XY[];

/** What a case lays on the table, in millimetres. */
export interface Table {
  /** The part as drawn, as convex pieces. */
  readonly solid: readonly Polygon[];
  /** Straight faces by name, as drawn. */
  readonly faces?: { readonly [name: string]: readonly [XY, XY] };
  /** Middles of holes, by name, as drawn. */
  readonly middles?: { readonly [name: string]: XY };
  readonly turn?: number;
  readonly flip?: 'x' | 'y';
  /** Stops, with the side of the part that bears. */
  readonly stops?: { readonly [id: string]: string };
}

/** What is done, all lengths in millimetres. */
export type Done =
  | { readonly touch: string; readonly across: number; readonly reads: number; readonly half?: boolean }
  | { readonly bears: string; readonly on: string; readonly blocks: readonly number[] }
  | { readonly measured: number; readonly from: string; readonly to: string }
  | { readonly middle: XY | string; readonly reads: number }
  | { readonly move: number }
  | { readonly set: number };

const FAR = 500;
const SLACK = 1e-6;

/** Two convex polygons share an area: no line along a side of either parts them. */
function overlap(a: Polygon, b: Polygon): boolean {
  const sides = [a, b].flatMap((one) => one.map((p, k) => [p, one[(k + 1) % one.length] as XY] as const));
  return sides.every(([p, q]) => {
    const n: XY = [q[1] - p[1], p[0] - q[0]];
    const size = Math.hypot(...n);
    const reach = (one: Polygon) => one.map(([x, y]) => (x * n[0] + y * n[1]) / size);
    const [s, t] = [reach(a), reach(b)];
    return Math.min(Math.max(...s), Math.max(...t)) - Math.max(Math.min(...s), Math.min(...t)) > SLACK;
  });
}

/** A tip, as a polygon of many sides that its circle goes round. */
function tipAt([x, y]: XY, across: number): Polygon {
  return Array.from({ length: 720 }, (_, k): XY => {
    const t = (k * Math.PI) / 360;
    return [x + (across / 2) * Math.cos(t), y + (across / 2) * Math.sin(t)];
  });
}

/** The part as it lies, and the numbers that the readout shows over its places, once an axis has been done. */
export function numberOver(table: Table, axis: 0 | 1, doing: readonly Done[], place: XY): number {
  const t = ((table.turn ?? 0) * Math.PI) / 180;
  const lies = ([x, y]: XY): XY => {
    const [u, v] = [table.flip === 'y' ? -x : x, table.flip === 'x' ? -y : y];
    return [u * Math.cos(t) - v * Math.sin(t), u * Math.sin(t) + v * Math.cos(t)];
  };
  const solid = table.solid.map((polygon) => polygon.map(lies));
  const all = solid.flat();
  const end = (name: string): readonly [XY, XY] => {
    const drawn = table.faces?.[name];
    if (drawn !== undefined) return [lies(drawn[0]), lies(drawn[1])];
    const least = name === 'left' || name === 'front';
    const at = Math[least ? 'min' : 'max'](...all.map((p) => p[axis]));
    const there = all.filter((p) => Math.abs(p[axis] - at) < SLACK);
    return [there[0] as XY, there.at(-1) as XY];
  };
  const middleOf = ([p, q]: readonly [XY, XY]): XY => [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];
  const unit: XY = axis === 0 ? [1, 0] : [0, 1];
  const shifted = (p: XY, by: number): XY => [p[0] + unit[0] * by, p[1] + unit[1] * by];

  // The part stays where it lies; stops are put where it would bear on them. `away` is how far the part stands off.
  let away = 0;
  const blocksOn = (id: string) =>
    doing.flatMap((one) => ('bears' in one && one.on === id ? [...one.blocks] : []));
  const facing = (id: string): string => {
    const bears = doing.find((one) => 'bears' in one && one.on === id);
    return bears !== undefined && 'bears' in bears ? bears.bears : (table.stops?.[id] as string);
  };
  /** A stretch across the axis from one place to another along it, as a polygon. */
  const bar = (from: number, to: number): Polygon => {
    const [low, high] = [Math.min(from, to), Math.max(from, to)];
    return axis === 0
      ? [
          [low, -FAR],
          [high, -FAR],
          [high, FAR],
          [low, FAR],
        ]
      : [
          [-FAR, low],
          [FAR, low],
          [FAR, high],
          [-FAR, high],
        ];
  };
  /** Which way along the axis nothing of the part lies in the first millimetre beyond a face. */
  const clearSide = (face: readonly [XY, XY]): 1 | -1 => {
    const at = middleOf(face);
    const thin = (sign: number): Polygon => tipAt(shifted(at, sign * 0.5), 1);
    const free = ([1, -1] as const).filter((sign) => !solid.some((piece) => overlap(piece, thin(sign))));
    if (free.length !== 1) throw new Error('a face has metal on one side');
    return free[0] as 1 | -1;
  };
  /** The stop's face, and which way it looks: beyond the face that bears, with the blocks between. */
  const stopAt = (id: string) => {
    const face = end(facing(id));
    const out = clearSide(face);
    const at = middleOf(face)[axis] + out * blocksOn(id).reduce((sum, one) => sum + one, 0);
    return { at, body: bar(at, at + out * FAR) };
  };

  let spindle = Number.NaN;
  let offset = 0;
  const set = (to: number) => {
    offset = to - spindle;
  };
  for (const one of doing) {
    if ('touch' in one) {
      const stop = table.stops?.[one.touch] === undefined ? null : stopAt(one.touch);
      const at = stop === null ? middleOf(end(one.touch)) : shifted([0, 0], stop.at);
      const bodies = stop === null ? solid : [stop.body];
      const stands = [1, -1]
        .map((sign) => shifted(at, (sign * one.across) / 2))
        .filter((center) => !bodies.some((body) => overlap(body, tipAt(center, one.across))));
      if (stands.length !== 1) throw new Error(`the tip has ${stands.length} places at ${one.touch}`);
      spindle = (stands[0] as XY)[axis];
      set(one.reads);
      if (one.half === true) {
        spindle = at[axis];
        set(0);
      }
    } else if ('middle' in one) {
      const at = typeof one.middle === 'string' ? (table.middles?.[one.middle] as XY) : one.middle;
      spindle = lies(at)[axis];
      set(one.reads);
    } else if ('bears' in one) {
      // The blocks lie between stop and part, one against the other, and in neither.
      const stop = stopAt(one.on);
      const face = middleOf(end(one.bears))[axis];
      let from = stop.at;
      for (const length of one.blocks) {
        const to = from + Math.sign(face - from) * length;
        if (overlap(stop.body, bar(from, to))) throw new Error('a block lies in the stop');
        from = to;
      }
      if (Math.abs(from - face) > SLACK) throw new Error('the blocks do not reach the part');
      if (solid.some((piece) => overlap(piece, stop.body))) throw new Error('the part lies in the stop');
    } else if ('measured' in one) {
      // The part is as long as it is measured: what goes by its other face stands so much further off.
      const [from, to] = [middleOf(end(one.from))[axis], middleOf(end(one.to))[axis]];
      away += Math.sign(to - from) * (one.measured - Math.abs(to - from));
    } else if ('move' in one) spindle += one.move;
    else set(one.set);
  }
  return lies(place)[axis] + away + offset;
}
