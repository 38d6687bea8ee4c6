import {
  type ArcEdge,
  arcEdge,
  area,
  circleLoop,
  contains,
  disc,
  type Edge,
  type Loop,
  lineEdge,
  type Point,
  type Region,
  reversed,
  ring,
  subtract,
  union,
  xor,
} from '@edgebite/core';
import { boxRegion, validateRegion, windingOf } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clearCut } from '../../packages/core/src/clear/clear-cut.js';
import { runs } from '../tools/runs.js';
import { closed, p } from './shapes.js';

/*
 * Discs taken out of regions without an overlay: against the same answer by overlays only, closed forms of discs and
 * segments (Machinery's Handbook, 31st ed., "Areas and volumes"), and the definition, point by point.
 */

const PLATE = boxRegion(0, 0, 100, 60);
const FRAME = { minX: 0, minY: 0, maxX: 100, maxY: 60 };

const circle = (x: number, y: number, radius: number, source?: string): ArcEdge =>
  circleLoop(p(x, y), radius, true, source)[0] as ArcEdge;

/** What is left, which the direct way must have found. */
function left(from: Region, circles: readonly ArcEdge[]): Region {
  const found = clearCut(from, circles, FRAME);
  expect(found).not.toBeNull();
  validateRegion(found as Region, { extent: 100 });
  return found as Region;
}

function isClear(from: Region, circles: readonly ArcEdge[]): boolean {
  return clearCut(from, circles, FRAME) !== null;
}

const discOf = ({ center, radius, source }: ArcEdge): Region => disc(center, radius, source);
const edges = (region: Region): Edge[] => region.flatMap(({ outer, holes }) => [...outer, ...holes.flat()]);

/** Area between two circles of radius r whose centres are d apart. */
function lens(r: number, d: number): number {
  return 2 * r * r * Math.acos(d / (2 * r)) - (d / 2) * Math.sqrt(4 * r * r - d * d);
}

/** Area of the segment of height h of a disc of radius r. */
function segment(r: number, h: number): number {
  return r * r * Math.acos((r - h) / r) - (r - h) * Math.sqrt(2 * r * h - h * h);
}

/** Whether loops go round a place, told by angles, which the library does not. */
function isIn(region: Region, at: Point): boolean {
  const loops = region.flatMap(({ outer, holes }) => [outer, ...holes]);
  return loops.reduce((sum, loop) => sum + windingOf(loop, at), 0) !== 0;
}

