import {
  type ArcEdge,
  arcEdge,
  type Edge,
  lineEdge,
  type Meeting,
  meet,
  type Point,
  reversed,
} from '@edgebite/core';
import { describe, expect, it } from 'vitest';

const TOLERANCE = 1e-9;
const p = (x: number, y: number) => ({ x, y });

/** All but a sliver of a circle, open at its lower left where nothing is met. */
const circle = (x: number, y: number, r: number): ArcEdge => {
  const gap = 1e-3;
  const at = (angle: number) => p(x + r * Math.cos(angle), y + r * Math.sin(angle));
  return arcEdge(at(gap - 2), at(-2 - gap), p(x, y), true);
};

/** The meeting of two edges, the same from both and whichever way they run. */
function met(e: Edge, f: Edge): Meeting {
  const first = meet(e, f, TOLERANCE);
  for (const [g, h] of [
    [f, e],
    [reversed(e), f],
    [e, reversed(f)],
  ] as const) {
    const other = meet(g, h, TOLERANCE);
    expect(other.kind).toBe(first.kind);
    if (first.kind === 'points' && other.kind === 'points') {
      expect(other.points).toHaveLength(first.points.length);
      for (const { at, touch } of first.points) {
        const same = other.points.find((q) => Math.hypot(q.at.x - at.x, q.at.y - at.y) <= 2 * TOLERANCE);
        expect(same?.touch).toBe(touch);
      }
    }
    if (first.kind === 'overlap' && other.kind === 'overlap') {
      expect(other.ends).toHaveLength(first.ends.length);
    }
  }
  return first;
}

function points(meeting: Meeting): { x: number; y: number }[] {
  if (meeting.kind !== 'points') throw new Error(`they ${meeting.kind}`);
  return meeting.points.map(({ at }) => at).sort((a, b) => a.y - b.y || a.x - b.x);
}

describe('two lines', () => {
  it('cross in a point', () => {
    expect(points(met(lineEdge(p(0, 0), p(4, 4)), lineEdge(p(0, 4), p(4, 0))))).toEqual([p(2, 2)]);
  });

  it('are apart when the crossing lies past an end', () => {
    expect(met(lineEdge(p(0, 0), p(1, 1)), lineEdge(p(0, 4), p(4, 0))).kind).toBe('apart');
  });

  it('touch where one ends on the other', () => {
    const meeting = met(lineEdge(p(0, 0), p(2, 2)), lineEdge(p(0, 4), p(4, 0)));
    expect(meeting).toEqual({ kind: 'points', points: [{ at: p(2, 2), touch: true }] });
  });

  it('overlap along what they share', () => {
    const meeting = met(lineEdge(p(0, 0), p(5, 0)), lineEdge(p(3, 0), p(9, 0)));
    expect(meeting).toEqual({ kind: 'overlap', ends: [[p(3, 0), p(5, 0)]] });
  });

  it('that continue each other share an end and no more', () => {
    const meeting = met(lineEdge(p(0, 0), p(3, 0)), lineEdge(p(3, 0), p(9, 0)));
    expect(meeting).toEqual({ kind: 'points', points: [{ at: p(3, 0), touch: true }] });
  });

  it('within the tolerance of each other overlap, just over it they do not', () => {
    const line = lineEdge(p(0, 0), p(5, 0));
    expect(met(line, lineEdge(p(1, 0.9e-9), p(4, 0.9e-9))).kind).toBe('overlap');
    expect(met(line, lineEdge(p(1, 1.1e-9), p(4, 1.1e-9))).kind).toBe('apart');
  });
});

describe('lines that stay within the tolerance of each other', () => {
  /** A line of some length, turned by an angle about the origin. */
  const through = (length: number, angle: number) => {
    const [x, y] = [(length / 2) * Math.cos(angle), (length / 2) * Math.sin(angle)];
    return lineEdge(p(-x, -y), p(x, y));
  };

  it.each([0, 30, 45, 90, 135])('overlap in one stretch though they cross, at %d degrees', (degrees) => {
    const angle = (degrees * Math.PI) / 180;
    for (const [one, other] of [
      [5, 5],
      [1000, 1],
      [1, 1000],
    ] as const) {
      // Half the shorter one, turned by this much, comes to 0.4 tolerances from the longer one; by 7.5 times it, to 3.
      const turn = 0.8e-9 / Math.min(one, other);
      const meeting = met(through(one, angle), through(other, angle + turn));
      if (meeting.kind !== 'overlap') throw new Error(meeting.kind);
      expect(meeting.ends).toHaveLength(1);
      const [[a, b]] = meeting.ends as [[Point, Point]];
      expect(Math.hypot(b.x - a.x, b.y - a.y)).toBeCloseTo(Math.min(one, other), 6);
      // Where such lines cross is rounded far along them, so places are not compared.
      const crossing = meet(through(one, angle), through(other, angle + 7.5 * turn), TOLERANCE);
      expect(crossing).toMatchObject({ kind: 'points', points: [{ touch: false }] });
    }
  });
});

