import { type ArcEdge, arcEdge, type Loop, lineEdge, type Point } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { writeRow } from '../../packages/core/src/geometry/curves.js';
import { gather } from '../../packages/core/src/noding/gather.js';
import { boxesOf, eachPair } from '../../packages/core/src/noding/pairs.js';
import { indexOf } from '../../packages/core/src/noding/runs.js';

/*
 * How the pieces of an overlay are looked up: which neighbours are put together, the boxes of pieces, and that all that
 * come near are found, however many there are. Elementary, no source.
 */

type Box = readonly [number, number, number, number];

/** Runs of boxes that follow each other by the numbers of their ends. */
function runsOf(boxes: readonly Box[], from: readonly number[], to: readonly number[]) {
  const { runs } = indexOf(
    Float64Array.from(boxes.flat()),
    boxes.length,
    Int32Array.from(from),
    Int32Array.from(to),
  );
  const starts = [...runs.start.slice(0, runs.count + 1)];
  // The box round the pieces of each run, said the plain way.
  for (let r = 0; r < runs.count; r++) {
    const own = boxes.slice(starts[r], starts[r + 1]);
    expect([...runs.boxes.slice(4 * r, 4 * r + 4)]).toEqual([
      Math.min(...own.map((b) => b[0])),
      Math.min(...own.map((b) => b[1])),
      Math.max(...own.map((b) => b[2])),
      Math.max(...own.map((b) => b[3])),
    ]);
  }
  return starts;
}

/** So many pieces that each go on where the last ended. */
const chain = (n: number) => ({
  from: Array.from({ length: n }, (_, k) => k),
  to: Array.from({ length: n }, (_, k) => k + 1),
});

describe('runs of pieces', () => {
  // 128 wide in all, so that what is longer than 16 is long. Away from the origin, so that lengths are not coordinates.
  const far: Box = [1000, 2000, 1000, 2000];
  const wide = (n: number, width = 2): Box[] =>
    Array.from({ length: n }, (_, k) => [1128 - width, 2000 + ((7 * k) % 5), 1128, 2008 + ((3 * k) % 4)]);
  const tall = (boxes: readonly Box[]): Box[] =>
    boxes.map(([a, b, c, d]) => [b - 1000, a + 1000, d - 1000, c + 1000]);

  it('hold up to four that follow each other', () => {
    const { from, to } = chain(10);
    const boxes = [...wide(9), far];
    for (const list of [boxes, tall(boxes)]) expect(runsOf(list, from, to)).toEqual([0, 4, 8, 10]);
  });

  it('end where a chain does', () => {
    const boxes = [...wide(8), far];
    // Three of one loop and five of another: pieces 0, 1, 2 and 3 to 7; the last lies alone.
    const from = [0, 1, 2, 3, 4, 5, 6, 7, 8];
    const to = [1, 2, 0, 4, 5, 6, 7, 3, 8];
    expect(runsOf(boxes, from, to)).toEqual([0, 3, 7, 8, 9]);
  });

  it('leave long pieces alone, wide or high', () => {
    const { from, to } = chain(8);
    const boxes = [...wide(8)];
    boxes[0] = far;
    boxes[4] = [1100, 2000, 1117, 2001];
    const expected = [0, 4, 5, 8];
    expect(runsOf(boxes, from, to)).toEqual(expected);
    expect(runsOf(tall(boxes), from, to)).toEqual(expected);
    // An eighth of the whole to the bit is not long yet.
    boxes[4] = [1100, 2000, 1116, 2001];
    expect(runsOf(boxes, from, to)).toEqual([0, 4, 8]);
    expect(runsOf(tall(boxes), from, to)).toEqual([0, 4, 8]);
  });

  it('that are all long are one piece each', () => {
    const { from, to } = chain(5);
    expect(runsOf(wide(5, 128), from, to)).toEqual([0, 1, 2, 3, 4, 5]);
  });

  it('of one piece are that piece', () => {
    expect(runsOf([[1, 2, 3, 4]], [0], [0])).toEqual([0, 1]);
  });
});

