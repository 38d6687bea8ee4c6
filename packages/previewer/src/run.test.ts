import {
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { ran } from '../fixtures/ran.js';
import { run } from './run.js';

const example = (name: string): string =>
  fileURLToPath(new URL(`../../../examples/${name}`, import.meta.url));

const clean = {
  edgebite: 1,
  name: 'Plain plate',
  units: 'mm',
  part: { outline: { rectangle: [60, 40] }, thickness: 10 },
  cuts: [{ id: 'hole', kind: 'bore', center: [30, 20], diameter: 10 }],
};

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'edgebite-'));
});

afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const command = (args: readonly string[], input: string | Uint8Array = '') => ran(args, folder, input);

function saved(name: string, content: unknown): string {
  writeFileSync(join(folder, name), typeof content === 'string' ? content : JSON.stringify(content));
  return name;
}

describe('edgebite draw --zero', () => {
  it('draws how the zero of a setup is found', async () => {
    const file = example('ways-to-zero.json');
    const { code, out } = await command(['draw', file, '--zero', 'dowel', '-o', '-']);
    expect(code).toBe(0);
    expect(out).toContain('id="edgebite-zero-y-1"');
    expect((await command(['draw', file, '--zero', 'stop'])).out).toBe(
      'Drawing written to ways-to-zero-zero.svg\n',
    );
  });

  it('ends with 2 for a setup that is not there', async () => {
    const { code, err } = await command(['draw', example('ways-to-zero.json'), '--zero', 'stp']);
    expect(code).toBe(2);
    expect(err).toContain('--zero: setup is "stp"; the report has stop, edges, dowel, turned');
    const bare = await command(['draw', saved('plate.json', clean), '--zero', 'stop']);
    expect(bare.err).toContain('--zero: the report has no setups');
  });
});

describe('--twin', () => {
  const handed = { ...clean, twin: { swaps: 'left and right', name: 'Other hand' } };

  it('is of the mirrored part, in every command', async () => {
    const file = saved('plate.json', { ...handed, cuts: [{ ...clean.cuts[0], center: [0, 20] }] });
    expect((await command(['check', file, '--twin'])).out).toMatch(/^Other hand\n/);
    expect((await command(['sheet', file, '--twin'])).out).toMatch(/hole +60\.000 +20\.000/);
    expect((await command(['draw', file, '--twin'])).out).toBe('Drawing written to plate-twin.svg\n');
    const range = ['--cut', 'hole', '--along', 'x', '--from', '58', '--to', '62'];
    expect((await command(['range', file, '--twin', ...range])).out).toContain('Other hand');
    const ways = await command(['measure', file, '--twin', '--cut', 'hole', '--json']);
    expect(JSON.parse(ways.out)[0].center).toEqual([60, 20]);
  });

  it('ends with 2 for a job that has none', async () => {
    const { code, err } = await command(['check', saved('plate.json', clean), '--twin']);
    expect(code).toBe(2);
    expect(err).toContain('--twin: plate.json has no twin; give it one');
  });
});

