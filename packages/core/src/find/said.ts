import type { Finding } from '../report/report-schema.js';

/**
 * Findings that have been made of rows of a report, so that a row that stays need not be put into words again. Whoever
 * examines a job over and over keeps one; without it each finding is made anew, and says the same.
 */
export type Said = WeakMap<object, { readonly numbers: readonly number[]; readonly finding: Finding }>;

/** The finding on a row, made now or before. The same row under other numbers has the same words. */
export function saidOf(
  said: Said | undefined,
  row: { readonly between: readonly string[] },
  numbers: readonly number[],
  name: string,
  make: () => Omit<Finding, 'about'>,
): Finding {
  const known = said?.get(row);
  if (known?.numbers.length === numbers.length && known.numbers.every((k, m) => k === numbers[m])) {
    return known.finding;
  }
  const { level, code, message, at } = known?.finding ?? make();
  const about = [...numbers.map((k) => `${name}:${k}`), ...row.between];
  const finding: Finding = { level, code, message, at, about };
  said?.set(row, { numbers, finding });
  return finding;
}
