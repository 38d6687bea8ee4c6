import {
  area,
  disc,
  intersect,
  lineEdge,
  openOut,
  type Pass,
  placementOn,
  rectangle,
  stepIn,
  subtract,
  union,
} from '@edgebite/core';
import { outlines, placed, type Similarity, transformed, UNMOVED } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../tools/runs.js';
import { block, near } from './near.js';
import { coordinate, HALF, obeysLaws, P } from './plan-laws.js';

describe('stepIn and openOut', () => {
  it('refuse what cannot be', () => {
    const asked = { metal: HALF, center: P(0, 5), radius: 17, bite: 2 };
    for (const plan of [stepIn, openOut]) {
      expect(() => plan({ ...asked, radius: 0 })).toThrow('radius is 0; it must be a finite number over 0');
      expect(() => plan({ ...asked, bite: 0 })).toThrow('bite is 0');
      expect(() => plan({ ...asked, finish: -1 })).toThrow('finish is -1');
      expect(() => plan({ ...asked, finish: 2.5 })).toThrow(
        'the finish allowance is 2.5; it must not be over the bite, 2',
      );
      expect(() => plan({ ...asked, bite: 0.001 })).toThrow(
        /makes 1[27]000 passes; 1000 need one of 0.01[27]$/,
      );
      expect(() => plan({ ...asked, depth: Number.NaN })).toThrow('depth is NaN');
      expect(() => plan({ ...asked, feed: { perTurn: 0.1, rpm: 300 } })).toThrow('give the depth too');
      expect(() => plan({ ...asked, depth: 3, feed: { perTurn: 0.1, rpm: 0 } })).toThrow('feed.rpm is 0');
      expect(() => plan({ ...asked, center: P(0, Number.POSITIVE_INFINITY) })).toThrow(
        'center is (0, Infinity)',
      );
    }
    expect(() => stepIn({ ...asked, approach: { dx: 0, dy: 0 } })).toThrow('approach is (0, 0)');
  });

  it('give the same plan wherever the part lies', () => {
    const metal = union([block(80, 30), [{ outer: rectangle(30, 20, { at: P(50, 20) }), holes: [] }]]);
    const asked = { metal, center: P(20, 41), radius: 17, bite: 1.7, finish: 0.2 };
    const moves: Similarity[] = [
      { ...UNMOVED, turn: [0.6, 0.8] },
      { ...UNMOVED, turn: [Math.cos(1), Math.sin(1)], shift: [1e4, -1e4] },
      { ...UNMOVED, scale: 1 / 25.4 },
    ];
    for (const plan of [stepIn, openOut]) {
      const here = plan(asked);
      obeysLaws(asked, here);
      for (const move of moves) {
        const there = plan({
          metal: transformed(metal, move),
          center: placed(asked.center, move),
          radius: 17 * move.scale,
          bite: 1.7 * move.scale,
          finish: 0.2 * move.scale,
        });
        expect(there.passes).toHaveLength(here.passes.length);
        there.passes.forEach((pass, k) => {
          const wanted = here.passes[k] as Pass;
          near(pass.area, wanted.area * move.scale ** 2, 1e-7);
          near(pass.bite?.size ?? 0, (wanted.bite?.size ?? 1) * move.scale, 1e-7);
          near(pass.engagement.sideLoad.size, wanted.engagement.sideLoad.size, 1e-7);
          expect(pass.engagement.entries).toBe(wanted.engagement.entries);
        });
      }
    }
  });

  it('obey the laws on generated parts', () => {
    let [stepped, refused] = [0, 0];
    fc.assert(
      fc.property(
        outlines,
        coordinate(-30, 130),
        coordinate(-30, 110),
        fc.double({ min: 3, max: 30, noNaN: true }),
        fc.double({ min: 0.15, max: 0.6, noNaN: true }),
        fc.double({ min: 0, max: 6.28, noNaN: true }),
        fc.option(fc.double({ min: 0.5, max: 0.97, noNaN: true }), { nil: null }),
        (outline, x, y, radius, share, turn, rough) => {
          const center = P(x, y);
          const metal = rough === null ? outline : subtract(outline, [disc(center, radius * rough)]);
          const asked = { metal, center, radius, bite: share * radius, finish: 0.05 * radius };
          fc.pre(area(intersect([metal, disc(center, radius)])) > 0.01 * radius * radius);
          obeysLaws(asked, openOut(asked));
          const approach = { dx: Math.cos(turn), dy: Math.sin(turn) };
          try {
            obeysLaws(asked, stepIn({ ...asked, approach }));
            stepped++;
          } catch (error) {
            // The only ground for a refusal; it is checked by looking for the metal that it names.
            if (!(error instanceof RangeError)) throw error;
            const [, short, at] = error.message.match(/^stepIn: ([\d.e-]+) short .*, at \(([^)]*)\);/) ?? [];
            const stray = String(at).split(', ').map(Number) as [number, number];
            const back = Number(short);
            const stop = P(x - back * approach.dx, y - back * approach.dy);
            expect(Math.hypot(stray[0] - stop.x, stray[1] - stop.y)).toBeLessThan(radius * (1 + 1e-6));
            const rest = subtract(metal, [disc(center, radius)]);
            expect(area(intersect([rest, disc(stop, radius)]))).toBeGreaterThan(0);
            refused++;
          }
        },
      ),
      { numRuns: runs(60) },
    );
    expect(stepped).toBeGreaterThan(5);
    expect(refused).toBeGreaterThan(5);
  });

  it('obey the laws on round numbers, where circles touch faces and corners', () => {
    fc.assert(
      fc.property(
        outlines,
        fc.integer({ min: -20, max: 100 }),
        fc.integer({ min: -20, max: 80 }),
        fc.integer({ min: 3, max: 30 }),
        fc.integer({ min: 2, max: 9 }),
        fc.integer({ min: 0, max: 3 }),
        fc.integer({ min: 0, max: 29 }),
        (outline, x, y, radius, bite, quarter, rough) => {
          const center = P(x, y);
          const metal = rough > 0 && rough < radius ? subtract(outline, [disc(center, rough)]) : outline;
          const asked = { metal, center, radius, bite, finish: 1 };
          obeysLaws(asked, openOut(asked));
          const approach = [P(1, 0), P(0, 1), P(-1, 0), P(0, -1)].map((p) => ({ dx: p.x, dy: p.y }))[quarter];
          try {
            obeysLaws(asked, stepIn({ ...asked, approach }));
          } catch (error) {
            if (!(error instanceof RangeError)) throw error;
            expect(error.message).toMatch(/^stepIn: [\d.e-]+ short of the true centre the cutter would cut/);
          }
        },
      ),
      { numRuns: runs(60) },
    );
  });

  it('obey the laws on generated partial holes in a face, by the smoothest way', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 3, max: 25, noNaN: true }),
        fc.double({ min: 0.02, max: 0.98, noNaN: true }),
        fc.double({ min: 0.06, max: 0.5, noNaN: true }),
        fc.double({ min: 0, max: 0.04, noNaN: true }),
        (radius, depth, share, finish) => {
          const center = P(3, radius * (1 - depth));
          const asked = { metal: HALF, center, radius, bite: share * radius, finish: finish * radius };
          const plan = stepIn(asked);
          obeysLaws(asked, plan);
          near(plan.area, placementOn(lineEdge(P(100, 0), P(-100, 0)), center, radius).area, 1e-10);
        },
      ),
      { numRuns: runs(15) },
    );
  });
});
