import { spawn } from 'node:child_process';
import { once } from 'node:events';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { built } from '../../packages/previewer/fixtures/built.js';
import { ran } from '../../packages/previewer/fixtures/ran.js';
import { saveWhole } from '../../packages/previewer/src/save.js';

const SAVE = built('save');

const JOB = {
  edgebite: 1,
  name: '../../escape\u0000\n/etc/passwd',
  units: 'mm',
  part: { outline: { rectangle: [80, 30] }, thickness: 12 },
  cuts: [],
};

let top: string;
let folder: string;

beforeEach(() => {
  top = mkdtempSync(join(tmpdir(), 'edgebite-save-'));
  folder = join(top, 'a', 'b');
  mkdirSync(folder, { recursive: true });
});

afterEach(() => {
  rmSync(top, { recursive: true, force: true });
});

/** All files under the folder that the test has, as paths from there. */
function files(): string[] {
  const found = readdirSync(top, { recursive: true, withFileTypes: true });
  return found
    .filter((entry) => !entry.isDirectory())
    .map((entry) => join(entry.parentPath, entry.name).slice(top.length + 1))
    .sort();
}

const command = (...args: readonly string[]) => ran(args, folder);

describe('where a drawing goes', () => {
  beforeEach(() => {
    writeFileSync(join(folder, 'plate.json'), JSON.stringify(JOB));
  });

  it('is never said by the job: not by its name, and not by the folder that it lies in', async () => {
    mkdirSync(join(top, 'jobs'));
    writeFileSync(join(top, 'jobs', '..plate.json'), JSON.stringify(JOB));
    expect((await command('draw', '../../jobs/..plate.json')).code).toBe(0);
    expect(files()).toEqual(['a/b/..plate.svg', 'a/b/plate.json', 'jobs/..plate.json']);
  });

  it('is where -o says and nowhere else, with nothing beside it', async () => {
    expect((await command('draw', 'plate.json', '-o', '../one.svg')).code).toBe(0);
    expect(files()).toEqual(['a/b/plate.json', 'a/one.svg']);
  });

  it('is never the job, by another way of writing its path or through a link', async () => {
    symlinkSync('plate.json', join(folder, 'link.svg'));
    symlinkSync(folder, join(top, 'short'));
    const before = readFileSync(join(folder, 'plate.json'), 'utf8');
    for (const name of ['plate.json', './/x/../plate.json', 'link.svg', '../../short/plate.json']) {
      const { code, err } = await command('draw', 'plate.json', '-o', name);
      expect([code, err]).toEqual([
        2,
        expect.stringContaining('is the job itself; name another file with -o'),
      ]);
    }
    expect(readFileSync(join(folder, 'plate.json'), 'utf8')).toBe(before);
  });

  it.each(['', '.', '..', '/', 'none/plate.svg', 'plate.json/x.svg', `${'x'.repeat(300)}.svg`, 'a\u0000b'])(
    'is refused for -o %j, and nothing is written',
    async (name) => {
      const before = files();
      const { code, err } = await command('draw', 'plate.json', '-o', name);
      expect(code).toBe(2);
      expect(err).toMatch(/^edgebite: /);
      expect(err).not.toContain('fault in edgebite itself');
      expect(files()).toEqual(before);
    },
  );
});

describe('a file that is being written', () => {
  const OLD = 'what was there before';

  /** Saves so many characters from a process of its own, under a limit of the shell if given. */
  function saving(length: number, limit = ''): ReturnType<typeof spawn> {
    const target = join(folder, 'plate.svg');
    const code =
      `import { saveWhole } from ${JSON.stringify(SAVE)}; process.stdout.write('go');` +
      `await saveWhole(${JSON.stringify(target)}, 'plate.svg', 'x'.repeat(${length}))`;
    const shell = `${limit} exec "$0" --input-type=module -e "$1"`;
    return spawn('/bin/sh', ['-c', shell, process.execPath, code], { cwd: dirname(SAVE) });
  }

  it('is the old one or the new one when the process is killed, never a half', async () => {
    const length = 30_000_000;
    for (const wait of [0, 5, 20, 60]) {
      writeFileSync(join(folder, 'plate.svg'), OLD);
      const child = saving(length);
      const ended = once(child, 'close');
      await once(child.stdout as NodeJS.ReadableStream, 'data');
      await new Promise((done) => setTimeout(done, wait));
      child.kill('SIGKILL');
      await ended;
      const text = readFileSync(join(folder, 'plate.svg'), 'utf8');
      expect(text === OLD || text.length === length).toBe(true);
    }
  });

  it('is the old one when there is no room, and nothing is left beside it', async () => {
    writeFileSync(join(folder, 'plate.svg'), OLD);
    // A limit on the size of files stands in for a full disk.
    const child = saving(5_000_000, 'ulimit -f 100;');
    const [code] = await once(child, 'close');
    expect(code).not.toBe(0);
    expect(readFileSync(join(folder, 'plate.svg'), 'utf8')).toBe(OLD);
    expect(files()).toEqual(['a/b/plate.svg']);
  });

  it('is not begun where it cannot take its name', async () => {
    const target = join(folder, 'plate.svg');
    mkdirSync(target);
    await expect(saveWhole(target, 'plate.svg', 'text')).rejects.toThrow(
      'plate.svg: is a folder; name a file',
    );
    expect(existsSync(join(target, 'text'))).toBe(false);
    expect(files()).toEqual([]);
  });

  it('is one whole text or the other when two are written at once', async () => {
    const target = join(folder, 'plate.svg');
    const texts = ['a', 'b', 'c'].map((letter) => letter.repeat(2_000_000));
    await Promise.all(texts.map((text) => saveWhole(target, 'plate.svg', text)));
    expect(texts).toContain(readFileSync(target, 'utf8'));
    expect(files()).toEqual(['a/b/plate.svg']);
  });
});
