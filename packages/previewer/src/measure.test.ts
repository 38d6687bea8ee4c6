import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { examine, type Measured, parseJob } from '@edgebite/core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { ran } from '../fixtures/ran.js';

/** A seat of radius 15 whose centre lies 4 over the back edge, with the part as drawn and turned round. */
const rail = (turn: 0 | 180) => ({
  edgebite: 1,
  name: 'Rail',
  units: 'mm',
  part: { outline: { rectangle: [80, 40] }, thickness: 20 },
  gauges: { pins: [8, 12] },
  tools: [
    {
      id: 'head',
      kind: 'boring head',
      toolMaterial: 'HSS',
      maxSpeed: 500,
      dial: { step: 0.02, on: 'diameter' },
      cuts: ['seat'],
    },
  ],
  setups: [
    {
      id: 'flat',
      turn,
      zero: {
        x: [{ touch: 'left', tip: 10, reads: 0, tolerance: 0.01 }],
        y: [{ touch: 'front', tip: 10, reads: 0, tolerance: 0.01 }],
      },
      cuts: ['seat'],
    },
  ],
  cuts: [
    { id: 'seat', kind: 'bore', center: [40, 44], diameter: 30, drawing: { radius: 0.05, place: 0.1 } },
    { id: 'hole', kind: 'bore', center: [15, 15], diameter: 8 },
  ],
});

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'edgebite-'));
});

afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

async function measure(turn: 0 | 180, ...args: readonly string[]) {
  writeFileSync(join(folder, 'rail.json'), JSON.stringify(rail(turn)));
  return ran(['measure', 'rail.json', ...args], folder, '');
}

/** The number of a way of the seat, from 1, by its kind. */
function wayOf(kind: string): { readonly number: number; readonly reading: number } {
  const ways = examine(parseJob(rail(0))).checks[0]?.ways ?? [];
  const at = ways.findIndex((way) => way.kind === kind);
  return { number: at + 1, reading: ways[at]?.reading ?? Number.NaN };
}

