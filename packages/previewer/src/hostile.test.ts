import { spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  linkSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { built } from '../fixtures/built.js';
import { ran } from '../fixtures/ran.js';
import { saveWhole } from './save.js';

/*
 * What the system has against a command: full disks, folders that go, files out of reach, interrupts, and text that a
 * terminal would obey. The command itself is started for these, from its build.
 */

const COMMAND = fileURLToPath(new URL('../bin/edgebite.js', import.meta.url));
const EXAMPLE = fileURLToPath(new URL('../../../examples/saddle-block.json', import.meta.url));

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'edgebite-'));
});

afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

/** A shell command with `$E` as edgebite and `$JOB` as a job. */
function shell(script: string, cwd = folder): { code: number | null; out: string; err: string } {
  const { status, stdout, stderr } = spawnSync('bash', ['-c', script], {
    cwd,
    encoding: 'utf8',
    env: { ...process.env, E: `${process.execPath} ${COMMAND}`, JOB: EXAMPLE },
  });
  return { code: status, out: stdout, err: stderr };
}

const inside = (name: string) => join(folder, name);

describe('a full disk', () => {
  it('on standard output is told, with 3, whatever is printed', () => {
    for (const args of [
      'check $JOB',
      'check $JOB --json',
      'sheet $JOB',
      'schema',
      '--help',
      'draw $JOB -o -',
    ]) {
      const { code, err } = shell(`$E ${args} > /dev/full`);
      expect([args, code]).toEqual([args, 3]);
      expect(err).toBe('edgebite: standard output: the disk is full; what is there is not all of it\n');
    }
  });

  it('of which a part is free takes a part, and is told', () => {
    const limited = shell('trap "" XFSZ; ulimit -f 4; $E sheet $JOB --format html > sheet.html');
    expect(limited.code).toBe(3);
    expect(limited.err).toMatch(/^edgebite: standard output: .*; what is there is not all of it\n$/);
    expect(statSync(inside('sheet.html')).size).toBeLessThanOrEqual(4096);
  });

  it('leaves nothing of a file that does not fit, and what was there before', () => {
    writeFileSync(inside('sheet.html'), 'as it was');
    const limited = shell('trap "" XFSZ; ulimit -f 4; $E sheet $JOB --format html -o sheet.html');
    expect(limited.code).toBe(3);
    expect(limited.err).toMatch(/^edgebite: sheet\.html: /);
    expect(readFileSync(inside('sheet.html'), 'utf8')).toBe('as it was');
    expect(readdirSync(folder)).toEqual(['sheet.html']);
  });
});

/** A disk of 16 kB, where this process may make one; else a limit on each file is what stands for it. */
function onSmallDisk(script: string): ReturnType<typeof shell> & { readonly left: readonly string[] } {
  mkdirSync(inside('disk'));
  const mounted = shell('mount -t tmpfs -o size=16k,nr_inodes=8 tmpfs disk').code === 0;
  try {
    const limit = mounted ? '' : 'trap "" XFSZ; ulimit -f 4; ';
    const done = shell(`${limit}${script}`, inside('disk'));
    return { ...done, left: readdirSync(inside('disk')).sort() };
  } finally {
    if (mounted) shell('umount disk');
  }
}

describe('a disk with little room', () => {
  it.each([
    ['a sheet', '$E sheet $JOB --format html -o new.html'],
    ['a drawing', '$E draw $JOB -o new.svg'],
    ['a strip', '$E range $JOB --cut pin --along x --from 50 --to 95 --svg new.svg --seconds 100'],
  ])('keeps what was there, and no part of %s', (_, script) => {
    const { code, out, err, left } = onSmallDisk(
      `echo as it was > old.txt; ${script}; code=$?; cat old.txt; exit $code`,
    );
    expect(err).toMatch(/^edgebite: new\.\w+: (the disk is full|the file would be larger than it may be)\n$/);
    expect([code, out]).toEqual([3, 'as it was\n']);
    expect(left).toEqual(['old.txt']);
  });

  it('takes a part of what is sent to it by the shell, and that is told', () => {
    const { code, err } = onSmallDisk('$E draw $JOB -o - > new.svg');
    expect(err).toMatch(/^edgebite: standard output: .*; what is there is not all of it\n$/);
    expect(code).toBe(3);
  });
});

