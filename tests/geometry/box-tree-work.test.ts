import { describe, expect, it } from 'vitest';
import { areNear, BoxTree } from '../../packages/core/src/geometry/box-tree.js';

/*
 * What a tree of boxes looks at, counted by how often boxes are read, and what counts as near. How much it should be is
 * worked out beside each case. Elementary, no source.
 */

/** A box by its lower left corner and its sides: minX, minY, maxX, maxY. */
type Box = readonly [number, number, number, number];

/** A comparison of two boxes reads up to this many numbers. */
const READS = 8;

/** Boxes that count how often one of their numbers is read. */
function counted(list: readonly Box[]): { readonly boxes: Float64Array; readonly reads: () => number } {
  let reads = 0;
  const boxes = new Proxy(Float64Array.from(list.flat()), {
    get(target, key) {
      reads++;
      return Reflect.get(target, key, target);
    },
  });
  return { boxes, reads: () => reads };
}

/** The numbers up to `n` in an order that has nothing to do with their size: `n` a power of two, a step that is odd. */
function shuffled(n: number): number[] {
  return Array.from({ length: n }, (_, k) => (k * 2654435761) % n);
}

const SIDE = 64;
const COUNT = SIDE * SIDE;

/** Boxes in rows and columns a unit apart, each moved by up to `astray` to the right and upwards, in a shuffled order. */
function lattice(width: number, height: number, x = 0, y = 0, astray = 0): Box[] {
  return shuffled(COUNT).map((k): Box => {
    const left = x + (k % SIDE) + astray * ((k * 0.618) % 1);
    const low = y + Math.floor(k / SIDE) + astray * ((k * 0.414) % 1);
    return [left, low, left + width, low + height];
  });
}

describe('the work of finding pairs', () => {
  it.each([
    ['squares', 0.5, 0.5, 0, 0, 0],
    ['squares far to the lower left', 0.5, 0.5, -1000, -3000, 0],
    ['points', 0, 0, 0, 0, 0],
    ['squares in uneven rows', 0.5, 0.5, 0, 0, 0.3],
  ] as const)('is that within the leaves only, for %s that lie apart', (_, width, height, x, y, astray) => {
    const { boxes, reads } = counted(lattice(width, height, x, y, astray));
    const tree = new BoxTree(boxes, COUNT);
    const before = reads();
    let pairs = 0;
    tree.eachPair(0.1, () => {
      pairs++;
    });
    expect(pairs).toBe(0);
    // Leaves of four hold two by two neighbours, 0.5 apart from the next: six comparisons in each and none between them.
    expect(reads() - before).toBeLessThanOrEqual((COUNT / 4) * 6 * READS);
  });

  it('grows with the boxes and what they meet, not with the square of their number', () => {
    // Each square reaches over the next ones to the right and above: eight neighbours, four pairs a square inside.
    const { boxes, reads } = counted(lattice(1.25, 1.25));
    const tree = new BoxTree(boxes, COUNT);
    const before = reads();
    const found = new Set<string>();
    tree.eachPair(0, (one, other) => {
      found.add(`${Math.min(one, other)} ${Math.max(one, other)}`);
    });
    const along = SIDE * (SIDE - 1);
    const across = (SIDE - 1) ** 2;
    expect(found.size).toBe(2 * along + 2 * across);
    // A leaf of two by two meets the eight round it: (6 + 8 * 16 / 2) comparisons for four squares.
    expect(reads() - before).toBeLessThanOrEqual(COUNT * 17.5 * READS);
  });

  it('looks at few where all are long and lie above each other', () => {
    const list = shuffled(1024).map((k): Box => [0, k, 500, k + 0.5]);
    const { boxes, reads } = counted(list);
    const tree = new BoxTree(boxes, list.length);
    const before = reads();
    tree.eachPair(0.1, () => expect.unreachable('they lie apart'));
    expect(reads() - before).toBeLessThan(1024 * 64);
  });

  it('names each two once, in a crowd', () => {
    const list = Array.from({ length: 37 }, (_, k): Box => [k / 100, 0, 1 + k / 100, 1]);
    const seen: string[] = [];
    new BoxTree(Float64Array.from(list.flat()), list.length).eachPair(0, (one, other) => {
      seen.push(`${Math.min(one, other)} ${Math.max(one, other)}`);
    });
    expect(seen).toHaveLength((37 * 36) / 2);
    expect(new Set(seen).size).toBe(seen.length);
  });
});

