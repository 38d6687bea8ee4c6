import { randomBytes } from 'node:crypto';
import { constants, rmSync } from 'node:fs';
import { access, lstat, open, readlink, realpath, rename, rm, stat } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { Failure, fileFailure, Unfinished } from './failure.js';

/** What to do where the name is that of a device, for commands that can write to standard output. */
const INSTEAD = 'use -o - for standard output';

/** The rights of a file that the system leaves to its owner where nothing else is said. */
const NEW_MODE = 0o666;

/** A file that is to be written, or written anew. */
interface Target {
  readonly file: string;
  /** Rights that it has; null if it is not there yet. */
  readonly mode: number | null;
}

/**
 * Writes text to a file whole or not at all: into a temporary file beside it, which then takes its name, and its rights.
 * An interrupt takes the temporary file away.
 * @param instead what to do where the name is that of a device
 * @throws Failure if the name is that of a folder or a device; Unfinished if it cannot be written; nothing is left
 * behind then.
 */
export async function saveWhole(
  file: string,
  shown: string,
  text: string,
  instead: string = INSTEAD,
): Promise<void> {
  const target = await replaceable(file, shown, instead);
  // Short, since the whole name may be as long as a name can be.
  const passing = join(dirname(target.file), `.edgebite-${randomBytes(6).toString('hex')}`);
  try {
    await uninterrupted(passing, async () => {
      await written(passing, text, target.mode);
      await rename(passing, target.file);
    });
  } catch (error) {
    await rm(passing, { force: true });
    throw Unfinished.of(shown, error);
  }
}

async function written(file: string, text: string, mode: number | null): Promise<void> {
  const handle = await open(file, 'wx', NEW_MODE);
  try {
    if (mode !== null) await handle.chmod(mode);
    await handle.writeFile(text);
    // Some disks say only now that they are full.
    await handle.sync();
  } finally {
    await handle.close();
  }
}

const INTERRUPTS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/** Works with a temporary file that is taken away if someone stops the process meanwhile. */
async function uninterrupted(passing: string, work: () => Promise<void>): Promise<void> {
  const stop = (signal: NodeJS.Signals) => {
    rmSync(passing, { force: true });
    for (const one of INTERRUPTS) process.removeListener(one, stop);
    process.kill(process.pid, signal);
  };
  for (const signal of INTERRUPTS) process.on(signal, stop);
  try {
    await work();
  } finally {
    for (const signal of INTERRUPTS) process.removeListener(signal, stop);
  }
}

// A link stays a link: what it leads to is replaced. A device must never be: as root one could lose /dev/null.
async function replaceable(file: string, shown: string, instead: string): Promise<Target> {
  if (/[/\\]$/.test(shown)) throw new Failure([`${shown}: is the name of a folder; name a file`]);
  try {
    const target = await realpath(file);
    const found = await stat(target);
    if (found.isDirectory()) throw new Failure([`${shown}: is a folder; name a file`]);
    if (!found.isFile()) throw new Failure([`${shown}: is not a plain file; ${instead}`]);
    if (found.nlink > 1) {
      throw new Failure([
        `${shown}: has other names besides, which would keep the old text; name another file`,
      ]);
    }
    await checkWritable(target, found.mode, shown);
    return { file: target, mode: found.mode & RIGHTS };
  } catch (error) {
    if (error instanceof Failure) throw error;
    if ((error as NodeJS.ErrnoException).code === 'ENOENT')
      return { file: await endOf(file, shown), mode: null };
    throw fileFailure(shown, error);
  }
}

/** All that chmod sets. */
const RIGHTS = 0o7777;

/** Any right to write: root may write what nobody may, but someone has put the file out of reach. */
const MAY_WRITE = 0o222;

async function checkWritable(file: string, mode: number, shown: string): Promise<void> {
  const isKept = (mode & MAY_WRITE) === 0;
  const denied = await access(file, constants.W_OK).then(
    () => false,
    () => true,
  );
  if (isKept || denied) throw new Unfinished([`${shown}: may only be read; name another file`]);
}

/** Most links that are followed, as many as Linux follows. */
const MOST_LINKS = 40;

/** Where a name leads that nothing is at yet: a link to nothing is not to be replaced by a file. */
async function endOf(file: string, shown: string): Promise<string> {
  let end = file;
  for (let k = 0; k < MOST_LINKS; k++) {
    const link = await lstat(end).then(
      (found) => found.isSymbolicLink(),
      () => false,
    );
    if (!link) return end;
    end = resolve(dirname(end), await readlink(end));
  }
  throw new Failure([`${shown}: its links lead in a circle`]);
}
