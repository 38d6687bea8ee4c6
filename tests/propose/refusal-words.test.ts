import { type AimDocument, type DrawerTool, parseAim, propose } from '@edgebite/core';
import { expect, test } from 'vitest';

/* What a refusal tells its reader to get: each follows from the part and the drawer, by hand. */

const tool = (kind: DrawerTool['kind'], diameter: number, over: object = {}): DrawerTool =>
  ({ id: `${kind} ${diameter}`, kind, toolMaterial: 'HSS', diameter, reach: 30, ...over }) as DrawerTool;

const mill = (diameter: number, over: object = {}) => tool('end mill', diameter, { teeth: 2, ...over });

/** A plate 20 thick with one round hole of 16. */
const plate: AimDocument = {
  edgebite: 1,
  units: 'mm',
  blank: { rectangle: [80, 50] },
  finished: { rectangle: [80, 50], holes: [{ circle: 16, at: [30, 20] }] },
  thickness: 20,
  material: 'mild steel',
  drawer: [],
  arcs: true,
};

const onlyPocket = (pocket: object): Partial<AimDocument> => ({
  finished: { rectangle: [80, 50] },
  pockets: [pocket as never],
});

const bitten: Partial<AimDocument> = {
  finished: { svgPath: 'M0 0 H80 V50 H48 A8 8 0 0 0 32 50 H0 Z' },
};

test.each<readonly [string, Partial<AimDocument>, string]>([
  [
    'no tool of the size of a hole through',
    { drawer: [tool('drill', 12)] },
    'The hole hole-1, 16.000 mm across round (30.000, 20.000), is no size of any tool of the drawer. A drill or hollow cutter of 16.000 mm, a boring head that can be set to it, or a smaller end mill could make it.',
  ],
  [
    'no tool of the size of an open arc, in which a drill would not stay',
    { ...bitten, drawer: [tool('drill', 12)] },
    'The arc arc-1, 16.000 mm across round (40.000, 50.000), is no size of any tool of the drawer. A hollow cutter of 16.000 mm, a boring head that can be set to it, or a smaller end mill could make it.',
  ],
  [
    'a blind hole, which wants a square floor',
    { ...onlyPocket({ circle: 16, at: [30, 20], depth: 6 }), drawer: [tool('drill', 16)] },
    'The hole hole-1, 16.000 mm across round (30.000, 20.000), is no size of any tool of the drawer. An end mill of 16.000 mm or less, which leaves a square floor, could make it.',
  ],
  [
    'a slot that is narrower than the mill',
    { ...onlyPocket({ slot: [30, 7], at: [30, 20], depth: 6 }), drawer: [mill(8)] },
    'The slot slot-1, 7.000 mm wide by (30.000, 20.000), is no size of any tool of the drawer. An end mill of 7.000 mm or less could make it.',
  ],
  [
    'a drill that does not come half way through',
    { drawer: [tool('drill', 16, { reach: 9 })] },
    'The hole hole-1, 16.000 mm across round (30.000, 20.000), is too deep for the tools that have its size. One that reaches 20.000 mm could make it, or half of that, from both sides.',
  ],
  [
    'a mill that does not come to the floor of a pocket',
    {
      ...onlyPocket({ slot: [30, 8], at: [30, 20], depth: 12 }),
      drawer: [mill(8, { reach: 11, centerCutting: true })],
    },
    'The slot slot-1, 8.000 mm wide by (30.000, 20.000), is too deep for the tools that have its size. One that reaches 12.000 mm could make it.',
  ],
  [
    'a spindle that turns no slower than 4000 a minute, where HSS wants some 500',
    { drawer: [tool('drill', 16)], machine: { slowest: 4000 } },
    'The hole hole-1, 16.000 mm across round (30.000, 20.000), has no tool that the spindle can turn at a speed for it. A tool of carbide in place of HSS, or the other way round, or of another size could make it.',
  ],
  [
    'a mill that cannot go down, in a hole through',
    { drawer: [mill(8)] },
    'The hole hole-1, 16.000 mm across round (30.000, 20.000), cannot be begun: what could finish it cannot go down into whole metal. A drill or hollow cutter that leaves the allowance, or an end mill that cuts to its centre could open it.',
  ],
  [
    'a mill that cannot go down, in a blind hole',
    { ...onlyPocket({ circle: 16, at: [30, 20], depth: 6 }), drawer: [mill(8)] },
    'The hole hole-1, 16.000 mm across round (30.000, 20.000), cannot be begun: what could finish it cannot go down into whole metal. An end mill that cuts to its centre could open it.',
  ],
  [
    'hand wheels, which lead no mill round a hole through',
    { drawer: [mill(8, { centerCutting: true })], arcs: false },
    'The hole hole-1, 16.000 mm across round (30.000, 20.000), can only be made by leading an end mill along an arc, which hand wheels cannot. A tool that makes 16.000 mm straight down, or a rotary table, for which "arcs" is said in the aim, would do.',
  ],
  [
    'hand wheels, which lead no mill round a blind hole',
    {
      ...onlyPocket({ circle: 16, at: [30, 20], depth: 6 }),
      drawer: [mill(8, { centerCutting: true })],
      arcs: false,
    },
    'The hole hole-1, 16.000 mm across round (30.000, 20.000), can only be made by leading an end mill along an arc, which hand wheels cannot. A rotary table, for which "arcs" is said in the aim, would do.',
  ],
  [
    'a square inside corner',
    { finished: { svgPath: 'M0 0 H80 V50 H50 V30 H40 V50 H0 Z' }, drawer: [mill(8)] },
    'The wall by (40.000, 30.000) has an inside corner that no round tool leaves. File or saw it, or give it a round.',
  ],
])('%s', (_, aim, message) => {
  expect(propose(parseAim({ ...plate, ...aim })).refusals.map((one) => one.message)).toEqual([message]);
});

test('a bite so small that the head would go over it for ever', () => {
  const head = {
    id: 'h',
    kind: 'boring head',
    toolMaterial: 'HSS',
    smallest: 10,
    largest: 40,
    bar: 60,
    maxSpeed: 900,
  };
  const aim = { ...plate, drawer: [head as DrawerTool, tool('drill', 15)], bite: 0.004 };
  expect(propose(parseAim(aim)).refusals.map(({ message }) => message)).toEqual([
    'The hole hole-1, 16.000 mm across round (30.000, 20.000), cannot be made in passes as deep as they may be, or in no order that leaves the part whole. A larger tool to rough it out, or a deeper bite, may do.',
  ]);
});
