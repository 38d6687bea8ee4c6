import { arcEdge, area, type Loop, lineEdge, normalize } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { gather } from '../../packages/core/src/noding/gather.js';
import { node } from '../../packages/core/src/noding/node.js';
import { merge } from '../../packages/core/src/overlay/merge.js';
import { box, closed, p } from './shapes.js';

/* Which edges an overlay takes for one, and which for none. Elementary, no source. */

const square = (x: number, y: number, side: number) => box(x, y, side, side);

describe('edges that run together', () => {
  const graphOf = (...operands: (readonly Loop[])[]) => merge(node(gather(operands)));

  it('are one, and say of which pieces and which way', () => {
    // The square to the right runs down along the side that the left one runs up.
    const graph = graphOf([square(0, 0, 10)], [square(10, 0, 10)]);
    expect(graph.count).toBe(7);
    const members = Array.from({ length: 7 }, (_, e) => {
      const range = [graph.start[e] as number, graph.start[e + 1] as number] as const;
      return [[...graph.member.slice(...range)], [...graph.sign.slice(...range)]];
    });
    expect(members).toEqual([
      [[0], [1]],
      [
        [1, 7],
        [1, -1],
      ],
      [[2], [1]],
      [[3], [1]],
      [[4], [1]],
      [[5], [1]],
      [[6], [1]],
    ]);
  });

  it('are left out where an operand cancels itself, and only then', () => {
    const [one, next] = [square(0, 0, 10), square(10, 0, 10)];
    expect(graphOf([one, next]).count).toBe(6);
    expect(graphOf([one, next], [square(40, 0, 10)]).count).toBe(10);
    // With another one beside, nothing is cancelled for that one; with itself again, it is there twice one way.
    expect(graphOf([one, next], [next]).count).toBe(7);
    expect(graphOf([one, one]).count).toBe(4);
    expect(graphOf([one, one, next]).count).toBe(7);
    expect(graphOf([one, next], [one, next]).count).toBe(6);
  });

  it('are two where one is bent and the other is not, in any direction', () => {
    for (const [x, y] of [
      [3, 3],
      [3, -3],
      [0, 5],
      [5, 0],
      [4, 1],
    ] as const) {
      const [a, b] = [p(-x, -y), p(x, y)];
      // A quarter of a circle over the chord: its centre lies half a chord to the side.
      const bow = arcEdge(a, b, p(-y, x), true);
      const lens = graphOf([[bow, lineEdge(b, a)]], [closed(a, b, p(-20 * y, 20 * x))]);
      const chords = Array.from({ length: lens.count }, (_, e) => [
        ...lens.member.slice(lens.start[e], lens.start[e + 1]),
      ]);
      // The chord is shared by both operands, the bow by none.
      expect(chords.map((members) => members.length).sort()).toEqual([
        ...Array(chords.length - 1).fill(1),
        2,
      ]);
    }
  });

  it('do so as well where all of it is an arc of half a turn', () => {
    const [a, b] = [p(0, -5), p(0, 5)];
    const half = arcEdge(a, b, p(0, 0), true);
    expect(graphOf([[half, lineEdge(b, a)]], [[half, ...closed(a, b, p(-9, 0)).slice(1)]]).count).toBe(4);
  });
});

describe('the tree of the pieces', () => {
  const many = Array.from({ length: 15 }, (_, k) => square(20 * k, 0, 10));
  const plain = square(-10, -10, 400);

  it('serves for the edges where they are the same', () => {
    const noding = node(gather([[plain, ...many]]));
    expect(noding.index).not.toBeNull();
    expect(merge(noding).index).toBe(noding.index);
  });

  it('does not where a loop that runs out and back has left none', () => {
    const there = closed(p(3, 30), p(3, 50));
    const noding = node(gather([[there, plain, ...many]]));
    expect(noding.index).not.toBeNull();
    expect(merge(noding).index).toBeNull();
    expect(area(normalize([there, plain, ...many], 'evenodd'))).toBeCloseTo(400 * 400 - 15 * 100, 6);
  });

  it('does not where pieces were cut or ends were welded', () => {
    expect(node(gather([[plain, ...many], [square(5, -5, 3)]])).index).not.toBeNull();
    // One that crosses, one that stands with a corner on a side, one with a corner on a corner.
    for (const other of [
      square(5, 5, 10),
      closed(p(5, 10), p(3, 15), p(7, 15)),
      closed(p(10, 10), p(14, 12), p(12, 14)),
    ])
      expect(node(gather([[plain, ...many], [other]])).index).toBeNull();
  });
});
