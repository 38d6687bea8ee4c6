import { stdin } from 'node:process';
import { Unfinished } from './failure.js';
import { writeAll } from './output.js';

/** What the command reads from and writes to, besides files. */
export interface Io {
  /** Standard input, as it comes. */
  readonly input: AsyncIterable<Uint8Array>;
  /** The folder that relative file names start from. */
  readonly folder: string;
  /** Says something on standard output. */
  readonly out: (text: string) => void;
  /** Says something on standard error. */
  readonly err: (text: string) => void;
  /**
   * Resolves when all that was said is written.
   * @throws Unfinished if it cannot be
   */
  readonly written?: (() => Promise<void>) | undefined;
}

/** Numbers that the system has for standard output and standard error. */
const [OUT, ERR] = [1, 2];

/** The terminal that the process was started in. */
export function terminal(): Io {
  let waiting: { readonly file: number; readonly text: string }[] = [];
  return {
    input: stdin,
    get folder() {
      return startFolder();
    },
    out: (text) => waiting.push({ file: OUT, text }),
    err: (text) => waiting.push({ file: ERR, text }),
    async written() {
      for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
        try {
          await writeAll(next.file, next.text);
        } catch (error) {
          // Nobody is left to tell of what standard error does not take.
          if (next.file === ERR) continue;
          waiting = waiting.filter(({ file }) => file === ERR);
          throw Unfinished.of('standard output', error, 'what is there is not all of it');
        }
      }
    },
  };
}

function startFolder(): string {
  try {
    return process.cwd();
  } catch {
    throw new Unfinished([
      'the folder that edgebite was started in is not there any more; go to another one',
    ]);
  }
}
