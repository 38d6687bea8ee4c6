import {
  disc,
  type GoesDown,
  type KeepOut,
  type LoadNames,
  noWayWords,
  rectangle,
  underneath,
  underneathRemark,
} from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { near } from '../center/near.js';

const BODY = disc({ x: 50, y: 30 }, 10);
const DRILL: GoesDown = { cut: 'bore', tool: 'drill', diameter: 20, depth: 15, through: true, reach: null };

function keepOut(id: string, x: number, from: number, to: number): KeepOut {
  const region = [{ outer: rectangle(10, 60, { at: { x, y: 0 } }), holes: [] }];
  return { id, kind: 'parallel', setup: null, region, from, to };
}

describe('underneath', () => {
  it('a drill comes out by its point, which of 118 degrees is 0.3004 of the diameter', () => {
    // Height of a cone of 59 degrees to either side: half the diameter over tan 59 = 1.664279 (table of tangents).
    const { below } = underneath(DRILL, BODY, 15, []);
    near(below, 10 / 1.664279, 1e-6);
    // Blind, its point comes out where the floor is thinner than the point is long.
    const blind = { ...DRILL, through: false };
    near(underneath({ ...blind, depth: 10 }, BODY, 15, []).below, 10 / 1.664279 - 5, 1e-5);
    expect(underneath({ ...blind, depth: 8 }, BODY, 15, []).below).toBe(0);
  });

  it('mills and boring heads end plain, a bore without a tool is taken for drilled', () => {
    for (const tool of ['end mill', 'boring head'] as const)
      expect(underneath({ ...DRILL, tool }, BODY, 15, []).below).toBe(0);
    expect(underneath({ ...DRILL, tool: null }, BODY, 15, []).below).toBeGreaterThan(6);
    expect(underneath({ ...DRILL, tool: null, cut: 'swept' }, BODY, 15, []).below).toBe(0);
    expect(underneath({ ...DRILL, tool: null, through: false, depth: 14 }, BODY, 15, []).below).toBe(0);
  });

  it('a hollow cutter comes out by what its reach leaves', () => {
    const ring: GoesDown = {
      cut: 'annular',
      tool: 'annular cutter',
      diameter: 20,
      depth: 15,
      through: true,
      reach: 25,
    };
    expect(underneath(ring, BODY, 15, []).below).toBe(10);
    expect(underneath({ ...ring, reach: 12 }, BODY, 15, []).below).toBe(0);
    expect(underneath({ ...ring, reach: null }, BODY, 15, []).below).toBe(0);
    expect(underneath({ ...ring, through: false, depth: 14 }, BODY, 15, []).below).toBe(0);
  });

  it('tells what lies under it, the nearest, and by how much it clears it', () => {
    const mill: GoesDown = { ...DRILL, tool: 'end mill' };
    const deep = keepOut('deep', 45, -30, -12);
    const high = keepOut('high', 55, -30, 0);
    expect(underneath(mill, BODY, 15, [deep])).toEqual({ below: 0, over: 'deep', margin: 12 });
    expect(underneath(mill, BODY, 15, [deep, high])).toEqual({ below: 0, over: 'high', margin: 0 });
    // Beside it in plan, touching or not; or above where it comes out.
    expect(underneath(mill, BODY, 15, [keepOut('beside', 60, -30, 0)]).over).toBeNull();
    expect(underneath(mill, BODY, 15, [keepOut('over', 45, 15, 30)]).over).toBeNull();
    // Standing on the level that it comes down to: all of it is beside the tool.
    expect(underneath(mill, BODY, 15, [keepOut('level', 45, 0, 12)]).over).toBeNull();
    expect(underneath(mill, BODY, 15, [keepOut('sunk', 45, -0.001, 12)]).over).toBe('sunk');
    // The point of a drill goes into it.
    const { over, margin } = underneath(DRILL, BODY, 15, [high]);
    expect(over).toBe('high');
    near(margin ?? 0, -10 / 1.664279, 1e-6);
    // Blind above a floor there is nothing to come down on.
    expect(underneath({ ...mill, through: false, depth: 14 }, BODY, 15, [high])).toEqual({
      below: 0,
      over: null,
      margin: null,
    });
  });

  it('refuses sizes that are none', () => {
    expect(() => underneath({ ...DRILL, diameter: 0 }, BODY, 15, [])).toThrow('underneath: diameter is 0');
    expect(() => underneath(DRILL, BODY, Number.NaN, [])).toThrow('underneath: thickness is NaN');
    expect(() => underneath({ ...DRILL, reach: -1 }, BODY, 15, [])).toThrow('underneath: reach is -1');
  });
});

const NAMES: LoadNames = {
  tool: 'Drill d20',
  cut: 'cut eye',
  length: (value) => `${value.toFixed(3)} mm`,
  thing: (id) => `parallel ${id}`,
};

describe('underneathRemark', () => {
  it('says nothing where the gap is enough, asks where it is small, warns where it is none', () => {
    expect(underneathRemark({ below: 6, over: null, margin: null }, 1, NAMES)).toBeNull();
    expect(underneathRemark({ below: 6, over: 'p', margin: 1 }, 1, NAMES)).toBeNull();
    expect(underneathRemark({ below: 6, over: 'p', margin: 0.5 }, 1, NAMES)).toEqual({
      level: 'check',
      code: 'near-underneath',
      message:
        'Drill d20 comes out 6.000 mm below the part in cut eye, 0.500 mm over parallel p; the least is 1.000 mm. Move parallel p, or raise the part.',
    });
    expect(underneathRemark({ below: 0, over: 'p', margin: 0 }, 1, NAMES)?.message).toMatch(
      /comes through in cut eye and touches parallel p/,
    );
    expect(underneathRemark({ below: 6, over: 'p', margin: -6 }, 1, NAMES)).toMatchObject({
      level: 'danger',
      message: expect.stringContaining('and goes 6.000 mm into parallel p'),
    });
  });
});

describe('noWayWords', () => {
  it('says why there is no way, and how each tool comes up', () => {
    const words = (why: Parameters<typeof noWayWords>[0], kind: Parameters<typeof noWayWords>[1] = 'bores') =>
      noWayWords(why, kind, NAMES);
    expect(words({ reason: 'walled in', share: 1, from: 0, to: 5 })).toBe(
      'There is no way off the wall: it goes all the way round. Stop the spindle before you lift it straight up, or it marks the wall.',
    );
    expect(words({ reason: 'walled in', share: 0.7, from: 0, to: 5 }, 'drills')).toMatch(
      /from a depth of 0.000 mm to 5.000 mm .* Lift it straight up while it turns\.$/,
    );
    expect(words({ reason: 'core stands' }, 'rings')).toMatch(/a core stands inside/);
    expect(words({ reason: 'walled in', share: 1, from: 0, to: 5 }, 'mills round')).toMatch(
      /towards the middle of the bore/,
    );
    expect(words({ reason: 'no room', within: 10.5, clearance: 0.5 })).toMatch(
      /within 10.500 mm no place is 0.500 mm clear/,
    );
    expect(words({ reason: 'keep-out', ids: ['a'] })).toMatch(/parallel a is in the way. Move it,/);
    expect(words({ reason: 'keep-out', ids: ['a', 'b'] }, null)).toMatch(
      /parallel a and parallel b are in the way. Move them,/,
    );
  });
});
