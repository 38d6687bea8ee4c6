/** Where two values made of objects, lists and plain values first differ, and how; null where they do not. */
export function firstDifference(one: unknown, other: unknown, at = ''): string | null {
  if (Object.is(one, other)) return null;
  const isOpen = (value: unknown): value is object => typeof value === 'object' && value !== null;
  if (!isOpen(one) || !isOpen(other)) return `${at}: ${JSON.stringify(one)}, turned ${JSON.stringify(other)}`;
  for (const key of new Set([...Object.keys(one), ...Object.keys(other)])) {
    const [a, b] = [one, other].map((each) => (each as Record<string, unknown>)[key]);
    const found = firstDifference(a, b, `${at}/${key}`);
    if (found !== null) return found;
  }
  return null;
}
