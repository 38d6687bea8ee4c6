/** Something that the person at the command can put right: each line says what and where. */
export class Failure extends Error {
  override readonly name = 'Failure';

  constructor(readonly lines: readonly string[]) {
    super(lines.join('\n'));
  }
}

/** What went wrong with a file, in words, by the code of Node's error. */
export function fileFailure(file: string, error: unknown): Failure {
  const code = (error as NodeJS.ErrnoException).code ?? '';
  const words: { readonly [code: string]: string } = {
    ENOENT: 'there is no such file or folder',
    EACCES: 'access is denied',
    EPERM: 'access is denied',
    EISDIR: 'is a folder; name a file',
    ENOTDIR: 'a part of its path is a file, not a folder',
    ENOSPC: 'the disk is full',
    EROFS: 'the disk cannot be written to',
    ENAMETOOLONG: 'its name is too long',
    ELOOP: 'its links lead in a circle',
  };
  return new Failure([`${file}: ${words[code] ?? `cannot be used (${code || String(error)})`}`]);
}
