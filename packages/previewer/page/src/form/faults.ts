import type { JobIssue } from '@edgebite/core';
import { issues } from '../state/store.js';

/** The faults of a value itself, and of what is in it under names that have no field of their own. */
export function faultsAt(pointer: string, shownKeys: readonly string[] | null): readonly string[] {
  return issues.value.flatMap((issue) => {
    if (issue.path === pointer) return [issue.message];
    if (!issue.path.startsWith(`${pointer}/`)) return [];
    const [key = ''] = issue.path.slice(pointer.length + 1).split('/');
    if (shownKeys?.includes(unescaped(key))) return [];
    return [`“${unescaped(key)}” ${issue.message}`];
  });
}

/** Whether there is a fault at a place or anywhere in it. */
export function faultyWithin(pointer: string): boolean {
  return issues.value.some(({ path }) => path === pointer || path.startsWith(`${pointer}/`));
}

/** The id of the element that shows the value at a pointer. */
export function idOf(pointer: string): string {
  return `at${pointer}`;
}

/** Takes the reader to the field of a fault, or to the nearest thing round it that is on the page. */
export function goTo({ path }: JobIssue): void {
  for (let pointer = path; pointer !== ''; pointer = pointer.slice(0, pointer.lastIndexOf('/'))) {
    const element = document.getElementById(idOf(pointer));
    if (element === null) continue;
    element.scrollIntoView({ block: 'center' });
    element.focus();
    return;
  }
}

function unescaped(key: string): string {
  return key.replaceAll('~1', '/').replaceAll('~0', '~');
}
