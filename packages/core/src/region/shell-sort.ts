/**
 * Sorts numbers in place by keys of their own, smaller numbers first among equal keys. For the short lists along one edge,
 * which a sort that asks back would take longer for; long ones are no trouble either.
 * Source: Tokuda, "An improved Shellsort", IFIP 1992, for the gaps, 2.25 times apart.
 * @param keys those of the numbers at `lo` and after, from 0 on; sorted along
 */
export function sortByKeys(keys: Float64Array, items: Int32Array, lo: number, n: number): void {
  let gap = n;
  while (gap > 1) {
    gap = Math.max(1, Math.floor(gap / GAP_RATIO));
    for (let k = gap; k < n; k++) {
      const key = keys[k] as number;
      const one = items[lo + k] as number;
      let slot = k;
      for (; slot >= gap; slot -= gap) {
        const ahead = (keys[slot - gap] as number) - key;
        const other = items[lo + slot - gap] as number;
        if (!(ahead > 0 || (!(ahead < 0) && other > one))) break;
        keys[slot] = keys[slot - gap] as number;
        items[lo + slot] = other;
      }
      keys[slot] = key;
      items[lo + slot] = one;
    }
  }
}

const GAP_RATIO = 2.25;
