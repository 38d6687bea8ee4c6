import type { CutDocument } from '../sim/job.js';
import type { Edge, Place } from '../sim/shapes.js';
import type { Blank } from './generate.js';
import type { Dice } from './random.js';

type Side = 'top' | 'bottom';

/** Some cuts for one setup, often on what is there already: a slug, the same circle, a ring's kerf. */
export function cutsOf(
  dice: Dice,
  blank: Blank,
  before: readonly CutDocument[],
  from: Side,
  most: number,
): CutDocument[] {
  const cuts: CutDocument[] = [];
  const wanted = dice.whole(1, Math.max(1, most));
  while (cuts.length < wanted) {
    const id = `cut-${before.length + cuts.length + 1}`;
    const common = { id, ...(from === 'bottom' ? { from } : {}) };
    cuts.push({ ...common, ...oneCut(dice, blank, [...before, ...cuts]) });
  }
  return cuts;
}

type Shape = Omit<CutDocument, 'id' | 'from'>;

function oneCut(dice: Dice, blank: Blank, before: readonly CutDocument[]): Shape {
  const round = before.filter(({ kind }) => kind !== 'swept');
  const rings = before.filter(({ kind }) => kind === 'annular');
  if (round.length > 0 && dice.chance(0.15)) return again(dice, blank, dice.pick(round));
  if (rings.length > 0 && dice.chance(0.3)) return onRing(dice, blank, dice.pick(rings));
  switch (dice.whole(0, 5)) {
    case 0:
      return {
        kind: 'bore',
        center: inside(dice, blank),
        diameter: dice.whole(5, 16),
        ...depth(dice, blank),
      };
    case 1:
      return swept(dice, blank);
    case 2:
    case 3:
      return ring(dice, blank);
    default:
      return partial(dice, blank);
  }
}

function depth(dice: Dice, { depths }: Blank): { depth?: number } {
  return dice.chance(0.5) ? {} : { depth: dice.pick(depths) };
}

function inside(dice: Dice, { size: [w, h] }: Blank): Place {
  return [dice.length(0, w), dice.length(0, h)];
}

/** A place near an edge of the box round the part, or right on it. */
function nearEdge(dice: Dice, { size: [w, h] }: Blank): Place {
  const off = dice.chance(0.3) ? 0 : dice.length(-6, 8);
  const [x, y] = [dice.length(0, w), dice.length(0, h)];
  return dice.pick<Place>([
    [x, off],
    [x, h - off],
    [off, y],
    [w - off, y],
  ]);
}

/** A bore over an edge, in one pass or several. */
function partial(dice: Dice, blank: Blank): Shape {
  const cut: Shape = {
    kind: 'bore',
    center: nearEdge(dice, blank),
    diameter: dice.whole(10, 34),
    ...depth(dice, blank),
  };
  if (dice.chance(0.6)) return cut;
  const bite = dice.length(2, 5);
  if (dice.chance(0.5)) return { ...cut, passes: { kind: 'open out', bite, smallest: 6 } };
  return { ...cut, passes: { kind: 'step in', bite, ...(dice.chance(0.5) ? { finish: bite / 4 } : {}) } };
}

/** An annular cut, over an edge more often than not, with or without the reach to go through. */
function ring(dice: Dice, blank: Blank): Shape {
  const diameter = dice.whole(18, 44);
  const reach = dice.chance(0.3) ? dice.pick(blank.depths) : blank.thickness + dice.whole(1, 8);
  return {
    kind: 'annular',
    center: dice.chance(0.6) ? nearEdge(dice, blank) : inside(dice, blank),
    diameter,
    wall: dice.length(3, 5),
    ...(dice.chance(0.8) ? { reach } : depth(dice, blank)),
  };
}

/** The same circle once more, to another depth or with another tool. */
function again(dice: Dice, blank: Blank, { center, diameter }: CutDocument): Shape {
  return { kind: 'bore', center: center as Place, diameter, ...depth(dice, blank) };
}

/** A bore to size where a ring has roughed, a little larger, or into the slug that it leaves. */
function onRing(dice: Dice, blank: Blank, { center, diameter, wall }: CutDocument): Shape {
  const [x, y] = center as Place;
  if (dice.chance(0.5)) {
    const by = dice.pick([0.5, 1, 2, 4]);
    const passes = { kind: 'open out' as const, bite: 1.5, smallest: diameter / 2 };
    return {
      kind: 'bore',
      center: [x, y],
      diameter: diameter + by,
      ...(dice.chance(0.3) ? { passes } : depth(dice, blank)),
    };
  }
  const core = diameter / 2 - (wall as number);
  const off = dice.length(-core, core);
  return {
    kind: 'bore',
    center: [x + off, y + dice.length(-2, 2)],
    diameter: dice.whole(5, 12),
    ...depth(dice, blank),
  };
}

/** A slot of lines, with an arc in it now and then. */
function swept(dice: Dice, blank: Blank): Shape {
  const a = inside(dice, blank);
  const b: Place = [a[0] + dice.length(-30, 30), a[1] + dice.length(8, 20)];
  const edges: Edge[] = [{ kind: 'line', a, b }];
  if (dice.chance(0.5)) {
    // On from b: a quarter turn to the left, tangent or not.
    const r = dice.whole(6, 14);
    const center: Place = [b[0] - r, b[1]];
    edges.push({ kind: 'arc', a: b, b: [b[0] - r, b[1] + r], center, ccw: true });
  }
  return { kind: 'swept', diameter: dice.whole(4, 9), path: { edges }, depth: dice.pick(blank.depths) };
}