describe('edgebite check', () => {
  it('ends with 0 and prints the report of a job without findings', async () => {
    const { code, out, err } = await command(['check', saved('plate.json', clean)]);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^Plain plate\n/);
    expect(out).toContain('No findings.');
  });

  it('ends with 1 for findings as grave as asked, danger without asking', async () => {
    const file = example('saddle-block.json');
    const levels: readonly string[] = JSON.parse((await command(['check', file, '--json'])).out).findings.map(
      (finding: { level: string }) => finding.level,
    );
    expect(levels).toContain('danger');
    expect((await command(['check', file])).code).toBe(1);
    expect((await command(['check', file, '--fail-on', 'note'])).code).toBe(1);

    const thin = { ...clean, cuts: [{ ...clean.cuts[0], center: [30, 5.5] }] };
    saved('thin.json', thin);
    const { findings } = JSON.parse((await command(['check', 'thin.json', '--json'])).out);
    expect(findings.map((finding: { level: string }) => finding.level)).toEqual(['check']);
    expect((await command(['check', 'thin.json'])).code).toBe(0);
    expect((await command(['check', 'thin.json', '--fail-on', 'check'])).code).toBe(1);
    expect((await command(['check', 'thin.json', '--fail-on', 'note'])).code).toBe(1);
  });

  it('prints the whole report as JSON, from standard input too', async () => {
    const fromFile = await command(['check', '--json', saved('plate.json', clean)]);
    const fromInput = await command(['check', '-', '--json'], JSON.stringify(clean));
    expect(fromInput).toEqual(fromFile);
    expect(JSON.parse(fromFile.out)).toMatchObject({ edgebite: 1, name: 'Plain plate', units: 'mm' });
  });

  it('says every fault on a line of its own, with its path, and ends with 2', async () => {
    const bad = {
      ...clean,
      part: { ...clean.part, thickness: -3 },
      cuts: [...clean.cuts, { ...clean.cuts[0], diameter: 0 }],
    };
    const { code, out, err } = await command(['check', saved('bad.json', bad)]);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    const lines = err.trimEnd().split('\n');
    expect(lines.every((line) => line.startsWith('edgebite: bad.json: /'))).toBe(true);
    for (const path of ['/part/thickness', '/cuts/1/diameter', '/cuts/1/id']) {
      expect(lines.filter((line) => line.includes(` ${path}: `))).toHaveLength(1);
    }
  });

  it.each([
    ['no JSON', '{'],
    ['nothing', ''],
    ['a list', '[]'],
  ])('refuses %s in one clear line', async (_, text) => {
    const { code, out, err } = await command(['check', '-'], text);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/^edgebite: standard input: [^\n]+\n/);
    expect(err).not.toMatch(/\n {4}at /);
  });

  it('refuses what is no UTF-8, a folder, and a file that is not there', async () => {
    expect(await command(['check', '-'], Uint8Array.of(0xff, 0xfe, 0x7b))).toMatchObject({
      code: 2,
      err: 'edgebite: standard input: is not UTF-8 text; save it as UTF-8\n',
    });
    expect(await command(['check', '.'])).toMatchObject({
      code: 2,
      err: 'edgebite: .: is a folder; name a file\n',
    });
    expect(await command(['check', 'none.json'])).toMatchObject({
      code: 2,
      err: 'edgebite: none.json: there is no such file or folder\n',
    });
  });

  it('refuses a very large file by its size, and endless input when it has had enough', async () => {
    saved('large.json', '');
    truncateSync(join(folder, 'large.json'), 200_000_000);
    const words = 'is too large; a job has 80000000 bytes at most\n';
    expect(await command(['check', 'large.json'])).toMatchObject({
      code: 2,
      err: `edgebite: large.json: ${words}`,
    });
    let given = 0;
    const endless = (async function* () {
      for (;;) {
        given++;
        yield new Uint8Array(1_000_000);
      }
    })();
    let err = '';
    const code = await run(['check', '-'], {
      input: endless,
      folder,
      out: () => {},
      err: (text) => {
        err += text;
      },
    });
    expect({ code, err }).toEqual({ code: 2, err: `edgebite: standard input: ${words}` });
    expect(given).toBe(81);
  });
});

