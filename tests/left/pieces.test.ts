import { examine, parseJob, type Report } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { ring } from './plate-ring.js';

/*
 * A plate 100 by 60, 12 thick. Areas of discs and rings are pi r² (Machinery's Handbook, 31st ed., p. 79); volumes
 * are areas times heights (Cavalieri).
 */

const T = 12;
const PLATE = 6000;

function report(
  cuts: readonly object[],
  more: object = {},
  outline: object = { rectangle: [100, 60] },
): Report {
  return examine(parseJob({ edgebite: 1, units: 'mm', part: { outline, thickness: T }, cuts, ...more }));
}

const bore = (id: string, more: object = {}) => ({
  id,
  kind: 'bore',
  center: [50, 30],
  diameter: 20,
  ...more,
});
const swept = (id: string, svgPath: string, diameter: number, more: object = {}) => ({
  id,
  kind: 'swept',
  path: { svgPath },
  diameter,
  ...more,
});

const piOf = (r: number) => Math.PI * r * r;

function rolesOf({ pieces }: Report): string[] {
  return pieces.map(({ id, role, freedBy }) => `${id} ${role} ${freedBy}`);
}

const close = (value: number) => expect.closeTo(value, 6);

describe('a ring cut', () => {
  it('through leaves a slug that it freed', () => {
    const result = report([ring('a')]);
    expect(rolesOf(result)).toEqual(['kept kept null', 'slug-1 slug a']);
    expect(result.slabs).toEqual([{ from: 0, to: 12, area: close(PLATE - Math.PI * 125) }]);
    expect(
      result.pieces.map(({ volume, area, perimeter, holes }) => [volume, area, perimeter, holes]),
    ).toEqual([
      [close((PLATE - piOf(15)) * T), close(PLATE - piOf(15)), close(320 + 30 * Math.PI), 1],
      [close(piOf(10) * T), close(piOf(10)), close(20 * Math.PI), 0],
    ]);
    expect(result.floors).toEqual([]);
    expect(result.removedArea).toBeCloseTo(Math.PI * 125, 6);
    expect(result.removedVolume).toBeCloseTo(Math.PI * 125 * T, 5);
  });

  it.each([
    ['short of reach', { reach: 9 }, 3, 'top'],
    ['to a depth', { depth: 9 }, 3, 'top'],
    ['to a depth from below', { depth: 9, from: 'bottom' }, 3, 'bottom'],
  ])('%s leaves a slug on its floor', (_, more, floor, side) => {
    const result = report([ring('a', more)]);
    expect(rolesOf(result)).toEqual(['kept kept null', 'slug-1 held slug a']);
    const [kept, slug] = result.pieces as [Report['pieces'][number], Report['pieces'][number]];
    expect(slug.volume).toBeCloseTo(piOf(10) * 9, 6);
    expect(kept.volume).toBeCloseTo(PLATE * T - piOf(15) * 9, 6);
    expect(slug.sections).toEqual([
      expect.objectContaining(side === 'top' ? { from: 3, to: 12 } : { from: 0, to: 9 }),
    ]);
    expect(result.floors).toEqual([
      expect.objectContaining({
        thickness: close(floor),
        area: close(Math.PI * 125),
        under: 'a',
        holds: 'slug-1',
        kerfLength: close(20 * Math.PI),
        slab: side === 'top' ? 0 : 1,
      }),
    ]);
    expect(result.removedArea).toBe(0);
    expect(result.pieces[0]?.holes).toBe(0);
  });

  it('that breaks out half way frees half a slug, held along half of its rim', () => {
    const through = report([ring('a', { center: [100, 30] })]);
    expect(rolesOf(through)).toEqual(['kept kept null', 'slug-1 slug a']);
    expect(through.pieces[1]?.volume).toBeCloseTo((piOf(10) / 2) * T, 6);
    const short = report([ring('a', { center: [100, 30], reach: 10 })]);
    expect(rolesOf(short)).toEqual(['kept kept null', 'slug-1 held slug a']);
    expect(short.floors).toEqual([
      expect.objectContaining({
        area: close((Math.PI * 125) / 2),
        kerfLength: close(10 * Math.PI),
        thickness: close(2),
      }),
    ]);
  });

  it('over a pocket from below stands on a floor of two thicknesses', () => {
    // The pocket takes all that lies right of x = 50, two deep.
    const result = report([
      ring('a', { reach: 9 }),
      swept('pocket', 'M80 -50 V110', 60, { from: 'bottom', depth: 2 }),
    ]);
    expect(rolesOf(result)).toEqual(['kept kept null', 'slug-1 held slug a']);
    const under = result.floors.filter((floor) => floor.under === 'a');
    expect(
      under.map(({ thickness, area, holds, kerfLength }) => [thickness, area, holds, kerfLength]),
    ).toEqual([
      [close(1), close((Math.PI * 125) / 2), 'slug-1', close(10 * Math.PI)],
      [close(3), close((Math.PI * 125) / 2), 'slug-1', close(10 * Math.PI)],
    ]);
  });

  it('is freed by a pocket from below that reaches its kerf', () => {
    const pocket = bore('pocket', { diameter: 32, from: 'bottom', depth: 3.5 });
    const result = report([ring('a', { reach: 9 }), pocket]);
    expect(rolesOf(result)).toEqual(['kept kept null', 'slug-1 slug pocket']);
    expect(result.pieces[1]?.volume).toBeCloseTo(piOf(10) * 8.5, 6);
    expect(rolesOf(report([pocket, ring('a', { reach: 9 })]))).toEqual(['kept kept null', 'slug-1 slug a']);
  });

  it('leaves no slug where a later bore takes its core', () => {
    for (const more of [{}, { reach: 9 }]) {
      const result = report([ring('a', more), bore('b', { diameter: 25 })]);
      expect(rolesOf(result)).toEqual(['kept kept null']);
      expect(result.floors.map(({ holds }) => holds)).toEqual(more.reach === undefined ? [] : [null]);
    }
  });

  it('leaves a slug with a hole where a later bore takes the middle of its core', () => {
    const result = report([ring('a', { reach: 9 }), bore('b', { diameter: 8 })]);
    expect(rolesOf(result)).toEqual(['kept kept null', 'slug-1 held slug a']);
    expect(result.pieces[1]?.volume).toBeCloseTo((piOf(10) - piOf(4)) * 9, 6);
    expect(result.pieces[1]?.holes).toBe(1);
    expect(result.floors.map(({ under, kerfLength }) => [under, kerfLength])).toEqual([
      ['a', close(20 * Math.PI)],
    ]);
  });

  it('cut again deeper round the same core leaves one slug, on the deeper floor', () => {
    for (const cuts of [
      [ring('a', { depth: 5 }), ring('b', { depth: 10, diameter: 26, wall: 3 })],
      [ring('b', { depth: 10, diameter: 26, wall: 3 }), ring('a', { depth: 5 })],
    ]) {
      const result = report(cuts);
      expect(rolesOf(result)).toEqual(['kept kept null', 'slug-1 held slug b']);
      expect(result.pieces[1]?.volume).toBeCloseTo(piOf(10) * 10, 6);
      const floors = Object.fromEntries(result.floors.map((floor) => [floor.under, floor]));
      expect(floors.b).toMatchObject({
        thickness: close(2),
        area: close(Math.PI * 69),
        holds: 'slug-1',
        kerfLength: close(20 * Math.PI),
      });
      expect(floors.a).toMatchObject({
        thickness: close(7),
        area: close(Math.PI * 56),
        holds: null,
        kerfLength: null,
      });
    }
  });

  it('over which a wider, deeper groove runs hangs on what the groove has left', () => {
    const result = report([
      ring('a', { depth: 8 }),
      swept('groove', 'M62 30 A12 12 0 1 1 38 30 A12 12 0 1 1 62 30', 4, { depth: 11 }),
    ]);
    expect(rolesOf(result)).toEqual(['kept kept null', 'slug-1 held slug a']);
    const held = result.floors.filter(({ holds }) => holds === 'slug-1');
    expect(held.map(({ under, thickness, kerfLength }) => [under, thickness, kerfLength])).toEqual([
      ['groove', close(1), close(20 * Math.PI)],
    ]);
  });
});

