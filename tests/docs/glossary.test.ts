import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ROOT, textOf } from './pages.js';

interface Entry {
  readonly term: string;
  readonly source: string;
  readonly code: readonly string[];
}

const entries = textOf('docs/glossary.md')
  .split(/^- /m)
  .slice(1)
  .map((text): Entry => {
    const [, source = '', code = ''] = /Source: ([\s\S]*?)\.\s+Code: ([^\n]*)\./.exec(text) ?? [];
    return {
      term: /^\*\*(.+)\*\*: /.exec(text)?.[1] ?? '',
      source,
      code: [...code.matchAll(/`(\w+)`/g)].map(([, name = '']) => name),
    };
  });

const words = new Set(
  ['packages/core/src', 'packages/svg/src'].flatMap((folder) =>
    readdirSync(`${ROOT}${folder}`, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts') && !name.includes('.test.'))
      .flatMap((name) => readFileSync(`${ROOT}${folder}/${name}`, 'utf8').match(/\w+/g) ?? []),
  ),
);

describe('the glossary', () => {
  it('has a term, a source and names of the code in each entry', () => {
    expect(entries.length).toBeGreaterThan(100);
    const lacking = entries.filter(({ term, source, code }) => !term || !source || code.length === 0);
    expect(lacking).toEqual([]);
  });

  it('is alphabetical, each term once', () => {
    const terms = entries.map(({ term }) => term);
    expect([...new Set(terms)].sort((a, b) => a.localeCompare(b, 'en'))).toEqual(terms);
  });

  it('names only what the code has', () => {
    const unknown = entries.flatMap(({ term, code }) =>
      code.filter((name) => !words.has(name)).map((name) => `${term}: ${name}`),
    );
    expect(unknown).toEqual([]);
  });
});
