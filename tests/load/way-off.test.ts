import {
  disc,
  type Layer,
  lineEdge,
  type Point,
  type Region,
  type RoundTool,
  rectangle,
  ring,
  subtract,
  union,
  type WayOff,
  wayOff,
} from '@edgebite/core';
import { edgesOf, outlines } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { near, nearPlace, underXAxis } from '../center/near.js';
import { evenly } from '../tools/evenly.js';
import { runs } from '../tools/runs.js';
import { quarterPoint, quarters } from './quarters.js';
import { sampledWays } from './sampled-ways.js';

const P = (x: number, y: number): Point => ({ x, y });
const HALF = underXAxis(100);
const box = (x: number, y: number, w: number, h: number): Region => [
  { outer: rectangle(w, h, { at: P(x, y) }), holes: [] },
];
const circle = (center: Point, radius = 10): RoundTool => ({ kind: 'circle', center, radius });
const layers = (...metals: Region[]): Layer[] =>
  metals.map((metal, k) => ({ from: 5 * k, to: 5 * k + 5, metal }));

function off(tool: RoundTool, metals: Region[], clearance = 0.5, keepOuts: Region[] = []): WayOff {
  return wayOff({
    tool,
    layers: layers(...metals),
    clearance,
    keepOuts: keepOuts.map((region, k) => ({ id: `k${k}`, region })),
  });
}

function wayOf(found: WayOff): WayOff & { kind: 'way' } {
  expect(found.kind, JSON.stringify(found)).toBe('way');
  return found as WayOff & { kind: 'way' };
}