describe('rings within rings', () => {
  const outer = ring('outer', { diameter: 40, wall: 3 });
  const inner = ring('inner', { diameter: 20, wall: 3 });

  it('both through: the inner slug is freed by whichever parts it from the plate first', () => {
    expect(rolesOf(report([outer, inner]))).toEqual([
      'kept kept null',
      'slug-1 slug outer',
      'slug-2 slug outer',
    ]);
    expect(rolesOf(report([inner, outer]))).toEqual([
      'kept kept null',
      'slug-1 slug outer',
      'slug-2 slug inner',
    ]);
    expect(report([outer, inner]).pieces.map(({ volume }) => volume)).toEqual([
      close((PLATE - piOf(20)) * T),
      close((piOf(17) - piOf(10)) * T),
      close(piOf(7) * T),
    ]);
  });

  it('both short: a slug in a slug, each on its own floor', () => {
    const result = report([
      { ...outer, depth: 8 },
      { ...inner, depth: 5 },
    ]);
    expect(rolesOf(result)).toEqual(['kept kept null', 'slug-1 held slug outer', 'slug-2 held slug inner']);
    expect(result.pieces.slice(1).map(({ volume }) => volume)).toEqual([
      close(piOf(17) * 8 - piOf(10) * 5),
      close(piOf(7) * 5),
    ]);
    expect(
      result.floors.map(({ under, thickness, holds, kerfLength }) => [under, thickness, holds, kerfLength]),
    ).toEqual([
      ['outer', close(4), 'slug-1', close(34 * Math.PI)],
      ['inner', close(7), 'slug-2', close(14 * Math.PI)],
    ]);
  });

  it('the inner one deeper: it goes on below the outer one’s floor', () => {
    const result = report([
      { ...outer, depth: 5 },
      { ...inner, depth: 8 },
    ]);
    expect(result.pieces.slice(1).map(({ freedBy, volume }) => [freedBy, volume])).toEqual([
      ['outer', close((piOf(17) - piOf(10)) * 5)],
      ['inner', close(piOf(7) * 8)],
    ]);
    expect(result.floors.map(({ under, thickness, holds }) => [under, thickness, holds])).toEqual([
      ['outer', close(7), 'slug-1'],
      ['inner', close(4), 'slug-2'],
    ]);
  });

  it('the outer one through, the inner one short: one loose slug, no held one in it', () => {
    const result = report([outer, { ...inner, depth: 5 }]);
    expect(rolesOf(result)).toEqual(['kept kept null', 'slug-1 slug outer']);
    expect(result.pieces[1]?.volume).toBeCloseTo(piOf(17) * T - (piOf(10) - piOf(7)) * 5, 6);
    expect(result.floors.map(({ under, holds }) => [under, holds])).toEqual([['inner', null]]);
  });

  it('from both sides, not meeting: a slug above and one below the floor between', () => {
    const result = report([ring('top', { depth: 5 }), ring('low', { depth: 4, from: 'bottom' })]);
    expect(result.pieces.slice(1).map(({ role, freedBy, volume }) => [role, freedBy, volume])).toEqual([
      ['held slug', 'top', close(piOf(10) * 5)],
      ['held slug', 'low', close(piOf(10) * 4)],
    ]);
    expect(result.floors.map(({ under, thickness, holds, slab }) => [under, thickness, holds, slab])).toEqual(
      [
        ['top', close(3), 'slug-1', 1],
        ['low', close(3), 'slug-2', 1],
      ],
    );
  });

  it('from both sides, meeting, the core held: the core is kept in one piece', () => {
    const cuts = [ring('top', { depth: 7 }), ring('low', { depth: 5, from: 'bottom' })];
    const result = report(cuts, { keep: [50, 30] });
    expect(rolesOf(result)).toEqual(['kept kept null', 'offcut-1 offcut low']);
    expect(result.pieces[0]?.volume).toBeCloseTo(piOf(10) * T, 6);
  });

  it('from both sides, meeting: one slug, freed by the second', () => {
    const result = report([ring('top', { depth: 7 }), ring('low', { depth: 5, from: 'bottom' })]);
    expect(rolesOf(result)).toEqual(['kept kept null', 'slug-1 slug low']);
    expect(result.pieces[1]?.volume).toBeCloseTo(piOf(10) * T, 6);
  });
});

