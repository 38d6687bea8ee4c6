import {
  arcEdge,
  type Doing,
  doingOf,
  feedFor,
  feedOfDoing,
  lineEdge,
  minutesOfPass,
  travelOfPass,
} from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { near } from '../center/near.js';

describe('doingOf', () => {
  it.each<[Parameters<typeof doingOf>[0], Parameters<typeof doingOf>[1], Doing]>([
    [{ kind: 'drill', diameter: 10 }, { kind: 'bore', diameter: 10 }, 'drills'],
    [{ kind: 'annular cutter', diameter: 36 }, { kind: 'annular', diameter: 36 }, 'rings'],
    [{ kind: 'boring head', diameter: 34 }, { kind: 'bore', diameter: 34 }, 'bores'],
    [{ kind: 'end mill', diameter: 10 }, { kind: 'bore', diameter: 10 }, 'plunges'],
    [{ kind: 'end mill', diameter: 12 }, { kind: 'bore', diameter: 10 }, 'plunges'],
    [{ kind: 'end mill', diameter: 8 }, { kind: 'bore', diameter: 10 }, 'mills round'],
    [{ kind: 'end mill', diameter: 8 }, { kind: 'swept', diameter: 8 }, 'mills along'],
  ])('of %o in %o', (tool, cut, doing) => {
    expect(doingOf(tool, cut)).toBe(doing);
  });
});

describe('travelOfPass', () => {
  it('straight down is the depth, and for a drill its point besides', () => {
    for (const doing of ['rings', 'bores', 'plunges'] as const)
      expect(travelOfPass({ doing, depth: 12 })).toBe(12);
    // A point of 118 degrees: half the diameter over tan 59 = 1.664279 (table of tangents).
    near(travelOfPass({ doing: 'drills', depth: 12, diameter: 10 }), 12 + 5 / 1.664279, 1e-7);
  });

  it('opening out with an end mill, each pass goes its own way round and no other', () => {
    // By hand: a mill of 8, passes to 12, 16 and 20: circles of 4, 8 and 12 across, 24 pi in all.
    const passes = [12, 16, 20].map((diameter) =>
      travelOfPass({ doing: 'mills round', diameter, toolDiameter: 8 }),
    );
    expect(passes).toEqual([4 * Math.PI, 8 * Math.PI, 12 * Math.PI]);
    near(
      passes.reduce((a, b) => a + b),
      24 * Math.PI,
      1e-15,
    );
    // At 48 a minute: pi / 12, pi / 6 and pi / 4 minutes.
    for (const [k, travel] of passes.entries()) {
      near(minutesOfPass(travel, [48, 48])?.[0] ?? 0, (Math.PI * (k + 1)) / 12, 1e-15);
    }
  });

  it('along a path it is the length of its leads and its cut', () => {
    const P = (x: number, y: number) => ({ x, y });
    const edges = [lineEdge(P(0, 0), P(30, 0)), arcEdge(P(30, 0), P(30, 10), P(30, 5), true)];
    near(travelOfPass({ doing: 'mills along', edges }), 30 + 5 * Math.PI, 1e-15);
    expect(travelOfPass({ doing: 'mills along', edges: [] })).toBe(0);
  });

  it('refuses what cannot be', () => {
    expect(() => travelOfPass({ doing: 'bores', depth: -1 })).toThrow('travelOfPass: depth is -1');
    expect(() => travelOfPass({ doing: 'mills round', diameter: 8, toolDiameter: 8 })).toThrow(
      'it must be under the diameter, 8',
    );
    expect(() => travelOfPass({ doing: 'drills', depth: 3, diameter: Number.NaN })).toThrow(
      'diameter is NaN',
    );
  });
});

describe('feedOfDoing', () => {
  const MILL = {
    doing: 'mills along' as Doing,
    kind: 'end mill' as const,
    metal: 'mild steel' as const,
    diameter: 12.7,
    teeth: 4,
    units: 'mm' as const,
    spindle: [600, 800] as const,
    own: null,
  };

  it('along its side an end mill has the feed of the table; a plunge a quarter to a half of it', () => {
    const table = feedFor('end mill', 'mild steel', 12.7, 'mm');
    const [side, round, plunge] = (['mills along', 'mills round', 'plunges'] as const).map((doing) =>
      feedOfDoing({ ...MILL, doing }),
    );
    expect(side?.perTooth).toEqual(table?.range);
    expect(round).toEqual(side);
    const [low, high] = table?.range ?? [Number.NaN, Number.NaN];
    // v = n z f (Machinery's Handbook).
    near(side?.rate?.[0] ?? 0, 600 * 4 * low, 1e-14);
    near(side?.rate?.[1] ?? 0, 800 * 4 * high, 1e-14);
    near(plunge?.perTooth?.[0] ?? 0, low / 4, 1e-14);
    near(plunge?.perTooth?.[1] ?? 0, high / 2, 1e-14);
    near(plunge?.rate?.[1] ?? 0, 800 * 2 * high, 1e-14);
    expect(plunge?.source).toContain('common practice, no source');
    expect(plunge?.source).toContain(table?.source ?? 'nothing');
  });

  it("the job's own feed wins, whatever the tool and the metal", () => {
    for (const metal of ['mild steel', null] as const) {
      expect(
        feedOfDoing({
          ...MILL,
          metal,
          doing: 'plunges',
          teeth: null,
          spindle: null,
          own: { perTurn: 0.05, rpm: 400 },
        }),
      ).toEqual({
        perTooth: null,
        perTurn: [0.05, 0.05],
        rate: [20, 20],
        source: 'given by the job',
      });
    }
  });

  it('is not known without a metal, a number of teeth or a speed', () => {
    const nothing = { perTooth: null, perTurn: null, rate: null, source: null };
    expect(feedOfDoing({ ...MILL, metal: null })).toEqual(nothing);
    expect(feedOfDoing({ ...MILL, diameter: 1 })).toEqual(nothing);
    const toothless = feedOfDoing({ ...MILL, teeth: null });
    expect([toothless.perTurn, toothless.rate]).toEqual([null, null]);
    expect(toothless.perTooth).not.toBeNull();
    expect(feedOfDoing({ ...MILL, spindle: null })).toMatchObject({ rate: null });
    expect(minutesOfPass(10, null)).toBeNull();
  });

  it('of a drill is for each turn', () => {
    const drill = feedOfDoing({ ...MILL, doing: 'drills', kind: 'drill', teeth: null });
    expect(drill.perTooth).toBeNull();
    expect(drill.perTurn).toEqual(feedFor('drill', 'mild steel', 12.7, 'mm')?.range);
    // Ten deep at 0.1 a turn and 500 turns: a fifth of a minute; the least at the fastest.
    expect(minutesOfPass(10, [25, 50])).toEqual([0.2, 0.4]);
  });

  it('refuses numbers that are none', () => {
    expect(() => feedOfDoing({ ...MILL, diameter: 0 })).toThrow('feedOfDoing: diameter is 0');
    expect(() => feedOfDoing({ ...MILL, diameter: -1, own: { perTurn: 0.1, rpm: 400 } })).toThrow(
      'feedOfDoing: diameter is -1',
    );
    expect(() => feedOfDoing({ ...MILL, own: { perTurn: 0, rpm: 400 } })).toThrow(
      'feedOfDoing: own.perTurn is 0',
    );
  });
});
