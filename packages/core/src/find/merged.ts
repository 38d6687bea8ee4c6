/** Places closer than this share of the limit are one web in several slabs. */
export const SAME_PLACE = 1e-6;

/** Rows that say the same of several slabs, put together: the first, and the numbers of all. */
export function merged<
  T extends { readonly at: readonly [number, number]; readonly piece: string; readonly slab: number },
>(rows: readonly T[], near: number): { row: T; numbers: number[] }[] {
  // Within one slab every row is one of its own.
  if (rows.every(({ slab }) => slab === rows[0]?.slab)) return rows.map((row, k) => ({ row, numbers: [k] }));
  const groups: { row: T; numbers: number[]; slabs: Set<number> }[] = [];
  const buckets = new Map<string, typeof groups>();
  rows.forEach((row, k) => {
    const key = `${Math.round(row.at[0] / (near * 8))},${Math.round(row.at[1] / (near * 8))}`;
    const bucket = buckets.get(key) ?? [];
    buckets.set(key, bucket);
    const known = bucket.find(
      (group) =>
        !group.slabs.has(row.slab) &&
        Math.hypot(group.row.at[0] - row.at[0], group.row.at[1] - row.at[1]) <= near,
    );
    if (known !== undefined) {
      known.numbers.push(k);
      known.slabs.add(row.slab);
      return;
    }
    const group = { row, numbers: [k], slabs: new Set([row.slab]) };
    bucket.push(group);
    groups.push(group);
  });
  return groups;
}
