/**
 * What kind of thing was refused: an `argument` that is not what a function takes, or is out of range; a `region` or an
 * `outline` that is none; a `text` or a `job` that cannot be read; a `lead`, a `fit` or a `range` that cannot be had; a
 * broken `law`; a call that was `stopped` by a signal without a reason. A `fault` is one of the library.
 */
export type EdgebiteCode =
  | 'argument'
  | 'region'
  | 'outline'
  | 'text'
  | 'job'
  | 'lead'
  | 'fit'
  | 'range'
  | 'law'
  | 'stopped'
  | 'fault';

/** What an error is about. */
export interface ErrorAbout {
  readonly code: EdgebiteCode;
  readonly place?: string | undefined;
  readonly remedy?: string | undefined;
  readonly cause?: unknown;
}

/**
 * What all errors of the library are. The message alone is enough for a reader; a program goes by the rest. It is a
 * RangeError too, since what is refused is a value that is out of what a function takes.
 */
export class EdgebiteError extends RangeError {
  override readonly name: string = 'EdgebiteError';
  readonly code: EdgebiteCode;
  /** Where the fault lies: the function and the value in it, a position in a text, a JSON Pointer; empty if nowhere. */
  readonly place: string;
  /** What to do; empty where the message says it. */
  readonly remedy: string;

  constructor(message: string, { code, place = '', remedy = '', cause }: ErrorAbout) {
    super(message, cause === undefined ? undefined : { cause });
    this.code = code;
    this.place = place;
    this.remedy = remedy;
  }
}
