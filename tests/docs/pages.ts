import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** The repository's folder, with a slash at its end. */
export const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** A fenced block of a page. */
export interface Block {
  readonly page: string;
  readonly line: number;
  /** The word after the fence. */
  readonly language: string;
  /** What follows it: `browser`, `cjs`, or a file name. */
  readonly rest: string;
  readonly text: string;
}

/** The pages that people read, as paths from the repository's folder. */
export function pages(): string[] {
  const docs = readdirSync(`${ROOT}docs`).filter((name) => name.endsWith('.md'));
  const packed = readdirSync(`${ROOT}packages`).flatMap((name) =>
    name.includes('.') ? [] : ['README', 'CHANGELOG'].map((page) => `packages/${name}/${page}.md`),
  );
  return ['README.md', 'DEVELOPERS.md', ...docs.sort().map((name) => `docs/${name}`), ...packed];
}

/** The text of a page. */
export function textOf(page: string): string {
  return readFileSync(`${ROOT}${page}`, 'utf8');
}

/** The fenced blocks of a page, in order. */
export function blocksOf(page: string): Block[] {
  const text = textOf(page);
  return [...text.matchAll(/^```(\S*) *(.*)\n([\s\S]*?)^```$/gm)].map(
    ({ index, 1: language = '', 2: rest = '', 3: body = '' }) => ({
      page,
      line: text.slice(0, index).split('\n').length,
      language,
      rest,
      text: body,
    }),
  );
}
