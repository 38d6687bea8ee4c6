import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseJob, rangeOf } from '@edgebite/core';
import { drawRange } from '@edgebite/svg';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { ran } from '../fixtures/ran.js';
import { rangeText } from './text/range.js';

/*
 * A hole of radius 8 over an edge at y = 0, with webs under 2 and knife edges under 30 degrees: it touches the edge at
 * 8, crosses it at 30 degrees at 8 cos 30 = 6.928, and leaves a web of 2 at 10. It grazes within 0.1 of -8.
 */
const plate = {
  edgebite: 1,
  name: 'Breast beam cap',
  units: 'mm',
  part: { outline: { rectangle: [100, 60] }, thickness: 12 },
  limits: { web: 2, knifeEdge: 30 },
  resolution: 0.1,
  cuts: [{ id: 'hole', kind: 'bore', center: [50, 20], diameter: 16 }],
};

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'edgebite-'));
  writeFileSync(join(folder, 'plate.json'), JSON.stringify(plate));
});

afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const command = (...args: readonly string[]) => ran(args, folder, JSON.stringify(plate));

const range = (...args: readonly string[]) => command('range', 'plate.json', ...args);
const hole = ['--cut', 'hole', '--along', 'y'];
const text = (center: number, from: number, to: number) =>
  rangeText(
    rangeOf(parseJob({ ...plate, cuts: [{ ...plate.cuts[0], center: [50, center] }] }), {
      cut: 'hole',
      along: 'y',
      from,
      to,
    }),
  );

