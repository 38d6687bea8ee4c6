import { signal } from '@preact/signals';
import type { Drawn } from '../worker/outline.js';

/** An outline that was read from a file, of which it is still to be said what it is for. */
export interface ReadOutline extends Drawn {
  /** What it was called. */
  readonly file: string;
  /** null where the file does not say. */
  readonly units: 'mm' | 'inch' | null;
}

/** null where there is none. */
export const readOutline = signal<ReadOutline | null>(null);