describe('a reader that goes away', () => {
  it('is no fault', () => {
    const { code, out, err } = shell('set -o pipefail; $E sheet $JOB --format html | head -c 20');
    expect([code, out.length, err]).toEqual([0, 20, '']);
  });

  it('gets all of a long text where it is slow', () => {
    const { out } = shell('$E check $JOB --json | (sleep 1; cat) | wc -c');
    expect(Number(out)).toBe(Buffer.byteLength(shell('$E check $JOB --json').out));
  });
});

describe('a folder that is gone', () => {
  it('is told without a trace of code', () => {
    mkdirSync(inside('gone'));
    const { code, err } = shell('cd gone; rmdir ../gone; $E check job.json');
    expect(code).toBe(3);
    expect(err).toBe(
      'edgebite: the folder that edgebite was started in is not there any more; go to another one\n',
    );
  });
});

const sheet = (...args: readonly string[]) => ran(['sheet', EXAMPLE, ...args], folder);

describe('a file that is written anew', () => {
  it('keeps its rights', async () => {
    writeFileSync(inside('sheet.txt'), 'old');
    chmodSync(inside('sheet.txt'), 0o640);
    expect((await sheet('-o', 'sheet.txt')).code).toBe(0);
    expect(statSync(inside('sheet.txt')).mode & 0o777).toBe(0o640);
  });

  it('is refused if it may only be read', async () => {
    writeFileSync(inside('sheet.txt'), 'old');
    chmodSync(inside('sheet.txt'), 0o444);
    expect(await sheet('-o', 'sheet.txt')).toMatchObject({
      code: 3,
      err: 'edgebite: sheet.txt: may only be read; name another file\n',
    });
    expect(readFileSync(inside('sheet.txt'), 'utf8')).toBe('old');
  });

  it('stays behind its link, which may lead to nothing yet', async () => {
    mkdirSync(inside('shop'));
    symlinkSync('shop/sheet.txt', inside('link'));
    for (let k = 0; k < 2; k++) {
      expect((await sheet('-o', 'link')).code).toBe(0);
      expect(readlinkSync(inside('link'))).toBe('shop/sheet.txt');
      expect(readFileSync(inside('shop/sheet.txt'), 'utf8')).toContain('Saddle block');
    }
    symlinkSync('round', inside('round'));
    expect((await sheet('-o', 'round')).code).toBe(2);
  });

  it('is refused where another name would keep the old text', async () => {
    writeFileSync(inside('sheet.txt'), 'old');
    linkSync(inside('sheet.txt'), inside('other.txt'));
    expect((await sheet('-o', 'sheet.txt')).err).toContain('has other names besides');
    expect(readFileSync(inside('other.txt'), 'utf8')).toBe('old');
  });

  it('is told from a folder, by its name too', async () => {
    mkdirSync(inside('shop'));
    for (const name of ['shop', 'shop/', 'new/']) {
      const { code, err } = await sheet('-o', name);
      expect([name, code]).toEqual([name, 2]);
      expect(err).toContain('folder; name a file');
    }
    expect(await sheet('-o', '')).toMatchObject({ code: 2, err: 'edgebite: -o: is empty; name a file\n' });
    expect(readdirSync(folder)).toEqual(['shop']);
  });

  it('may have a name as long as names can be', async () => {
    const name = `${'機'.repeat(83)}.txt`;
    expect((await sheet('-o', name)).code).toBe(0);
    expect(readdirSync(folder)).toEqual([name]);
  });
});

