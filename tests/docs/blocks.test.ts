import { execFileSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { examine, parseAim, parseJob, propose, type Report } from '@edgebite/core';
import { transformWithOxc } from 'vite';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { ran } from '../../packages/previewer/fixtures/ran.js';
import { type Block, blocksOf, pages, ROOT } from './pages.js';

/** Every block of code, and of what it prints. Pictures are compared with the sources in `rooms.test.ts`. */
const blocks = pages().flatMap((page) =>
  blocksOf(page)
    .filter(({ language }) => language !== 'mermaid')
    .map((block) => [`${page}:${block.line}`, block] as const),
);

/** What a fragment of a job is put into: whichever example it fits. */
const EXAMPLES = readdirSync(`${ROOT}examples`)
  .filter((name) => name.endsWith('.json'))
  .map((name) => JSON.parse(readFileSync(`${ROOT}examples/${name}`, 'utf8')) as Job);

type Job = Readonly<Record<string, unknown>>;

let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'edgebite-docs-'));
  cpSync(`${ROOT}examples`, join(folder, 'examples'), { recursive: true });
  for (const [, { language, rest, text }] of blocks) {
    if (language === 'json' && rest !== '') writeFileSync(join(folder, rest), text);
  }
  mkdirSync(`${ROOT}out/docs`, { recursive: true });
});

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

/** The block of what is printed right after this one, if there is one. */
function printedAfter(block: Block): string | null {
  const list = blocksOf(block.page);
  const next = list[list.findIndex(({ line }) => line === block.line) + 1];
  return next?.language === 'text' ? next.text : null;
}

async function runModule(block: Block): Promise<string> {
  const file = `${ROOT}out/docs/${block.page.replaceAll('/', '-')}-${block.line}.${block.language}`;
  writeFileSync(file, block.text);
  const log = vi.spyOn(console, 'log').mockImplementation(() => undefined);
  try {
    await import(pathToFileURL(file).href);
    return log.mock.calls.map((words) => `${words.join(' ').trimEnd()}\n`).join('');
  } finally {
    log.mockRestore();
  }
}

async function runCommand(line: string): Promise<string> {
  const [, ...args] = line.replace(/^npx /, '').split(/\s+/);
  // What is shown is the whole answer, however slow the machine is that runs this.
  const patient = args[0] === 'range' ? ['--seconds', '100'] : [];
  const { code, out, err } = await ran([...args, ...patient], folder);
  expect(err).toBe('');
  expect(code).toBeLessThan(2);
  return out;
}

async function runShell(block: Block): Promise<void> {
  const lines = block.text.split('\n').map((line) => line.replace(/\s+#.*$/, '').trim());
  const { scripts } = JSON.parse(readFileSync(`${ROOT}package.json`, 'utf8')) as { scripts: object };
  for (const line of lines.filter((one) => one !== '').flatMap((one) => one.split(' && '))) {
    if (/^(npx )?edgebite /.test(line)) {
      const out = await runCommand(line);
      const printed = printedAfter(block);
      if (printed !== null) expect(out.slice(0, printed.length)).toBe(printed);
    } else if (line.startsWith('npm run ')) {
      expect(Object.keys(scripts)).toContain(line.split(' ')[2]);
    } else {
      expect(['npm ci', 'npm cit', 'npm install @edgebite/core @edgebite/svg']).toContain(line);
    }
  }
}

/** The report on a job, or on one of the examples with some keys in place of its own. */
function reportOn(text: string): Report {
  const whole = text.trimStart().startsWith('{') ? text : `{${text}}`;
  const value = JSON.parse(whole) as Job;
  const jobs = 'edgebite' in value ? [value] : EXAMPLES.flatMap((example) => completed(value, example));
  let first: unknown = null;
  for (const job of jobs) {
    try {
      return examine(parseJob(job));
    } catch (error) {
      first ??= error;
    }
  }
  throw first;
}

/** An example with keys of a fragment, with and without what of it may name other setups and tools. */
function completed(fragment: Job, example: Job): readonly Job[] {
  const { setups: _setups, keepOut: _keepOut, tools: _tools, ...rest } = example;
  return [
    { ...example, ...fragment },
    { ...rest, ...fragment },
  ];
}

/** What is printed is compared where the block before it is run; a block that nothing prints lists folders. */
function checkText(block: Block): void {
  const list = blocksOf(block.page);
  const before = list[list.findIndex(({ line }) => line === block.line) - 1];
  if (before === undefined) {
    for (const line of block.text.trim().split('\n')) {
      const [folder = ''] = line.split(' ');
      expect(existsSync(`${ROOT}${folder}`), folder).toBe(true);
    }
    return;
  }
  const isModule = ['ts', 'js'].includes(before.language) && before.rest !== 'browser';
  expect(isModule || /^(npx )?edgebite /m.test(before.text), `what prints ${block.text}`).toBe(true);
}

describe('every block of code in the guides', () => {
  it.each(blocks)('%s', async (_, block) => {
    const { language, rest, text } = block;
    if (language === 'json' && /^ *"finished":/m.test(text)) {
      return expect(propose(parseAim(text)).ways).not.toEqual([]);
    }
    if (language === 'json') return expect(reportOn(text).steps).not.toEqual([]);
    if (language === 'sh') return runShell(block);
    if (language === 'text') return checkText(block);
    if (rest === 'browser') {
      // A page is needed to run it; `npm run docs` checks its types.
      expect((await transformWithOxc(text, `block.${language}`)).code).not.toBe('');
      return;
    }
    expect(['ts', 'js']).toContain(language);
    const printed = printedAfter(block);
    const out =
      rest === 'cjs'
        ? execFileSync(process.execPath, ['-e', text], { cwd: ROOT, encoding: 'utf8' })
        : await runModule(block);
    if (printed !== null) expect(out).toBe(printed);
  });
});