describe('edgebite range', () => {
  it('prints where the value stands, every interval with its outcome, and every value where something changes', async () => {
    const { code, out, err } = await range(...hole, '--from', '-20', '--to', '30');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out.slice(0, out.indexOf('\n\nSafe means'))).toBe(
      `Breast beam cap
cut hole, centre along y from -20.000 to 30.000 mm; webs under 2.000 mm; knife
edges under 30.0°

NOT ASKED: tools, speeds and feeds, passes, load on the tool, tolerances of webs
           and edges from the setups, rounding of the readout. Dangers of these
           are looked for at some values of a safe interval only; one may lie
           between. Run check with the value that you choose.

NOW 20.000, SAFE
  down  10.000 mm to the next change, at 10.000; beyond it not safe: inside;
        kept piece; adds thin web between cut hole and the front
  up    no change before the range ends, at 30.000

6 INTERVALS, 2 safe
        from       to  safe  to the part; what is left; what the cut adds
     -20.000   -8.100  no    clear; kept piece; adds cut misses
      -8.100   -7.900  no    grazes; kept piece; adds cut grazes
      -7.900    6.928  SAFE  breaks out; kept piece
       6.928    8.000  no    breaks out; kept piece; adds 2 × knife edge between
                             cut hole and the front
       8.000   10.000  no    inside; kept piece; adds thin web between cut hole
                             and the front
now   10.000   30.000  SAFE  inside; kept piece

CHANGES, as the number grows
     -8.100  grazes, before: clear
     -7.900  breaks out, before: grazes
      6.928  comes: 2 × knife edge between cut hole and the front
      8.000  inside, before: breaks out; comes: thin web between cut hole and
             the front; goes: 2 × knife edge between cut hole and the front
     10.000  goes: thin web between cut hole and the front`,
    );
    for (const line of out.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
  });

  it('tells of a value at a change, in a thin stretch, and outside of the range', () => {
    expect(text(8, 0, 30)).toContain(
      `NOW 8.000, AT A CHANGE: two edges touch there
  down  for 1.072 mm not safe: breaks out; kept piece; adds 2 × knife edge
        between cut hole and the front
  up    for 2.000 mm not safe: inside; kept piece; adds thin web between cut
        hole and the front
`,
    );
    expect(text(8, 0, 30)).toContain('\nnow   8.000  inside, before: breaks out;');
    expect(text(8, 7, 9)).toContain('\n  down  to the end of the range not safe: breaks out;');
    expect(text(9.25, 0, 30)).toContain(
      '\nNOW 9.250, NOT SAFE\n  down  1.250 mm to the next change, at 8.000; beyond it not safe: breaks out;',
    );
    expect(text(9.25, 0, 30)).toContain(
      '\n  up    0.750 mm to the next change, at 10.000; beyond it safe: inside; kept\n        piece\n',
    );
    expect(text(20, 22, 30)).toContain('NOW 20.000, outside of the range: under it by 2.000 mm\n');
    expect(text(20, 22, 30)).toContain('1 INTERVAL, all safe\n');
    expect(text(20, 22, 30)).toContain('NO CHANGES: all of the range comes to the same.');
    expect(text(20, 0, 5)).toContain('NOW 20.000, outside of the range: over it by 15.000 mm\n');
  });

  it('ends with 1 where none of the range is safe', async () => {
    const { code, out } = await range(...hole, '--from', '8.5', '--to', '9.5');
    expect(code).toBe(1);
    expect(out).toContain('1 INTERVAL, none of them safe');
  });

  it('prints the answer of the library as JSON, for a job from standard input too', async () => {
    const wanted = rangeOf(parseJob(plate), { cut: 'hole', along: 'diameter', from: 10, to: 60 });
    const { code, out } = await command(
      ...['range', '-', '--cut', 'hole', '--along', 'diameter', '--from', '10', '--to', '6e1', '--json'],
    );
    expect(code).toBe(0);
    expect(JSON.parse(out)).toEqual(wanted);
  });

  it('draws the strip into a file', async () => {
    const { code, out } = await range(...hole, '--from', '0', '--to', '30', '--svg', 'strip.svg');
    expect(code).toBe(0);
    expect(out).toMatch(/^Breast beam cap\n/);
    const answer = rangeOf(parseJob(plate), { cut: 'hole', along: 'y', from: 0, to: 30 });
    expect(readFileSync(join(folder, 'strip.svg'), 'utf8')).toBe(`${drawRange(answer)}\n`);
  });

  it.each([
    [
      ['--cut', 'bore', '--along', 'y', '--from', '0', '--to', '1'],
      '--cut: there is no cut bore; the job has hole',
    ],
    [[...hole, '--from', '5', '--to', '5'], '--to: is 5; it must be over from, 5'],
    [[...hole, '--from', '12,5', '--to', '20'], '--from: is "12,5"; give a number, such as 12.5 or -3'],
    [[...hole, '--from', '0', '--to', '0x10'], '--to: is "0x10"; give a number'],
    [[...hole, '--from', '0', '--to', '1e999'], '--to: is Infinity; it must be a number up to'],
    [[...hole, '--from', '', '--to', '1'], '--from: is ""; give a number'],
    [
      ['--cut', 'hole', '--along', 'diameter', '--from', '-1', '--to', '5'],
      '--from: with diameter -1 cut hole is too small',
    ],
    [['--cut', 'hole', '--along', 'z', '--from', '0', '--to', '1'], "argument 'z' is invalid"],
    [['--along', 'y', '--from', '0', '--to', '1'], "required option '--cut <id>' not specified"],
    [['--cut', 'hole', '--from', '0', '--to', '1'], "required option '--along <number>' not specified"],
    [[...hole, '--to', '1'], "required option '--from <value>' not specified"],
    [
      [...hole, '--from', '0', '--to', '1', '--svg', '-'],
      '--svg: standard output has the answer already; name a file',
    ],
    [
      [...hole, '--from', '0', '--to', '1', '--svg', 'plate.json'],
      'plate.json: is the job itself; name another file with --svg',
    ],
    [
      [...hole, '--from', '0', '--to', '1', '--svg', 'no/strip.svg'],
      'no/strip.svg: there is no such file or folder',
    ],
    [
      [...hole, '--from', '0', '--to', '1', '--svg', '/dev/null'],
      '/dev/null: is not a plain file; name another with --svg',
    ],
  ])('ends with 2, says what is wrong and writes nothing: %j', async (args, message) => {
    const { code, out, err } = await range(...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(message);
    expect(readdirSync(folder)).toEqual(['plate.json']);
    expect(existsSync('/dev/null')).toBe(true);
  });

  it('begins as the guide shows it', async () => {
    const guide = readFileSync(
      fileURLToPath(new URL('../../../docs/safe-interval.md', import.meta.url)),
      'utf8',
    );
    const args = /npx edgebite (range examples\/.*)/.exec(guide)?.[1] ?? '';
    const shown = /```text\n([\s\S]*?)```/.exec(guide)?.[1] ?? '';
    const file = fileURLToPath(new URL('../../../examples/row-of-bites.json', import.meta.url));
    const { out } = await command(
      ...args.replace('examples/row-of-bites.json', file).split(' '),
      '--seconds',
      '100',
    );
    expect(shown).toMatch(/^Ratchet bar/);
    expect(out.slice(0, shown.length)).toBe(shown);
  });

  it('fits the examples into 80 columns', async () => {
    for (const [name, cut, along, from, to] of [
      ['saddle-block', 'pin', 'x', '50', '95'],
      ['held-slug', 'drum', 'diameter', '12', '60'],
      ['treadle-bracket-inch', 'cord', 'y', '-0.5', '2'],
    ] as const) {
      const file = fileURLToPath(new URL(`../../../examples/${name}.json`, import.meta.url));
      const { out, err } = await command(
        'range',
        file,
        '--cut',
        cut,
        '--along',
        along,
        '--from',
        from,
        '--to',
        to,
        '--seconds',
        '100',
      );
      expect(err).toBe('');
      expect(out).toMatch(/\d+ INTERVALS, /);
      for (const line of out.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
    }
  });
});
