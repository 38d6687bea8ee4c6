import { examine, parseJob, type Report } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { ring } from './plate-ring.js';

/* Floors and sections of a plate 100 by 60, 12 thick, in closed form: Machinery's Handbook, 31st ed., pp. 79 and 50. */

function report(cuts: readonly object[], thickness = 12): Report {
  const part = { outline: { rectangle: [100, 60] }, thickness };
  return examine(parseJob({ edgebite: 1, units: 'mm', part, cuts }));
}

const bore = (id: string, x: number, y: number, diameter: number, more: object = {}) => ({
  id,
  kind: 'bore',
  center: [x, y],
  diameter,
  ...more,
});

const close = (value: number) => expect.closeTo(value, 8);

describe('a floor', () => {
  it('is one though the rim of a shallower cut runs across it', () => {
    const { floors } = report([bore('a', 50, 30, 20, { depth: 4 }), bore('b', 58, 30, 10, { depth: 2 })]);
    // Circles of 10 and 5 at 8: the segments on either side of their common chord, r² (t - sin t) / 2 each.
    const segment = (r: number, away: number) => {
      const t = 2 * Math.acos(away / r);
      return (r * r * (t - Math.sin(t))) / 2;
    };
    const away = (64 + 100 - 25) / 16;
    const lens = segment(10, away) + segment(5, 8 - away);
    expect(floors.map(({ under, thickness, area }) => [under, thickness, area])).toEqual([
      ['a', close(8), close(100 * Math.PI)],
      ['b', close(10), close(25 * Math.PI - lens)],
    ]);
  });

  it('names a place on its border', () => {
    const cuts = [bore('a', 70, 20, 16, { depth: 4 }), bore('b', 20, 45, 10, { depth: 4, from: 'bottom' })];
    const away = report(cuts).floors.map(({ under, at: [x, y] }) =>
      under === 'a' ? Math.hypot(x - 70, y - 20) : Math.hypot(x - 20, y - 45),
    );
    expect(away).toEqual([close(8), close(5)]);
  });

  it.each([20, 80])('of two thicknesses comes thinnest first, with the pocket at %d', (x) => {
    const path = { svgPath: `M${x} -50 V110` };
    const pocket = { id: 'pocket', kind: 'swept', path, diameter: 60, from: 'bottom', depth: 2 };
    const { floors } = report([bore('a', 50, 30, 20, { depth: 9 }), pocket]);
    const under = floors.filter((floor) => floor.under === 'a');
    expect(under.map(({ thickness, area }) => [thickness, area])).toEqual([
      [close(1), close(50 * Math.PI)],
      [close(3), close(50 * Math.PI)],
    ]);
  });

  it.each([33, 27])(
    'that two slugs stand on holds the one with the longer wall, with the slot at %d',
    (y) => {
      const slot = { id: 'b', kind: 'swept', path: { svgPath: `M38 ${y} H62` }, diameter: 2 };
      const { floors, pieces } = report([ring('a', { reach: 9 }), slot]);
      expect(pieces.map(({ role }) => role)).toEqual(['kept', 'held slug', 'held slug']);
      const [floor] = floors.filter(({ under }) => under === 'a');
      // The core has a radius of 10, and the near side of the slot lies 2 from its centre, the far side 4.
      expect(floor?.holds).toBe('slug-1');
      expect(floor?.kerfLength).toBeCloseTo(10 * (2 * Math.PI - 2 * Math.acos(0.2)), 8);
      const segment = (away: number) => 100 * Math.acos(away / 10) - away * Math.sqrt(100 - away * away);
      expect(pieces[1]?.volume).toBeCloseTo(9 * (100 * Math.PI - segment(2)), 6);
      expect(pieces[2]?.volume).toBeCloseTo(9 * segment(4), 6);
    },
  );
});

describe('sections of a piece', () => {
  const wallsOf = ({ pieces }: Report, k: number) =>
    pieces[0]?.sections[k]?.region[0]?.holes.map((loop) => [...new Set(loop.map(({ source }) => source))]);

  it.each([
    ['a', 'b'],
    ['b', 'a'],
  ])('name a wall by a cut that reaches it: %s is shallow, %s goes through', (shallow, through) => {
    const cuts = [bore(shallow, 50, 30, 20, { depth: 4 }), bore(through, 50, 30, 20)];
    for (const order of [cuts, [...cuts].reverse()]) {
      const result = report(order);
      const bottom = result.pieces[0]?.sections.findIndex(({ from }) => from === 0) as number;
      expect(wallsOf(result, bottom)).toEqual([[`cut:${through}`]]);
    }
  });

  it('name a wall above a cut from the other side by what has made it', () => {
    const result = report([
      bore('a', 50, 30, 20, { depth: 4 }),
      bore('b', 50, 30, 20, { from: 'bottom', depth: 5 }),
    ]);
    expect(result.pieces[0]?.sections.map(({ from, to }) => [from, to])).toEqual([
      [0, 5],
      [5, 8],
      [8, 12],
    ]);
    expect([0, 1, 2].map((k) => wallsOf(result, k))).toEqual([[['cut:b']], [], [['cut:a']]]);
  });

  it('are one stretch through slabs in which it is the same, and two where it is not', () => {
    const { pieces, slabs } = report([ring('a'), bore('b', 90, 50, 8, { depth: 4 })]);
    expect(slabs.map(({ from, to }) => [from, to])).toEqual([
      [0, 8],
      [8, 12],
    ]);
    expect(pieces.map(({ sections }) => sections.map(({ from, to }) => [from, to]))).toEqual([
      [
        [0, 8],
        [8, 12],
      ],
      [[0, 12]],
    ]);
  });

  it('are two where as many holes lie elsewhere', () => {
    const result = report(
      [bore('a', 30, 30, 20, { depth: 4 }), bore('b', 70, 30, 20, { from: 'bottom', depth: 4 })],
      8,
    );
    expect(result.pieces[0]?.sections.map(({ from, to }) => [from, to])).toEqual([
      [0, 4],
      [4, 8],
    ]);
    expect([0, 1].map((k) => wallsOf(result, k))).toEqual([[['cut:b']], [['cut:a']]]);
    // Seen from above nothing is open.
    expect(result.pieces[0]?.area).toBeCloseTo(6000, 8);
  });
});
