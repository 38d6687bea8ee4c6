import { type AimDocument, type DrawerTool, disc, parseAim, propose, subtract } from '@edgebite/core';
import { describe, expect, test } from 'vitest';
import { rectangle, written } from './parts.js';

const drill = (diameter: number): DrawerTool => ({
  id: `drill ${diameter}`,
  kind: 'drill',
  toolMaterial: 'HSS',
  diameter,
  reach: 60,
});

const head = (smallest: number): DrawerTool => ({
  id: `head ${smallest}`,
  kind: 'boring head',
  toolMaterial: 'HSS',
  smallest,
  largest: 40,
  bar: 60,
  maxSpeed: 900,
});

/** A plate 20 thick with one round hole of 20; a boring head bites 0.5 at most. */
const plate: AimDocument = {
  edgebite: 1,
  units: 'mm',
  blank: { rectangle: [80, 50] },
  finished: { rectangle: [80, 50], holes: [{ circle: 20, at: [30, 20] }] },
  thickness: 20,
  material: 'mild steel',
  drawer: [drill(15), head(16)],
  bite: 0.5,
};

describe('a head at its smallest bites by its radius less that of the hole', () => {
  // In a hole of 15 a head of 16 bites 8 - 7.5 = 0.5; a larger one more than it may. By hand.
  test.each([
    [14, true],
    [15.99, true],
    [16, true],
    [16.01, false],
    [17, false],
  ])('smallest %d in a hole of 15: %s', (smallest, makes) => {
    expect(propose(parseAim({ ...plate, drawer: [drill(15), head(smallest)] })).ways.length > 0).toBe(makes);
    // Past six tools only some of the choices are examined.
    const many = [...[3, 4, 5, 6, 7, 15].map(drill), head(smallest)];
    expect(propose(parseAim({ ...plate, drawer: many })).ways.length > 0).toBe(makes);
  });

  test('at an edge, the metal that it bites is what the hole has left', () => {
    // The round stands 6 off the edge, in the air: metal is 6 away from its centre, or 7.5 after the drill.
    const [finished] = subtract(rectangle(80, 50), [disc({ x: 30, y: -6 }, 10)]);
    const aim = (drawer: DrawerTool[]) =>
      propose(parseAim({ ...plate, finished: written(finished?.outer ?? []), drawer })).ways;
    const cutsOf = (drawer: DrawerTool[]) =>
      aim(drawer).map(({ job }) =>
        job.cuts.map((cut) => (cut.kind === 'bore' ? (cut.passes?.kind ?? cut.kind) : cut.kind)),
      );
    // 6 + 0.5 is the largest radius at first: a head of 13 opens out in the air, one of 13.1 has to step in.
    expect(cutsOf([head(13)]).flat()).toContain('open out');
    expect(cutsOf([head(13.1)]).flat()).not.toContain('open out');
    expect(cutsOf([head(13.1)]).flat()).toContain('step in');
  });
});

describe('ways besides the best', () => {
  test('none is told that is likely to take over eight times as long', () => {
    // Two seats of 60 in the ends, led along by a mill of 50 or bored in bites of 0.2 by one smallest at 12.
    const [finished] = subtract(rectangle(200, 90), [disc({ x: 0, y: 45 }, 30), disc({ x: 200, y: 45 }, 30)]);
    const mill: DrawerTool = {
      id: 'mill',
      kind: 'end mill',
      toolMaterial: 'HSS',
      diameter: 50,
      teeth: 6,
      reach: 40,
      centerCutting: true,
    };
    const slow: DrawerTool = { ...head(12), largest: 70 } as DrawerTool;
    const ways = propose(
      parseAim({
        ...plate,
        blank: { rectangle: [200, 90] },
        finished: written(finished?.outer ?? []),
        bite: 0.4,
        arcs: true,
        drawer: [mill, slow],
      }),
    ).ways;
    const middle = ({ minutes }: (typeof ways)[number]['row']) =>
      minutes === null ? Number.NaN : (minutes[0] + minutes[1]) / 2;
    const [best, ...others] = ways.map(({ row }) => middle(row));
    expect(best).toBeGreaterThan(0);
    for (const other of others) expect(other).toBeLessThan(10 * (best ?? 0));
    expect(ways[0]?.job.cuts.every(({ tool }) => tool === 'mill')).toBe(true);
  });
});