describe('a line and a circle', () => {
  // MathWorld, "Circle-Line Intersection": chord 2 sqrt(r² - d²).
  it('cross in two points, half a chord to either side of the foot', () => {
    const found = points(met(lineEdge(p(-9, 3), p(9, 3)), circle(0, 0, 5)));
    expect(found[0]?.x).toBeCloseTo(-4, 12);
    expect(found[1]?.x).toBeCloseTo(4, 12);
    for (const { y } of found) expect(y).toBe(3);
  });

  it.each([
    [0, 1, true],
    [0.9e-9, 1, true],
    [-0.9e-9, 1, true],
    [-1e-8, 2, false],
  ])('with a gap of %d meet %d times', (gap, count, touch) => {
    const meeting = met(lineEdge(p(-9, 5 + gap), p(9, 5 + gap)), circle(0, 0, 5));
    if (meeting.kind !== 'points') throw new Error(meeting.kind);
    expect(meeting.points).toHaveLength(count);
    expect(meeting.points.every((one) => one.touch === touch)).toBe(true);
  });

  it('keep the true pair of roots close to tangency', () => {
    // Half the chord at a depth h is sqrt(2 r h - h²) (Machinery's Handbook, 31st ed., segments of a circle).
    const h = 1e-6;
    const found = points(met(lineEdge(p(-9, 5 - h), p(9, 5 - h)), circle(0, 0, 5)));
    const half = Math.sqrt(2 * 5 * h - h * h);
    // The height is rounded to 4e-16, a share of 4e-10 of the depth.
    expect(found[0]?.x).toBeCloseTo(-half, 11);
    expect(found[1]?.x).toBeCloseTo(half, 11);
  });

  it('are apart with a gap over the tolerance', () => {
    expect(met(lineEdge(p(-9, 5 + 1.1e-9), p(9, 5 + 1.1e-9)), circle(0, 0, 5)).kind).toBe('apart');
  });

  it('miss each other where the arc is not', () => {
    const upper = arcEdge(p(5, 0), p(-5, 0), p(0, 0), true);
    expect(met(lineEdge(p(-9, -3), p(9, -3)), upper).kind).toBe('apart');
  });
});

