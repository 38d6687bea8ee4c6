import { randomBytes } from 'node:crypto';
import { realpath, rename, rm, stat, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { Failure, fileFailure } from './failure.js';

/** What to do where the name is that of a device, for commands that can write to standard output. */
const INSTEAD = 'use -o - for standard output';

/**
 * Writes text to a file whole or not at all: into a temporary file beside it, which then takes its name.
 * @param instead what to do where the name is that of a device
 * @throws Failure if the name is that of a folder or a device, or it cannot be written; nothing is left behind then.
 */
export async function saveWhole(
  file: string,
  shown: string,
  text: string,
  instead: string = INSTEAD,
): Promise<void> {
  const target = await replaceable(file, shown, instead);
  const passing = join(
    dirname(target),
    `.${basename(target).slice(0, 100)}.${randomBytes(6).toString('hex')}`,
  );
  try {
    await writeFile(passing, text, { flag: 'wx' });
    await rename(passing, target);
  } catch (error) {
    await rm(passing, { force: true });
    throw fileFailure(shown, error);
  }
}

// A link stays a link: what it leads to is replaced. A device must never be: as root one could lose /dev/null.
async function replaceable(file: string, shown: string, instead: string): Promise<string> {
  try {
    const target = await realpath(file);
    const found = await stat(target);
    if (found.isDirectory()) throw new Failure([`${shown}: is a folder; name a file`]);
    if (!found.isFile()) throw new Failure([`${shown}: is not a plain file; ${instead}`]);
    return target;
  } catch (error) {
    if (error instanceof Failure) throw error;
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return file;
    throw fileFailure(shown, error);
  }
}
