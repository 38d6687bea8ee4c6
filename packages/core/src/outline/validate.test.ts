import { describe, expect, it } from 'vitest';
import { parseSvgPath } from '../format/svg-path.js';
import { type Edge, lineEdge } from '../geometry/edge.js';
import { reversed } from '../geometry/parts.js';
import { area, loopArea } from '../region/measure.js';
import { fittedArc } from './fit.js';
import { circle, slot } from './shapes.js';
import { checkOutline, outlineRegion } from './validate.js';

const drawn = (text: string): readonly Edge[] => parseSvgPath(text)[0]?.edges ?? [];
const chainOf = (...points: [number, number][]): Edge[] =>
  points.slice(1).map(([x, y], i) => {
    const [px, py] = points[i] as [number, number];
    return lineEdge({ x: px, y: py }, { x, y });
  });

function faultsOf(outer: readonly Edge[], ...holes: (readonly Edge[])[]) {
  const checked = checkOutline(outer, holes);
  return checked.kind === 'sound' ? [] : checked.faults;
}

const messages = (outer: readonly Edge[], ...holes: (readonly Edge[])[]) =>
  faultsOf(outer, ...holes).map(({ message }) => message);

const SQUARE = 'M0 0H10V10H0Z';

describe('a sound outline', () => {
  it('keeps its edges and names them in the order given', () => {
    const region = outlineRegion(drawn(SQUARE), [drawn('M2 2H4V4H2Z')]);
    expect(region).toHaveLength(1);
    expect(region[0]?.outer.map(({ source }) => source)).toEqual([0, 1, 2, 3].map((i) => `outline:${i}`));
    expect(region[0]?.outer[0]).toEqual({
      kind: 'line',
      a: { x: 0, y: 0 },
      b: { x: 10, y: 0 },
      source: 'outline:0',
    });
    expect(area(region)).toBe(96);
  });

  it('turns its loops the right way round and keeps the names', () => {
    const region = outlineRegion(drawn('M0 0V10H10V0Z'), [drawn('M2 2H4V4H2Z'), drawn('M6 6V8H8V6Z')]);
    const [part] = region;
    expect(loopArea(part?.outer ?? [])).toBe(100);
    expect(part?.holes.map(loopArea)).toEqual([-4, -4]);
    expect(part?.outer.map(({ source }) => source)).toEqual([
      'outline:3',
      'outline:2',
      'outline:1',
      'outline:0',
    ]);
    expect(part?.holes[0]?.map(({ source }) => source)).toEqual([
      'hole:0:3',
      'hole:0:2',
      'hole:0:1',
      'hole:0:0',
    ]);
    expect(part?.holes[1]?.[0]?.source).toBe('hole:1:0');
    part?.outer.forEach((edge, i) => {
      expect(edge.b).toEqual(part.outer[(i + 1) % 4]?.a);
    });
  });

  it('keeps names that are there already', () => {
    expect(outlineRegion(circle(5))[0]?.outer.map(({ source }) => source)).toEqual([
      'outline:0',
      'outline:0',
    ]);
  });

  it('closes a gap of under a millionth of its extent', () => {
    const open = chainOf([0, 0], [10, 0], [10, 10], [0, 10], [0, 9e-6]);
    const region = outlineRegion(open);
    expect(region[0]?.outer[3]?.b).toEqual({ x: 0, y: 0 });
    expect(area(region)).toBe(100);
  });

  it('closes small gaps at arcs, whose ends stay on their circle', () => {
    const rounded: Edge[] = [
      ...chainOf([0, 0], [10, 0]),
      fittedArc({ x: 10, y: 0 }, { x: 7.071067, y: 7.071067 }, { x: 0, y: 0 }, true),
      ...chainOf([7.071068, 7.071068], [0, 0]),
    ];
    const arc = outlineRegion(rounded)[0]?.outer[1];
    if (arc?.kind !== 'arc') throw new Error('no arc');
    const radii = [arc.a, arc.b].map((p) => Math.hypot(p.x - arc.center.x, p.y - arc.center.y));
    expect(radii[0]).toBeCloseTo(radii[1] as number, 13);
    expect(arc.b).toEqual({ x: 7.071068, y: 7.071068 });
  });

  it.each([
    ['a slot at an angle', slot(40, 12, { angle: 0.7 })],
    ['tangent fillets with rounded numbers', drawn('M0 0H8.333A1.667 1.667 0 0 1 10 1.667V10H0Z')],
    ['a circle of many arcs', drawn('M10 0A10 10 0 0 1 0 10A10 10 0 0 1 -10 0A10 10 0 0 1 10 0Z')],
    ['a cusp between two arcs', drawn('M0 0A5 5 0 0 1 5 5A5 5 0 0 1 10 0Z')],
    ['two edges, a half disc', drawn('M0 0H10A5 5 0 0 1 0 0Z')],
    ['a corner with no turn at all', drawn('M0 0H5H10V10H0Z')],
  ])('may have %s', (_, edges) => {
    expect(messages(edges)).toEqual([]);
    expect(messages(edges.map(reversed).reverse())).toEqual([]);
  });

  it('is found sound far from zero and at any size', () => {
    for (const scale of [1e-4, 1, 1e4]) {
      for (const off of [0, 1e5 * scale]) {
        const edges = slot(40 * scale, 12 * scale, { angle: 0.7, at: { x: off, y: -off } });
        expect(messages(edges, circle(3 * scale, { at: { x: off, y: -off } }))).toEqual([]);
      }
    }
  });
});

