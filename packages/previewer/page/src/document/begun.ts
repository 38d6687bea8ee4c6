import { signal } from '@preact/signals';
import { followed } from './follow.js';
import { type Json, pathOf, pointerOf } from './json.js';

/** The pointers of parts that were added and not yet left again: what is missing in them is not yet called wrong. */
const begun = signal<ReadonlySet<string>>(new Set());

/** The pointers of fields in such parts that were filled in, or passed by. */
const touched = signal<ReadonlySet<string>>(new Set());

/** Marks a part as just added. */
export function begin(pointer: string): void {
  begun.value = new Set([...begun.value, pointer]);
}

/** Marks a field as filled in or passed by: from now on its faults are told. */
export function touch(pointer: string): void {
  if (isBegun(pointer)) touched.value = new Set([...touched.value, pointer]);
}

/** Marks a part as left: all that is wrong in it is told. */
export function leave(pointer: string): void {
  if (begun.value.has(pointer)) begun.value = new Set([...begun.value].filter((one) => one !== pointer));
}

/** Forgets all of it, as where another job is opened. */
export function leaveAll(): void {
  if (begun.value.size > 0) begun.value = new Set();
  if (touched.value.size > 0) touched.value = new Set();
}

/** Whether what is wrong at a pointer is only that it was not yet come to. */
export function isPending(pointer: string): boolean {
  return isBegun(pointer) && !touched.value.has(pointer);
}

function isBegun(pointer: string): boolean {
  return [...begun.value].some((part) => pointer === part || pointer.startsWith(`${part}/`));
}

/** Keeps the marks where the parts have gone to in the next job. */
export function followBegun(before: Json, after: Json): void {
  for (const marks of [begun, touched]) {
    if (marks.value.size === 0) continue;
    marks.value = new Set(
      [...marks.value].flatMap((pointer) => {
        const path = followed(pathOf(pointer), before, after);
        return path === null ? [] : [pointerOf(path)];
      }),
    );
  }
}
