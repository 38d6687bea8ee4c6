import { describe, expect, it } from 'vitest';
import type { Edge } from '../geometry/edge.js';
import { edgeLength, sweep } from '../geometry/measure.js';
import { outlineRegion } from '../outline/validate.js';
import { area, perimeter } from '../region/measure.js';
import { parseSvgPath } from './svg-path.js';
import { TextError } from './text-error.js';

/** The corners of the only chain, as pairs. */
function corners(text: string): number[][] {
  const [chain, ...others] = parseSvgPath(text);
  expect(others).toEqual([]);
  const edges = chain?.edges ?? [];
  return [...edges.slice(0, 1).map(({ a }) => [a.x, a.y]), ...edges.map(({ b }) => [b.x, b.y])];
}

const arcOf = (text: string) => {
  const edge = parseSvgPath(text)[0]?.edges[0] as Edge;
  if (edge.kind !== 'arc') throw new Error('no arc');
  return edge;
};

describe('parseSvgPath', () => {
  // W3C SVG 1.1 and 2, section 8.3.8 / 9.3.8: the worked example of a pie of three quarters; area 3/4 pi 150².
  it('reads the three-quarter pie of the W3C text', () => {
    const [chain] = parseSvgPath('M300,200 h-150 a150,150 0 1,0 150,-150 z');
    const region = outlineRegion(chain?.edges ?? []);
    expect(area(region)).toBeCloseTo(53014.376029, 5);
    expect(perimeter(region)).toBeCloseTo(1006.858347, 6);
    expect(chain?.closed).toBe(true);
    expect(chain?.edges).toHaveLength(3);
  });

  it.each([
    ['absolute', 'M 1 2 L 3 4 H 7 V -1'],
    ['relative', 'm 1 2 l 2 2 h 4 v -5'],
    ['implicit lines after a move', 'M 1 2 3 4 7 4 7 -1'],
    ['implicit relative lines after a relative move', 'm1 2 2 2 4 0 0-5'],
    ['no space at all', 'M1,2L3,4H7V-1'],
    ['commas and odd white space', 'M1,2 L\t3 ,4\n H 7\r\f V -1  '],
    ['exponents and plus signs', 'M+1e0 20E-1L.3e1 0.4E+1H70e-1V-1'],
    ['several numbers after H and V', 'M1 2L3 4H5 6 7V3 -1'],
    ['numbers that run together at a sign or a point', 'M1 2l2 2 4-.0.0-5'],
  ])('reads %s', (_, text) => {
    const points = corners(text);
    expect(points[0]).toEqual([1, 2]);
    expect(points.at(-1)).toEqual([7, -1]);
    expect(points).toContainEqual([7, 4]);
  });

  it('splits numbers at a second point', () => {
    expect(corners('M.5.25.75.125')).toEqual([
      [0.5, 0.25],
      [0.75, 0.125],
    ]);
  });

  it('reads flags that run into the next number', () => {
    const plain = parseSvgPath('M0 0 A5 5 0 0 1 5 5 A5 5 0 1 0 10 10');
    expect(parseSvgPath('M0 0A5 5 0 015 5 5 5 0 1010 10')).toEqual(plain);
    expect(parseSvgPath('M0 0a5,5,0,0,1,5,5,5 5 0 105 5')).toEqual(plain);
  });

  // From the notes on coordinates: start (50,0), end (0,50), centre (0,0), counter-clockwise, with y up;
  // the same arc as CIRCULARSTRING(50 0, 35.355339 35.355339, 0 50). Length 25 pi.
  it('reads sweep flag 1 as counter-clockwise, y up', () => {
    const arc = arcOf('M50,0 A50,50 0 0 1 0,50');
    expect(arc.ccw).toBe(true);
    expect(arc.center.x).toBeCloseTo(0, 12);
    expect(arc.center.y).toBeCloseTo(0, 12);
    expect(edgeLength(arc)).toBeCloseTo(78.539816, 6);
  });

  // W3C SVG 2, appendix B.2.4: the sign of the centre's offset is + where the flags differ.
  it.each([
    [0, 0, [10, 10], Math.PI / 2],
    [0, 1, [0, 0], Math.PI / 2],
    [1, 0, [0, 0], (3 * Math.PI) / 2],
    [1, 1, [10, 10], (3 * Math.PI) / 2],
  ])('finds the centre for flags %d and %d', (large, flag, [x, y], turn) => {
    const arc = arcOf(`M10 0 A10 10 0 ${large} ${flag} 0 10`);
    expect(arc.ccw).toBe(flag === 1);
    expect(arc.center.x).toBeCloseTo(x as number, 12);
    expect(arc.center.y).toBeCloseTo(y as number, 12);
    expect(sweep(arc)).toBeCloseTo(turn, 12);
  });

  // W3C SVG 2, appendix B.2.5: correction of out-of-range radii, and negative ones; a circle does not turn.
  it.each(['M0 0A1 1 0 0 1 10 0', 'M0 0A-1-1 0 0 1 10 0', 'M0 0A5 5 77 1 1 10 0', 'M0 0A4.9 4.9 0 1 1 10 0'])(
    'scales a radius up until it reaches: %s',
    (text) => {
      expect(arcOf(text)).toEqual({
        kind: 'arc',
        a: { x: 0, y: 0 },
        b: { x: 10, y: 0 },
        center: { x: 5, y: 0 },
        radius: 5,
        ccw: true,
      });
    },
  );

  it('keeps half circles in place though their radius is rounded', () => {
    const arc = arcOf('M0.3 0.1 A0.1 0.1 0 0 1 0.1 0.1');
    expect(Math.abs(arc.center.y - 0.1)).toBe(0);
  });

  // W3C SVG 2, section 9.5.1: an arc to where it starts is left out, one without radius is a line.
  it('leaves out arcs that go nowhere, and makes lines of arcs without radius', () => {
    expect(corners('M0 0A5 5 0 0 1 0 0 L1 0')).toEqual([
      [0, 0],
      [1, 0],
    ]);
    expect(parseSvgPath('M0 0A0 5 0 0 1 3 4')[0]?.edges[0]?.kind).toBe('line');
    expect(parseSvgPath('M0 0A5 0 0 0 1 3 4')[0]?.edges[0]?.kind).toBe('line');
    expect(corners('M0 0L0 0 1 1')).toHaveLength(2);
  });

  it('closes with a line, or not at all if it is back already', () => {
    expect(corners('M0 0H4V3Z')).toEqual([
      [0, 0],
      [4, 0],
      [4, 3],
      [0, 0],
    ]);
    expect(corners('M0 0H4V3L0 0Z')).toHaveLength(4);
    expect(parseSvgPath('M0 0H4V3L0 0')[0]?.closed).toBe(true);
    expect(parseSvgPath('M0 0H4V3')[0]?.closed).toBe(false);
  });

  it('closes what only rounding keeps open without a sliver of an edge', () => {
    const [chain] = parseSvgPath('m0.1 0.1h.2v.2h-.1h-.1z');
    expect(chain?.edges.at(-1)?.b).toEqual({ x: 0.1, y: 0.1 });
    expect(chain?.edges).toHaveLength(5);
    const [rounded] = parseSvgPath('m.7.1h.1v.1h-.3v-.1h.20000000000000001z');
    expect(rounded?.edges).toHaveLength(5);
    expect(rounded?.edges.at(-1)?.b).toEqual(rounded?.edges[0]?.a);
  });

  // W3C SVG 2, section 9.3.4: after closing, the next stretch starts where the closed one did.
  it('goes on from the start after closing', () => {
    const chains = parseSvgPath('M1 1h2v2z l-5 0 m1 1 h3');
    expect(chains.map(({ edges }) => edges[0]?.a)).toEqual([
      { x: 1, y: 1 },
      { x: 1, y: 1 },
      { x: -3, y: 2 },
    ]);
  });

  it('draws nothing for a text without edges', () => {
    expect(parseSvgPath('')).toEqual([]);
    expect(parseSvgPath(' M 1 2 Z M 3 4')).toEqual([]);
  });

  it.each([
    ['M0 0 C1 1 2 2 3 3', 5, 'Bézier'],
    ['M0 0 s1 1 2 2', 5, 'Bézier'],
    ['M0 0q1 1 2 2', 4, 'Bézier'],
    ['M0 0T1 1', 4, 'Bézier'],
    ['M0 0A5 6 0 0 1 3 3', 5, 'two radii, 5 and 6'],
    ['M0 0A5 5.0001 0 0 1 3 3', 5, 'two radii'],
    ['L1 1', 0, 'begin with M'],
    ['5 5', 0, 'not one of the commands'],
    ['M0 0 X5', 5, 'not one of the commands'],
    ['M', 1, 'x is missing; the text ends here'],
    ['M0', 2, 'y is missing'],
    ['M0 0 L1', 7, 'y is missing'],
    ['M0 0 L,1 1', 6, 'no comma may follow a command'],
    ['M ,0 0', 2, 'no comma may follow a command'],
    ['M0 0 L1 1,', 10, 'a number must follow the comma'],
    ['M0 0,,1 1', 5, 'a number must follow the comma'],
    ['M0 0 L1 1 Z 5', 12, 'not one of the commands'],
    ['M0 0A5 5 0 2 1 3 3', 11, 'the large-arc flag, 0 or 1, is missing'],
    ['M0 0A5 5 0 0 -1 3 3', 13, 'the sweep flag, 0 or 1, is missing'],
    ['M0 0A5 5 0 0 1 3', 16, 'y is missing'],
    ['M1e999 0', 1, 'too large a number'],
    ['M1e308 0 l1e308 0', 10, 'too far out'],
    ['M0 0A1e300 1e300 0 0 1 1 1', 5, 'too large to work out'],
    ['M0 0 L- 1', 6, 'x is missing'],
    ['M0 0 L1. 1', 7, 'y is missing'],
    ['M0 0 LNaN 1', 6, 'x is missing'],
    ['M0 0 L0x10 1', 7, 'y is missing'],
  ])('refuses %s at position %d', (text, position, what) => {
    const run = () => parseSvgPath(text);
    expect(run).toThrow(TextError);
    expect(run).toThrow(what);
    expect(run).toThrow(`at position ${position}: `);
  });
});
