import { type ArcEdge, arcEdge, lineEdge, type Point, reversed } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

const p = (x: number, y: number): Point => ({ x, y });
const away = (a: Point, b: Point) => Math.hypot(b.x - a.x, b.y - a.y);

/** An arc round `center` from one angle to another, the end off its circle by a share of the radius. */
function rounded(center: Point, r: number, from: number, to: number, ccw: boolean, off: number): ArcEdge {
  const at = (degrees: number, radius: number) => {
    const angle = (degrees * Math.PI) / 180;
    return p(center.x + radius * Math.cos(angle), center.y + radius * Math.sin(angle));
  };
  return arcEdge(at(from, r), at(to, r * (1 + off)), center, ccw);
}

describe('an edge', () => {
  it('has a source if it was given one, and no field for it otherwise', () => {
    const [a, b] = [p(1, 0), p(0, 1)];
    expect(lineEdge(a, b)).toStrictEqual({ kind: 'line', a, b });
    expect(lineEdge(a, b, 'outline:2')).toStrictEqual({ kind: 'line', a, b, source: 'outline:2' });
    const arc = { kind: 'arc', a, b, center: p(0, 0), radius: 1, ccw: true };
    expect(arcEdge(a, b, p(0, 0), true)).toStrictEqual(arc);
    expect(arcEdge(a, b, p(0, 0), true, 'cut:seat')).toStrictEqual({ ...arc, source: 'cut:seat' });
  });

  it('run the other way is the edge that would be made so, and run back it is itself', () => {
    const line = lineEdge(p(1, 2), p(3, 5), 'hole:0:1');
    expect(reversed(line)).toStrictEqual(lineEdge(p(3, 5), p(1, 2), 'hole:0:1'));
    expect(reversed(reversed(line))).toStrictEqual(line);
    const arc = arcEdge(p(2, 0), p(0, 2), p(0, 0), true, 'cut:seat');
    expect(reversed(arc)).toStrictEqual(arcEdge(p(0, 2), p(2, 0), p(0, 0), false, 'cut:seat'));
    expect(reversed(reversed(arc))).toStrictEqual(arc);
  });

  it('is refused with the name of what is wrong, and where', () => {
    const ok = p(1, 0);
    const bad = p(0, Number.NaN);
    const other = p(Number.NEGATIVE_INFINITY, 2);
    const finite = 'coordinates must be finite numbers';
    expect(() => lineEdge(bad, ok)).toThrow(`lineEdge: a is (0, NaN); ${finite}`);
    expect(() => lineEdge(ok, other)).toThrow(`lineEdge: b is (-Infinity, 2); ${finite}`);
    expect(() => arcEdge(other, ok, p(0, 0), true)).toThrow(`arcEdge: a is (-Infinity, 2); ${finite}`);
    expect(() => arcEdge(ok, bad, p(0, 0), true)).toThrow(`arcEdge: b is (0, NaN); ${finite}`);
    expect(() => arcEdge(ok, p(0, 1), bad, true)).toThrow(`arcEdge: center is (0, NaN); ${finite}`);
    const far = 1.7e308;
    expect(() => arcEdge(p(far, far), p(far, -far), p(-far, 0), true)).toThrow(
      'arcEdge: the radius is Infinity',
    );
    expect(() => arcEdge(p(0, 0), p(1, 0), p(0, 0), true)).toThrow('the ends are 0 and 1 from the centre');
  });
});

describe('an arc with rounded numbers', () => {
  it.each([1e-6, 1, 1e6])('is taken up to a thousandth of its radius of %d', (r) => {
    expect(() => rounded(p(0, 0), r, 10, 100, true, 0.9e-3)).not.toThrow();
    expect(() => rounded(p(0, 0), r, 10, 100, true, 1.1e-3)).toThrow(/equally far/);
    expect(() => rounded(p(0, 0), r, 10, 100, true, -1.1e-3)).toThrow(/equally far/);
  });

  const places = [
    [p(0, 0), 1],
    [p(300, -200), 40],
    [p(-5, 7), 1e-2],
  ] as const;

  it.each(places)(
    'round %o has its centre moved to be as far from both ends, no further than need be',
    (center, r) => {
      for (const [from, to, ccw] of [
        [10, 100, true],
        [100, 10, false],
        [-30, 145, true],
        [200, 50, false],
      ] as const) {
        const off = 1e-9;
        const arc = rounded(center, r, from, to, ccw, off);
        const rounding = 1e-15 * (Math.abs(center.x) + Math.abs(center.y) + r);
        expect(Math.abs(away(arc.center, arc.a) - away(arc.center, arc.b))).toBeLessThanOrEqual(4 * rounding);
        expect(Math.abs(away(arc.center, arc.a) - arc.radius)).toBeLessThanOrEqual(4 * rounding);
        // From the end as given, the foot on the perpendicular bisector is off r / (2 sin(t/2)) away.
        const least = (off * r) / (2 * Math.sin((Math.abs(to - from) * Math.PI) / 360));
        expect(Math.abs(away(arc.center, center) - least)).toBeLessThanOrEqual(1e-3 * least + 4 * rounding);
      }
    },
  );

  it.each(places)('round %o keeps its centre where its ends come close after a long way', (center, r) => {
    for (const [from, to, ccw] of [
      [10, 9, true],
      [9, 10, false],
      [100, 99, true],
      [200, 201, false],
      [-60, -61, true],
    ] as const) {
      expect(rounded(center, r, from, to, ccw, 1e-9).center).toBe(center);
      // The short way round between the same ends it does not.
      expect(rounded(center, r, from, to, !ccw, 1e-9).center).not.toBe(center);
      // What is off by more is a mistake in the drawing and not rounding.
      expect(rounded(center, r, from, to, ccw, 1e-5).center).not.toBe(center);
    }
  });

  it('over half a turn has its centre halfway between its ends', () => {
    const arc = arcEdge(p(-1, 0), p(1 + 2 ** -30, 0), p(0, 0), true);
    expect(arc.center).toEqual(p(2 ** -31, 0));
    const clockwise = arcEdge(p(0, -1), p(0, 1 + 2 ** -30), p(0, 0), false);
    expect(clockwise.center).toEqual(p(0, 2 ** -31));
  });
});