describe('edgebite measure', () => {
  it('lists the ways to measure a seat, with what they read and may read', async () => {
    const { code, out, err } = await measure(0, '--cut', 'seat');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    // By hand: the deepest place is 44 - 15 = 29 over the front, 11 under the back; 0.05 + 0.1 to either side.
    expect(out).toMatch(/11\.000 {2}10\.850 to 11\.150 .* down to the deepest place/);
    expect(out).toMatch(/29\.000 {2}28\.850 to 29\.150 .* what is left/);
    // 2 sqrt(15² - 4²) = 28.914 across the horns.
    expect(out).toMatch(/28\.914 .* from horn to horn/);
    expect(out).toContain('Stop the spindle');
  });

  it('plans a trial cut, with the next setting by what it reads', async () => {
    const { out } = await measure(0, '--cut', 'seat');
    expect(out).toContain('TRIAL CUT of seat');
    expect(out).toContain('Set head to 29.000 mm, 0.500 mm short in radius');
    // By hand: under the face by 2.7, 6.7 from the centre: 2 sqrt(14.5² - 6.7²) = 25.718, and 26 is a radius of 14.625.
    expect(out).toContain('it reads 25.718 if');
    // 0.375 is left, less 0.017 that reading and centre leave open: 35 graduations of 0.01 in radius.
    expect(out).toMatch(/^ +26\.000 +14\.625 +35 +0\.700 {2}0\.008 to 0\.042$/m);
  });

  it.each([
    { turn: 0, y: '49.100', by: '+0.100', was: '49.000' },
    // Turned round, the front of the part lies where its back was: 40 - 44 = -4, and 5 for half the tip.
    { turn: 180, y: '0.900', by: '-0.100', was: '1.000' },
  ] as const)(
    'gives the head its graduations and the readout its next number, turned by $turn',
    async ({ turn, y, by, was }) => {
      // What was cut stands 0.1 too deep and is 0.213 small in radius: centre at 43.9, radius 14.787.
      const left = 43.9 - 14.787;
      const depth = wayOf('left');
      const opening = wayOf('opening');
      const under = examine(parseJob(rail(0))).checks[0]?.ways[opening.number - 1]?.under ?? 0;
      const across = 2 * Math.sqrt(14.787 ** 2 - (43.9 - 40 + under) ** 2);
      const { code, out } = await measure(
        turn,
        '--cut',
        'seat',
        '--reading',
        `${depth.number}=${left}+-0.0001`,
        '--reading',
        `${opening.number}=${across}+-0.0001`,
      );
      expect(code).toBe(0);
      // 0.426 on the diameter: 21 graduations of 0.02.
      expect(out).toContain('open by 21 graduations, 0.420 mm on the dial (diameter)');
      expect(out.replaceAll(/\s+/g, ' ')).toContain(
        `from where it stood move Y by ${by} mm: to X 45.000 Y ${y} mm if that was X 45.000 Y ${was} mm.`,
      );
    },
  );

  it('corrects nothing where readings contradict each other, and ends with 1', async () => {
    const depth = wayOf('depth');
    const left = wayOf('left');
    const { code, out } = await measure(
      0,
      '--cut',
      'seat',
      '--reading',
      `${depth.number}=${depth.reading}`,
      '--reading',
      `${left.number}=${left.reading + 0.2}`,
    );
    expect(code).toBe(1);
    expect(out).toContain('CONTRADICTION');
    expect(out).toContain('None until the readings agree');
    expect(out).not.toContain('in place of');
  });

  it('says where one reading tells neither radius nor place', async () => {
    const { out } = await measure(0, '--cut', 'seat', '--reading', `${wayOf('depth').number}=10.9`);
    expect(out).toContain('do not tell the radius from the place');
    expect(out).toContain('stay where it stood');
  });

  it('says along which axes nothing was told of the place', async () => {
    const told = async (...kinds: readonly string[]) => {
      const readings = kinds
        .map(wayOf)
        .flatMap(({ number, reading }) => ['--reading', `${number}=${reading}`]);
      const { out } = await measure(0, '--cut', 'seat', ...readings);
      return /Along (.*?) of the drawing nothing was told/.exec(out.replace(/\s+/g, ' '))?.[1];
    };
    // By definition: a height over a chord moves with the arc and tells its radius; a depth then tells its place square
    // to the back edge, along y.
    expect(await told('height')).toBe('x and y');
    expect(await told('height', 'depth')).toBe('x');
  });

  it('says where the bore is over size, or already past the arc', async () => {
    const height = wayOf('height');
    const chord = examine(parseJob(rail(0))).checks[0]?.ways[height.number - 1]?.chord ?? 0;
    const at = (radius: number) => radius - Math.sqrt(radius ** 2 - (chord / 2) ** 2);
    const { code, out } = await measure(
      0,
      '--cut',
      'seat',
      '--reading',
      `${height.number}=${at(15.2)}+-0.001`,
    );
    expect(code).toBe(1);
    // Machinery's Handbook, 31st ed., p. 83: r = (c² + 4 h²) / 8 h. At the least it is the radius of the deepest height
    // that the reading allows.
    const deepest = at(15.2) + 0.001;
    const least = (chord ** 2 + 4 * deepest ** 2) / (8 * deepest);
    expect(out.replace(/\s+/g, ' ')).toContain(
      `over size by ${(least - 15).toFixed(3)} mm at least in radius`,
    );
  });

  it('prints JSON', async () => {
    const { out } = await measure(0, '--cut', 'seat', '--json', '--reading', `${wayOf('depth').number}=10.9`);
    const answer: Measured = JSON.parse(out);
    expect(answer.fit.radius).toBeNull();
    expect(answer.targets.map(({ setup }) => setup)).toEqual(['flat']);
  });

  it.each([
    { args: ['--cut', 'seet'], says: /--cut: there is no cut seet; there are seat, hole/ },
    { args: ['--cut', 'hole'], says: /hole leaves no hollow arc.*bore gauge/ },
    { args: ['--cut', 'seat', '--reading', '11'], says: /give the number of the way and what it read/ },
    { args: ['--cut', 'seat', '--reading', '99=11'], says: /there is no way 99/ },
    { args: ['--cut', 'seat', '--reading', '0=11'], says: /give a whole number from 1 on/ },
    { args: ['--cut', 'seat', '--reading', '1=abc'], says: /give a number/ },
    { args: ['--cut', 'seat', '--reading', '1=1.06'], says: /far from the/ },
    { args: ['--cut', 'seat', '--reading', '1=26.8+-0'], says: /needs a tolerance over 0/ },
    { args: ['--cut', 'seat', '--reading', '1=26.8', '--dial', '-1'], says: /one graduation is over 0/ },
    {
      args: ['--cut', 'seat', '--reading', '1=26.8', '--arc', '2'],
      says: /leaves 1 arcs?; there is no number 2/,
    },
  ])('refuses $args', async ({ args, says }) => {
    const { code, out, err } = await measure(0, ...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(says);
  });
});
