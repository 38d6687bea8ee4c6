import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcEdge, type Edge } from '../geometry/edge.js';
import { sweep } from '../geometry/measure.js';
import { distance } from '../geometry/point.js';
import { rectangle, slot } from '../outline/shapes.js';
import { outlineRegion } from '../outline/validate.js';
import { area } from '../region/measure.js';
import { disc, ring } from '../region/region.js';
import { parseSvgPath } from './svg-path.js';
import { openSvgPath, toSvgPath } from './svg-write.js';

const bare = (edges: readonly Edge[]) => edges.map(({ source: _, ...edge }) => edge);

describe('toSvgPath', () => {
  it('writes loops with y up', () => {
    expect(toSvgPath(rectangle(80, 30.5))).toBe('M0 0 L80 0 L80 30.5 L0 30.5 Z');
    expect(toSvgPath(disc({ x: 1, y: 2 }, 3))).toBe('M1 -1 A3 3 0 0 1 1 5 A3 3 0 0 1 1 -1 Z');
    expect(toSvgPath([])).toBe('');
  });

  it('writes holes after their outline, the other way round', () => {
    expect(toSvgPath(ring({ x: 0, y: 0 }, 2, 1))).toBe(
      'M0 -2 A2 2 0 0 1 0 2 A2 2 0 0 1 0 -2 Z M0 -1 A1 1 0 0 0 0 1 A1 1 0 0 0 0 -1 Z',
    );
  });

  it('rounds if asked, and writes no minus zero', () => {
    const loop = slot(10 / 3, 1, { angle: 0.3 });
    expect(toSvgPath(loop, { digits: 2 })).toMatch(/^M(-?\d+(\.\d{1,2})?[ LAMZ]*)+Z$/);
    expect(toSvgPath(rectangle(1, 1, { at: { x: -0.001, y: -0 } }), { digits: 2 })).toBe(
      'M0 0 L1 0 L1 1 L0 1 Z',
    );
    expect(() => toSvgPath(loop, { digits: -1 })).toThrow(
      'digits is -1; it must be a whole number from 0 to 20',
    );
    expect(() => toSvgPath(loop, { digits: 1.5 })).toThrow(RangeError);
  });

  it('comes back to the last bit if made of lines and half circles', () => {
    const loop = slot(0.7, 0.3, { at: { x: 0.1, y: 1 / 3 } });
    const [chain] = parseSvgPath(toSvgPath(loop));
    expect(bare(chain?.edges ?? []).map(({ a, b }) => [a, b])).toEqual(bare(loop).map(({ a, b }) => [a, b]));
  });

  // An arc's form in path data loses digits near a half and a full turn; those arcs are written in pieces.
  it('comes back the same within rounding, whatever the turn', () => {
    const turn = fc.oneof(
      fc.double({ min: 0.01, max: 2 * Math.PI - 1e-3, noNaN: true }),
      fc.double({ min: -1e-3, max: 1e-3, noNaN: true }).map((d) => Math.PI + d),
      fc.double({ min: 1e-5, max: 1e-2, noNaN: true }).map((d) => 2 * Math.PI - d),
    );
    fc.assert(
      fc.property(turn, fc.double({ min: 0, max: 6, noNaN: true }), fc.boolean(), (t, from, ccw) => {
        const at = (angle: number) => ({ x: 2 + 5 * Math.cos(angle), y: -1 + 5 * Math.sin(angle) });
        const arc = arcEdge(at(from), at(from + (ccw ? t : -t)), { x: 2, y: -1 }, ccw);
        const back = parseSvgPath(openSvgPath([arc]))[0]?.edges ?? [];
        let turned = 0;
        for (const edge of back) {
          if (edge.kind !== 'arc') throw new Error('the arc came back as a line');
          expect(distance(edge.center, arc.center)).toBeLessThan(1e-11);
          expect(edge.ccw).toBe(ccw);
          turned += sweep(edge);
        }
        expect(turned).toBeCloseTo(t, 9);
      }),
      { numRuns: 500 },
    );
  });

  it('keeps the area of a rounded outline', () => {
    const region = outlineRegion(rectangle(0.3, 0.7, { corner: 0.1 }));
    const [chain] = parseSvgPath(toSvgPath(region));
    expect(area(outlineRegion(chain?.edges ?? []))).toBeCloseTo(area(region), 14);
  });
});