describe('a faulty outline', () => {
  it('is named with the gap and the edge', () => {
    expect(faultsOf(chainOf([0, 0], [10, 0], [10, 10], [0, 10], [0, 0.5]))).toEqual([
      {
        hole: null,
        edge: 3,
        at: { x: 0, y: 0.5 },
        message: 'the outline is open: edge 3 ends at (0, 0.5), edge 0 starts at (0, 0), a gap of 0.5',
      },
    ]);
  });

  it('is named with all its gaps', () => {
    const edges = [
      ...chainOf([0, 0], [10, 0]),
      ...chainOf([10, 1], [10, 10], [0, 10]),
      ...chainOf([1, 10], [0, 0]),
    ];
    expect(faultsOf(edges).map(({ edge }) => edge)).toEqual([0, 2]);
  });

  it('is named with the crossing and both edges', () => {
    expect(faultsOf(drawn('M0 0L10 10V0L0 10Z'))).toEqual([
      {
        hole: null,
        edge: 2,
        at: { x: 5, y: 5 },
        message:
          'edge 0 of the outline crosses edge 2 of the outline at (5, 5); the outline must not meet itself',
      },
    ]);
  });

  // Elementary: the line y = 3 meets the circle of radius 5 round (0,0) at x = -4 and 4.
  it('is named with a crossing of a line and an arc', () => {
    const [fault, ...others] = faultsOf(drawn('M-5 0H-8V3H0V-9H8V0H5A5 5 0 0 1 -5 0Z'));
    expect(others.length).toBeLessThan(2);
    expect(fault?.message).toMatch(/^edge 2 of the outline crosses edge 7 of the outline at \(-4, 3\)/);
  });

  it('is named with a pinch: a corner on an edge, or two corners at one place', () => {
    expect(messages(drawn('M0 0H10V10L5 0L0 10Z'))).toEqual([
      'edge 0 of the outline touches edge 2 of the outline at (5, 0); the outline must not meet itself',
    ]);
    const [fault, ...others] = faultsOf(drawn('M0 0L5 5L10 0V10L5 5L0 10Z'));
    expect(others).toEqual([]);
    expect(fault?.at).toEqual({ x: 5, y: 5 });
  });

  it('is named with edges that run along each other', () => {
    expect(messages(drawn('M0 0H10V10H6V0H4V10H0Z'))[0]).toMatch(
      /^edge 0 of the outline runs along edge 4 of the outline from \(/,
    );
    expect(messages(chainOf([0, 0], [10, 0], [0, 0]))).toEqual([
      'edge 0 of the outline runs along edge 1 of the outline from (0, 0); the outline must not meet itself',
    ]);
    expect(messages(chainOf([0, 0], [10, 0], [10, 5], [10, 2], [0, 2], [0, 0]))[0]).toContain('runs along');
  });

  it('is named with edges without length, too flat, or too few', () => {
    const short = chainOf([0, 0], [10, 0], [10, 1e-9], [10, 10], [0, 0]);
    expect(messages(short)).toEqual(['edge 1 of the outline has no length at (10, 0); leave it out']);
    expect(messages(chainOf([0, 0], [10, 0]))).toEqual(['the outline has one edge; it needs two or more']);
    expect(messages([])).toEqual(['the outline has no edges; it needs two or more']);
    const flat = fittedArc({ x: 10, y: 0 }, { x: 0, y: 0 }, { x: 5, y: -1e8 }, true);
    expect(messages([...chainOf([0, 0], [0, -5], [10, -5], [10, 0]), flat])[0]).toMatch(
      /^edge 3 of the outline is an arc at \(10, 0\) of radius 100000000 but only 10 long; draw a line$/,
    );
    const loop = fittedArc({ x: 5, y: 0 }, { x: 5, y: -1e-10 }, { x: 0, y: 0 }, true);
    expect(messages([loop, lineEdge({ x: 5, y: -1e-10 }, { x: 5, y: 0 })])[0]).toContain(
      'ends where it starts, at (5, 0); draw a full circle as two arcs',
    );
  });

  it('is named with holes that cross, touch, lie outside or inside each other', () => {
    const square = drawn(SQUARE);
    expect(messages(square, drawn('M8 4H12V6H8Z'))).toEqual(
      ['edge 1 of the outline crosses edge 0 of hole 0 at (10, 4); the two must keep apart'].concat(
        'edge 1 of the outline crosses edge 2 of hole 0 at (10, 6); the two must keep apart',
      ),
    );
    expect(messages(square, circle(4, { at: { x: 2, y: 5 } }))).toEqual([
      'edge 3 of the outline touches edge 1 of hole 0 at (0, 5); the two must keep apart',
    ]);
    expect(messages(square, drawn('M20 0H21V1Z'))).toEqual(['hole 0 lies outside the outline at (20.5, 0)']);
    expect(messages(square, drawn('M1 1H9V9H1Z'), drawn('M2 2H3V3Z'))).toEqual([
      'hole 1 lies inside hole 0 at (2.5, 2)',
    ]);
    expect(faultsOf(square, drawn('M2 2H4V4H2Z'), drawn('M3 3H5V5H3Z')).map(({ hole }) => hole)).toEqual([
      1, 1,
    ]);
    expect(faultsOf(drawn('M1 1H2V2H1Z'), square).map(({ hole }) => hole)).toEqual([0]);
    expect(faultsOf(square, drawn('M2 2L4 4V2L2 4Z')).map(({ hole, edge }) => [hole, edge])).toEqual([
      [0, 2],
    ]);
  });

  it('reports everything at once', () => {
    const faults = faultsOf(
      drawn('M0 0L10 10V0L0 10Z'),
      chainOf([1, 1], [2, 1], [2, 2], [1, 1.5]),
      drawn('M1 4L2 5V4L1 5Z'),
    );
    expect(faults.map(({ hole, edge }) => [hole, edge])).toEqual([
      [0, 2],
      [null, 2],
      [1, 2],
    ]);
  });

  it('stops at twenty crossings of a scribble', () => {
    const points = Array.from({ length: 101 }, (_, i): [number, number] => [
      50 * Math.cos((i * 2 * Math.PI * 40) / 101),
      50 * Math.sin((i * 2 * Math.PI * 40) / 101),
    ]);
    expect(faultsOf(chainOf(...points, points[0] as [number, number]))).toHaveLength(20);
  });

  it('throws one error that lists all faults', () => {
    expect(() => outlineRegion(drawn('M0 0L10 10V0L0 10Z'))).toThrow('edge 0 of the outline crosses edge 2');
  });
});

describe('a large outline', () => {
  it('is checked in a moment', () => {
    const count = 20_000;
    const points = Array.from({ length: count + 1 }, (_, i): [number, number] => {
      const angle = (2 * Math.PI * (i % count)) / count;
      const r = 100 + (i % 2);
      return [r * Math.cos(angle), r * Math.sin(angle)];
    });
    // Quadratic work would not be through before the limit of a test.
    expect(checkOutline(chainOf(...points)).kind).toBe('sound');
  });
});
