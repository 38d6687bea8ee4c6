import {
  arcEdge,
  disc,
  examine,
  lineEdge,
  type Point,
  parseJob,
  type Region,
  subtract,
  type Web,
  websOf,
  xor,
} from '@edgebite/core';
import { boxRegion, everyWay } from '@edgebite/core/testing';
import { describe, expect, it } from 'vitest';

/*
 * A place where the boundary of the metal touches itself in a point is a web of thickness 0, whatever the angles there.
 * Lengths are closed forms of the discs that rest on both sides.
 */

function polygon(...corners: readonly (readonly [number, number])[]): Region {
  const points = corners.map(([x, y]): Point => ({ x, y }));
  const outer = points.map((a, k) => lineEdge(a, points[(k + 1) % points.length] as Point));
  return [{ outer, holes: [] }];
}

function touchesOf(section: Region, limit: number): Web[] {
  return websOf(section, limit).filter(({ thickness }) => thickness === 0);
}

const ell = polygon([0, 0], [100, 0], [100, 40], [40, 40], [40, 100], [0, 100]);

describe('a web of thickness 0', () => {
  it('stands where a circle goes through a reflex corner', () => {
    // 12, 16, 20: the corner at (40, 40) lies on the circle to the last bit.
    const left = subtract(ell, [disc({ x: 28, y: 24 }, 20, 'cut:a')]);
    const [web, ...others] = websOf(left, 1);
    expect(others).toEqual([]);
    expect(web).toMatchObject({ thickness: 0, strip: 0, at: { x: 40, y: 40 }, part: 0 });
    // A disc of radius 1/2 at (x, 39.5) or (39.5, y), as far from the edge that leaves the corner as from the circle.
    const along = Math.sqrt(20.5 ** 2 - 15.5 ** 2) - 12;
    const up = Math.sqrt(20.5 ** 2 - 11.5 ** 2) - 16;
    expect(web?.length).toBeCloseTo(Math.hypot(along, 0.5) + Math.hypot(up, 0.5), 9);
  });

  it.each([
    [5, 5],
    [7, 3],
  ])('stands where holes of radius %d and %d touch', (r, s) => {
    const plate = boxRegion(-20, -20, 20, 20);
    const left = subtract(plate, [disc({ x: -r, y: 0 }, r, 'cut:b'), disc({ x: s, y: 0 }, s, 'cut:a')]);
    const webs = touchesOf(left, 2);
    expect(webs).toHaveLength(1);
    expect(webs[0]).toMatchObject({ at: { x: 0, y: 0 }, between: ['cut:a', 'cut:b'] });
    // Heron: the height over the line of centres of a triangle with the sides r + s, r + 1, s + 1.
    const half = r + s + 1;
    const height = (2 * Math.sqrt(half * 1 * s * r)) / (r + s);
    const foot = Math.sqrt((r + 1) ** 2 - height ** 2) - r;
    expect(webs[0]?.length).toBeCloseTo(2 * Math.hypot(height, foot), 9);
  });

  it('stands where a hole touches the outline from within', () => {
    const left = subtract(boxRegion(0, 0, 40, 30), [disc({ x: 20, y: 24 }, 6, 'cut:a')]);
    expect(touchesOf(left, 2)).toMatchObject([{ at: { x: 20, y: 30 }, between: [null, 'cut:a'] }]);
  });

  it('stands where two pieces hang together in a point, once', () => {
    const left = xor([boxRegion(0, 0, 10, 10), boxRegion(10, 10, 20, 20)]);
    expect(left).toHaveLength(2);
    expect(touchesOf(left, 1)).toMatchObject([{ at: { x: 10, y: 10 }, part: 0 }]);
    // Discs of radius 1/2 in two square corners.
    expect(touchesOf(left, 1)[0]?.length).toBeCloseTo(2 * Math.SQRT1_2, 12);
  });

  it('stands between each two of three voids that meet in a point', () => {
    const void3 = (k: number): Region => {
      const at = (turn: number): [number, number] => {
        const angle = ((120 * k + turn) * Math.PI) / 180;
        return [10 * Math.cos(angle), 10 * Math.sin(angle)];
      };
      return polygon([0, 0], at(0), at(50)).map(({ outer }) => ({
        outer: outer.map((edge) => ({ ...edge, source: `cut:${k}` })),
        holes: [],
      }));
    };
    const left = subtract(boxRegion(-30, -30, 30, 30), [void3(0), void3(1), void3(2)]);
    const webs = touchesOf(left, 1);
    expect(webs.map(({ between }) => between.join(' ')).sort()).toEqual([
      'cut:0 cut:1',
      'cut:0 cut:2',
      'cut:1 cut:2',
    ]);
    // Wedges of 70 degrees: (t/2) / sin(35 degrees) each.
    for (const { length } of webs) expect(length).toBeCloseTo(0.5 / Math.sin((35 * Math.PI) / 180), 9);
  });

  it('is none where boundaries only come round to their own start', () => {
    expect(touchesOf(subtract(ell, [disc({ x: 20, y: 20 }, 5)]), 1)).toEqual([]);
    const lens: Region = [
      {
        outer: [
          arcEdge({ x: -3, y: 0 }, { x: 3, y: 0 }, { x: 0, y: 4 }, true),
          arcEdge({ x: 3, y: 0 }, { x: -3, y: 0 }, { x: 0, y: -4 }, true),
        ],
        holes: [],
      },
    ];
    expect(touchesOf(lens, 1)).toEqual([]);
  });

  const hole = disc({ x: 28, y: 24 }, 20, 'cut:a');
  it.each(everyWay(ell, hole).map((way) => [way.name, way] as const))(
    'does not depend on how it lies: %s',
    (_, way) => {
      const left = subtract(way.change(ell), [way.change(hole)]);
      const webs = touchesOf(left, 1 * way.scale);
      expect(webs).toHaveLength(1);
      expect(webs[0]?.length).toBeGreaterThan(0);
      expect(webs[0]?.between).toContain('cut:a');
    },
  );
});

