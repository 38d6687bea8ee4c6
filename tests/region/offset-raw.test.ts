import { type ArcEdge, arcEdge, type Edge, type Loop, lineEdge, type Point } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { rawBand, rawLoop } from '../../packages/core/src/combine/offset-raw.js';
import { p } from './shapes.js';

/*
 * The curve beside a loop or a path, edge by edge, before an overlay takes from it what is too near. Corners by
 * elementary geometry: two parallels at a distance d meet d tan(turn / 2) before the ends of their edges.
 */

const WELD = 1e-9;
const closed = (points: readonly Point[], source?: string): Loop =>
  points.map((a, k) => lineEdge(a, points[(k + 1) % points.length] as Point, source));
const square = [p(0, 0), p(10, 0), p(10, 10), p(0, 10)];

/** What an edge is made of, in short: places to a billionth. */
function told(edge: Edge): unknown {
  const at = ({ x, y }: Point) => `${Math.round(x * 1e9) / 1e9 + 0} ${Math.round(y * 1e9) / 1e9 + 0}`;
  const ends = `${at(edge.a)} to ${at(edge.b)}`;
  if (edge.kind === 'line') return `line ${ends}`;
  const radius = Math.round(edge.radius * 1e9) / 1e9;
  return `arc ${ends} round ${at(edge.center)} by ${radius} ${edge.ccw ? 'ccw' : 'cw'}`;
}
const toldOf = (loop: Loop) => {
  // Each edge starts exactly where the one before it ends.
  loop.forEach(({ a }, k) => {
    expect(loop.at(k - 1)?.b).toEqual(a);
  });
  return loop.map(told);
};

describe('beside a square', () => {
  it('outside there are its sides and an arc round each corner', () => {
    expect(toldOf(rawLoop(closed(square), 2, WELD))).toEqual([
      'line 0 -2 to 10 -2',
      'arc 10 -2 to 12 0 round 10 0 by 2 ccw',
      'line 12 0 to 12 10',
      'arc 12 10 to 10 12 round 10 10 by 2 ccw',
      'line 10 12 to 0 12',
      'arc 0 12 to -2 10 round 0 10 by 2 ccw',
      'line -2 10 to -2 0',
      'arc -2 0 to 0 -2 round 0 0 by 2 ccw',
    ]);
  });

  it('inside there is a smaller one', () => {
    expect(toldOf(rawLoop(closed(square), -2, WELD))).toEqual([
      'line 2 2 to 8 2',
      'line 8 2 to 8 8',
      'line 8 8 to 2 8',
      'line 2 8 to 2 2',
    ]);
  });

  it.each([-5, -6])('its sides stay whole where nothing would be left of them, at %d', (shift) => {
    const d = -shift;
    expect(toldOf(rawLoop(closed(square), shift, WELD))).toEqual([
      `line 0 ${d} to 10 ${d}`,
      `line 10 ${d} to ${10 - d} 0`,
      `line ${10 - d} 0 to ${10 - d} 10`,
      `line ${10 - d} 10 to 10 ${10 - d}`,
      `line 10 ${10 - d} to 0 ${10 - d}`,
      `line 0 ${10 - d} to ${d} 10`,
      `line ${d} 10 to ${d} 0`,
      `line ${d} 0 to 0 ${d}`,
    ]);
  });

  it('run the other way all is the other way round', () => {
    expect(toldOf(rawLoop(closed([...square].reverse()), -2, WELD))).toEqual([
      'line 0 12 to 10 12',
      'arc 10 12 to 12 10 round 10 10 by 2 cw',
      'line 12 10 to 12 0',
      'arc 12 0 to 10 -2 round 10 0 by 2 cw',
      'line 10 -2 to 0 -2',
      'arc 0 -2 to -2 0 round 0 0 by 2 cw',
      'line -2 0 to -2 10',
      'arc -2 10 to 0 12 round 0 10 by 2 cw',
    ]);
  });

  it('names are those of the sides, at a corner that of the one that arrives; without names there are none', () => {
    const named = square.map((a, k) => lineEdge(a, square[(k + 1) % 4] as Point, `side ${k}`));
    const sources = (shift: number) => rawLoop(named, shift, WELD).map(({ source }) => source?.slice(-1));
    expect(sources(2)).toEqual(['0', '0', '1', '1', '2', '2', '3', '3']);
    expect(sources(-2)).toEqual(['0', '1', '2', '3']);
    expect(sources(-6)).toEqual(['0', '0', '1', '1', '2', '2', '3', '3']);
    for (const shift of [2, -2, -6])
      for (const edge of rawLoop(closed(square), shift, WELD)) expect(edge).not.toHaveProperty('source');
  });
});