describe('two circles', () => {
  // Distance of the radical line and half the common chord: D. Assencio, "The intersection area of two circles".
  it.each([
    [4, 4, 6, 3, 2.6457513110645907],
    [15, 30, 20, -6.875, 13.3317056298],
    [50, 30, 60, 43.333333333, 24.944382578],
  ])('of radius %d and %d at a distance of %d', (r, s, d, along, half) => {
    const found = points(met(circle(0, 0, r), circle(d, 0, s)));
    expect(found).toHaveLength(2);
    for (const { x } of found) expect(x).toBeCloseTo(along, 8);
    expect(found[0]?.y).toBeCloseTo(-half, 8);
    expect(found[1]?.y).toBeCloseTo(half, 8);
  });

  it.each([
    ['outside', 3, 2, 5],
    ['inside', 5, 2, 3],
  ])('touch from the %s', (_, r, s, d) => {
    for (const gap of [0, 0.9e-9, -0.9e-9]) {
      const meeting = met(circle(0, 0, r), circle(d + gap, 0, s));
      if (meeting.kind !== 'points') throw new Error(meeting.kind);
      expect(meeting.points).toHaveLength(1);
      expect(meeting.points[0]?.touch).toBe(true);
      expect(meeting.points[0]?.at.x).toBeCloseTo(r, 8);
    }
  });

  it('are apart one inside the other, or out of reach', () => {
    expect(met(circle(0, 0, 5), circle(1, 0, 2)).kind).toBe('apart');
    expect(met(circle(0, 0, 5), circle(8, 0, 2)).kind).toBe('apart');
    expect(met(circle(0, 0, 5), circle(0, 0, 2)).kind).toBe('apart');
  });

  it('that are one overlap along what the arcs share', () => {
    const right = arcEdge(p(0, -5), p(0, 5), p(0, 0), true);
    const upper = arcEdge(p(5, 0), p(-5, 0), p(0, 0), true);
    const meeting = met(right, upper);
    if (meeting.kind !== 'overlap') throw new Error(meeting.kind);
    const ends = meeting.ends[0]?.map(({ x, y }) => [x, y]).sort();
    expect(ends).toEqual([
      [0, 5],
      [5, 0],
    ]);
  });

  it.each([
    ['near its start', -20, 100, 0, 100],
    ['near its end, over half a turn on', 200, 350, 200, 300],
    ['in its first half', 30, 60, 30, 60],
    ['in its second half', 250, 280, 250, 280],
  ])('that are one overlap along what is shared of a long arc %s', (_, from, to, start, end) => {
    const at = (degrees: number) =>
      p(5 * Math.cos((degrees * Math.PI) / 180), 5 * Math.sin((degrees * Math.PI) / 180));
    const long = arcEdge(at(0), at(300), p(0, 0), true);
    const short = arcEdge(at(from), at(to), p(0, 0), true);
    expect(met(long, short).kind).toBe('overlap');
    // Along the first of the two, whichever way the other runs.
    for (const other of [short, reversed(short)]) {
      const meeting = meet(long, other, TOLERANCE);
      if (meeting.kind !== 'overlap') throw new Error(meeting.kind);
      expect(meeting.ends).toHaveLength(1);
      const [[a, b]] = meeting.ends as [[Point, Point]];
      for (const [found, expected] of [
        [a, at(start)],
        [b, at(end)],
      ] as const) {
        expect(found.x).toBeCloseTo(expected.x, 12);
        expect(found.y).toBeCloseTo(expected.y, 12);
      }
    }
  });

  it('that are one but for the rounding of their centres overlap in one stretch, wherever it lies', () => {
    for (let degrees = 0; degrees < 360; degrees += 45) {
      const at = (turn: number, x: number, y: number) => {
        const angle = ((degrees + turn) * Math.PI) / 180;
        return p(x + 5 * Math.cos(angle), y + 5 * Math.sin(angle));
      };
      const one = arcEdge(at(-60, 0, 0), at(60, 0, 0), p(0, 0), true);
      for (const [x, y] of [
        [3e-10, 0],
        [0, -3e-10],
      ] as const) {
        const other = arcEdge(at(-30, x, y), at(90, x, y), p(x, y), true);
        const meeting = met(one, other);
        expect(meeting).toMatchObject({ kind: 'overlap', ends: { length: 1 } });
      }
    }
  });

  it('a gap apart touch in the middle of the gap, of two that dig into each other in the middle of that', () => {
    const tolerance = 0.1;
    const place = (r: number, d: number, s: number) => {
      const meeting = meet(circle(0, 0, r), circle(d, 0, s), tolerance);
      expect(meeting).toMatchObject({ kind: 'points', points: [{ touch: true }] });
      return points(meeting)[0];
    };
    // Side by side: the circles pass the axis at 3 and at 5.08 - 2.
    expect(place(3, 5.08, 2)?.x).toBeCloseTo(3.04, 12);
    expect(place(3, 4.92, 2)?.x).toBeCloseTo(2.96, 12);
    // One in the other: they pass it at 5 and at 3 + d; and the other way round at -2 and at d - 5.
    expect(place(5, 2.92, 2)?.x).toBeCloseTo(4.96, 12);
    expect(place(5, 3.08, 2)?.x).toBeCloseTo(5.04, 12);
    expect(place(2, 2.92, 5)?.x).toBeCloseTo(-2.04, 12);
  });

  it('of two halves share both ends', () => {
    const right = arcEdge(p(0, -5), p(0, 5), p(0, 0), true);
    const left = arcEdge(p(0, 5), p(0, -5), p(0, 0), true);
    expect(points(met(right, left))).toEqual([p(0, -5), p(0, 5)]);
  });
});

describe('far from the origin', () => {
  it('crossings are as precise as the coordinates', () => {
    const far = 1e6;
    const line = lineEdge(p(far - 9, far + 3), p(far + 9, far + 3));
    const found = meet(line, circle(far, far, 5), 1e-8);
    expect(points(found).map(({ x }) => x - far)).toEqual([expect.closeTo(-4, 8), expect.closeTo(4, 8)]);
  });
});
