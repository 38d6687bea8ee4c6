import { TextError } from './text-error.js';

const SPACE = new Set([' ', '\t', '\n', '\f', '\r']);
const NUMBER = /[+-]?(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d+)?/y;

/** Reads SVG path data piece by piece. Source: W3C SVG 2, section 9.3.9, the grammar for path data. */
export class SvgScanner {
  private at = 0;

  constructor(private readonly text: string) {}

  /** Where the next piece starts, from 0. */
  get position(): number {
    return this.at;
  }

  /** Skips white space; whether the text goes on. */
  more(): boolean {
    while (SPACE.has(this.text[this.at] as string)) this.at++;
    return this.at < this.text.length;
  }

  /** The next character, which is taken. */
  take(): string {
    return this.text[this.at++] as string;
  }

  /** Skips white space with at most one comma in it; whether there was a comma. */
  comma(): boolean {
    this.more();
    if (this.text[this.at] !== ',') return false;
    this.at++;
    this.more();
    return true;
  }

  /** Whether a number starts here. */
  atNumber(): boolean {
    return /[\d+.-]/.test(this.text[this.at] ?? '');
  }

  /**
   * The number that starts here, after white space with at most one comma in it.
   * @throws TextError if none does, or it is too large for a finite number.
   */
  number(what: string): number {
    this.comma();
    NUMBER.lastIndex = this.at;
    const found = NUMBER.exec(this.text)?.[0];
    if (found === undefined) throw this.missing(what);
    const value = Number(found);
    if (!Number.isFinite(value)) throw new TextError(this.at, `${what} is too large a number`);
    this.at += found.length;
    return value;
  }

  /**
   * The flag that starts here: one digit, 0 or 1, that may run into what follows it.
   * @throws TextError if none does.
   */
  flag(what: string): boolean {
    this.comma();
    const found = this.text[this.at];
    if (found !== '0' && found !== '1') throw this.missing(`${what}, 0 or 1,`);
    this.at++;
    return found === '1';
  }

  private missing(what: string): TextError {
    const found = this.text[this.at];
    return new TextError(
      this.at,
      `${what} is missing; ${found === undefined ? 'the text ends' : `"${found}" is`} here`,
    );
  }
}
