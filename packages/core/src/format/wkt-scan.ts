import type { Point } from '../geometry/point.js';
import { TextError } from './text-error.js';

const TOKEN = /\s*([A-Za-z_]+|[(),]|[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)/y;

/** Reads well-known text piece by piece. */
export class WktScanner {
  private at = 0;

  constructor(private readonly text: string) {}

  /** Where the next piece starts, from 0. */
  get position(): number {
    while (/\s/.test(this.text[this.at] ?? '')) this.at++;
    return this.at;
  }

  /** The next piece, not taken; empty at the end. Anything that is no piece is given as its first character. */
  peek(): string {
    TOKEN.lastIndex = this.at;
    return TOKEN.exec(this.text)?.[1] ?? this.text[this.position] ?? '';
  }

  /** The next piece, taken if it is the one wanted; whether it was. */
  takeIf(piece: string): boolean {
    if (this.peek().toUpperCase() !== piece) return false;
    this.at = this.position + piece.length;
    return true;
  }

  /**
   * Takes the piece that must come next.
   * @throws TextError if another comes.
   */
  expect(piece: string): void {
    if (!this.takeIf(piece)) throw this.unexpected(`"${piece}"`);
  }

  /** Takes a word, in upper case; empty if none is next. */
  word(): string {
    const piece = this.peek();
    if (!/^[A-Za-z_]/.test(piece)) return '';
    this.at = this.position + piece.length;
    return piece.toUpperCase();
  }

  /**
   * The points of a bracketed list.
   * @throws TextError if it is none, or a point has more than two numbers.
   */
  points(): { readonly points: readonly Point[]; readonly positions: readonly number[] } {
    const points: Point[] = [];
    const positions: number[] = [];
    this.expect('(');
    do {
      positions.push(this.position);
      points.push({ x: this.number('x'), y: this.number('y') });
      if (/^[\d+.-]/.test(this.peek())) {
        throw new TextError(this.position, 'a point has more than two numbers; only plane outlines are read');
      }
    } while (this.takeIf(','));
    this.expect(')');
    return { points, positions };
  }

  /** The error that something else was expected here. */
  unexpected(wanted: string): TextError {
    const found = this.peek();
    return new TextError(
      this.position,
      `${wanted} is expected; ${found === '' ? 'the text ends' : `"${found}" is`} here`,
    );
  }

  private number(what: string): number {
    const piece = this.peek();
    const value = Number(piece);
    if (!/^[\d+.-]/.test(piece) || Number.isNaN(value)) throw this.unexpected(what);
    if (!Number.isFinite(value)) throw new TextError(this.position, `${what} is too large a number`);
    this.at = this.position + piece.length;
    return value + 0;
  }
}
