/**
 * Numbers agree to this share: sums over all loops are added up in another order than over the faces of an overlay,
 * which costs some units in the last place of the largest term.
 */
const SAME = 1e-12;

/** The first place where two reports differ, with what is there; null where they are the same. */
export function firstDifference(one: unknown, other: unknown, path = ''): string | null {
  if (typeof one === 'number' && typeof other === 'number') {
    const isSame = Math.abs(one - other) <= SAME * Math.max(Math.abs(one), Math.abs(other));
    return isSame ? null : `${path}: ${one}, not ${other}`;
  }
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) {
    return one === other ? null : `${path}: ${JSON.stringify(one)}, not ${JSON.stringify(other)}`;
  }
  const keys = [Object.keys(one), Object.keys(other)] as const;
  if (keys[0].length !== keys[1].length || Array.isArray(one) !== Array.isArray(other)) {
    return `${path}: ${keys[0].length} values, not ${keys[1].length}`;
  }
  for (const key of keys[1]) {
    if (!(key in one)) return `${path}/${key} is missing`;
    const inside = firstDifference(
      (one as Record<string, unknown>)[key],
      (other as Record<string, unknown>)[key],
      `${path}/${key}`,
    );
    if (inside !== null) return inside;
  }
  return null;
}
