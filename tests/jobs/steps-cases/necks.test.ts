import { describe, expect, it } from 'vitest';
import type { CutDocument } from '../../outside/machine/sim/job.js';
import { findingsOf, plate, setup, stepOf, told } from './told.js';

/*
 * Bodies that hang by a neck in plan, each in the plate 80 by 30 by 12 with a web limit of 1.5, which is the least that
 * holds, and held at 10, 10. Values worked out by hand.
 */

const line = (a: readonly [number, number], b: readonly [number, number]) => ({
  edges: [{ kind: 'line' as const, a, b }],
});

/** A slot 4 wide from so far over the front edge out over the back edge: what is right of it is joined in front only. */
const slot = (neck: number, other: Partial<CutDocument> = {}): CutDocument => ({
  id: 'slot',
  kind: 'swept',
  diameter: 4,
  path: line([50, 2 + neck], [50, 35]),
  ...other,
});

const HELD = { keep: [10, 10] };

describe('a body behind a slot', () => {
  it('that leaves 0.3 to the front edge hangs by that', () => {
    const report = told(plate([slot(0.3)], HELD));
    const { hangs, frees, volumes } = stepOf(report, 0);
    expect(frees).toEqual([]);
    expect(hangs).toHaveLength(1);
    expect(hangs[0]?.thickness).toBeCloseTo(0.3, 6);
    // Right of x = 50: 30 by 30, less half of the slot, which is 2 by 27.7 and a quarter of a disc of radius 2.
    expect(Math.abs((hangs[0]?.volume ?? 0) - 12 * (900 - 2 * 27.7 - Math.PI))).toBeLessThan(0.01);
    // No height of the slot leaves more, so it is so when the tool is through.
    expect(hangs[0]?.atDepth).toBe(12);
    expect(report.bodies).toHaveLength(1);
    expect(report.bodies[0]).toMatchObject({ role: 'hanging', step: 0, end: 'left' });
    // It is still one piece with what is kept.
    expect(volumes.loose).toBe(0);
    expect(report.pieces).toHaveLength(1);
    expect(findingsOf(report, 0).find(({ code }) => code === 'hanging-body')?.message).toMatch(
      /hangs by metal no more than 0\.300 mm thick/,
    );
  });

  it.each([0.001, 0.02, 0.3, 0.9, 1.4, 1.49, 1.4999])('hangs by a neck of %f', (neck) => {
    const [hung, ...more] = stepOf(told(plate([slot(neck)], HELD)), 0).hangs;
    expect(more).toEqual([]);
    expect(hung?.thickness).toBeCloseTo(neck, 6);
  });

  it.each([1.5, 1.5001, 1.51, 1.7, 3, 8])('is held by a neck of %f', (neck) => {
    const report = told(plate([slot(neck)], HELD));
    expect(stepOf(report, 0).hangs).toEqual([]);
    expect(report.bodies).toEqual([]);
  });

  it('hangs by what the job says that holds', () => {
    const limits = { web: 1.5, knifeEdge: 30, hold: 2 };
    expect(stepOf(told(plate([slot(1.8)], { ...HELD, limits })), 0).hangs[0]?.thickness).toBeCloseTo(1.8, 6);
    expect(stepOf(told(plate([slot(2.1)], { ...HELD, limits })), 0).hangs).toEqual([]);
  });

  it.each([
    ['as drawn', {}],
    ['turned by 90', { turn: 90 }],
    ['turned by 33', { turn: 33 }],
    ['over its x axis', { flip: 'x' as const }],
    ['over its y axis, turned', { flip: 'y' as const, turn: -90 }],
  ])('hangs the same %s', (_, lie) => {
    const from = 'flip' in lie ? { from: 'bottom' as const } : {};
    const report = told(plate([slot(0.3, from)], { ...HELD, setups: [setup('one', ['slot'], lie)] }));
    expect(stepOf(report, 0).hangs[0]?.thickness).toBeCloseTo(0.3, 6);
  });

  it('is the one that is not held, whichever that is', () => {
    // Left of x = 50: 50 by 30, less the other half of the slot.
    const { hangs } = stepOf(told(plate([slot(0.3)], { keep: [70, 10] })), 0);
    expect(Math.abs((hangs[0]?.volume ?? 0) - 12 * (1500 - 2 * 27.7 - Math.PI))).toBeLessThan(0.01);
  });
});

