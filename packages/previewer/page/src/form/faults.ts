import type { JobIssue } from '@edgebite/core';
import { effect } from '@preact/signals';
import { isPending } from '../document/begun.js';
import { openTo } from '../document/rows.js';
import { issues, jumped } from '../state/written.js';

/** The faults of a value itself, and of what is in it under names that have no field of their own. */
export function faultsAt(pointer: string, shownKeys: readonly string[] | null): readonly string[] {
  return issues.value.flatMap((issue) => {
    if (isPending(issue.path)) return [];
    if (issue.path === pointer) return [issue.message];
    if (!issue.path.startsWith(`${pointer}/`)) return [];
    const [key = ''] = issue.path.slice(pointer.length + 1).split('/');
    if (shownKeys?.includes(unescaped(key))) return [];
    return [`“${unescaped(key)}” ${issue.message}`];
  });
}

/** Whether there is a fault at a place or anywhere in it. */
export function faultyWithin(pointer: string): boolean {
  return issues.value.some(
    ({ path }) => (path === pointer || path.startsWith(`${pointer}/`)) && !isPending(path),
  );
}

/** The id of the element that shows the value at a pointer. */
export function idOf(pointer: string): string {
  return `at${pointer}`;
}

/** Faults whose rows open by themselves at most. */
const OPENED = 12;

// A job that comes with faults shows them in their fields. While one types, nothing opens that was not asked for.
effect(() => {
  const faults = issues.value;
  if (jumped.peek()) for (const { path } of faults.slice(0, OPENED)) openTo(path);
});

/** Takes the reader to the field of a fault, or to the nearest thing round it that is on the page. */
export function goTo({ path }: JobIssue): void {
  openTo(path);
  // The rows that were closed are there with the next frame.
  requestAnimationFrame(() => focusOn(path));
}

function focusOn(path: string): void {
  for (let pointer = path; pointer !== ''; pointer = pointer.slice(0, pointer.lastIndexOf('/'))) {
    const element = document.getElementById(idOf(pointer));
    if (element === null) continue;
    for (let fold = element.closest('details'); fold !== null; ) {
      fold.open = true;
      fold = fold.parentElement?.closest('details') ?? null;
    }
    element.scrollIntoView({ block: 'center' });
    element.focus();
    return;
  }
}

function unescaped(key: string): string {
  return key.replaceAll('~1', '/').replaceAll('~0', '~');
}
