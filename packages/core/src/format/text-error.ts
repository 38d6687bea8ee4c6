import { EdgebiteError } from '../geometry/edgebite-error.js';

/** Something wrong in a text, at a position counted from 0 in UTF-16 units, as JavaScript counts. */
export class TextError extends EdgebiteError {
  override readonly name = 'TextError';

  constructor(
    readonly position: number,
    what: string,
  ) {
    super(`at position ${position}: ${what}`, { code: 'text', place: `position ${position}`, remedy: what });
  }
}