describe('the box of a piece', () => {
  const boxOf = (edge: ArcEdge | ReturnType<typeof lineEdge>) => {
    const rows = new Float64Array(8);
    writeRow(rows, 0, edge, 0, 0);
    return [...boxesOf(rows, 1)];
  };
  const at = (degrees: number, r = 5, center = { x: 10, y: 20 }): Point => ({
    x: center.x + r * Math.cos((degrees * Math.PI) / 180),
    y: center.y + r * Math.sin((degrees * Math.PI) / 180),
  });
  const arc = (a: Point, b: Point, ccw: boolean) => arcEdge(a, b, { x: 10, y: 20 }, ccw);
  const east = { x: 15, y: 20 };
  const west = { x: 5, y: 20 };
  const north = { x: 10, y: 25 };
  const south = { x: 10, y: 15 };

  it('of a line is that of its ends', () => {
    expect(boxOf(lineEdge({ x: 7, y: 1 }, { x: 3, y: 4 }))).toEqual([3, 1, 7, 4]);
    expect(boxOf(lineEdge({ x: -3, y: 4 }, { x: 7, y: -1 }))).toEqual([-3, -1, 7, 4]);
  });

  it('of half a circle reaches to its side', () => {
    expect(boxOf(arc(south, north, true))).toEqual([10, 15, 15, 25]);
    expect(boxOf(arc(north, south, false))).toEqual([10, 15, 15, 25]);
    expect(boxOf(arc(north, south, true))).toEqual([5, 15, 10, 25]);
    expect(boxOf(arc(south, north, false))).toEqual([5, 15, 10, 25]);
  });

  it('of a quarter is that of its ends', () => {
    expect(boxOf(arc(south, east, true))).toEqual([10, 15, 15, 20]);
    expect(boxOf(arc(east, north, true))).toEqual([10, 20, 15, 25]);
    expect(boxOf(arc(north, west, true))).toEqual([5, 20, 10, 25]);
    expect(boxOf(arc(west, south, true))).toEqual([5, 15, 10, 20]);
    expect(boxOf(arc(west, north, false))).toEqual([5, 20, 10, 25]);
  });

  it('of an arc across the middle height has the side of the circle in it', () => {
    // Three, four, five, so that all numbers are exact.
    const [low, high] = [
      { x: 13, y: 16 },
      { x: 14, y: 23 },
    ];
    expect(boxOf(arc(low, high, true))).toEqual([13, 16, 15, 23]);
    expect(boxOf(arc(high, low, false))).toEqual([13, 16, 15, 23]);
    const [lowLeft, highLeft] = [
      { x: 7, y: 16 },
      { x: 6, y: 23 },
    ];
    expect(boxOf(arc(lowLeft, highLeft, false))).toEqual([5, 16, 7, 23]);
    expect(boxOf(arc(highLeft, lowLeft, true))).toEqual([5, 16, 7, 23]);
  });

  it.each([
    [20, 70, true],
    [70, 20, false],
    [-70, -20, true],
    [110, 160, true],
    [250, 200, false],
  ] as const)(
    'of an arc beside the middle height, from %d to %d degrees, is that of its ends',
    (from, to, ccw) => {
      const a = at(from);
      const b = at(to);
      expect(boxOf(arc(a, b, ccw))).toEqual([
        Math.min(a.x, b.x),
        Math.min(a.y, b.y),
        Math.max(a.x, b.x),
        Math.max(a.y, b.y),
      ]);
    },
  );

  it('stands in its own place among others', () => {
    const rows = new Float64Array(24);
    writeRow(rows, 0, lineEdge({ x: 0, y: 0 }, { x: 1, y: 1 }), 0, 0);
    writeRow(rows, 1, arc(south, north, true), 0, 0);
    writeRow(rows, 2, lineEdge({ x: 3, y: 2 }, { x: 1, y: 8 }), 0, 0);
    expect([...boxesOf(rows, 3)]).toEqual([0, 0, 1, 1, 10, 15, 15, 25, 1, 2, 3, 8]);
  });
});

/** A closed zigzag of `n` edges: up the right side and down the left one of a thin upright strip of many teeth. */
function zigzag(n: number, x: number): Loop {
  const points = Array.from({ length: n }, (_, k): Point => {
    const level = Math.min(k, n - k);
    return { x: x + 3 * (k % 2) + (2 * k < n ? 4 : 0), y: level };
  });
  return points.map((a, k) => lineEdge(a, points[(k + 1) % n] as Point));
}

describe('pairs of pieces', () => {
  it.each([
    [12, 35, false],
    [12, 36, true],
    [40, 21, true],
    [96, 64, true],
  ] as const)('of loops of %d and %d edges are all that come near', (n, m, isIndexed) => {
    const curves = gather([[zigzag(n, 0)], [zigzag(m, 3)]]);
    const { count, tolerance } = curves;
    expect(count).toBe(n + m);
    const boxes = boxesOf(curves.rows, count);
    const box = (k: number) => boxes.slice(4 * k, 4 * k + 4) as unknown as Box;
    const expected: string[] = [];
    for (let i = 0; i < count; i++) {
      for (let j = i + 1; j < count; j++) {
        const [p, q] = [box(i), box(j)];
        const gapX = Math.max(p[0] - q[2], q[0] - p[2]);
        const gapY = Math.max(p[1] - q[3], q[1] - p[3]);
        if (gapX <= tolerance && gapY <= tolerance) expected.push(`${i} ${j}`);
      }
    }
    const found: string[] = [];
    const index = eachPair(curves, boxes, (i, j) => {
      found.push(`${Math.min(i, j)} ${Math.max(i, j)}`);
    });
    expect(found.sort()).toEqual(expected.sort());
    expect(index !== null).toBe(isIndexed);
  });
});