describe('edgebite draw', () => {
  it('writes a drawing named after the job into the folder, and says so', async () => {
    const { code, out } = await command(['draw', saved('plate.json', clean)]);
    expect({ code, out }).toEqual({ code: 0, out: 'Drawing written to plate.svg\n' });
    expect(readdirSync(folder).sort()).toEqual(['plate.json', 'plate.svg']);
    expect(readFileSync(join(folder, 'plate.svg'), 'utf8')).toMatch(/^<svg [\s\S]*<\/svg>\n$/);
  });

  it('writes where it is told, over an older drawing, through a link, or to standard output', async () => {
    saved('plate.json', clean);
    saved('old.svg', 'old');
    symlinkSync(join(folder, 'old.svg'), join(folder, 'link.svg'));
    expect((await command(['draw', 'plate.json', '-o', 'link.svg'])).code).toBe(0);
    const svg = readFileSync(join(folder, 'old.svg'), 'utf8');
    expect(svg).toMatch(/^<svg /);
    expect(readdirSync(folder).sort()).toEqual(['link.svg', 'old.svg', 'plate.json']);
    const { out } = await command(['draw', '-', '--output', '-'], JSON.stringify(clean));
    expect(out).toBe(svg);
  });

  it('draws on the sheet that is asked for', async () => {
    const { out } = await command(
      ['draw', '-', '-o', '-', '--sheet', 'A3', '--upright'],
      JSON.stringify(clean),
    );
    expect(out).toContain('width="297mm" height="420mm"');
  });

  it('draws in the colours that are asked for', async () => {
    const draw = async (theme: string): Promise<{ code: number; out: string }> =>
      command(['draw', '-', '-o', '-', '--sheet', 'Letter', '--theme', theme], JSON.stringify(clean));
    expect((await draw('dark')).out).toContain('fill="#171d21"');
    expect((await draw('mono')).out).not.toContain('#1b2730');
    expect((await draw('sepia')).code).toBe(2);
  });

  it('writes nothing on a fault of the job, and leaves an older drawing alone', async () => {
    saved('bad.json', { ...clean, units: 'cubit' });
    saved('bad.svg', 'old');
    const { code, out, err } = await command(['draw', 'bad.json']);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/^edgebite: bad\.json: \/units: /);
    expect(readFileSync(join(folder, 'bad.svg'), 'utf8')).toBe('old');
    expect(readdirSync(folder).sort()).toEqual(['bad.json', 'bad.svg']);
  });

  it('never writes over a folder, a device, or the job', async () => {
    saved('plate.json', clean);
    await mkdir(join(folder, 'plate.svg'));
    expect(await command(['draw', 'plate.json'])).toMatchObject({
      code: 2,
      err: 'edgebite: plate.svg: is a folder; name a file\n',
    });
    expect(await command(['draw', 'plate.json', '-o', '/dev/null'])).toMatchObject({
      code: 2,
      err: 'edgebite: /dev/null: is not a plain file; use -o - for standard output\n',
    });
    expect(await command(['draw', 'plate.json', '-o', 'plate.json'])).toMatchObject({
      code: 2,
      err: 'edgebite: plate.json: is the job itself; name another file with -o\n',
    });
    expect(await command(['draw', 'plate.json', '-o', 'none/plate.svg'])).toMatchObject({
      code: 2,
      err: 'edgebite: none/plate.svg: there is no such file or folder\n',
    });
    expect(JSON.parse(readFileSync(join(folder, 'plate.json'), 'utf8'))).toEqual(clean);
    expect(readdirSync(folder).sort()).toEqual(['plate.json', 'plate.svg']);
  });
});

describe('edgebite schema', () => {
  it('prints the JSON Schema of jobs and of reports', async () => {
    for (const [args, title] of [
      [['schema'], 'edgebite job, version 1'],
      [['schema', '--report'], 'edgebite report, version 1'],
    ] as const) {
      const { code, out } = await command(args);
      expect(code).toBe(0);
      expect(JSON.parse(out)).toMatchObject({
        $schema: 'https://json-schema.org/draft/2020-12/schema',
        title,
      });
    }
  });
});

describe('the command line', () => {
  it('helps: with each command, its exit codes, and nothing on standard error', async () => {
    const { code, out, err } = await command(['--help']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    for (const words of ['check', 'draw', 'schema', 'Ends with 0']) expect(out).toContain(words);
    for (const [name, option] of [
      ['check', '--fail-on'],
      ['draw', '--output'],
      ['schema', '--report'],
    ] as const) {
      const help = await command([name, '--help']);
      expect(help.code).toBe(0);
      expect(help.out).toContain(option);
    }
  });

  it('tells its version, that of the package', async () => {
    const text = readFileSync(new URL('../package.json', import.meta.url), 'utf8');
    expect(await command(['--version'])).toEqual({ code: 0, out: `${JSON.parse(text).version}\n`, err: '' });
  });

  it.each([
    [[]],
    [['chekc', 'a.json']],
    [['check']],
    [['check', 'a.json', 'b.json']],
    [['check', 'a.json', '--fail-on', 'rarely']],
    [['draw', 'a.json', '--sheet', 'A9']],
    [['draw', 'a.json', '--color']],
  ])('ends with 2 and a hint for %j', async (args) => {
    const { code, out, err } = await command(args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/error: |Usage: /);
  });
});
