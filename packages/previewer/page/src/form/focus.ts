import { idOf } from './faults.js';

/** Gives the keys to something that is on the page after the change that was just made. */
export function focusSoon(find: () => HTMLElement | null | undefined): void {
  requestAnimationFrame(() => find()?.focus());
}

/** The first thing to fill in, or else to press, in a part of the job. */
export function firstIn(pointer: string): HTMLElement | null {
  const part = document.getElementById(idOf(pointer));
  return part?.querySelector<HTMLElement>('input, select, textarea') ?? part?.querySelector('button') ?? null;
}

/** The id of the button that adds a part which is not there. */
export const addId = (pointer: string): string => `${idOf(pointer)}-add`;
