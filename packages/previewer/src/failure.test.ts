import type { constants } from 'node:os';
import { expect, it } from 'vitest';
import { Failure, fileFailure, Unfinished } from './failure.js';

/* The meaning of each code as POSIX.1-2017 has it (System Interfaces, 2.3 Error Numbers), in plain words. */
const MEANINGS: readonly (readonly [keyof typeof constants.errno, string])[] = [
  ['ENOENT', 'there is no such file or folder'],
  ['EACCES', 'access is denied'],
  ['EPERM', 'access is denied'],
  ['EISDIR', 'is a folder; name a file'],
  ['ENOTDIR', 'a part of its path is a file, not a folder'],
  ['ENOSPC', 'the disk is full'],
  ['EDQUOT', 'there is no room left for you on the disk'],
  ['EFBIG', 'the file would be larger than it may be'],
  ['EIO', 'the disk or the line to it has a fault'],
  ['EROFS', 'the disk cannot be written to'],
  ['ENAMETOOLONG', 'its name is too long'],
  ['ELOOP', 'its links lead in a circle'],
  ['EMFILE', 'too many files are open'],
];

/** Where another name would do. */
const OF_THE_NAME = ['ENOENT', 'ENOTDIR', 'EISDIR', 'ENAMETOOLONG', 'ELOOP'];

it.each(MEANINGS)('%s is told in words, and as a fault of the name only where it is one', (code, words) => {
  const error = Object.assign(new Error('raw'), { code });
  expect(fileFailure('a.json', error).lines).toEqual([`a.json: ${words}`]);
  const failure = Unfinished.of('a.json', error, 'nothing was written');
  const isOfName = OF_THE_NAME.includes(code);
  expect(failure instanceof Unfinished).toBe(!isOfName);
  expect(failure).toBeInstanceOf(Failure);
  expect(failure.lines).toEqual([`a.json: ${words}${isOfName ? '' : '; nothing was written'}`]);
});

it('what is not known keeps its code', () => {
  const error = Object.assign(new Error('raw'), { code: 'EXDEV' });
  expect(fileFailure('a.json', error).lines).toEqual(['a.json: cannot be used (EXDEV)']);
});