describe('a circle past a reflex corner by a gap', () => {
  const weld = 100 * 1e-9;
  it.each([-100, -10, -3, -1.5, 0.9, -0.9, 0, 0.5, 1.5, 2.5, 3, 10, 100])('of %d welds is told', (gap) => {
    // Over 0 the corner stays outside of the circle.
    const left = subtract(ell, [disc({ x: 28 - 0.6 * gap * weld, y: 24 - 0.8 * gap * weld }, 20, 'cut:a')]);
    const webs = websOf(left, 1);
    if (Math.abs(gap) < 1) {
      expect(webs).toMatchObject([{ thickness: 0 }]);
    } else if (gap > 0) {
      expect(webs).toHaveLength(1);
      expect(Math.abs((webs[0]?.thickness ?? 0) - gap * weld)).toBeLessThan(weld / 100);
    } else {
      // The circle cuts the corner off: no metal is left between, and what is left begins at two tips.
      expect(webs).toEqual([]);
    }
  });
});

describe('a job with a touch', () => {
  const job = parseJob({
    edgebite: 1,
    units: 'mm',
    part: {
      material: 'mild steel',
      outline: {
        edges: ell[0]?.outer.map(({ a, b }) => ({ kind: 'line', a: [a.x, a.y], b: [b.x, b.y] })),
      },
      thickness: 10,
    },
    cuts: [{ id: 'a', kind: 'bore', center: [28, 24], diameter: 40 }],
  });

  it('tells of it', () => {
    const { webs, findings } = examine(job);
    expect(webs).toMatchObject([{ thickness: 0, at: [40, 40] }]);
    expect(webs[0]?.between).toContain('cut:a');
    expect(findings.filter(({ code }) => code === 'thin-web')).toHaveLength(1);
    expect(findings.find(({ code }) => code === 'thin-web')?.message).toBe(
      'Cut a and outline edge 2 touch: no metal is left between them there.',
    );
    // The job is plain numbers all through.
    expect(webs[0]?.breakOff?.force).toEqual([0, 0]);
  });
});
