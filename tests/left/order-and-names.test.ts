import { arcEdge, examine, knifeEdgesOf, type Loop, parseJob, type Region, websOf } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { at, box, everyWay, hole, loopThrough, section } from './section-builder.js';
import { ell } from './web-forms.js';

describe('what is found comes in an order of its own', () => {
  it('webs thinnest first, those of one thickness from left to right, then upwards', () => {
    const holes = [hole(40, 35, 4), hole(20, 5, 4), hole(40, 5, 4), hole(20, 35, 4), hole(55, 20, 4.5)];
    for (const order of [holes, [...holes].reverse()]) {
      const webs = websOf(section(box(60, 40), ...order), 2);
      expect(webs.map(({ thickness, at: { x, y } }) => [thickness, x, y])).toEqual([
        [0.5, 59.75, 20],
        [1, 20, 0.5],
        [1, 20, 39.5],
        [1, 40, 0.5],
        [1, 40, 39.5],
      ]);
    }
  });

  it('knife edges sharpest first, those as sharp and as thin by their names, then from left to right and upwards', () => {
    const corners = [
      [0, 0],
      [30, 0],
      [30, 40],
      [0, 40],
    ] as const;
    for (const shift of [0, 1, 2, 3]) {
      const outer = loopThrough(corners.map((_, k) => corners[(k + shift) % 4] as readonly [number, number]));
      const found = knifeEdgesOf(section(outer), 2, 1);
      const names = found.map(({ between }) => between.join(' '));
      expect(names).toEqual([...names].sort());
      const nameless = outer.map(({ source: _, ...edge }) => edge);
      expect(knifeEdgesOf(section(nameless), 2, 1).map(({ at: { x, y } }) => [x, y])).toEqual([
        [0, 0],
        [0, 40],
        [30, 0],
        [30, 40],
      ]);
      const tilted = loopThrough(
        [
          [0, 0],
          [10, 0],
          [50, 30],
          [12, 30],
        ].map((_, k, all) => all[(k + shift) % 4] as unknown as readonly [number, number]),
      );
      const angles = knifeEdgesOf(section(tilted), 4, 1).map(({ angle }) => angle);
      expect(angles).toHaveLength(4);
      expect(angles).toEqual([...angles].sort((a, b) => a - b));
    }
  });
});

it('knife edges of a report come sharpest first, those of one angle from the bottom up', () => {
  const { knifeEdges } = examine(
    parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline: { rectangle: [60, 40] }, thickness: 10 },
      limits: { knifeEdge: 40 },
      cuts: [
        { id: 'a', kind: 'bore', center: [15, 8], diameter: 20 },
        { id: 'b', kind: 'bore', center: [45, 9], diameter: 20, depth: 4 },
      ],
    }),
  );
  // The angle between a side and a circle of 10 whose centre is 8 or 9 off it: its cosine is that share of the radius.
  const [dull, sharp] = [0.8, 0.9].map((share) => (Math.acos(share) * 180) / Math.PI) as [number, number];
  expect(knifeEdges.map(({ angle, slab }) => [angle, slab])).toEqual([
    [expect.closeTo(sharp, 9), 1],
    [expect.closeTo(sharp, 9), 1],
    [expect.closeTo(dull, 9), 0],
    [expect.closeTo(dull, 9), 0],
    [expect.closeTo(dull, 9), 1],
    [expect.closeTo(dull, 9), 1],
  ]);
});

/** The same edges under other names. */
function renamed(loop: Loop, name: (k: number) => string | undefined): Loop {
  return loop.map(({ source: _, ...edge }, k) => {
    const source = name(k);
    return source === undefined ? edge : { ...edge, source };
  });
}

function names(region: Region, limit: number): unknown[] {
  const all = everyWay(region).map(({ by, region: there }) =>
    websOf(there, limit * by.scale).map(({ between }) => between),
  );
  for (const one of all) expect(one).toEqual(all[0]);
  return all[0] as unknown[];
}

describe('a web that ends where two edges meet has the name that comes first', () => {
  const smooth = loopThrough([
    [0, 0],
    [30, 0],
    [60, 0],
    [60, 40],
    [0, 40],
  ]);
  const corner = (ell[0] as Region[number]).outer;

  it.each([
    ['b', 'a'],
    ['a', 'b'],
  ])('at a smooth joint of %s and %s', (first, second) => {
    const outer = renamed(smooth, (k) => `outline:${[first, second][k] ?? k}`);
    expect(names(section(outer, hole(30, 6, 5)), 2)).toEqual([['cut:hole', 'outline:a']]);
    // Away from the joint each has its own.
    expect(names(section(outer, hole(20, 6, 5)), 2)).toEqual([['cut:hole', `outline:${first}`]]);
    expect(names(section(outer, hole(40, 6, 5)), 2)).toEqual([['cut:hole', `outline:${second}`]]);
  });

  it.each([
    ['b', 'a'],
    ['a', 'b'],
  ])('at a corner that points into metal, of %s and %s', (arriving, leaving) => {
    const outer = renamed(corner, (k) => `outline:${k === 2 ? arriving : k === 3 ? leaving : k}`);
    // A 3-4-5 triangle from the corner: 5 less the radius of 4.
    expect(names(section(outer, hole(17, 16, 4)), 1.5)).toEqual([['cut:hole', 'outline:a']]);
  });

  it('where it closes, as round a ring', () => {
    for (const [one, other] of [
      ['b', 'a'],
      ['a', 'b'],
    ]) {
      const outer = [
        arcEdge(at(10, 0), at(-10, 0), at(0, 0), true, `outline:${one}`),
        arcEdge(at(-10, 0), at(10, 0), at(0, 0), true, `outline:${other}`),
      ];
      const webs = websOf(section(outer, hole(0, 0, 9)), 2);
      expect(webs.map(({ between, thickness }) => [between, thickness])).toEqual([
        [['cut:hole', 'outline:a'], 1],
      ]);
      expect(webs[0]?.length).toBeCloseTo(19 * Math.PI, 9);
      expect(webs[0]?.strip).toBeCloseTo(19 * Math.PI, 9);
    }
  });

  it('what has no name comes before all names', () => {
    const outer = renamed(smooth, (k) => (k === 1 ? undefined : `outline:${k}`));
    expect(names(section(outer, hole(40, 6, 5)), 2)).toEqual([[null, 'cut:hole']]);
    expect(names(section(outer, hole(30, 6, 5)), 2)).toEqual([[null, 'cut:hole']]);
    const bare = renamed(smooth, () => undefined);
    expect(
      names(
        section(
          bare,
          renamed(hole(30, 6, 5), () => undefined),
        ),
        2,
      ),
    ).toEqual([[null, null]]);
  });
});
