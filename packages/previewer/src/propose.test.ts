import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { aimSchema, examine, parseAim, parseJob, propose } from '@edgebite/core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { ran } from '../fixtures/ran.js';

/** A plate with a hole of a drill's size and a seat in its end, which a head or a hollow cutter makes. */
const aim = {
  edgebite: 1,
  name: 'Treadle link',
  units: 'mm',
  blank: { rectangle: [90, 40] },
  finished: { svgPath: 'M0 0 H90 V8 A12 12 0 0 0 90 32 V40 H0 Z', holes: [{ circle: 10, at: [20, 20] }] },
  thickness: 10,
  material: 'mild steel',
  drawer: [
    { id: 'd10', kind: 'drill', toolMaterial: 'HSS', diameter: 10, reach: 80 },
    { id: 'r24', kind: 'annular cutter', toolMaterial: 'HSS', diameter: 24, wall: 4, reach: 25, teeth: 6 },
    {
      id: 'head',
      kind: 'boring head',
      toolMaterial: 'HSS',
      smallest: 10,
      largest: 50,
      bar: 60,
      maxSpeed: 900,
      tolerance: 0.03,
    },
  ],
};

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'edgebite-'));
  writeFileSync(join(folder, 'aim.json'), JSON.stringify(aim));
});

afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const command = (...args: readonly string[]) => ran(args, folder, JSON.stringify(aim));
const save = (name: string, value: object) => writeFileSync(join(folder, name), JSON.stringify(value));

describe('edgebite propose', () => {
  it('prints the ways side by side, and the cuts of each', async () => {
    const { code, out, err } = await command('propose', 'aim.json');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('Treadle link\n\n2 WAYS, the fewest dangers first');
    expect(out).toMatch(/^dangers +0 +1$/m);
    expect(out).toMatch(/^WAY 1\n1 {2}arc-1 bore {4}head\n2 {2}hole-1 drill {2}d10$/m);
    expect(out).toMatch(/^DANGER {2}Cut arc-1 ring sets slug-1 free/m);
    // Half of what the head may be off on the diameter.
    expect(out).toMatch(/^walls off by up to +0\.015 mm +0 mm$/m);
    expect(Math.max(...out.split('\n').map(({ length }) => length))).toBeLessThanOrEqual(80);
  });

  it('tells of pushes off stops where stops are named', async () => {
    save('stop.json', { ...aim, stops: ['front'] });
    const { out } = await command('propose', 'stop.json');
    // What lies left of a tool that turns clockwise is dragged away from the person.
    expect(out).toMatch(/^against a stop +1 +1$/m);
    expect((await command('propose', 'aim.json')).out).not.toContain('against a stop');
  });

  it('takes the drawer from a file that aims share', async () => {
    const { drawer, ...bare } = aim;
    save('bare.json', bare);
    save('tools.json', { edgebite: 1, units: 'mm', drawer });
    save('inch.json', { edgebite: 1, units: 'inch', drawer });
    save('bad.json', { edgebite: 1, units: 'mm', drawer: [{ ...drawer[1], wall: 12 }] });
    const shared = await command('propose', 'bare.json', '--drawer', 'tools.json');
    expect(shared).toEqual(await command('propose', 'aim.json'));
    const faults = [
      [['bare.json'], 'bare.json: /drawer: is missing'],
      [['aim.json', '--drawer', 'tools.json'], 'aim.json: /drawer: stands beside a shared drawer'],
      [
        ['bare.json', '--drawer', 'inch.json'],
        'bare.json: /units: is "mm", but the shared drawer is in inch',
      ],
      [['bare.json', '--drawer', 'bad.json'], 'bad.json: /drawer/0/wall: must be under half the diameter'],
      [['-', '--drawer', '-'], 'standard input can be the drawer'],
    ] as const;
    for (const [args, message] of faults) {
      const { code, err } = await command('propose', ...args);
      expect({ code, err }).toEqual({ code: 2, err: expect.stringContaining(message) });
    }
  });

  it('reads standard input, and prints JSON of the ways', async () => {
    const { code, out } = await command('propose', '-', '--json');
    const { ways, refusals } = JSON.parse(out) as {
      ways: { job: unknown; row: unknown }[];
      refusals: unknown[];
    };
    const own = propose(parseAim(aim));
    expect(code).toBe(0);
    expect(refusals).toEqual([]);
    expect(ways).toEqual(JSON.parse(JSON.stringify(own.ways.map(({ job, row }) => ({ job, row })))));
  });

  it('takes a shared drawer for the jobs that name its tools', async () => {
    const { drawer } = aim;
    await command('propose', 'aim.json', '--way', '1', '-o', 'way.json');
    const { drawer: _, ...bare } = JSON.parse(readFileSync(join(folder, 'way.json'), 'utf8')) as object & {
      drawer: unknown;
    };
    save('bare.json', bare);
    save('tools.json', { edgebite: 1, units: 'mm', drawer });
    for (const args of [['check'], ['sheet'], ['draw', '-o', '-'], ['compare', 'bare.json']] as const) {
      const [name, ...rest] = args;
      const own = await command(name, 'way.json', ...rest.map((word) => word.replace('bare', 'way')));
      const shared = await command(name, 'bare.json', ...rest, '--drawer', 'tools.json');
      expect(shared).toEqual(own);
      expect(shared.code).toBe(0);
      expect((await command(name, 'bare.json', ...rest)).err).toContain('but the job has no drawer');
    }
  });

  it('writes a way as a job that check takes', async () => {
    const said = await command('propose', 'aim.json', '--way', '2', '-o', 'job.json');
    expect(said).toEqual({ code: 0, out: 'Job written to job.json\n', err: '' });
    const report = examine(parseJob(readFileSync(join(folder, 'job.json'), 'utf8')));
    expect(report.pieces.map(({ role }) => role)).toEqual(['kept', 'slug']);
    const printed = await command('propose', 'aim.json', '--way', '2');
    expect(printed.out).toBe(readFileSync(join(folder, 'job.json'), 'utf8'));
  });

  it('says what the drawer cannot make, and ends with 1', async () => {
    save('short.json', { ...aim, drawer: aim.drawer.slice(0, 1) });
    const { code, out } = await command('propose', 'short.json');
    expect(code).toBe(1);
    expect(out).toContain('NOT TO BE MADE');
    expect(out.replace(/\s+/g, ' ')).toContain(
      'The arc arc-1, 24.000 mm across round (90.000, 20.000), is no size of any tool of the drawer. A hollow cutter of 24.000 mm, a boring head that can be set to it',
    );
  });

  it.each([
    [['--way', '3'], '--way: is "3"; there are 1 to 2'],
    [['--way', 'x'], '--way: is "x"; there are 1 to 2'],
    [['-o', 'job.json'], '-o: say with --way which way is to be written'],
    [['--way', '1', '-o', 'aim.json'], 'is the job itself'],
  ])('refuses %j', async (args, message) => {
    const { code, err } = await command('propose', 'aim.json', ...args);
    expect(code).toBe(2);
    expect(err).toContain(message);
  });

  it('refuses an aim with faults, with their places', async () => {
    save('bad.json', { ...aim, thickness: -1 });
    const { code, err } = await command('propose', 'bad.json');
    expect(code).toBe(2);
    expect(err).toMatch(/^edgebite: bad\.json: \/thickness: /);
  });
});

