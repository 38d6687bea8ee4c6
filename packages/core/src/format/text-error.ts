/** Something wrong in a text, at a position counted from 0 in UTF-16 units, as JavaScript counts. */
export class TextError extends Error {
  override readonly name = 'TextError';

  constructor(
    readonly position: number,
    what: string,
  ) {
    super(`at position ${position}: ${what}`);
  }
}
