import { describe, expect, it } from 'vitest';
import type { Edge } from './edge.js';
import { partOfEdge, renamed, reversed } from './parts.js';

const [a, b, p, q] = [
  { x: 5, y: 0 },
  { x: 0, y: 5 },
  { x: 4, y: 3 },
  { x: 3, y: 4 },
];
const arc: Edge = { kind: 'arc', a, b, center: { x: 0, y: 0 }, radius: 5, ccw: true };

describe.each([
  ['a line', { kind: 'line', a, b }],
  ['a named line', { kind: 'line', a, b, source: 'outline:1' }],
  ['an arc', arc],
  ['a named arc', { ...arc, source: 'cut:seat' }],
] satisfies [string, Edge][])('of %s', (_, edge) => {
  it('a part keeps the curve and the name', () => {
    expect(partOfEdge(edge, p, q)).toStrictEqual({ ...edge, a: p, b: q });
  });

  it('the reverse swaps the ends and the turn, and keeps the name', () => {
    const turned = edge.kind === 'arc' ? { ccw: false } : {};
    expect(reversed(edge)).toStrictEqual({ ...edge, a: b, b: a, ...turned });
    expect(reversed(reversed(edge))).toStrictEqual(edge);
  });

  it('another name takes the place of its own, and none is no key', () => {
    expect(renamed(edge, 'hole:0:1')).toStrictEqual({ ...edge, source: 'hole:0:1' });
    expect(renamed(renamed(edge, 'hole:0:1'), (edge as Edge).source)).toStrictEqual(edge);
  });
});
