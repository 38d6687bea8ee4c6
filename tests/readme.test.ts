import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterEach, describe, expect, it, vi } from 'vitest';

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const readme = readFileSync(at('../README.md'), 'utf8');

/** The fenced blocks of one language in the README, in order. */
function blocks(language: string): string[] {
  return [...readme.matchAll(/^```(\w+)\n([\s\S]*?)^```$/gm)]
    .filter(([, name]) => name === language)
    .map(([, , text]) => text ?? '');
}

describe('README', () => {
  afterEach(() => {
    vi.restoreAllMocks();
  });

  // The areas in it are closed forms: 2400 less a disc of radius 13 without its segment beyond x = 80
  // (Machinery's Handbook, 31st ed., p. 83), and the area of a disc of radius 8.5.
  it('holds one library example, which prints what the README says', async () => {
    const [code, ...more] = blocks('ts');
    expect(more).toEqual([]);
    mkdirSync(at('../out'), { recursive: true });
    const file = at('../out/readme-example.ts');
    writeFileSync(file, code ?? '');
    const log = vi.spyOn(console, 'log').mockImplementation(() => undefined);

    await import(pathToFileURL(file).href);

    expect(log.mock.calls.map((words) => words.join(' '))).toEqual(
      (blocks('text')[0] ?? '').trim().split('\n'),
    );
  });

  it('names only commands that exist', () => {
    const { scripts } = JSON.parse(readFileSync(at('../package.json'), 'utf8'));
    const named = [...readme.matchAll(/npm run ([\w:]+)/g)].map(([, name]) => name);
    expect(named).not.toEqual([]);
    for (const name of named) expect(scripts).toHaveProperty([name ?? '']);
  });
});