describe('inside corners of straight edges', () => {
  /** The inner parallels of a convex polygon: a corner is cut back where that leaves something of both its edges. */
  function parallels(points: readonly Point[], d: number): string[] {
    const n = points.length;
    const at = (k: number) => points[(k + n) % n] as Point;
    const angle = (k: number) => Math.atan2(at(k + 1).y - at(k).y, at(k + 1).x - at(k).x);
    const length = (k: number) => Math.hypot(at(k + 1).x - at(k).x, at(k + 1).y - at(k).y);
    /** How far before the end of edge k it meets the next one. */
    const back = (k: number) => {
      const turn = (angle((k + 1) % n) - angle((k + n) % n) + 4 * Math.PI) % (2 * Math.PI);
      return d * Math.tan(turn / 2);
    };
    const fits = (k: number) => back(k - 1) + back(k) < length((k + n) % n);
    const along = (k: number, share: number, off: number) => {
      const direction = angle(k);
      return p(
        at(k).x + share * Math.cos(direction) - off * Math.sin(direction),
        at(k).y + share * Math.sin(direction) + off * Math.cos(direction),
      );
    };
    const isCut = (k: number) => fits(k) && fits(k + 1);
    return points.flatMap((_, k) => {
      const a = along(k, isCut(k - 1) ? back(k - 1) : 0, d);
      const b = along(k, length(k) - (isCut(k) ? back(k) : 0), d);
      const side = told(lineEdge(a, b)) as string;
      return isCut(k) ? [side] : [side, told(lineEdge(b, along((k + 1) % n, 0, d))) as string];
    });
  }

  it.each([
    ['a triangle', [p(0, 0), p(12, 0), p(3, 9)], [0.5, 1, 2, 2.4, 2.7, 4]],
    ['an oblong', [p(0, 0), p(30, 0), p(30, 10), p(0, 10)], [1, 4.9, 6]],
    // One short side between a sharp corner and blunt ones, so that it is gone first.
    ['a house', [p(0, 0), p(20, 0), p(21, 1), p(16, 12), p(2, 10)], [0.1, 0.3, 0.45, 0.6, 0.8, 1, 1.3, 2, 3]],
    ['a blade', [p(0, 0), p(40, 2), p(41, 3), p(41, 4), p(30, 12), p(3, 8)], [0.2, 0.5, 0.8, 1.1, 1.5, 2.1]],
  ] as const)('are cut back in %s as long as all of them fit', (_, points, distances) => {
    for (const d of distances) {
      for (let first = 0; first < points.length; first++) {
        const turned = [...points.slice(first), ...points.slice(0, first)];
        expect(toldOf(rawLoop(closed(turned), -d, WELD))).toEqual(parallels(turned, d));
      }
    }
  });

  it('are cut back, not rounded, where the edges go nearly straight on', () => {
    // A bend of 5e-3 in the lower side, to the left: its inside is above.
    const points = [p(0, 0), p(10, 0), p(20, 0.05), p(20, 20), p(0, 20)];
    expect(toldOf(rawLoop(closed(points), -1, WELD))).toEqual(parallels(points, 1));
    // In all directions.
    for (let k = 1; k < 12; k++) {
      const [c, s] = [Math.cos((k * Math.PI) / 6), Math.sin((k * Math.PI) / 6)];
      const turned = points.map(({ x, y }) => p(x * c - y * s, x * s + y * c));
      expect(rawLoop(closed(turned), -1, WELD).map(({ kind }) => kind)).toEqual(Array(5).fill('line'));
    }
  });
});

describe('beside arcs', () => {
  /** The left half of a disc: from its highest point over its leftmost to its lowest, and back along the chord. */
  const half = (radius: number): Loop => [
    arcEdge(p(0, radius), p(0, -radius), p(0, 0), true, 'bow'),
    lineEdge(p(0, -radius), p(0, radius), 'chord'),
  ];

  it('outside the radius is larger by the distance, and corners are round', () => {
    expect(toldOf(rawLoop(half(5), 1, WELD))).toEqual([
      'arc 0 6 to 0 -6 round 0 0 by 6 ccw',
      'arc 0 -6 to 1 -5 round 0 -5 by 1 ccw',
      'line 1 -5 to 1 5',
      'arc 1 5 to 0 6 round 0 5 by 1 ccw',
    ]);
  });

  it('inside it is smaller, and a corner with an arc is not cut back', () => {
    expect(toldOf(rawLoop(half(5), -1, WELD))).toEqual([
      'arc 0 4 to 0 -4 round 0 0 by 4 ccw',
      'line 0 -4 to -1 -5',
      'line -1 -5 to -1 5',
      'line -1 5 to 0 4',
    ]);
  });

  it('one that has shrunk through its centre is a chord, one that has shrunk to it is nothing', () => {
    expect(toldOf(rawLoop(half(5), -7, WELD))[0]).toBe('line 0 -2 to 0 2');
    expect(toldOf(rawLoop(half(5), -5, WELD))).toEqual([
      'line 0 0 to -5 -5',
      'line -5 -5 to -5 5',
      'line -5 5 to 0 0',
    ]);
  });

  it('one that is left with a length of a few tolerances is a chord', () => {
    const weld = 1e-3;
    const left = (radius: number) => rawLoop(half(5 + radius), -5, weld)[0] as Edge;
    // Half a turn: 3.1 radii long; eight tolerances count.
    expect(left(10 * weld).kind).toBe('arc');
    expect(left(3 * weld).kind).toBe('arc');
    expect(left(2 * weld).kind).toBe('line');
    expect(left(2 * weld).source).toBe('bow');
  });

  it('of a hole all is the other way round', () => {
    const hole = half(5)
      .map((edge) => ({ ...edge, a: edge.b, b: edge.a, ...(edge.kind === 'arc' ? { ccw: !edge.ccw } : {}) }))
      .reverse();
    expect(toldOf(rawLoop(hole, -1, WELD))).toEqual([
      'line 1 5 to 1 -5',
      'arc 1 -5 to 0 -6 round 0 -5 by 1 cw',
      'arc 0 -6 to 0 6 round 0 0 by 6 cw',
      'arc 0 6 to 1 5 round 0 5 by 1 cw',
    ]);
  });

  it('smooth joints stay joints, off by less than a tolerance or not', () => {
    for (const off of [0, 0.3e-9]) {
      const slot: Loop = [
        lineEdge(p(0, -3), p(10, -3)),
        arcEdge(p(10, -3), p(10, 3), p(10, 0), true),
        lineEdge(p(10, 3), p(0, 3 + off)),
        arcEdge(p(0, 3 + off), p(0, -3), p(0, off / 2), true),
      ];
      expect(rawLoop(slot, 1, WELD).map(({ kind }) => kind)).toEqual(['line', 'arc', 'line', 'arc']);
      expect(rawLoop(slot, -1, WELD).map(({ kind }) => kind)).toEqual(['line', 'arc', 'line', 'arc']);
      expect(toldOf(rawLoop(slot, 1, WELD))[1]).toBe('arc 10 -4 to 10 4 round 10 0 by 4 ccw');
    }
  });
});