describe('wayOff', () => {
  it('is straight out of a straight face, so far that the ends of the wall clear (law of cosines)', () => {
    const way = wayOf(off(circle(P(0, 6)), [HALF]));
    expect(way.degrees).toBe(90);
    expect(way.direction).toEqual({ dx: 0, dy: 1 });
    near(Math.hypot(8, 6 + way.by), 10.5, 1e-13);
    nearPlace(way.to, P(0, 6 + way.by), 10);
    near(way.gap ?? 0, 0.5, 1e-12);
  });

  it('works at half a turn, with sqrt(2 r g + g^2) (Pythagoras)', () => {
    near(wayOf(off(circle(P(0, 0)), [HALF])).by, Math.sqrt(2 * 10 * 0.5 + 0.25), 1e-9);
  });

  it('lower layers wide open, the upper one closed: there is no way', () => {
    // Above all round, below half a circle: the way off the lower wall leads into the upper one.
    const found = off(circle(P(0, 0)), [union([HALF, disc(P(0, 0), 40)]), HALF]);
    expect(found).toEqual({ kind: 'none', why: { reason: 'walled in', share: 1, from: 0, to: 5 } });
  });

  it('walls of two heights that leave no half turn between them close the way together', () => {
    const found = off(circle(P(0, 0)), [HALF, box(-50, 2, 200, 50)]);
    expect(found).toMatchObject({ kind: 'none', why: { reason: 'walled in', from: 0, to: 10 } });
    // Below from -143.13 to -36.87 degrees; at another height to the right, to 36.87 with which the wall is half a turn,
    // or to 25.84 (acos 0.9): the middle of the rest.
    for (const [x, wanted] of [
      [8, 90 + 36.869898],
      [9, (25.841933 + 180 + 36.869898) / 2],
    ] as const) {
      const corner = wayOf(off(circle(P(0, 6)), [HALF, box(x, -50, 100, 100)]));
      near(corner.degrees, wanted, 2e-8);
      near(corner.gap ?? 0, 0.5, 1e-9);
    }
  });

  it('clears an upper wall that stands further back than the one it has cut', () => {
    // Below, the face at y = 0; above, a roof whose face is 0.2 off the tool on the way out.
    const near02 = off(circle(P(0, 6)), [box(-100, 16.2, 200, 20), HALF]);
    expect(near02).toMatchObject({ kind: 'none', why: { reason: 'no room', clearance: 0.5 } });
    const roomy = wayOf(off(circle(P(0, 6)), [box(-100, 18, 200, 20), HALF]));
    near(roomy.degrees, 90, 1e-9);
  });

  it('lifts as it stands only where no wall stands at any height', () => {
    expect(off(circle(P(0, 15)), [HALF])).toEqual({ kind: 'lift', gap: 5 });
    expect(off(circle(P(0, 15)), [[]])).toEqual({ kind: 'lift', gap: null });
    expect(off(circle(P(0, 15)), [union([HALF, disc(P(0, 15), 12)]), HALF])).toMatchObject({ kind: 'none' });
    // A wall above only.
    expect(wayOf(off(circle(P(0, 6)), [HALF, []])).degrees).toBe(90);
    // Touching a face without having cut it: off it, as far as the clearance.
    const beside = wayOf(off(circle(P(0, 10)), [HALF]));
    near(beside.by, 0.5, 1e-6);
    expect(beside.degrees).toBe(90);
    // Nearer than the clearance on both sides, but touching neither.
    const slot: Region = [...box(-50, 10.1, 100, 20), ...box(-50, -30.1, 100, 20)];
    expect(off(circle(P(0, 0)), [slot])).toMatchObject({ kind: 'lift', gap: expect.closeTo(0.1, 9) });
    // In a slot of its own width it rubs on both sides all along.
    const tight: Region = [...box(-50, 10, 100, 20), ...box(-50, -30, 100, 20)];
    expect(off(circle(P(0, 0)), [tight])).toMatchObject({ kind: 'none', why: { reason: 'no room' } });
  });

  it('a core that stands in a hollow cutter keeps it from going sideways; without one it goes as any tool', () => {
    const tool: RoundTool = { kind: 'ring', center: P(0, 6), radius: 10, inner: 6.5 };
    expect(off(tool, [subtract(HALF, [ring(P(0, 6), 10, 6.5)])])).toEqual({
      kind: 'none',
      why: { reason: 'core stands' },
    });
    expect(wayOf(off(tool, [subtract(HALF, [disc(P(0, 6), 10)])])).degrees).toBe(90);
    // Its core stands above only.
    const above = subtract(HALF, [ring(P(0, 6), 10, 6.5)]);
    expect(off(tool, [above, subtract(HALF, [disc(P(0, 6), 10)])]).kind).toBe('none');
  });

  it('goes round what is in the way, with the clearance to it too, or says that there is no room', () => {
    const post = box(9, 16, 3, 3);
    const way = wayOf(off(circle(P(0, 6)), [[...HALF, ...post]]));
    for (const share of [0.25, 0.5, 0.75, 1]) {
      const at = P(way.direction.dx * way.by * share, 6 + way.direction.dy * way.by * share);
      expect(Math.hypot(9 - at.x, 16 - at.y)).toBeGreaterThanOrEqual(10 - 1e-9);
    }
    expect(Math.hypot(9 - way.to.x, 16 - way.to.y)).toBeGreaterThanOrEqual(10.5 - 1e-9);
    expect(Math.hypot(8 - way.to.x, way.to.y)).toBeGreaterThanOrEqual(10.5 - 1e-9);
    expect(off(circle(P(0, 6)), [[...HALF, ...box(-80, 16.2, 160, 9)]])).toMatchObject({
      kind: 'none',
      why: { reason: 'no room', within: 10.5, clearance: 0.5 },
    });
  });

  it('meets no keep-out on the way, though it needs no clearance to one, and names those that close it', () => {
    const free = wayOf(off(circle(P(0, 6)), [HALF]));
    // A jaw that the tool would only just touch, and one that it would not.
    const touching = box(-50, 16 + free.by, 100, 5);
    expect(off(circle(P(0, 6)), [HALF], 0.5, [touching])).toEqual(free);
    const closer = box(-50, 16 + free.by - 0.01, 100, 5);
    expect(off(circle(P(0, 6)), [HALF], 0.5, [box(60, 0, 5, 5), closer])).toEqual({
      kind: 'none',
      why: { reason: 'keep-out', ids: ['k1'] },
    });
    // A corner to the right that straight back would run into: out to the left, without touching it.
    const right = wayOf(off(circle(P(0, 6)), [HALF], 0.5, [box(7.9, 12.5, 10, 5)]));
    expect(Math.hypot(7.9 - free.to.x, 12.5 - free.to.y)).toBeLessThan(10);
    expect(right.direction.dx).toBeLessThan(-0.4);
    expect(Math.hypot(7.9 - right.to.x, 12.5 - right.to.y)).toBeGreaterThanOrEqual(10);
    // A stop that the tool stands in.
    expect(off(circle(P(0, 6)), [HALF], 0.5, [box(-30, -30, 60, 60)])).toMatchObject({
      kind: 'none',
      why: { reason: 'keep-out', ids: ['k0'] },
    });
  });

  it('does not matter whether the metal is given before or after the cut', () => {
    const after = subtract(HALF, [disc(P(0, 6), 10)]);
    near(wayOf(off(circle(P(0, 6)), [HALF])).by, wayOf(off(circle(P(0, 6)), [after])).by, 1e-12);
  });

  it('wall over half a turn by a little is told, by its layer', () => {
    expect(off(circle(P(0, -0.001)), [HALF], 1e-6)).toMatchObject({
      kind: 'none',
      why: { reason: 'walled in', share: expect.closeTo(0.5 + Math.asin(1e-4) / Math.PI, 12) },
    });
    expect(off(circle(P(0, -50)), [[], HALF])).toMatchObject({
      why: { reason: 'walled in', share: 1, from: 5, to: 10 },
    });
  });

  it('changes little where a wall stands a little off, on whichever side of the tolerance', () => {
    const still = wayOf(off(circle(P(0, 6)), [HALF])).by;
    for (const apart of [1e-12, 1e-10, 3e-8, 1e-7, 2e-7, 1e-6, 1e-4, 1e-2]) {
      for (const sign of [1, -1]) {
        // A wall bored before, larger or smaller by that; a face that is just touched, or just cut, or just not.
        const bored = wayOf(off(circle(P(0, 6)), [subtract(HALF, [disc(P(0, 6), 10 + sign * apart)])]));
        expect(bored.degrees).toBe(90);
        near(bored.by, still, 2 * apart + 1e-9, 1);
        const face = wayOf(off(circle(P(0, 10 + sign * apart)), [HALF]));
        expect(face.degrees).toBe(90);
        near(face.by, 0.5, apart + 1e-9, 1);
      }
    }
  });

  it('tells of a bore of very many short edges too', () => {
    const gear = Array.from({ length: 600 }, (_, k) => {
      const [angle, r] = [(Math.PI * k) / 300, k % 2 === 0 ? 30 : 30.01];
      return P(r * Math.cos(angle), r * Math.sin(angle));
    });
    const hole = gear.map((a, k) => lineEdge(a, gear[(k + 1) % 600] as Point));
    const plate = subtract(box(-100, -100, 200, 200), [[{ outer: hole, holes: [] }]]);
    // The teeth leave less than the clearance all round; and room to the other side.
    expect(off(circle(P(0, 0), 29.8), [plate])).toMatchObject({ kind: 'lift' });
    const way = wayOf(off(circle(P(0, 20), 11), [plate]));
    near(way.degrees, 270, 1e-6);
    near(way.gap ?? 0, 0.5, 1e-9);
  });

  it('turns with the drawing by quarters, to the last digit that is printed', () => {
    const scenes: [Region[], Region[]][] = [
      [[HALF], []],
      [[[...HALF, ...box(9, 16, 3, 3)]], []],
      [[HALF, box(5, -50, 100, 100)], []],
      [[HALF], [box(0, 21, 100, 5)]],
      [[[...HALF, ...disc(P(3, 19.7), 3)]], []],
    ];
    for (const [metals, keepOuts] of scenes) {
      for (const y of [6, 0, 3.3]) {
        const still = off(circle(P(0, y)), metals, 0.5, keepOuts);
        for (const k of [1, 2, 3]) {
          const turn = (region: Region): Region => quarters(region, k);
          const [center] = [quarterPoint(P(0, y), k)];
          const turned = off(circle(center), metals.map(turn), 0.5, keepOuts.map(turn));
          expect(turned.kind).toBe(still.kind);
          if (still.kind !== 'way' || turned.kind !== 'way') continue;
          expect(turned.degrees).toBe((still.degrees + 90 * k) % 360);
          expect(turned.by.toFixed(6)).toBe(still.by.toFixed(6));
          expect(turned.gap?.toFixed(6)).toBe(still.gap?.toFixed(6));
        }
      }
    }
  });

  it('finds as much room to the left as to the right: a mirror changes sides and nothing else', () => {
    // A bar from a corner on to the right that the tool all but touches, and the same to the left. The higher the corner
    // the further to the other side the tool has to go, until the end of the wall is in the way.
    const found = { way: 0, none: 0 };
    for (let angle = 20; angle <= 45; angle++) {
      const x = 10.01 * Math.cos((angle * Math.PI) / 180);
      const y = 6 + 10.01 * Math.sin((angle * Math.PI) / 180);
      const [one, other] = [x, -x - 50].map((at) => off(circle(P(0, 6)), [HALF], 0.5, [box(at, y, 50, 5)]));
      expect(other?.kind, `${angle}`).toBe(one?.kind);
      if (one?.kind !== 'way' || other?.kind !== 'way') {
        found.none++;
        continue;
      }
      found.way++;
      near(other.direction.dx, -one.direction.dx, 1e-6, 1);
      near(other.by, one.by, 1e-6, 1);
    }
    expect(Math.min(found.way, found.none)).toBeGreaterThan(0);
  });

  it('of two ways as near to straight back is the one counter-clockwise', () => {
    // A peg bitten at its tip, and a post on the other side: straight back from the one is into the other, so the way
    // leads to one side of it, and is as good to the left as to the right.
    const peg = box(-1, -12, 2, 3);
    const post = box(-0.5, 10.2, 1, 1);
    const ahead = wayOf(off(circle(P(0, 0)), [peg], 0.5, [post]));
    expect(ahead.degrees).toBeGreaterThan(90);
    for (const k of [1, 2, 3]) {
      const turned = off(circle(P(0, 0)), [quarters(peg, k)], 0.5, [quarters(post, k)]);
      expect(wayOf(turned).degrees).toBeCloseTo((ahead.degrees + 90 * k) % 360, 5);
    }
    // With more in the way on that side it is the other.
    expect(wayOf(off(circle(P(0, 0)), [peg], 0.5, [box(-3, 10.2, 3.5, 1)])).degrees).toBeLessThan(90);
  });

  it('agrees with trying many directions and places, in generated metal of two heights', () => {
    const seen = { way: 0, lift: 0, none: 0 };
    fc.assert(
      fc.property(
        outlines,
        outlines,
        evenly(-5, 60),
        evenly(-5, 40),
        fc.double({ min: 2, max: 12, noNaN: true }),
        fc.double({ min: 0.1, max: 2, noNaN: true }),
        (upper, lower, x, y, radius, clearance) => {
          const found = off(circle(P(x, y), radius), [upper, lower], clearance);
          seen[found.kind]++;
          const edges = [upper, lower].map((metal) => edgesOf(subtract(metal, [disc(P(x, y), radius)])));
          const tried = sampledWays(edges.flat(), P(x, y), radius, clearance);
          switch (found.kind) {
            case 'lift':
              expect(tried.gapAt(P(x, y))).toBeGreaterThan(0);
              break;
            case 'way':
              expect(tried.leastOn(P(x, y), found.to)).toBeGreaterThan(-1e-6);
              expect(tried.gapAt(found.to)).toBeGreaterThan(clearance - 1e-6);
              if (found.gap !== null) near(tried.gapAt(found.to), found.gap, 2e-3, 1);
              break;
            case 'none':
              expect(tried.surelyPossible()).toEqual([]);
          }
        },
      ),
      { numRuns: runs(100) },
    );
    expect(Math.min(...Object.values(seen))).toBeGreaterThan(0);
  });

  it('refuses lengths that are not over 0', () => {
    expect(() => off(circle(P(0, 6), 0), [HALF])).toThrow('wayOff: radius is 0');
    expect(() => off(circle(P(0, 6)), [HALF], 0)).toThrow('wayOff: clearance is 0');
    expect(() => off(circle(P(Number.NaN, 6)), [HALF])).toThrow('wayOff: center is (NaN, 6)');
    expect(() => off(circle(P(0, 6)), [])).toThrow('wayOff: there are no layers');
  });
});
