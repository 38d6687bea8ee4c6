import type { CutDocument, JobDocument, KeepOutDocument, SetupDocument } from '../sim/job.js';
import { partOf } from '../sim/job.js';
import { drawn } from '../sim/lie.js';
import type { Edge, Place, ShapeDocument } from '../sim/shapes.js';
import { cutsOf } from './generate-cuts.js';
import { type Dice, diceOf } from './random.js';
import { zeroByTouching } from './zero.js';

/** A part, and round what the cuts are dealt out. */
export interface Blank {
  readonly outline: ShapeDocument;
  readonly size: Place;
  readonly thickness: number;
  /** Depths that cuts share, so that levels coincide. */
  readonly depths: readonly number[];
}

/** A job of two to four setups and up to eight cuts; the same number gives the same job. */
export function jobNumber(seed: number): JobDocument {
  const dice = diceOf(seed * 2654435761 + 17);
  const blank = blankOf(dice);
  const setups: SetupDocument[] = [];
  const cuts: CutDocument[] = [];
  const count = dice.whole(2, 4);
  for (let k = 0; k < count; k++) {
    const isOver = k > 0 && dice.chance(0.4);
    const own = cutsOf(
      dice,
      blank,
      cuts,
      isOver ? 'bottom' : 'top',
      Math.min(8 - cuts.length - (count - 1 - k), 3),
    );
    cuts.push(...own);
    setups.push({
      id: `lie-${k + 1}`,
      ...(isOver ? { flip: dice.pick(['x', 'y'] as const) } : {}),
      turn: dice.chance(0.7) ? dice.pick([0, 90, 180, 270, -90]) : dice.length(-180, 180),
      zero: zeroByTouching(),
      cuts: own.map(({ id }) => id),
    });
  }
  const keep = keepIn(dice, blank, cuts);
  return {
    edgebite: 1,
    name: `made job ${seed}`,
    units: 'mm',
    part: { outline: blank.outline, thickness: blank.thickness, material: 'mild steel' },
    ...(keep === null ? {} : { keep }),
    limits: { web: 1.5, knifeEdge: 30 },
    setups,
    ...(dice.chance(0.7) ? { keepOut: keepOutsOf(dice, blank, setups) } : {}),
    cuts,
  };
}

function blankOf(dice: Dice): Blank {
  const size: Place = [dice.whole(60, 110), dice.whole(36, 70)];
  const thickness = dice.whole(8, 20);
  const depths = Array.from({ length: 3 }, () => dice.whole(2, thickness - 2));
  return { outline: outlineOf(dice, size), size, thickness, depths };
}

function outlineOf(dice: Dice, [w, h]: Place): ShapeDocument {
  switch (dice.whole(0, 5)) {
    case 0:
      return { rectangle: [w, h] };
    case 1:
      return { rectangle: [w, h], corner: dice.whole(2, 12) };
    case 2:
      return { edges: corners([0, 0], [w, 0], [w, h / 2], [w / 2, h / 2], [w / 2, h], [0, h]) };
    case 3:
      return { rectangle: [w, h], holes: [{ circle: dice.whole(8, 16), at: [w / 2, h / 2] }] };
    case 4:
      return { slot: [w, h - 4], at: [w / 2, h / 2], angle: dice.pick([0, 0, 30, 90]) };
    default:
      return { circle: h + 10, at: [w / 2, h / 2] };
  }
}

function corners(...places: Place[]): Edge[] {
  return places.map((a, k) => ({ kind: 'line', a, b: places[(k + 1) % places.length] as Place }));
}

/** A place well inside of the part and clear of all cuts, for most jobs. */
function keepIn(dice: Dice, blank: Blank, cuts: readonly CutDocument[]): Place | null {
  if (dice.chance(0.3)) return null;
  const part = partOf({ part: { outline: blank.outline, thickness: 1 } } as JobDocument);
  for (let k = 0; k < 60; k++) {
    const place: Place = [dice.length(0, blank.size[0]), dice.length(0, blank.size[1])];
    const isClear = cuts.every(({ center, diameter }) => {
      return (
        center === undefined || Math.hypot(place[0] - center[0], place[1] - center[1]) > diameter / 2 + 2
      );
    });
    if (part(...place) > 3 && isClear) return place;
  }
  return null;
}

/** Jaws beside the part, parallels under it and clamps on it, in the drawing's plan and over the face that it lies on. */
function keepOutsOf(
  dice: Dice,
  { size: [w, h], thickness }: Blank,
  setups: readonly SetupDocument[],
): KeepOutDocument[] {
  const beside = (setup: SetupDocument, sign: 1 | -1): ShapeDocument => {
    // Towards or away from the person as the part lies: its side of the drawing is the one nearest to that.
    const [dx, dy] = drawn({ flip: setup.flip ?? null, turn: setup.turn ?? 0 }, [0, sign]);
    const off = dice.length(-0.5, 4);
    if (Math.abs(dx) > Math.abs(dy))
      return { rectangle: [12, h * 0.6], at: [dx > 0 ? w + off : -12 - off, h * 0.2] };
    return { rectangle: [w * 0.6, 12], at: [w * 0.2, dy > 0 ? h + off : -12 - off] };
  };
  const rows = Array.from({ length: dice.whole(1, 4) }, (_, k): KeepOutDocument => {
    const setup = dice.pick(setups);
    const own = dice.chance(0.7) ? { setup: setup.id } : {};
    const id = `thing-${k + 1}`;
    switch (dice.whole(0, 2)) {
      case 0:
        return {
          id,
          kind: 'jaw',
          shape: beside(setup, dice.pick([1, -1] as const)),
          from: -20,
          to: dice.length(1, thickness - 1),
          ...own,
        };
      case 1: {
        const wide = dice.whole(4, 8);
        const at: Place = [dice.length(0, w - wide), dice.length(-5, h / 3)];
        return { id, kind: 'parallel', shape: { rectangle: [wide, h * 0.7], at }, from: -20, to: 0, ...own };
      }
      default: {
        const at: Place = [dice.length(-10, w - 8), dice.length(-10, h - 6)];
        return {
          id,
          kind: 'clamp',
          shape: { rectangle: [18, 14], at },
          from: thickness,
          to: thickness + 12,
          ...own,
        };
      }
    }
  });
  return rows;
}
