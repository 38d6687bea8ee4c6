/** Something that the person at the command can put right: each line says what and where. */
export class Failure extends Error {
  override readonly name: string = 'Failure';

  constructor(readonly lines: readonly string[]) {
    super(lines.join('\n'));
  }
}

/** A failure that neither the job nor the arguments are to blame for: a full disk, a file that may not be written. */
export class Unfinished extends Failure {
  override readonly name = 'Unfinished';

  /**
   * What went wrong in writing, in words; a plain failure where it is the name that is at fault.
   * @param more what else to say
   */
  static of(file: string, error: unknown, more?: string): Failure {
    if (OF_THE_NAME.has((error as NodeJS.ErrnoException).code ?? '')) return fileFailure(file, error);
    return new Unfinished([`${file}: ${wordsOf(error)}${more === undefined ? '' : `; ${more}`}`]);
  }
}

/** What went wrong with a file that is read, in words. */
export function fileFailure(file: string, error: unknown): Failure {
  return new Failure([`${file}: ${wordsOf(error)}`]);
}

/** A file of another name could be written. */
const OF_THE_NAME = new Set(['ENOENT', 'ENOTDIR', 'EISDIR', 'ENAMETOOLONG', 'ELOOP']);

/** By the code of Node's error. */
const WORDS: { readonly [code: string]: string | undefined } = {
  ENOENT: 'there is no such file or folder',
  EACCES: 'access is denied',
  EPERM: 'access is denied',
  EISDIR: 'is a folder; name a file',
  ENOTDIR: 'a part of its path is a file, not a folder',
  ENOSPC: 'the disk is full',
  EDQUOT: 'there is no room left for you on the disk',
  EFBIG: 'the file would be larger than it may be',
  EIO: 'the disk or the line to it has a fault',
  EROFS: 'the disk cannot be written to',
  ENAMETOOLONG: 'its name is too long',
  ELOOP: 'its links lead in a circle',
  EMFILE: 'too many files are open',
  ENFILE: 'too many files are open',
};

function wordsOf(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code ?? '';
  return WORDS[code] ?? `cannot be used (${code || String(error)})`;
}
