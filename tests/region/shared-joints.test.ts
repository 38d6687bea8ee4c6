import { arcEdge, type Loop, type Point } from '@edgebite/core';
import { expect, it } from 'vitest';
import { gather } from '../../packages/core/src/noding/gather.js';
import { sharedJoints } from '../../packages/core/src/noding/shared-joints.js';

const CENTER = { x: 40, y: -25 };

/** A circle of two arcs that join at its leftmost and rightmost point, given as places on the level of `CENTER`. */
function circle(left: number, right: number, off = 0): Loop {
  const at = (x: number): Point => ({ x: CENTER.x + x, y: CENTER.y });
  const center = { x: CENTER.x + (left + right) / 2 + off, y: CENTER.y };
  return [arcEdge(at(right), at(left), center, true), arcEdge(at(left), at(right), center, true)];
}

/** Places, from the left, at which more than one circle has a joint. */
function shared(...loops: Loop[]): number[] {
  const curves = gather(loops.map((loop) => [loop]));
  const isShared = sharedJoints(curves);
  const { x, y } = curves.points;
  const found = new Set<number>();
  for (let p = 0; p < x.length; p++) {
    const level = (y[p] as number) + curves.originY - CENTER.y;
    if (isShared(p)) found.add(Math.round((x[p] as number) + curves.originX - CENTER.x));
    if (isShared(p)) expect(Math.abs(level)).toBeLessThan(1e-9);
  }
  return [...found].sort((a, b) => a - b);
}

it('more than one circle has a joint where two touch, from outside or from inside', () => {
  expect(shared(circle(-3, 3), circle(3, 7))).toEqual([3]);
  expect(shared(circle(-3, 3), circle(1, 3))).toEqual([3]);
  expect(shared(circle(-3, 3), circle(-3, 1), circle(3, 5))).toEqual([-3, 3]);
  expect(shared(circle(-3, 3), circle(4, 7))).toEqual([]);
  // Of one size, and of one centre.
  expect(shared(circle(-3, 3), circle(3, 9))).toEqual([3]);
  expect(shared(circle(-3, 3), circle(-2, 2))).toEqual([]);
});

it('one circle has its joints to itself, drawn once or twice, rounded or not', () => {
  expect(shared(circle(-3, 3))).toEqual([]);
  expect(shared(circle(-3, 3), circle(-3, 3))).toEqual([]);
  expect(shared(circle(-3, 3), circle(-3, 3, 1e-11))).toEqual([]);
  expect(shared(circle(-3, 3), circle(-3, 3), circle(3, 7))).toEqual([3]);
});
