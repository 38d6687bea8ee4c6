import { examine, parseJob, type Report } from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evenly } from '../tools/evenly.js';
import { runs } from '../tools/runs.js';

/* What a cut does to each face that it opens. Depths are those of a drawing: square to the face, to the deepest place. */

type Plain = Record<string, unknown>;

const bore = (center: unknown, diameter: number, over: Plain = {}): Plain => ({
  ...{ id: 'a', kind: 'bore', center, diameter },
  ...over,
});

function reportOn(
  cuts: readonly Plain[],
  over: Plain = {},
  outline: unknown = { rectangle: [80, 40] },
): Report {
  return examine(parseJob({ edgebite: 1, units: 'mm', part: { outline, thickness: 10 }, ...over, cuts }));
}

/** By face: deep, opens, leaves. */
function bitesOf(report: Report): Record<string, (number | null)[]> {
  const [cut] = report.cuts;
  return Object.fromEntries(
    (cut?.bites ?? []).map(({ face, depth, opening, left }) => [face, [depth, opening, left]]),
  );
}

const near = (...values: number[]) => values.map((value) => expect.closeTo(value, 9));

describe('a bite over a corner', () => {
  it('is told from each of the two faces', () => {
    // A 50 bore about (17, -2): its right side comes to 42, which lies 2 under the front; there the front is cut at
    // 17 + sqrt(25² - 2²). From the front it goes to -2 + 25 = 23. The left end is cut at -2 + sqrt(25² - 17²).
    const report = reportOn([bore([17, -2], 50)]);
    const across = 17 + Math.sqrt(25 ** 2 - 2 ** 2);
    const up = -2 + Math.sqrt(25 ** 2 - 17 ** 2);
    expect(bitesOf(report)).toEqual({
      'outline:0': near(23, across, 17),
      'outline:3': near(across, up, 80 - across),
    });
    // Its centre 5 further up, what is furthest to the right is in the metal: 42 deep, and 38 left.
    expect(bitesOf(reportOn([bore([17, 3], 50)]))).toEqual({
      'outline:0': near(28, 17 + Math.sqrt(25 ** 2 - 3 ** 2), 12),
      'outline:3': near(42, 3 + Math.sqrt(25 ** 2 - 17 ** 2), 38),
    });
  });

  it('is one quarter of a circle about the corner itself', () => {
    const [first] = reportOn([bore([0, 0], 20)]).cuts[0]?.bites ?? [];
    expect(first).toMatchObject({ depth: 10, opening: 10, left: 30, far: 'outline:2', whole: false });
    expect(first?.includedAngle).toBeCloseTo(90, 9);
    expect(first?.arcLength).toBeCloseTo((10 * Math.PI) / 2, 9);
  });

  it('is told the same of a centre that is given by distances', () => {
    const placed = bore(
      {
        distances: [
          { from: 'left', off: -17 },
          { from: 'front', off: 2 },
        ],
      },
      50,
    );
    expect(bitesOf(reportOn([placed]))).toEqual(bitesOf(reportOn([bore([17, -2], 50)])));
  });
});

describe('a bite', () => {
  it('is told of an annular cut, from below and in the middle of the order too', () => {
    const ring = {
      id: 'r',
      kind: 'annular',
      center: [40, -6],
      diameter: 20,
      wall: 3,
      from: 'bottom',
      depth: 4,
    };
    const report = reportOn([bore([60, 20], 5), ring, bore([40, 40], 12, { id: 'c' })]);
    // Circular segment, Machinery's Handbook, 31st ed., p. 83: h = 10 - 6, c = 2 sqrt(4 (20 - 4)).
    expect(report.cuts[1]?.bites).toMatchObject([
      { face: 'outline:0', depth: 4, left: 36, far: 'outline:2' },
    ]);
    expect(report.cuts[1]?.bites[0]?.opening).toBeCloseTo(16, 9);
    expect(report.cuts[0]?.bites).toEqual([]);
  });

  it('that takes a whole end says so', () => {
    // A circle of 60 about the middle of the right end, 40 wide: 30 deep, and through front and back.
    const bites = reportOn([bore([80, 20], 60)]).cuts[0]?.bites ?? [];
    expect(bites).toMatchObject([
      { face: 'outline:0', depth: 40, left: 0, far: null, whole: false },
      { face: 'outline:1', depth: 30, opening: 40, left: 50, far: 'outline:3', whole: true },
      { face: 'outline:2', depth: 40, left: 0, far: null, whole: false },
    ]);
  });

  it('in a round face is measured from where that is nearest', () => {
    // Two circles of 50 and 20, centres 25 apart: 10 deep; their common chord has its ends at the height of Heron's triangle
    // with sides 25, 25 and 10: 2 * 2 * area / 25.
    const [bite] = reportOn([bore([25, 0], 20)], {}, { circle: 50 }).cuts[0]?.bites ?? [];
    const s = (25 + 25 + 10) / 2;
    const area = Math.sqrt(s * (s - 25) * (s - 25) * (s - 10));
    expect(bite?.depth).toBeCloseTo(10, 9);
    expect(bite?.opening).toBeCloseTo((4 * area) / 25, 9);
    expect(bite?.left).toBeCloseTo(40, 9);
    // In the wall of a hole of 20, centres 12 apart, a circle of 8 goes 12 + 4 - 10 deep.
    const plate = { rectangle: [80, 40], holes: [{ circle: 20, at: [20, 20] }] };
    const [inner] = reportOn([bore([32, 20], 8)], {}, plate).cuts[0]?.bites ?? [];
    expect(inner).toMatchObject({ far: 'outline:1' });
    expect([inner?.depth, inner?.left]).toEqual(near(6, 44));
  });

  it('is named in the finding of an opening that goes past the end of its face', () => {
    const { findings } = reportOn([bore({ on: 'outline:1', along: 3, depth: 4 }, 10)]);
    const message = findings.find(({ code }) => code === 'opening-past-face')?.message ?? '';
    expect(message).toContain('4.000 mm deep from the right end');
    expect(message).toContain('from the front, of which it takes');
  });
});

