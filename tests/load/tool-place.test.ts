import {
  type Doing,
  disc,
  type Layer,
  type LoadNames,
  type Metal,
  type PlaceFact,
  type Point,
  placeFacts,
  placeRemark,
  type Region,
  rectangle,
  subtract,
  union,
} from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { block } from '../center/near.js';

const P = (x: number, y: number): Point => ({ x, y });
const PLATE = block(100, 60);
const layers = (...metals: Region[]): Layer[] =>
  metals.map((metal, k) => ({ from: 5 * k, to: 5 * k + 5, metal }));

interface Options {
  readonly doing?: Doing;
  readonly cutsToCenter?: boolean | null;
  readonly metal?: Metal | null;
  readonly radius?: number;
}

function facts(center: Point, metals: Region[], options: Options = {}): PlaceFact[] {
  const { doing = 'drills', cutsToCenter = null, metal = 'mild steel', radius = 5 } = options;
  return placeFacts({ doing, cutsToCenter, center, radius, layers: layers(...metals), metal });
}

describe('placeFacts of a drill', () => {
  it('has nothing to say of solid metal, of air, and of a hole in its middle', () => {
    expect(facts(P(50, 30), [PLATE, PLATE])).toEqual([]);
    expect(facts(P(150, 30), [PLATE])).toEqual([]);
    expect(facts(P(50, 30), [subtract(PLATE, [disc(P(50, 30), 2)])])).toEqual([]);
    // As far off as a hole that was drilled for it may be; its rim may touch the edge of the plate.
    expect(facts(P(50, 30), [subtract(PLATE, [disc(P(50.05, 30), 2)])])).toEqual([]);
    expect(facts(P(50, 5), [PLATE])).toEqual([]);
    // A blind hole for it, and then solid.
    expect(facts(P(50, 30), [subtract(PLATE, [disc(P(50, 30), 2)]), PLATE])).toEqual([]);
    // A pocket above, or below, that is wider than the drill.
    const pocket = subtract(PLATE, [disc(P(50, 30), 8)]);
    expect(facts(P(50, 30), [pocket, PLATE, pocket])).toEqual([]);
  });

  it('tells a centre off the metal, and how far', () => {
    expect(facts(P(103, 30), [PLATE])).toEqual([
      { kind: 'enters badly', footing: 'center in air', atDepth: 0, away: expect.closeTo(3, 12) },
    ]);
    // Over a slot that is narrower than the drill, metal on both sides.
    const slot: Region = [{ outer: rectangle(100, 4, { at: P(0, 28) }), holes: [] }];
    expect(facts(P(50, 30), [subtract(PLATE, [slot])])).toEqual([
      { kind: 'enters badly', footing: 'center in air', atDepth: 0, away: expect.closeTo(2, 12) },
    ]);
  });

  it('tells a part of it over an edge, with its centre on the metal or on the edge itself', () => {
    for (const x of [96, 100]) {
      expect(facts(P(x, 30), [PLATE])).toEqual([
        { kind: 'enters badly', footing: 'over an edge', atDepth: 0, away: 0 },
      ]);
    }
  });

  it('tells a hole that is not in its middle, be its centre over it or not', () => {
    for (const x of [51, 52.5]) {
      expect(facts(P(50, 30), [subtract(PLATE, [disc(P(x, 30), 2)])])).toMatchObject([
        { kind: 'enters badly', footing: 'over a hole' },
      ]);
    }
  });

  it('tells a void that it comes into on its way, and at which depth', () => {
    const crossed = subtract(PLATE, [disc(P(56, 30), 4)]);
    expect(facts(P(50, 30), [PLATE, PLATE, crossed, PLATE])).toEqual([
      { kind: 'comes into a void', footing: 'over an edge', atDepth: 10, away: 0 },
    ]);
    expect(facts(P(50, 30), [PLATE, block(48, 60)])).toEqual([
      { kind: 'comes into a void', footing: 'center in air', atDepth: 5, away: expect.closeTo(2, 12) },
    ]);
    // Air first: where it enters counts.
    expect(facts(P(103, 30), [[], PLATE])).toMatchObject([{ kind: 'enters badly', atDepth: 5 }]);
  });

  it('grabs in brass and bronze, the more in a hole that is there already', () => {
    for (const metal of ['brass', 'bronze'] as const) {
      expect(facts(P(50, 30), [PLATE], { metal })).toEqual([{ kind: 'grabs', metal, opensOut: false }]);
      expect(facts(P(50, 30), [subtract(PLATE, [disc(P(50, 30), 2)])], { metal })).toEqual([
        { kind: 'grabs', metal, opensOut: true },
      ]);
      // A hole that ends on the way down is there already too.
      expect(facts(P(50, 30), [subtract(PLATE, [disc(P(50, 30), 2)]), PLATE], { metal })).toEqual([
        { kind: 'grabs', metal, opensOut: true },
      ]);
      expect(facts(P(500, 30), [PLATE], { metal })).toEqual([]);
      expect(facts(P(50, 30), [PLATE], { metal, doing: 'plunges', cutsToCenter: true })).toEqual([]);
    }
    for (const metal of ['mild steel', 'cast iron', 'aluminium', null] as const) {
      expect(facts(P(50, 30), [PLATE], { metal })).toEqual([]);
    }
  });
});