describe('a neck under or over other metal', () => {
  // Under a slot that is not through there is a floor as wide as the part: it holds from 1.5 on, and by its height.
  it.each([
    [10.4, null],
    [10.5, null],
    [10.6, 1.4],
    [11.9, 0.3],
    [12, 0.3],
  ])('of a slot %f deep', (depth, thickness) => {
    const { hangs } = stepOf(told(plate([slot(0.3, { depth })], HELD)), 0);
    if (thickness === null) expect(hangs).toEqual([]);
    else expect(hangs[0]?.thickness).toBeCloseTo(thickness, 6);
  });

  it('lies elsewhere at each height, and nothing holds across the two', () => {
    // A slot 8 deep that leaves 0.3, and one from below 4 deep beside it that leaves 0.4: what joins the sides is 0.3
    // wide at one height and 0.4 at the other, and 0.5 apart.
    const below: CutDocument = {
      id: 'below',
      kind: 'swept',
      diameter: 4,
      path: line([50.5, 2.4], [50.5, 35]),
      depth: 4,
      from: 'bottom',
    };
    const report = told(plate([slot(0.3, { depth: 8 }), below], HELD));
    expect(stepOf(report, 0).hangs).toEqual([]);
    const [hung, ...more] = stepOf(report, 1).hangs;
    expect(more).toEqual([]);
    // In the plane over the narrower neck: 0.3 wide above, and a little over 0.4 below.
    expect(hung?.thickness).toBeGreaterThan(0.3 - 1e-6);
    expect(hung?.thickness).toBeLessThan(0.5);
  });
});

describe('several necks', () => {
  /** A slot right round a square, but for tabs to the left and right: each leaves 0.8 of metal between its round ends. */
  const half = (id: string, sign: 1 | -1): CutDocument => {
    const y = 15 + sign * 2.4;
    const far = 15 + sign * 10;
    const edges = [
      { kind: 'line' as const, a: [30, y] as const, b: [30, far] as const },
      { kind: 'line' as const, a: [30, far] as const, b: [60, far] as const },
      { kind: 'line' as const, a: [60, far] as const, b: [60, y] as const },
    ];
    return { id, kind: 'swept', diameter: 4, path: { edges } };
  };

  it('hold no more than each of them', () => {
    const report = told(plate([half('back', 1), half('front', -1)], HELD));
    expect(stepOf(report, 0).hangs).toEqual([]);
    const [hung, ...more] = stepOf(report, 1).hangs;
    expect(more).toEqual([]);
    // The ends of the slots are 4.8 apart, less two radii of 2.
    expect(hung?.thickness).toBeCloseTo(0.8, 6);
    // Within the slots, whose middles are 30 by 20 apart: 26 by 16, and at each tab the half between x = 30 and 32:
    // 2 by 4.8 less two quarters of a disc of radius 2.
    const volume = 12 * (26 * 16 + 2 * (2 * 4.8 - 2 * Math.PI));
    expect(Math.abs((hung?.volume ?? 0) - volume)).toBeLessThan(0.05);
  });

  it('let the body go with the step that takes the last of them', () => {
    const tab = (id: string, x: number): CutDocument => ({ id, kind: 'bore', center: [x, 15], diameter: 4 });
    const report = told(plate([half('back', 1), half('front', -1), tab('left', 30), tab('right', 60)], HELD));
    expect([0, 1, 2, 3].map((k) => stepOf(report, k).hangs.length)).toEqual([0, 1, 0, 0]);
    expect([0, 1, 2, 3].map((k) => stepOf(report, k).frees.length)).toEqual([0, 0, 0, 1]);
    expect(report.bodies).toHaveLength(1);
  });
});

describe('a finger', () => {
  // Two bores leave 0.5 between them, at y = 17; then slots in from the back edge leave a finger of some width over that.
  const fingered = (width: number): CutDocument[] => {
    const half = width / 2;
    const at = (id: string, x: number): CutDocument => ({
      id,
      kind: 'swept',
      diameter: 4,
      path: line([x, 15], [x, 35]),
    });
    const bite = (id: string, x: number): CutDocument => ({ id, kind: 'bore', center: [x, 17], diameter: 4 });
    return [
      bite('one', 40 - 0.25 - 2),
      bite('other', 40 + 0.25 + 2),
      at('left', 40 - half - 2),
      at('right', 40 + half + 2),
    ];
  };

  it.each([1.6, 2, 2.9, 5])('%f wide is as thick as holds, and hangs by its foot', (width) => {
    const report = told(plate(fingered(width), HELD));
    const [hung, ...more] = stepOf(report, 3).hangs;
    expect(more).toEqual([]);
    expect(hung?.thickness).toBeCloseTo(0.5, 6);
    expect(report.bodies.map(({ role, step }) => [role, step])).toEqual([['hanging', 3]]);
  });

  it('1.4 wide is thin metal itself', () => {
    expect(told(plate(fingered(1.4), HELD)).bodies).toEqual([]);
  });
});

describe('thin metal that is no body', () => {
  it('is a fin between two slots: nowhere is it as thick as holds', () => {
    // Slots in from the back edge at x = 40 and 45, 4 wide: 1 of metal stands between them.
    const at = (id: string, x: number): CutDocument => ({
      id,
      kind: 'swept',
      diameter: 4,
      path: line([x, 15], [x, 35]),
    });
    expect(told(plate([at('one', 40), at('two', 45)], HELD)).bodies).toEqual([]);
  });

  it('is a web round a hole: the part holds past it on the other side', () => {
    expect(told(plate([{ id: 'hole', kind: 'bore', center: [40, 5.3], diameter: 10 }], HELD)).bodies).toEqual(
      [],
    );
  });
});
