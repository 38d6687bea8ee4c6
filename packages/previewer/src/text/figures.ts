import { fixed, type Units } from '@edgebite/svg';

/** A range of figures for a table: `250 to 310`; one of them if both read the same; a dash if there is none. */
export function rangeText(range: readonly [number, number] | null): string {
  if (range === null) return '-';
  const [least, most] = [figureText(range[0]), figureText(range[1])];
  return least === most ? least : `${least} to ${most}`;
}

/** A range of an estimate for a table, to two digits: more would promise too much. */
export function roughText([least, most]: readonly [number, number]): string {
  const rough = (value: number) => String(Number(value.toPrecision(2)));
  const [low, high] = [rough(least), rough(most)];
  return low === high ? low : `${low} to ${high}`;
}

/** A figure of a speed, feed or time, to about three digits. */
export function figureText(value: number): string {
  const size = Math.abs(value);
  if (size >= 100 || value === 0) return fixed(value, 0);
  if (size >= 10) return fixed(value, 1);
  return size >= 1 ? fixed(value, 2) : Number(value.toPrecision(2)).toString();
}

/** From this many cubic millimetres on a volume is told in cubic centimetres. */
const MANY = 10_000;

/** A volume as it is said in a shop, to three digits: `168 mm³`, `70.9 cm³`, `0.0125 in³`. */
export function volumeText(volume: number, units: Units): string {
  if (units === 'inch') return `${threeDigits(volume)} in³`;
  return volume < MANY ? `${threeDigits(volume)} mm³` : `${threeDigits(volume / 1000)} cm³`;
}

/** Three digits, without an exponent and without idle zeros. */
function threeDigits(value: number): string {
  const digits = value > 0 ? 2 - Math.floor(Math.log10(value)) : 0;
  return String(Number(value.toFixed(Math.min(12, Math.max(0, digits)))));
}
