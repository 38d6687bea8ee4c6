/** Whether two values of plain data are alike, all the way down. */
export function isAlike(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b)) {
    return (
      Array.isArray(a) && Array.isArray(b) && a.length === b.length && a.every((v, k) => isAlike(v, b[k]))
    );
  }
  const [own, other] = [a as Record<string, unknown>, b as Record<string, unknown>];
  const keys = Object.keys(own);
  return (
    keys.length === Object.keys(other).length &&
    keys.every((key) => Object.hasOwn(other, key) && isAlike(own[key], other[key]))
  );
}
