import { stderr, stdin, stdout } from 'node:process';

/** What the command reads from and writes to, besides files. */
export interface Io {
  /** Standard input, as it comes. */
  readonly input: AsyncIterable<Uint8Array>;
  /** The folder that relative file names start from. */
  readonly folder: string;
  /** Writes to standard output. */
  readonly out: (text: string) => void;
  /** Writes to standard error. */
  readonly err: (text: string) => void;
}

/** The terminal that the process was started in. */
export function terminal(): Io {
  // Whoever reads may stop reading (`| head`); what is left to say then has no reader, which is no fault.
  for (const stream of [stdout, stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE') throw error;
    });
  }
  return {
    input: stdin,
    folder: process.cwd(),
    out: (text) => stdout.write(text),
    err: (text) => stderr.write(text),
  };
}
