import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BoxTree } from '../../packages/core/src/geometry/box-tree.js';
import { evenly } from '../tools/evenly.js';

/** A box by its lower left corner and its sides: minX, minY, maxX, maxY. */
type Box = readonly [number, number, number, number];

const side = fc.oneof(fc.constant(0), fc.double({ min: 0, max: 3, noNaN: true }));
const anywhere = evenly(-50, 50);
/** Many on whole numbers, so that sides lie level; some crowded into a millionth of the space. */
const place = fc.oneof(
  anywhere,
  fc.integer({ min: -9, max: 9 }),
  anywhere.map((x) => x / 1e6),
);
const box = fc
  .tuple(place, place, side, side)
  .map(([x, y, width, height]): Box => [x, y, x + width, y + height]);
const boxes = fc.array(box, { minLength: 1, maxLength: 200, size: 'max' });

function treeOf(list: readonly Box[]): BoxTree {
  return new BoxTree(Float64Array.from(list.flat()), list.length);
}

/** Whether two boxes come within a distance of each other, said the plain way. */
function areNear(a: Box, b: Box, by: number): boolean {
  return a[0] - by <= b[2] && b[0] - by <= a[2] && a[1] - by <= b[3] && b[1] - by <= a[3];
}

describe('a tree of boxes', () => {
  it('finds each two that come near, once, as comparing all with all does', () => {
    fc.assert(
      fc.property(boxes, fc.constantFrom(0, 1e-9, 0.5), (list, by) => {
        const found: string[] = [];
        treeOf(list).eachPair(by, (one, other) => {
          found.push(`${Math.min(one, other)} ${Math.max(one, other)}`);
        });
        const expected = list.flatMap((a, i) =>
          list.flatMap((b, j) => (i < j && areNear(a, b, by) ? [`${i} ${j}`] : [])),
        );
        expect(found.sort()).toEqual(expected.sort());
      }),
    );
  });

  it('leads a ray to the left past all that it meets, up to where it may stop', () => {
    fc.assert(
      fc.property(boxes, place, place, fc.boolean(), (list, x, y, stopsAtFirst) => {
        const tree = treeOf(list);
        const met = list.flatMap((b, i) => (b[0] <= x && b[1] < y && y <= b[3] ? [i] : []));
        const visited: number[] = [];
        let end = Number.NEGATIVE_INFINITY;
        tree.toTheLeft(x, y, end, (i) => {
          visited.push(i);
          if (stopsAtFirst) end = Math.max(end, (list[i] as Box)[2]);
          return end;
        });
        const wanted = met.filter((i) => (list[i] as Box)[2] >= end);
        expect(visited.filter((i) => wanted.includes(i)).sort()).toEqual(wanted.sort());
        expect(visited.every((i) => met.includes(i))).toBe(true);
      }),
    );
  });

  it('takes boxes that all lie in one place, or apart by less than can be divided by', () => {
    for (const step of [0, Number.MIN_VALUE]) {
      const list = Array.from({ length: 50 }, (_, k): Box => [k * step, 0, k * step, 0]);
      let pairs = 0;
      treeOf(list).eachPair(0.1, () => {
        pairs++;
      });
      expect(pairs).toBe((50 * 49) / 2);
    }
  });
});
