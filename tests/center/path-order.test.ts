import { describe, expect, it } from 'vitest';
import { inOrder } from '../../packages/core/src/path/path-order.js';

const P = (x: number) => ({ x, y: 0 });

/** Loops on a line, from where the tool goes down to where it comes up. */
const loop = (name: string, from: number, to: number) => ({ name, outer: false, from: P(from), to: P(to) });

const names = (loops: readonly { readonly name: string }[]) => loops.map(({ name }) => name);

describe('the nearest first', () => {
  // By hand: from 0 the tool goes along a to 100; from there b, at 90, is nearer than c, at 10.
  const loops = [loop('c', 10, 12), loop('a', 1, 100), loop('b', 90, 92)];

  it('is counted from where the one before ends, not from where it starts', () => {
    expect(names(inOrder(loops, 'nearest', P(0)))).toEqual(['a', 'b', 'c']);
  });

  it('begins with the first loop where no start is given', () => {
    // From 10 itself: c ends at 12; a, at 1, is 11 away, b 78.
    expect(names(inOrder(loops, 'nearest', undefined))).toEqual(['c', 'a', 'b']);
  });
});
