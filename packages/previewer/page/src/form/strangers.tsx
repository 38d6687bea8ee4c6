import { isObject, type Json, type Path, pointerOf, withValue } from '../document/json.js';
import { change, written } from '../state/written.js';
import { idOf } from './faults.js';
import { called } from './words.js';

interface StrangersProps {
  readonly pointer: string;
  readonly path: () => Path;
  readonly value: Json | undefined;
  readonly keys: readonly string[];
}

/** Keys that do not belong where they stand, each to be taken out, or called what it was meant to be called. */
export function Strangers({ pointer, path, value, keys }: StrangersProps) {
  if (!isObject(value)) return null;
  const strangers = Object.keys(value).filter((key) => !keys.includes(key));
  if (strangers.length === 0) return null;
  return (
    <ul class="strangers">
      {strangers.map((key) => {
        const meant = keys.find((known) => (value[known] ?? '') === '' && isMisspelt(key, known));
        return (
          <li key={key} id={idOf(`${pointer}${pointerOf([key])}`)} tabIndex={-1}>
            <span>
              <b>{key}</b>: {shortText(value[key])}
            </span>
            {meant !== undefined && (
              <button type="button" onClick={() => call(path(), key, meant)}>
                Call it {called(meant)}
              </button>
            )}
            <button type="button" onClick={() => call(path(), key, null)}>
              Take out {key}
            </button>
          </li>
        );
      })}
    </ul>
  );
}

function call(path: Path, key: string, name: string | null): void {
  const present = written.value;
  if (present === null) return;
  const held = path.reduce<Json | undefined>(
    (value, step) => (value as Record<string, Json> | undefined)?.[step],
    present,
  );
  const value = isObject(held) ? held[key] : undefined;
  const without = withValue(present, [...path, key], undefined);
  change(name === null ? without : withValue(without, [...path, name], value));
}

/** Longest value that is shown whole. */
const MOST = 60;

function shortText(value: Json | undefined): string {
  const text = JSON.stringify(value) ?? '';
  return text.length > MOST ? `${text.slice(0, MOST)}…` : text;
}

/** Letters that may be wrong, missing or too many for a key to be taken for another. */
const WRONG = 2;

/** Whether a key is so near to another that it was probably meant: by edit distance (Levenshtein 1966). */
export function isMisspelt(key: string, known: string): boolean {
  const [a, b] = [key.toLowerCase(), known.toLowerCase()];
  if (Math.abs(a.length - b.length) > WRONG) return false;
  let row = Array.from({ length: b.length + 1 }, (_, k) => k);
  for (const [i, letter] of [...a].entries()) {
    const next = [i + 1];
    for (const [k, other] of [...b].entries()) {
      const [left = 0, up = 0, corner = 0] = [next[k], row[k + 1], row[k]];
      next.push(Math.min(left + 1, up + 1, corner + (letter === other ? 0 : 1)));
    }
    row = next;
  }
  return (row.at(-1) ?? 0) <= Math.min(WRONG, b.length / 3);
}