describe('placeFacts of other tools', () => {
  const plunge = (cutsToCenter: boolean | null): Options => ({ doing: 'plunges', cutsToCenter });

  it('an end mill that cuts to its centre may plunge anywhere', () => {
    for (const x of [50, 97, 103]) expect(facts(P(x, 30), [PLATE, block(40, 40)], plunge(true))).toEqual([]);
  });

  it('one that does not must have no metal at its centre, and be led', () => {
    expect(facts(P(50, 30), [PLATE], plunge(false))).toEqual([
      { kind: 'plunges on its center', known: true, atDepth: 0 },
    ]);
    expect(facts(P(50, 30), [subtract(PLATE, [disc(P(50, 30), 3)]), PLATE], plunge(false))).toEqual([
      { kind: 'plunges on its center', known: true, atDepth: 5 },
    ]);
    expect(facts(P(50, 30), [subtract(PLATE, [disc(P(50, 30), 3)])], plunge(false))).toEqual([]);
    expect(facts(P(103, 30), [PLATE], plunge(false))).toMatchObject([
      { kind: 'enters badly', footing: 'center in air' },
    ]);
  });

  it('of one of which it is not said, it is asked only where there is metal at its centre', () => {
    expect(facts(P(50, 30), [[], PLATE], plunge(null))).toEqual([
      { kind: 'plunges on its center', known: false, atDepth: 5 },
    ]);
    expect(facts(P(103, 30), [PLATE], plunge(null))).toEqual([]);
  });

  it('a boring head needs a hole at its centre', () => {
    expect(facts(P(50, 30), [PLATE], { doing: 'bores' })).toEqual([
      { kind: 'bores without a hole', atDepth: 0 },
    ]);
    expect(facts(P(50, 30), [subtract(PLATE, [disc(P(50, 30), 2)]), PLATE], { doing: 'bores' })).toEqual([
      { kind: 'bores without a hole', atDepth: 5 },
    ]);
    // A partial hole with its centre off the metal.
    expect(facts(P(102, 30), [PLATE], { doing: 'bores' })).toEqual([]);
    // A core that stands in what a ring has cut.
    const ringed = union([subtract(PLATE, [disc(P(50, 30), 5)]), disc(P(50, 30), 3)]);
    expect(facts(P(50, 30), [ringed], { doing: 'bores' })).toHaveLength(1);
  });

  it('one that mills round has to go down first, on its centre where all of the bore is metal', () => {
    const round = (cutsToCenter: boolean | null): Options => ({
      doing: 'mills round',
      cutsToCenter,
      radius: 9,
    });
    for (const known of [false, null]) {
      expect(facts(P(50, 30), [PLATE], round(known))).toEqual([
        { kind: 'plunges on its center', known: known === false, atDepth: 0 },
      ]);
    }
    expect(facts(P(50, 30), [PLATE], round(true))).toEqual([]);
    // Into a hole that is there, or beside the part, it may go down in air.
    expect(facts(P(50, 30), [subtract(PLATE, [disc(P(52, 30), 5)])], round(false))).toEqual([]);
    expect(facts(P(95, 30), [PLATE], round(false))).toEqual([]);
  });

  it('rings, and what mills along a path, are no matter of footing', () => {
    for (const doing of ['rings', 'mills along'] as const) {
      expect(facts(P(100, 30), [PLATE], { doing, metal: 'brass' })).toEqual([]);
    }
  });

  it('refuses a radius that is not over 0, and layers that are none', () => {
    expect(() => facts(P(0, 0), [PLATE], { radius: 0 })).toThrow('placeFacts: radius is 0');
    expect(() => facts(P(0, 0), [])).toThrow('placeFacts: there are no layers');
  });
});

describe('placeRemark', () => {
  const names: LoadNames = {
    tool: 'Drill d10',
    cut: 'cut eye',
    length: (value) => `${value.toFixed(3)} mm`,
    thing: (id) => `parallel ${id}`,
  };

  it.each<[PlaceFact, string, RegExp]>([
    [
      { kind: 'enters badly', footing: 'center in air', atDepth: 0, away: 3 },
      'danger',
      /with its centre 3.000 mm off/,
    ],
    [
      { kind: 'enters badly', footing: 'over an edge', atDepth: 5, away: 0 },
      'danger',
      /edge, at a depth of 5.000 mm/,
    ],
    [
      { kind: 'comes into a void', footing: 'over a hole', atDepth: 10, away: 0 },
      'danger',
      /depth of 10.000 mm in cut/,
    ],
    [{ kind: 'plunges on its center', known: true, atDepth: 0 }, 'danger', /does not cut to its centre/],
    [
      { kind: 'plunges on its center', known: false, atDepth: 0 },
      'check',
      /Make sure that it cuts to its centre/,
    ],
    [{ kind: 'bores without a hole', atDepth: 0 }, 'danger', /Drill or mill a hole first/],
    [{ kind: 'grabs', metal: 'brass', opensOut: true }, 'check', /can grab in brass/],
  ])('of %o', (fact, level, words) => {
    const { message, ...rest } = placeRemark(fact, names);
    expect(rest.level).toBe(level);
    expect(message).toMatch(words);
    expect(message).toMatch(/^Drill d10 .*cut eye.*\.$/);
    // Held by clamps and stops, never by a person.
    expect(message).not.toMatch(/\bhands?\b|hold it/i);
  });
});
