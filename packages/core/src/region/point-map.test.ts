import { expect, it } from 'vitest';
import { PointMap } from './point-map.js';

it('keeps one value for each point, to the last bit of its coordinates', () => {
  const map = new PointMap<string[]>();
  const next = 1 + Number.EPSILON;
  for (const [x, y, name] of [
    [1, 2, 'a'],
    [1, 3, 'b'],
    [next, 2, 'c'],
    [1, 2, 'd'],
  ] as const) {
    map.at({ x, y }, () => []).push(name);
  }
  expect([...map.values()]).toEqual([['a', 'd'], ['b'], ['c']]);
});