describe('edgebite compare', () => {
  const plate = {
    edgebite: 1,
    units: 'mm',
    part: { outline: { rectangle: [60, 40] }, thickness: 10 },
    cuts: [{ id: 'eye', kind: 'bore', center: [20, 20], diameter: 10 }],
  };

  it('finds parts the same that are made otherwise', async () => {
    const passes = { kind: 'open out', bite: 1, smallest: 6 };
    save('a.json', { ...plate, name: 'Straight' });
    const eyes = [
      { ...plate.cuts[0], id: 'first', diameter: 6 },
      { ...plate.cuts[0], passes },
    ];
    save('b.json', { ...plate, name: 'In passes', cuts: eyes });
    const { code, out } = await command('compare', 'a.json', 'b.json');
    expect(code).toBe(0);
    expect(out).toMatch(/^A {2}Straight\nB {2}In passes$/m);
    expect(out).toMatch(/^steps +1 +3$/m);
    expect(out).toContain('The finished parts are the same.');
  });

  it('tells the places where parts differ, at each height', async () => {
    save('a.json', plate);
    save('b.json', { ...plate, cuts: [{ ...plate.cuts[0], diameter: 12, depth: 4 }] });
    const { code, out } = await command('compare', 'a.json', 'b.json', '--json');
    const { differences } = JSON.parse(out) as { differences: { from: number; area: number }[] };
    expect(code).toBe(1);
    // A disc of 10 at the bottom, and a ring from 10 to 12 at the top: closed form.
    const areas = differences.map(({ area, ...rest }) => ({ ...rest, area: area / Math.PI }));
    expect(areas).toEqual([
      expect.objectContaining({ from: 0, to: 6, more: 'second', area: expect.closeTo(25, 9) }),
      expect.objectContaining({ from: 6, to: 10, more: 'first', area: expect.closeTo(11, 9) }),
    ]);
    const said = await command('compare', 'a.json', 'b.json');
    expect(said.out).toMatch(/at heights 0 to 6\.000 mm: B leaves metal that A does\s+not, 78\.54 mm²/);
  });

  it('wants both in one unit, and standard input but once', async () => {
    save('a.json', plate);
    save('b.json', { ...plate, units: 'inch' });
    const { code, err } = await command('compare', 'a.json', 'b.json');
    expect(code).toBe(2);
    expect(err).toContain('b.json: is in inch, a.json in mm');
    expect((await command('compare', '-', '-')).code).toBe(2);
  });
});

it('prints the schema of aims, which takes the aim', async () => {
  const { out } = await command('schema', '--aim');
  expect(JSON.parse(out)).toHaveProperty('title', 'edgebite aim, version 1');
  expect(aimSchema.safeParse(aim).success).toBe(true);
  expect((await command('schema', '--aim', '--report')).code).toBe(2);
});