describe('bites of circles anywhere in a part with a slanted side and a hole', () => {
  const corners = [
    [0, 0],
    [80, 0],
    [60, 40],
    [10, 40],
  ] as const;
  const outline = {
    edges: corners.map((a, k) => ({ kind: 'line', a, b: corners[(k + 1) % 4] })),
    holes: [{ circle: 12, at: [35, 24] }],
  };
  const isMetal = ([x, y]: readonly [number, number]) =>
    y > 0 && y < 40 && 80 - y / 2 > x && x > y / 4 && Math.hypot(x - 35, y - 24) > 6;

  const arbitraryCut = [evenly(-5, 85), evenly(-5, 45), fc.double({ min: 4, max: 30, noNaN: true })] as const;

  /** The straight faces that are opened: each with its bite, its unit vector along and how deep a place lies behind it. */
  function straightOnes(report: Report) {
    const edges = report.outline.flatMap(({ outer }) => outer);
    return (report.cuts[0]?.bites ?? []).flatMap((bite) => {
      const face = edges.find(({ source, kind }) => source === bite.face && kind === 'line');
      if (face === undefined) return [];
      const length = Math.hypot(face.b[0] - face.a[0], face.b[1] - face.a[1]);
      const along = [(face.b[0] - face.a[0]) / length, (face.b[1] - face.a[1]) / length] as const;
      const depthOf = ([px, py]: readonly [number, number]) =>
        (py - face.a[1]) * along[0] - (px - face.a[0]) * along[1];
      return [{ bite, along, depthOf }];
    });
  }

  it('are as deep as the deepest of many places that they take', () => {
    fc.assert(
      fc.property(...arbitraryCut, (x, y, diameter) => {
        const report = reportOn([bore([x, y], diameter)], {}, outline);
        const ones = straightOnes(report);
        for (const { bite, depthOf } of ones) {
          expect(depthOf(bite.deepest)).toBeCloseTo(bite.depth, 6);
          expect(Math.hypot(bite.deepest[0] - x, bite.deepest[1] - y)).toBeLessThan(diameter / 2 + 1e-6);
        }
        // Where all that is taken hangs together no place of it lies deeper.
        if (new Set(report.cuts[0]?.bites.map(({ arcLength }) => arcLength)).size !== 1) return;
        if (report.cuts[0]?.bites.length !== ones.length) return;
        for (let k = 0; k < 400; k++) {
          const turn = k * 2.399963;
          const out = (diameter / 2) * Math.sqrt(k / 399);
          const place = [x + out * Math.cos(turn), y + out * Math.sin(turn)] as const;
          if (isMetal(place))
            for (const { bite, depthOf } of ones) expect(depthOf(place)).toBeLessThan(bite.depth + 1e-6);
        }
      }),
      { numRuns: runs(100) },
    );
  });

  it('leave as much behind as there is metal, and no more', () => {
    fc.assert(
      fc.property(...arbitraryCut, (x, y, diameter) => {
        for (const { bite, along } of straightOnes(reportOn([bore([x, y], diameter)], {}, outline))) {
          const { left, deepest } = bite;
          if (left === null || left < 0.01) continue;
          // To both sides of the look, which may go along a face.
          const isIn = (t: number) =>
            [-1e-5, 1e-5].some((off) =>
              isMetal([
                deepest[0] - along[1] * t + along[0] * off,
                deepest[1] + along[0] * t + along[1] * off,
              ]),
            );
          for (const share of [0.001, 0.3, 0.6, 0.999]) expect(isIn(share * left)).toBe(true);
          expect(isIn(left + 1e-3)).toBe(false);
        }
      }),
      { numRuns: runs(100) },
    );
  });
});
