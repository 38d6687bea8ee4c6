import { signal } from '@preact/signals';
import { followed } from './follow.js';
import { type Json, pathOf, pointerOf } from './json.js';

/** The pointers of the members of lists that stand open. They stay so until they are closed by hand. */
export const openRows = signal<ReadonlySet<string>>(new Set());

/** Opens a row, or closes it. */
export function setRow(pointer: string, open: boolean): void {
  if (openRows.value.has(pointer) === open) return;
  const rows = new Set(openRows.value);
  if (open) rows.add(pointer);
  else rows.delete(pointer);
  openRows.value = rows;
}

/** Opens every row on the way to a value. */
export function openTo(pointer: string): void {
  const steps = pointer.split('/');
  for (let count = 3; count <= steps.length; count++) {
    if (/^\d+$/.test(steps[count - 1] ?? '')) setRow(steps.slice(0, count).join('/'), true);
  }
}

/** Keeps rows open where they have gone to in the next job. */
export function followRows(before: Json, after: Json): void {
  if (openRows.value.size === 0) return;
  const rows = [...openRows.value].flatMap((pointer) => {
    const path = followed(pathOf(pointer), before, after);
    return path === null ? [] : [pointerOf(path)];
  });
  openRows.value = new Set(rows);
}