describe('round a path', () => {
  it('of one edge there is a long hole', () => {
    const band = rawBand([lineEdge(p(0, 0), p(10, 0), 'way')], 2, WELD);
    expect(toldOf(band)).toEqual([
      'line 0 -2 to 10 -2',
      'arc 10 -2 to 10 2 round 10 0 by 2 ccw',
      'line 10 2 to 0 2',
      'arc 0 2 to 0 -2 round 0 0 by 2 ccw',
    ]);
    expect(band.map(({ source }) => source)).toEqual(['way', 'way', 'way', 'way']);
    for (const edge of rawBand([lineEdge(p(0, 0), p(10, 0))], 2, WELD))
      expect(edge).not.toHaveProperty('source');
  });

  it('with a corner it is round outside and cut back inside, and its ends are not joined', () => {
    const path = [lineEdge(p(0, 0), p(10, 0), 'one'), lineEdge(p(10, 0), p(10, 8), 'other')];
    const band = rawBand(path, 2, WELD);
    expect(toldOf(band)).toEqual([
      'line 0 -2 to 10 -2',
      'arc 10 -2 to 12 0 round 10 0 by 2 ccw',
      'line 12 0 to 12 8',
      'arc 12 8 to 8 8 round 10 8 by 2 ccw',
      'line 8 8 to 8 2',
      'line 8 2 to 0 2',
      'arc 0 2 to 0 -2 round 0 0 by 2 ccw',
    ]);
    expect(band.map(({ source }) => source)).toEqual(['one', 'one', 'other', 'other', 'other', 'one', 'one']);
  });

  it.each([0, 0.7, 2, 3, 4.4])(
    'that turns back there is an arc on either side, in direction %d',
    (direction) => {
      const [c, s] = [Math.cos(direction), Math.sin(direction)];
      const turned = (x: number, y: number) => p(x * c - y * s, x * s + y * c);
      const kinds = (rise: number) => {
        const path = [lineEdge(turned(0, 0), turned(10, 0)), lineEdge(turned(10, 0), turned(0, rise))];
        return rawBand(path, 2, WELD).map(({ kind }) => kind);
      };
      const both = ['line', 'arc', 'line', 'arc', 'line', 'arc', 'line', 'arc'];
      // Back by 5e-3 to either side; which side is the outer one is rounding then.
      for (const rise of [0.05, -0.05, 1e-12]) expect(kinds(rise)).toEqual(both);
      // By 5e-2 it can be told, and inside there is a chord.
      expect(kinds(0.5)).toEqual(['line', 'arc', 'line', 'arc', 'line', 'line', 'line', 'arc']);
      expect(kinds(-0.5)).toEqual(['line', 'line', 'line', 'arc', 'line', 'arc', 'line', 'arc']);
    },
  );

  it('along an arc there are two, and half circles at its ends', () => {
    const path: ArcEdge[] = [{ kind: 'arc', a: p(5, 0), b: p(0, 5), center: p(0, 0), radius: 5, ccw: true }];
    expect(toldOf(rawBand(path, 1, WELD))).toEqual([
      'arc 6 0 to 0 6 round 0 0 by 6 ccw',
      'arc 0 6 to 0 4 round 0 5 by 1 ccw',
      'arc 0 4 to 4 0 round 0 0 by 4 cw',
      'arc 4 0 to 6 0 round 5 0 by 1 ccw',
    ]);
  });
});