describe('discs out of a region, nothing near to touching', () => {
  it('leave what overlays leave, in parts, holes and places', () => {
    let clear = 0;
    let all = 0;
    const place = fc.record({
      x: fc.integer({ min: -50, max: 1050 }),
      y: fc.integer({ min: -50, max: 650 }),
    });
    const discs = fc.array(fc.record({ at: place, radius: fc.integer({ min: 7, max: 260 }) }), {
      minLength: 1,
      maxLength: 14,
    });
    fc.assert(
      fc.property(discs, discs, fc.boolean(), (first, second, hasHoles) => {
        const circles = second.map(({ at, radius }) => circle(at.x / 10 + 0.0137, at.y / 10, radius / 10));
        const holes = first.map(({ at, radius }) => disc(p(at.x / 10, at.y / 10 + 0.0071), radius / 20));
        const inside = union(holes);
        // By overlays only.
        const less = (whole: Region, gone: Region) => xor([union([whole, gone]), gone]);
        const from = hasHoles ? less(PLATE, inside) : PLATE;
        const wanted = less(from, union(circles.map(discOf)));
        const found = clearCut(from, circles, FRAME);
        all++;
        if (found === null) return;
        clear++;
        validateRegion(found, { extent: 100 });
        expect(Math.abs(area(found) - area(wanted))).toBeLessThan(1e-8);
        const print = (region: Region) => region.map(({ holes }) => holes.length).sort((a, b) => a - b);
        expect(print(found)).toEqual(print(wanted));
        for (const { at } of second) {
          const there = p(at.x / 10 + 0.3, at.y / 10 + 0.1);
          const isCut = circles.some(
            ({ center, radius }) => Math.hypot(there.x - center.x, there.y - center.y) < radius,
          );
          expect(isIn(found, there)).toBe(contains(from, there) === 'inside' && !isCut);
        }
      }),
      { numRuns: runs(300) },
    );
    expect(clear).toBeGreaterThan(all * 0.9);
  });

  it('are holes where they meet nothing, the region untouched where they lie beyond it', () => {
    const [part] = left(PLATE, [circle(30, 30, 5, 'a'), circle(70, 30, 6, 'b'), circle(200, 30, 7)]);
    expect(part?.outer).toBe(PLATE[0]?.outer);
    expect(part?.holes.map(([edge]) => edge?.source)).toEqual(['a', 'b']);
    expect(part?.holes.flat().every((edge) => edge.kind === 'arc' && !edge.ccw)).toBe(true);
    expect(left(PLATE, [circle(200, 30, 7)])[0]).toBe(PLATE[0]);
    expect(left(PLATE, [circle(50, 30, 80)])).toEqual([]);
  });

  it('bite into an edge: the arc from one end of the bite to the other, under the name of its disc', () => {
    const [part, ...others] = left(PLATE, [circle(50, 3, 10, 'bite')]);
    expect(others).toEqual([]);
    expect(part?.holes).toEqual([]);
    expect(part?.outer).toHaveLength(6);
    expect(area([part as Region[number]])).toBeCloseTo(6000 - (Math.PI * 100 - segment(10, 7)), 10);
    const arc = part?.outer.find((edge) => edge.kind === 'arc') as ArcEdge;
    const half = Math.sqrt(91);
    expect(arc).toMatchObject({ source: 'bite', ccw: false, radius: 10, center: p(50, 3) });
    expect(arc.a.x).toBeCloseTo(50 - half, 12);
    expect(arc.b.x).toBeCloseTo(50 + half, 12);
    expect(part?.outer.filter((edge) => PLATE[0]?.outer.includes(edge))).toHaveLength(3);
  });

  it('part what they cut through, and what is left of one edge between two bites keeps its name', () => {
    const bar = [
      {
        outer: closed(p(0, 0), p(100, 0), p(100, 10), p(0, 10)).map((e) => ({ ...e, source: 'bar' })),
        holes: [],
      },
    ];
    const parts = left(bar, [circle(20, 5, 8), circle(50, 5, 9), circle(75, 5, 7)]);
    expect(parts).toHaveLength(4);
    expect(edges(parts).filter(({ source }) => source === 'bar')).toHaveLength(4 * 2 + 2);
    const through = (r: number) => Math.PI * r * r - 2 * segment(r, r - 5);
    expect(area(parts)).toBeCloseTo(1000 - through(8) - through(9) - through(7), 10);
  });

  it('that overlap are one hole; one within another is nothing', () => {
    const [part] = left(PLATE, [
      circle(40, 30, 10),
      circle(50, 30, 10),
      circle(44, 30, 3),
      circle(46, 31, 2),
    ]);
    expect(part?.holes).toHaveLength(1);
    expect(part?.holes[0]).toHaveLength(2);
    expect(area([part as Region[number]])).toBeCloseTo(6000 - 2 * Math.PI * 100 + lens(10, 10), 10);
  });

  it('in a ring leave its core as a part of its own, with the holes that lie in it', () => {
    const core = disc(p(50, 30), 2, 'pin');
    const plate = subtract(PLATE, [core, disc(p(8, 8), 3, 'corner')]);
    const around = Array.from({ length: 8 }, (_, k) =>
      circle(50 + 15 * Math.cos((k * Math.PI) / 4), 30 + 15 * Math.sin((k * Math.PI) / 4), 7),
    );
    const parts = left(plate, around);
    expect(parts).toHaveLength(2);
    const [outside, inside] = parts as [Region[number], Region[number]];
    expect(outside.outer).toBe(plate[0]?.outer);
    expect(outside.holes.map((hole) => hole.length).sort((a, b) => a - b)).toEqual([2, 8]);
    expect(inside.holes.map(([edge]) => edge?.source)).toEqual(['pin']);
    const overlap = lens(7, 30 * Math.sin(Math.PI / 8));
    expect(area(parts)).toBeCloseTo(area(plate) - 8 * (Math.PI * 49 - overlap), 9);
  });

  it('swallow holes that lie in them, cut those that do not, and are nothing in a hole', () => {
    const plate = subtract(PLATE, [disc(p(30, 30), 4, 'small'), disc(p(70, 30), 12, 'large')]);
    const swallowed = left(plate, [circle(31, 30, 9)]);
    expect(swallowed[0]?.holes).toHaveLength(2);
    expect(area(swallowed)).toBeCloseTo(6000 - Math.PI * (81 + 144), 10);
    expect(left(plate, [circle(70, 31, 5)])[0]).toBe(plate[0]);
    const joined = left(plate, [circle(84, 30, 12)]);
    expect(joined[0]?.holes).toHaveLength(2);
    expect(area(joined)).toBeCloseTo(area(plate) - Math.PI * 144 + lens(12, 14), 10);
  });

  it('cut arcs that go either way round, and more than half round', () => {
    // A pin with a flat: three quarters of a circle and a corner.
    const pin = [
      {
        outer: [
          arcEdge(p(20, 0), p(0, -20), p(0, 0), true),
          lineEdge(p(0, -20), p(0, 0)),
          lineEdge(p(0, 0), p(20, 0)),
        ],
        holes: [],
      },
    ];
    const bitten = left(pin, [circle(-24, 0, 20)]);
    expect(area(bitten)).toBeCloseTo(300 * Math.PI - lens(20, 24), 9);
    const hollow = [
      { outer: PLATE[0]?.outer as Loop, holes: [[...(pin[0]?.outer ?? [])].reverse().map(reversed)] },
    ];
    const moved = hollow.map((part) => ({
      outer: part.outer,
      holes: part.holes.map((hole) => hole.map(shifted)),
    }));
    validateRegion(moved);
    const opened = left(moved, [circle(21, 30, 20)]);
    expect(area(opened)).toBeCloseTo(6000 - 300 * Math.PI - (400 * Math.PI - lens(20, 24)), 9);
  });

  it('of touching parts and holes leave them touching', () => {
    const touching: Region = [
      { outer: closed(p(0, 0), p(40, 0), p(40, 30), p(0, 30)), holes: [] },
      { outer: closed(p(40, 30), p(100, 30), p(100, 60), p(40, 60)), holes: [] },
    ];
    const parts = left(touching, [circle(20, 0, 5), circle(100, 50, 6), circle(20, 20, 3)]);
    expect(parts.map(({ holes }) => holes.length)).toEqual([1, 0]);
    expect(area(parts)).toBeCloseTo(1200 + 1800 - (25 / 2 + 36 / 2 + 9) * Math.PI, 9);
  });
});