describe('the work of a ray to the left', () => {
  const height = 20.25;
  const row = 20;

  it('is to find what lies on its way, once each', () => {
    const list = lattice(0.5, 0.5);
    const { boxes, reads } = counted(list);
    const tree = new BoxTree(boxes, COUNT);
    const before = reads();
    const visited: number[] = [];
    tree.toTheLeft(40.75, height, Number.NEGATIVE_INFINITY, (i) => {
      visited.push(i);
      return Number.NEGATIVE_INFINITY;
    });
    const wanted = list.flatMap(([x, y], i) => (y === row && x <= 40 ? [i] : []));
    expect([...visited].sort((a, b) => a - b)).toEqual(wanted);
    // The leaves on its way hold two rows of 41 boxes, the last one of a column more; of each up to four numbers are read.
    expect(reads() - before).toBeLessThanOrEqual(2 * 42 * 4);
  });

  it('ends soon where the nearest box is enough', () => {
    const list = lattice(0.5, 0.5);
    const { boxes, reads } = counted(list);
    const tree = new BoxTree(boxes, COUNT);
    const before = reads();
    const visited: number[] = [];
    tree.toTheLeft(40.75, height, Number.NEGATIVE_INFINITY, (i) => {
      visited.push(i);
      return Math.max(...visited.map((k) => (list[k] as Box)[2]));
    });
    const ends = visited.map((i) => (list[i] as Box)[2]);
    expect(Math.max(...ends)).toBe(40.5);
    // A leaf is looked at whole, from left to right, so that two of its boxes are met; nothing is after that.
    expect(visited.length).toBeLessThanOrEqual(2);
    expect(reads() - before).toBeLessThanOrEqual(4 * 4);
  });

  it('looks no further than it is told', () => {
    const list = lattice(0.5, 0.5);
    const { boxes, reads } = counted(list);
    const tree = new BoxTree(boxes, COUNT);
    const before = reads();
    const lefts: number[] = [];
    tree.toTheLeft(40.75, height, 36, (i) => {
      lefts.push((list[i] as Box)[0]);
      return 36;
    });
    expect(lefts.sort((a, b) => a - b)).toEqual([36, 37, 38, 39, 40]);
    expect(reads() - before).toBeLessThanOrEqual(2 * 6 * 4);
  });

  it.each([
    ['a box that ends at the height below', [0, 0, 1, 5], true],
    ['a box that begins at the height', [0, 5, 1, 6], false],
    ['a box that begins under the height', [0, 4.999, 1, 6], true],
    ['a box that begins where the ray does', [3, 0, 4, 9], true],
    ['a box that begins to the right of it', [3.001, 0, 4, 9], false],
    ['a box that ends where the ray may stop', [-4, 0, -2, 9], true],
    ['a box that ends further than that', [-4, 0, -2.001, 9], false],
  ] as const)('takes %s as it should', (_, box, isMet) => {
    const met: number[] = [];
    new BoxTree(Float64Array.from(box), 1).toTheLeft(3, 5, -2, (i) => {
      met.push(i);
      return -2;
    });
    expect(met).toEqual(isMet ? [0] : []);
  });
});

describe('two boxes', () => {
  // Whole numbers and halves, so that the gaps are exact.
  it.each([
    ['to the right', [2, 0, 3, 1]],
    ['to the left', [-2, 0, -1, 1]],
    ['above', [0, 2, 1, 3]],
    ['below', [0, -2, 1, -1]],
  ] as const)('are near up to the distance itself, %s', (_, other) => {
    const boxes = Float64Array.from([0, 0, 1, 1, ...other]);
    for (const [one, two] of [
      [0, 1],
      [1, 0],
    ] as const) {
      expect(areNear(boxes, one, two, 1)).toBe(true);
      expect(areNear(boxes, one, two, 0.5)).toBe(false);
    }
  });
});

describe('a tree of few', () => {
  it('of no box finds nothing', () => {
    const tree = new BoxTree(new Float64Array(0), 0);
    let found = 0;
    tree.eachPair(1, () => {
      found += 1;
    });
    tree.toTheLeft(0, 0, Number.NEGATIVE_INFINITY, (item) => {
      found += 1;
      return item;
    });
    expect(found).toBe(0);
  });
});