describe('slabs, depths and what is left through the whole thickness', () => {
  it('go up from the bottom, one between each two depths', () => {
    const { slabs } = report([
      bore('a', { depth: 4 }),
      bore('b', { center: [20, 30], depth: 5, from: 'bottom' }),
    ]);
    expect(slabs.map(({ from, to }) => [from, to])).toEqual([
      [0, 5],
      [5, 8],
      [8, 12],
    ]);
    expect(slabs.map(({ area }) => area)).toEqual([
      close(PLATE - piOf(10)),
      close(PLATE),
      close(PLATE - piOf(10)),
    ]);
  });

  it('are one where depths differ by a billionth of the thickness, and end with the part to the last bit', () => {
    const slabsOf = (...cuts: object[]) => report(cuts).slabs.map(({ from, to }) => [from, to]);
    const above = bore('a', { depth: 4 });
    const below = (depth: number) => bore('b', { center: [20, 30], from: 'bottom', depth });
    expect(slabsOf(above, below(8 - 5e-9))).toHaveLength(2);
    expect(slabsOf(above, below(8 + 5e-9))).toHaveLength(2);
    expect(slabsOf(above, below(8 + 5e-8))).toHaveLength(3);
    expect(slabsOf(below(12 - 5e-9))).toEqual([[0, 12]]);
    expect(slabsOf(above, below(12 - 5e-9))).toEqual([
      [0, 8],
      [8, 12],
    ]);
  });

  it('a bore from above and one from below that meet make a through hole', () => {
    const { removedArea, removedVolume, cuts, pieces } = report([
      bore('a', { depth: 7 }),
      bore('b', { diameter: 10, from: 'bottom', depth: 6 }),
    ]);
    expect(removedArea).toBeCloseTo(piOf(5), 6);
    expect(removedVolume).toBeCloseTo(piOf(10) * 7 + piOf(5) * 5, 6);
    expect(cuts.map((cut) => [cut.removedArea, cut.removedVolume])).toEqual([
      [close(piOf(10)), close(piOf(10) * 7)],
      [close(piOf(5)), close(piOf(5) * 5)],
    ]);
    expect(pieces[0]).toMatchObject({ area: close(PLATE - piOf(5)), holes: 1 });
  });

  it('a depth over the thickness goes through', () => {
    const result = report([bore('a', { depth: 30 })]);
    expect(result.slabs).toHaveLength(1);
    expect(result.cuts[0]).toMatchObject({ through: true, depth: 12 });
  });

  it('a cut in its turn takes only what is left', () => {
    const { cuts } = report([bore('a'), bore('b', { diameter: 24 }), bore('c')]);
    expect(cuts.map(({ removedArea }) => removedArea)).toEqual([
      close(piOf(10)),
      close(piOf(12) - piOf(10)),
      0,
    ]);
    expect(cuts.map(({ removedVolume }) => removedVolume)).toEqual([
      close(piOf(10) * T),
      close((piOf(12) - piOf(10)) * T),
      0,
    ]);
  });
});