/** By (45, 30). */
const shifted = (edge: Edge): Edge => {
  const by = ({ x, y }: Point) => p(x + 45, y + 30);
  return edge.kind === 'line'
    ? { ...edge, a: by(edge.a), b: by(edge.b) }
    : { ...edge, a: by(edge.a), b: by(edge.b), center: by(edge.center) };
};

describe('what is near to touching is left to the overlay', () => {
  /** How near, in the size of the plate: a thousand weld tolerances. */
  const NEAR = 1e-4;
  const within = NEAR / 2;
  const beyond = NEAR * 2;

  it.each([
    ['circles outside of each other', (gap: number) => [circle(30, 30, 10), circle(50 + gap, 30, 10)]],
    ['a circle within another', (gap: number) => [circle(30, 30, 10), circle(35 - gap, 30, 5)]],
    ['a circle in an edge', (gap: number) => [circle(50, 10 + gap, 10)]],
    ['a circle in a corner of the plate', (gap: number) => [circle(106, 68 + gap, 10)]],
    [
      'the crossings of three circles',
      (gap: number) => [circle(40, 30, 10), circle(56, 30, 10), circle(48, 46 + gap, 10)],
    ],
    ['crossings on an edge', (gap: number) => [circle(40, 6, 10), circle(56 + gap, 6, 10)]],
  ])('%s', (_, circles) => {
    for (const off of [-within, 0, within]) expect(isClear(PLATE, circles(off))).toBe(false);
    for (const off of [-beyond, beyond]) expect(isClear(PLATE, circles(off))).toBe(true);
    for (const off of [-beyond, -within, 0, within, beyond]) {
      const cut = circles(off);
      const rest = subtract(PLATE, cut.map(discOf));
      validateRegion(rest, { extent: 100 });
      expect(area(rest)).toBeCloseTo(
        area(xor([union([PLATE, ...cut.map(discOf)]), union(cut.map(discOf))])),
        8,
      );
    }
  });

  it('an arc that a circle touches from outside and from inside', () => {
    const round = subtract(PLATE, [disc(p(50, 30), 20)]);
    for (const off of [-within, 0, within]) {
      expect(isClear(round, [circle(75 + off, 30, 5)])).toBe(false);
      expect(isClear(round, [circle(65 + off, 30, 5)])).toBe(false);
      expect(isClear(round, [circle(50 + off, 30, 20)])).toBe(false);
    }
    for (const off of [-beyond, beyond]) {
      expect(isClear(round, [circle(75 + off, 30, 5)])).toBe(true);
      expect(isClear(round, [circle(65 + off, 30, 5)])).toBe(true);
    }
    // Two arcs of one circle that would run along each other are asked about the same way.
    expect(isClear(round, [circle(50, 30, 21)])).toBe(true);
  });

  it('an arc that is almost a line', () => {
    // The lower side of the plate, bowed outward.
    const bowed = (radius: number): Region => {
      const center = p(50, Math.sqrt(radius * radius - 2500));
      const [, ...rest] = PLATE[0]?.outer ?? [];
      return [{ outer: [arcEdge(p(0, 0), p(100, 0), center, true), ...rest], holes: [] }];
    };
    for (const [radius, yes] of [
      [9.9e3, true],
      [1.01e4, false],
      [1e7, false],
    ] as const) {
      const bow = bowed(radius);
      validateRegion(bow);
      expect(isClear(bow, [circle(30, 2, 10)])).toBe(yes);
      const cut = [disc(p(30, 2), 10)];
      const wanted = area(xor([union([bow, ...cut]), ...cut]));
      // The far centre is rounded to 1e-16 of the radius, along 100 mm.
      expect(Math.abs(area(subtract(bow, cut)) - wanted)).toBeLessThan(1e-9 + 1e-14 * radius);
    }
  });

  it('a disc that reaches far out, and a plate far from the origin', () => {
    expect(isClear(PLATE, [circle(50, 5000, 4990)])).toBe(true);
    expect(isClear(PLATE, [circle(50, 20000, 19990)])).toBe(false);
    for (const [at, yes] of [
      [9e5, true],
      [1.1e6, false],
    ] as const) {
      const frame = { minX: at, minY: 0, maxX: at + 100, maxY: 60 };
      expect(clearCut(boxRegion(at, 0, at + 100, 60), [circle(at + 50, 30, 5)], frame) !== null).toBe(yes);
      const tall = { minX: 0, minY: -at, maxX: 100, maxY: 60 - at };
      expect(clearCut(boxRegion(0, -at, 100, 60 - at), [circle(50, 30 - at, 5)], tall) !== null).toBe(yes);
    }
  });

  it('a cut that joins loops which touch a third one on the way: the part falls in two there', () => {
    // Two holes that touch at (50, 30), the first near the left side and the second near the right one.
    const touching: Region = [
      {
        outer: PLATE[0]?.outer as Loop,
        holes: [
          closed(p(10, 30), p(30, 40), p(50, 30), p(30, 20)),
          closed(p(50, 30), p(70, 40), p(90, 30), p(70, 20)),
        ],
      },
    ];
    validateRegion(touching);
    // One cut joins the first hole with the outside, the other one the second.
    const cuts = [circle(4, 30, 8), circle(96, 30, 8)];
    expect(isClear(touching, cuts)).toBe(false);
    expect(subtract(touching, cuts.map(discOf))).toHaveLength(2);
    // The first alone leaves it in one, and so does one that cuts one loop only.
    expect(subtract(touching, cuts.slice(0, 1).map(discOf))).toHaveLength(1);
    expect(left(touching, [circle(30, 42, 5)])).toHaveLength(1);
    // In the second of two parts, whatever comes before it, it is just as much in doubt.
    const far: Region = [{ outer: boxRegion(-50, 0, -10, 60)[0]?.outer as Loop, holes: [] }, ...touching];
    expect(isClear(far, cuts)).toBe(false);
    expect(isClear(far, [circle(-50, 30, 5), circle(-10, 20, 5), circle(50, 60, 5)])).toBe(true);
    // Where the loops that are cut touch each other and no third, too.
    const [plate] = touching as [Region[number]];
    const shared: Region = [{ outer: plate.outer, holes: plate.holes.slice(0, 1) }];
    expect(isClear(shared, cuts)).toBe(true);
    expect(isClear(touching, [circle(30, 40, 4), circle(70, 40, 4)])).toBe(false);
    // Two cut loops that touch nothing are no trouble.
    const apart = subtract(PLATE, [disc(p(30, 30), 10), disc(p(70, 30), 10)]);
    expect(isClear(apart, [circle(50, 30, 14)])).toBe(true);
  });

  it('a disc whose halves have names of their own', () => {
    const center = p(50, 60);
    const halves = [
      arcEdge(p(50, 50), p(50, 70), center, true, 'east'),
      arcEdge(p(50, 70), p(50, 50), center, true, 'west'),
    ];
    const [part] = subtract(PLATE, [[{ outer: halves, holes: [] }]]);
    const named = part?.outer.flatMap(({ source }) => source ?? []);
    expect(named?.sort()).toEqual(['east', 'west']);
  });

  it('is anything that is no disc', () => {
    const frame = subtract(PLATE, [ring(p(50, 30), 20, 10)]);
    expect(frame).toHaveLength(2);
    const bites = subtract(PLATE, [disc(p(20, 30), 5), boxRegion(60, 20, 80, 40)]);
    expect(area(bites)).toBeCloseTo(6000 - 25 * Math.PI - 400, 10);
    // In a hole there is nothing for it to cut, alone or with others.
    const bored = subtract(PLATE, [disc(p(50, 30), 20), disc(p(10, 10), 2)]);
    expect(area(subtract(bored, [boxRegion(45, 25, 55, 35)]))).toBeCloseTo(area(bored), 10);
    expect(subtract(bored, [boxRegion(45, 25, 55, 35)])[0]?.holes).toHaveLength(2);
    expect(subtract(bored, [boxRegion(45, 25, 55, 35), disc(p(52, 30), 3)])[0]?.holes).toHaveLength(2);
    expect(subtract(bored, [[], boxRegion(90, 50, 110, 70), []])[0]?.holes).toHaveLength(2);
    expect(subtract(bored, [[], []])).toBe(bored);
    expect(subtract([], [disc(p(0, 0), 1)])).toEqual([]);
    // A hole is not one either: a region that is all but a disc has none.
    const [bore] = subtract(PLATE, [disc(p(50, 30), 5)]);
    expect(area(subtract(PLATE, [[bore as Region[number]]]))).toBeCloseTo(25 * Math.PI, 10);
  });
});

