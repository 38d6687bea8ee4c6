import { type AimDocument, type DrawerTool, parseAim, propose } from '@edgebite/core';
import { expect, test } from 'vitest';

/*
 * A slot of 12 by 52 through a plate: its middle line is 40 long. A drill of 10 leaves an allowance of 1 at each wall. With
 * 1.05 of metal between two holes of 10 the pitch is 11.05 at least: four holes, 40 / 3 apart.
 */
const drill = (diameter: number): DrawerTool => ({
  id: `drill ${diameter}`,
  kind: 'drill',
  toolMaterial: 'HSS',
  diameter,
  reach: 60,
});

const aim: AimDocument = {
  edgebite: 1,
  units: 'mm',
  blank: { rectangle: [90, 40] },
  finished: { rectangle: [90, 40], holes: [{ slot: [52, 12], at: [45, 20] }] },
  thickness: 10,
  material: 'mild steel',
  drawer: [
    drill(10),
    drill(6),
    drill(11.5),
    {
      id: 'mill',
      kind: 'end mill',
      toolMaterial: 'HSS',
      diameter: 12,
      reach: 20,
      teeth: 2,
      centerCutting: true,
    },
  ],
};

const chainsOf = (change: Partial<AimDocument>) =>
  propose(parseAim({ ...aim, ...change })).ways.flatMap(({ job, row }) => {
    const holes = job.cuts.filter(({ id }) => id.includes('chain'));
    return holes.length === 0 ? [] : [{ holes, last: job.cuts.at(-1)?.tool, dangers: row.dangers.length }];
  });

test('a row of holes comes before the mill, and sets nothing loose', () => {
  const [chain, ...others] = chainsOf({});
  expect(others).toEqual([]);
  expect(chain).toMatchObject({ last: 'mill', dangers: 0 });
  const places = chain?.holes.map((cut) => [
    cut.tool,
    ...('center' in cut ? (cut.center as readonly number[]) : []),
  ]);
  expect(places?.sort((a, b) => Number(a[1]) - Number(b[1]))).toEqual(
    [25, 25 + 40 / 3, 25 + 80 / 3, 65].map((x) => ['drill 10', expect.closeTo(x, 9), expect.closeTo(20, 9)]),
  );
});

test('none where holes would be too many, stand over an edge, or not go through', () => {
  expect(chainsOf({ drawer: [drill(1), aim.drawer.at(-1) as DrawerTool] })).toEqual([]);
  expect(chainsOf({ drawer: [drill(11.5), aim.drawer.at(-1) as DrawerTool] })).toEqual([]);
  const pocket = { slot: [52, 12], at: [45, 20], depth: 4 } as const;
  expect(chainsOf({ finished: aim.blank, pockets: [pocket] })).toEqual([]);
});