describe('which piece is kept', () => {
  const parted = [swept('saw', 'M70 -5 V65', 2)];

  it('the largest, the other is an offcut that the cut freed', () => {
    const result = report(parted);
    expect(rolesOf(result)).toEqual(['kept kept null', 'offcut-1 offcut saw']);
    expect(result.pieces.map(({ area }) => area)).toEqual([close(69 * 60), close(29 * 60)]);
  });

  it('the one that is held, though it is smaller', () => {
    const result = report(parted, { keep: [90, 30] });
    expect(result.pieces.map(({ role, area }) => [role, area])).toEqual([
      ['kept', close(29 * 60)],
      ['offcut', close(69 * 60)],
    ]);
  });

  it('the largest with a finding, where the place that is held is cut away', () => {
    const result = report(parted, { keep: [70, 30] });
    expect(result.pieces[0]?.area).toBeCloseTo(69 * 60, 6);
    expect(result.findings[0]).toMatchObject({ level: 'danger', code: 'held-place-cut-away' });
  });

  it('a slug, if that is what is held: then the plate is the offcut', () => {
    const result = report([ring('a')], { keep: [50, 30] });
    expect(rolesOf(result)).toEqual(['kept kept null', 'offcut-1 offcut a']);
    expect(result.pieces[0]?.volume).toBeCloseTo(piOf(10) * T, 6);
  });

  it('offcuts that touch in a point only are two', () => {
    const result = report([
      bore('a', { center: [100, 30], diameter: 60 }),
      bore('b', { center: [70, 60], diameter: 1 }),
    ]);
    expect(result.pieces.map(({ role }) => role)).toEqual(['kept']);
    const touching = report([swept('low', 'M70 -5 V29', 2), swept('high', 'M70 31 V65', 2)]);
    // The two slots touch at (70, 30): what is left and right of them meets there and nowhere else.
    expect(touching.pieces.map(({ role, area }) => [role, area])).toEqual([
      ['kept', expect.any(Number)],
      ['offcut', expect.any(Number)],
    ]);
    // Each of the two ends there in a tip between the round ends of the slots.
    expect(touching.knifeEdges.map(({ angle, piece }) => [angle < 1e-4, piece])).toEqual([
      [true, 'kept'],
      [true, 'offcut-1'],
    ]);
  });

  it('none, if nothing is left', () => {
    const result = report([bore('all', { diameter: 200 })]);
    expect(result.pieces).toEqual([]);
    expect(result.findings[0]).toMatchObject({ level: 'danger', code: 'nothing-left' });
    expect(result.cuts[0]).toMatchObject({
      relation: 'swallows',
      removedArea: close(PLATE),
      removedVolume: close(PLATE * T),
    });
    expect(result.removedArea).toBeCloseTo(PLATE, 6);
  });
});