describe('many loops', () => {
  /** A plate with holes of diameter 1, 2 apart, and as many discs halfway between them. */
  const plate = subtract(
    boxRegion(0, 0, 80, 60),
    Array.from({ length: 1200 }, (_, k) => disc(p(2 * (k % 40) + 0.5, 2 * Math.floor(k / 40) + 1), 0.4)),
  );

  it('have their places found by rays as they are one by one', () => {
    const between = Array.from({ length: 1200 }, (_, k) =>
      circle(2 * (k % 40) + 1.5, 2 * Math.floor(k / 40) + 1, 0.45),
    );
    // In each hole, and beyond the plate, there is nothing to cut.
    const within = Array.from({ length: 1200 }, (_, k) =>
      circle(2 * (k % 40) + 0.5, 2 * Math.floor(k / 40) + 1, 0.2),
    );
    const beyond = Array.from({ length: 100 }, (_, k) => circle(-3 - k, 30, 0.45));
    const found = left(plate, [...within, ...between, ...beyond]);
    expect(found).toHaveLength(1);
    expect(found[0]?.holes).toHaveLength(2400);
    expect(area(found)).toBeCloseTo(4800 - 1200 * Math.PI * (0.16 + 0.2025), 8);
  });

  it('have their places found where joints lie level with them', () => {
    // Boxes from -3 to 3 and discs of radius 5 in turn, so that rays at 3/5 of the radius run along the boxes.
    const count = 600;
    const row: Region = [
      {
        outer: boxRegion(-10, -20, 20 * count, 20)[0]?.outer as Loop,
        holes: Array.from({ length: count }, (_, k) =>
          closed(p(20 * k, -3), p(20 * k, 3), p(20 * k + 6, 3), p(20 * k + 6, -3)),
        ),
      },
    ];
    const between = Array.from({ length: count }, (_, k) => circle(20 * k + 13, 0, 5));
    const within = Array.from({ length: count }, (_, k) => circle(20 * k + 3, 0, 2.5));
    const frame = { minX: -10, minY: -20, maxX: 20 * count, maxY: 20 };
    const found = clearCut(row, [...between, ...within], frame) as Region;
    expect(found.map(({ holes }) => holes.length)).toEqual([2 * count]);
    expect(area(found)).toBeCloseTo(40 * (20 * count + 10) - count * (36 + 25 * Math.PI), 6);
  });

  it('are dealt out to the strips that they lie in', () => {
    const cuts = Array.from({ length: 9 }, (_, k) =>
      Array.from({ length: 161 }, (_, i) =>
        circle(8 * (k + 1) - 0.5 - 0.003 * (i % 2), i * 0.375 + 0.011, 0.31),
      ),
    ).flat();
    const strips = left(plate, cuts);
    expect(strips).toHaveLength(10);
    expect(strips.map(({ holes }) => holes.length)).toEqual(Array.from({ length: 10 }, () => 120));
  });
});
