/** Something to be set in a column: where its top would best be, and how high it is. */
export interface Wish {
  readonly top: number;
  readonly height: number;
}

/** How much room a column needs to hold all of its entries one under the other, with a gap between them. */
export function roomFor(wishes: readonly Wish[], gap: number): number {
  return wishes.reduce((sum, { height }) => sum + height + gap, 0) - (wishes.length === 0 ? 0 : gap);
}

/**
 * Tops of entries that stand in the order of their wishes, a gap apart at least, between two heights, and as near to
 * where they wish to be as that allows, in the sense of least squares: with the heights before each one taken off, the
 * wishes only have to be put in order, which is isotonic regression by pooling neighbours out of order (Barlow,
 * Bartholomew, Bremner and Brunk, Statistical Inference under Order Restrictions, 1972, from memory).
 * Where there is not room enough for all of them they go on beyond the lower height.
 */
export function spread(wishes: readonly Wish[], from: number, to: number, gap: number): number[] {
  const offsets: number[] = [];
  let taken = 0;
  for (const { height } of wishes) {
    offsets.push(taken);
    taken += height + gap;
  }
  const pools: Pool[] = [];
  wishes.forEach(({ top }, k) => {
    pools.push({ sum: top - (offsets[k] as number), count: 1 });
    for (let last = pools.length - 1; last > 0 && isOutOfOrder(pools, last); last--) {
      const { sum, count } = pools.pop() as Pool;
      const before = pools[last - 1] as Pool;
      before.sum += sum;
      before.count += count;
    }
  });
  const most = Math.max(from, to - roomFor(wishes, gap));
  return pools
    .flatMap(({ sum, count }) => Array<number>(count).fill(sum / count))
    .map((start, k) => Math.min(Math.max(start, from), most) + (offsets[k] as number));
}

/** Neighbours that keep together: the sum of where they wish to start, and how many they are. */
interface Pool {
  sum: number;
  count: number;
}

function isOutOfOrder(pools: readonly Pool[], k: number): boolean {
  const [before, here] = pools.slice(k - 1, k + 1) as [Pool, Pool];
  return before.sum / before.count > here.sum / here.count;
}