describe('findings name the right thing', () => {
  it('centre of a ring cut off the metal', () => {
    const codes = (cuts: object[]) => report(cuts).findings.map(({ code }) => code);
    expect(codes([ring('a', { center: [104, 30] })])).toContain('no-metal-under-centre');
    expect(codes([ring('a', { center: [96, 30] })])).not.toContain('no-metal-under-centre');
    // A pilot drilled first takes the metal from under the centre; one drilled afterwards does not matter.
    expect(codes([bore('pilot', { diameter: 6 }), ring('a')])).toContain('no-metal-under-centre');
    expect(codes([ring('a'), bore('pilot', { diameter: 6 })])).not.toContain('no-metal-under-centre');
  });

  it('centres of several ring cuts off the metal, told once', () => {
    const { findings } = report([
      ring('a', { center: [104, 10] }),
      ring('b', { center: [50, 30] }),
      ring('c', { center: [104, 50] }),
    ]);
    const bare = findings.filter(({ code }) => code === 'no-metal-under-centre');
    expect(bare).toMatchObject([{ at: null, about: ['cut:a', 'cut:c'] }]);
    expect(bare[0]?.message).toMatch(/^Cuts a and c have their centres off the metal/);
  });

  it('a floor thinner than the web limit', () => {
    const codes = report([bore('a', { depth: 11.5 })]).findings.map(({ code }) => code);
    expect(codes).toContain('thin-floor');
    expect(report([bore('a', { depth: 10.5 })]).findings.map(({ code }) => code)).not.toContain('thin-floor');
  });
});
