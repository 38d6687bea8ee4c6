import { write } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';

/** Between two tries of a pipe that takes no more for now, in milliseconds. */
const PAUSE = 5;

/**
 * Writes text to an open file of the system, all of it or with an error: a stream of Node takes a short write to a file
 * for a whole one, and half a sheet on a full disk for a sheet.
 * @throws an error of the system; a reader that has gone away is none
 */
export async function writeAll(file: number, text: string): Promise<void> {
  const bytes = Buffer.from(text, 'utf8');
  for (let done = 0; done < bytes.length; ) {
    try {
      done += await written(file, bytes.subarray(done));
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code === 'EPIPE') return;
      if (code !== 'EAGAIN') throw error;
      await wait(PAUSE);
    }
  }
}

function written(file: number, bytes: Uint8Array): Promise<number> {
  return new Promise((done, failed) => {
    write(file, bytes, (error, count) => (error === null ? done(count) : failed(error)));
  });
}