describe('an interrupt', () => {
  it.each(['SIGINT', 'SIGTERM'] as const)('by %s leaves nothing behind', async (signal) => {
    const listeners = process.listenerCount(signal);
    // The text is so long that it is still being written when the signal comes.
    const script = `
      import { saveWhole } from ${JSON.stringify(built('save'))};
      await saveWhole(${JSON.stringify(inside('big.txt'))}, 'big.txt', 'x'.repeat(400_000_000));
    `;
    const child = spawn(process.execPath, ['--input-type=module', '-e', script]);
    const ended = new Promise<string | null>((done) => child.on('exit', (_, by) => done(by)));
    while (readdirSync(folder).length === 0) await new Promise((next) => setImmediate(next));
    child.kill(signal);
    expect(await ended).toBe(signal);
    expect(readdirSync(folder)).toEqual([]);
    expect(process.listenerCount(signal)).toBe(listeners);
  });

  it('of a command leaves what was there, or all that is new', async () => {
    writeFileSync(inside('old.html'), 'as it was');
    const args = [COMMAND, 'sheet', EXAMPLE, '--format', 'html', '-o', 'old.html'];
    // From before it reads the job to after it has written: each ends by the signal, or was quicker.
    for (const wait of [50, 150, 300, 600, 1200]) {
      const child = spawn(process.execPath, args, { cwd: folder, stdio: 'ignore' });
      const ended = new Promise<string | number | null>((done) =>
        child.on('exit', (code, by) => done(by ?? code)),
      );
      setTimeout(() => child.kill('SIGINT'), wait);
      expect(['SIGINT', 0]).toContain(await ended);
      expect(readdirSync(folder)).toEqual(['old.html']);
      expect(readFileSync(inside('old.html'), 'utf8')).toMatch(/^as it was$|<\/html>\n$/);
    }
  });

  it('is heard as ever once a file is written', async () => {
    const before = process.listenerCount('SIGINT');
    await saveWhole(inside('a.txt'), 'a.txt', 'text');
    expect(process.listenerCount('SIGINT')).toBe(before);
    expect(existsSync(inside('a.txt'))).toBe(true);
  });
});

describe('control characters', () => {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  const OBEYED = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/;
  const EVIL = '\u001b]0;title\u0007\u001b[31m\u009b31m\u007f\u202egnor';

  it('of names, arguments and file names never come out', async () => {
    const job = {
      edgebite: 1,
      name: EVIL,
      units: 'mm',
      part: { outline: { rectangle: [60, 40] }, thickness: 10, material: EVIL },
      cuts: [{ id: 'a', kind: 'bore', center: [30, 20], diameter: 10 }],
    };
    writeFileSync(inside('job.json'), JSON.stringify(job));
    writeFileSync(inside(`${EVIL}.json`), JSON.stringify(job));
    writeFileSync(inside('bad.json'), JSON.stringify({ ...job, [EVIL]: 1, units: EVIL }));
    for (const args of [
      ['check', 'job.json'],
      ['check', 'job.json', '--json'],
      ['check', `${EVIL}.json`],
      ['check', `no${EVIL}.json`],
      ['check', 'bad.json'],
      ['sheet', 'job.json'],
      ['sheet', 'job.json', '--format', 'csv'],
      ['sheet', 'job.json', '--format', 'html'],
      ['sheet', 'job.json', '-o', `${EVIL}.txt`],
      ['draw', 'job.json', '-o', '-'],
      ['draw', `${EVIL}.json`],
      ['range', 'job.json', '--cut', EVIL, '--along', 'x', '--from', '1', '--to', '2'],
      ['range', 'job.json', '--cut', 'a', '--along', 'x', '--from', EVIL, '--to', '2'],
      [EVIL],
      ['check', '--no-such', EVIL],
      ['check', 'job.json', `--${EVIL}`],
    ]) {
      const { out, err } = await ran(args, folder);
      // Lines of CSV end with both marks.
      expect(out.replaceAll('\r\n', '\n'), `out of ${args[0]} ${args[1]}`).not.toMatch(OBEYED);
      expect(err, `err of ${args[0]} ${args[1]}`).not.toMatch(OBEYED);
      expect(out.length + err.length).toBeGreaterThan(0);
    }
  });

  it('of JSON are given back by a reader', async () => {
    const job = {
      edgebite: 1,
      name: EVIL,
      units: 'mm',
      part: { outline: { circle: 9 }, thickness: 1 },
      cuts: [],
    };
    const { out } = await ran(['check', '-', '--json'], folder, JSON.stringify(job));
    expect(JSON.parse(out).name).toBe(EVIL);
  });
});

describe('a fault of edgebite itself', () => {
  it('ends with 3, since neither the job nor the arguments can help it', async () => {
    const broken = { input: [] as never, folder, out: () => {}, err: () => {} };
    const { run } = await import('./run.js');
    const failing = {
      ...broken,
      get folder(): string {
        throw new TypeError('what cannot be');
      },
    };
    expect(await run(['check', 'job.json'], failing)).toBe(3);
  });
});
