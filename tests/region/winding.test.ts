import {
  type ArcEdge,
  arcEdge,
  contains,
  type Loop,
  lineEdge,
  type Point,
  type Region,
} from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { windingRound } from '../../packages/core/src/region/contains.js';
import { Groups } from '../../packages/core/src/region/groups.js';
import { closed, p } from './shapes.js';

/* How often a loop goes round a point, at the heights where edges join or turn. Elementary, no source. */

const back = (loop: Loop): Loop =>
  loop
    .map((edge) => ({ ...edge, a: edge.b, b: edge.a, ...(edge.kind === 'arc' ? { ccw: !edge.ccw } : {}) }))
    .reverse();

/** All of these hold the other way round with the other sign. */
function expectWinding(loop: Loop, place: Point, count: number): void {
  expect(windingRound(loop, place)).toBe(count);
  expect(windingRound(back(loop), place) + 0).toBe(-count + 0);
}

describe('the winding of a loop round a point', () => {
  const diamond = closed(p(3, 1), p(5, 4), p(3, 7), p(1, 4));

  it('is one inside and none outside, at the height of a corner as well', () => {
    for (const x of [1.5, 3, 4.5]) expectWinding(diamond, p(x, 4), 1);
    for (const [x, y] of [
      [0, 4],
      [6, 4],
      [2, 1],
      [4, 1],
      [2, 7],
      [4, 7],
      [9, 7],
      [9, 1],
      [0, 1],
      [0, 7],
    ] as const)
      expectWinding(diamond, p(x, y), 0);
    expectWinding(diamond, p(3, 6.9), 1);
    expectWinding(diamond, p(3, 1.1), 1);
  });

  it('is none beside, above and below, and one between level sides', () => {
    const box = closed(p(1, 2), p(5, 2), p(5, 6), p(1, 6));
    for (const [x, y] of [
      [0, 2],
      [6, 2],
      [0, 6],
      [6, 6],
      [3, 1],
      [3, 7],
      [6, 4],
      [0, 4],
    ] as const)
      expectWinding(box, p(x, y), 0);
    for (const [x, y] of [
      [1.1, 5.9],
      [4.9, 2.1],
      [3, 4],
    ] as const)
      expectWinding(box, p(x, y), 1);
  });

  it('counts how often', () => {
    expectWinding([...diamond, ...diamond], p(3, 4), 2);
    expectWinding([...diamond, ...back(diamond)], p(3, 4), 0);
  });

  // A circle of radius 5 round (3, 7), cut by a chord at a height of 10 or of 4: both ends of the arc are on one side of
  // the places asked about.
  const arc = (a: Point, b: Point, ccw: boolean): ArcEdge => arcEdge(a, b, p(3, 7), ccw) as ArcEdge;

  it('counts an arc that bulges below both of its ends', () => {
    const bowl: Loop = [arc(p(-1, 10), p(7, 10), true), lineEdge(p(7, 10), p(-1, 10))];
    for (const [x, y] of [
      [3, 9],
      [3, 3],
      [-1, 7],
      [7, 7],
      [0, 4],
      [6, 4],
      [3, 2.1],
    ] as const)
      expectWinding(bowl, p(x, y), 1);
    for (const [x, y] of [
      [-3, 7],
      [9, 7],
      [-2, 3],
      [8, 3],
      [3, 1],
      [3, 11],
      [9, 10],
      [-3, 10],
      [9, 1],
    ] as const)
      expectWinding(bowl, p(x, y), 0);
  });

  it('counts an arc that bulges above both of its ends', () => {
    const dome: Loop = [arc(p(7, 4), p(-1, 4), true), lineEdge(p(-1, 4), p(7, 4))];
    for (const [x, y] of [
      [3, 5],
      [3, 11],
      [-1, 7],
      [7, 7],
      [0, 10],
      [6, 10],
      [3, 11.9],
    ] as const)
      expectWinding(dome, p(x, y), 1);
    for (const [x, y] of [
      [-3, 7],
      [9, 7],
      [-2, 11],
      [8, 11],
      [3, 13],
      [3, 3],
      [9, 4],
      [-3, 4],
      [9, 13],
    ] as const)
      expectWinding(dome, p(x, y), 0);
  });

  it('takes the side of a flat arc that the place is on', () => {
    // Below the chord, above the arc, and the other way round: the arc is 2 high over its chord of 8.
    const cap: Loop = [arc(p(7, 10), p(-1, 10), true), lineEdge(p(-1, 10), p(7, 10))];
    expectWinding(cap, p(3, 11), 1);
    expectWinding(cap, p(3, 9), 0);
    expectWinding(cap, p(3, 13), 0);
    expectWinding(cap, p(-0.5, 11.5), 0);
    expectWinding(cap, p(6.5, 11.5), 0);
  });
});

describe('a point at a distance from a region', () => {
  const region: Region = [{ outer: closed(p(0, 0), p(8, 0), p(8, 6), p(0, 6)), holes: [] }];

  it('is on the boundary up to the tolerance itself', () => {
    for (const [x, y] of [
      [-1, 3],
      [9, 3],
      [4, -1],
      [4, 7],
      [1, 3],
      [7, 3],
      [4, 1],
      [4, 5],
    ] as const)
      expect(contains(region, p(x, y), 1)).toBe('boundary');
    for (const [x, y] of [
      [-1.001, 3],
      [9.001, 3],
      [4, -1.001],
      [4, 7.001],
    ] as const)
      expect(contains(region, p(x, y), 1)).toBe('outside');
    for (const [x, y] of [
      [1.001, 3],
      [6.999, 3],
      [4, 1.001],
      [4, 4.999],
    ] as const)
      expect(contains(region, p(x, y), 1)).toBe('inside');
    // Off a corner by 3 and 4 fifths.
    expect(contains(region, p(8 + 3, 6 + 4), 5)).toBe('boundary');
    expect(contains(region, p(8 + 3, 6 + 4), 4.99)).toBe('outside');
  });
});

describe('groups', () => {
  it('are spoken for by their smallest number, or by the one that is preferred', () => {
    for (const [prefer, leader] of [
      [null, 1],
      [(a: number, b: number) => a > b, 5],
    ] as const) {
      const groups = new Groups(7, prefer);
      groups.join(3, 5);
      groups.join(1, 4);
      groups.join(4, 5);
      groups.join(5, 4);
      expect([1, 3, 4, 5].map((k) => groups.leader(k))).toEqual([leader, leader, leader, leader]);
      expect([...groups.leaders()]).toEqual([0, leader, 2, leader, leader, leader, 6]);
    }
  });

  it('ask which of two is preferred only where they are two', () => {
    const groups = new Groups(3, (a, b) => {
      expect(a).not.toBe(b);
      return a < b;
    });
    groups.join(0, 2);
    groups.join(2, 0);
    expect(groups.leader(2)).toBe(0);
  });

  it('that are long chains have one leader all the same', () => {
    const groups = new Groups(100);
    for (let k = 99; k > 0; k--) groups.join(k, k - 1);
    expect([...groups.leaders()]).toEqual(Array(100).fill(0));
  });
});
