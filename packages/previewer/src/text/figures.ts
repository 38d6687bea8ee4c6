import { fixed } from '@edgebite/svg';

/** A range of figures for a table: `250 to 310`; one of them if both read the same; a dash if there is none. */
export function rangeText(range: readonly [number, number] | null): string {
  if (range === null) return '-';
  const [least, most] = [figureText(range[0]), figureText(range[1])];
  return least === most ? least : `${least} to ${most}`;
}

/** A range of an estimate for a table, to two digits: more would promise too much. */
export function roughText([least, most]: readonly [number, number]): string {
  const rough = (value: number) => String(Number(value.toPrecision(2)));
  return least === most ? rough(least) : `${rough(least)} to ${rough(most)}`;
}

/** A figure of a speed, feed or time, to about three digits. */
export function figureText(value: number): string {
  const size = Math.abs(value);
  if (size >= 100 || value === 0) return fixed(value, 0);
  if (size >= 10) return fixed(value, 1);
  return size >= 1 ? fixed(value, 2) : Number(value.toPrecision(2)).toString();
}
