import { existsSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ROOT, textOf } from './pages.js';

const CONFIG = 'tests/mutation/stryker.config.mjs';

const names = new Set(
  ['packages/core/src', 'tests'].flatMap((folder) =>
    readdirSync(`${ROOT}${folder}`, { recursive: true, encoding: 'utf8' }).map((path) =>
      path.replace(/^.*\//, ''),
    ),
  ),
);

describe('the mutation test', () => {
  it('names only files that there are, the tables under their rooms', () => {
    const page = textOf('docs/mutation.md');
    const rows = [...page.matchAll(/^\| (\w+\/[\w-]+\.ts) \|/gm)].map(([, path]) => path as string);
    expect(rows.length).toBeGreaterThan(50);
    expect(rows.filter((path) => !existsSync(`${ROOT}packages/core/src/${path}`))).toEqual([]);
    const told = [...page.matchAll(/`([\w./-]+\.(?:ts|mjs))`/g)].map(([, path]) => path as string);
    expect(told.filter((path) => !names.has(path.replace(/^.*\//, '')))).toEqual([]);
    const files = [...textOf(CONFIG).matchAll(/'((?:tests|packages)\/[\w./-]+\.test\.ts)'/g)];
    expect(files.length).toBeGreaterThan(5);
    expect(files.map(([, path]) => path as string).filter((path) => !existsSync(ROOT + path))).toEqual([]);
  });

  it('adds its table up, by room and in all', () => {
    const rows = [...textOf('docs/mutation.md').matchAll(/^\| (\**[\w/.-]+\**) \|([\d .|]+)\|$/gm)].map(
      ([, name = '', cells = '']) => ({ name, cells: cells.split('|').map(Number) }),
    );
    const sumOf = (of: readonly (typeof rows)[number][]) =>
      [0, 1, 2, 3].map((k) => of.reduce((sum, { cells }) => sum + (cells[k] as number), 0));
    const files = rows.filter(({ name }) => name.endsWith('.ts'));
    for (const { name, cells } of rows) {
      const [mutants = 0, found = 0] = cells;
      // Printed to a tenth.
      expect(Math.abs((cells[4] as number) - (100 * found) / mutants), name).toBeLessThan(0.0501);
      const room = /^\*\*(\w+\/)\*\*$/.exec(name)?.[1];
      const own = room === undefined ? files : files.filter((file) => file.name.startsWith(room));
      if (name.startsWith('**')) expect(cells.slice(0, 4), name).toEqual(sumOf(own));
    }
    expect(rows.at(-1)?.name).toBe('**all**');
  });
});
