import { examine, JobError, parseJob, type Report } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { sheetOf } from '../../packages/previewer/src/sheet/model.js';
import { sheetText } from '../../packages/previewer/src/sheet/text.js';
import { textReport } from '../../packages/previewer/src/text/report.js';
import { codes } from './setup-jobs.js';

/*
 * A plate 12 thick on a parallel; a pocket 4 deep, 8 over the parallel. Heights worked by hand: each sum stands beside its
 * case. All are done a second time with the end of the tool as a height over feeler, part and parallel, see `placed`.
 */

type Plain = Record<string, unknown>;

const PARALLEL = { id: 'p', kind: 'parallel', shape: { rectangle: [80, 4], at: [0, 2] }, from: -20, to: 0 };

const job = (z: readonly object[], over: Plain = {}, cut: Plain = {}) => ({
  edgebite: 1,
  units: 'mm',
  part: { outline: { rectangle: [80, 30] }, thickness: 12, ...(over.part as object) },
  keepOut: [PARALLEL],
  setups: [
    {
      id: 's',
      ...(over.setup as object),
      zero: { x: [{ touch: 'left', tip: 10 }], y: [{ touch: 'front', tip: 10 }], z },
      cuts: ['a'],
    },
  ],
  cuts: [{ id: 'a', kind: 'bore', center: [40, 15], diameter: 8, depth: 4, ...cut }],
});

const depthIn = (report: Report) => report.setups[0]?.targets[0]?.depth;
const read = (input: object) => examine(parseJob(JSON.parse(JSON.stringify(input))));

const touch = (what: string, over: Plain = {}) => ({ touch: what, reads: 0, ...over });
const ACROSS = { measured: 11.9, from: 'bottom', to: 'top' };

/** What the readout shows with the end of the tool at a height over the parallel: the parts stacked up from there. */
function placed(list: readonly Plain[], height: (top: number) => number): number {
  let top = 12;
  const measured = list.find((one) => one.measured !== undefined);
  if (measured !== undefined) top = Number(measured.measured);
  const levelOf = (name: unknown) => (name === 'top' ? top : 0);
  let end = 0;
  let zero = 0;
  for (const one of list) {
    if (one.touch !== undefined) {
      // The feeler lies on the face, the end of the tool on the feeler.
      end = levelOf(one.touch) + Number(one.feeler ?? 0);
      zero = end - Number(one.reads ?? 0);
    } else if (one.move !== undefined) end += Number(one.move);
    else if (one.set !== undefined) zero = end - Number(one.set);
  }
  return height(top) - zero;
}

const BLIND = (top: number) => top - 4;

describe('a depth on the readout', () => {
  it.each<[string, Plain[], number, ((top: number) => number)?]>([
    // The tool rests on the top: 0 there, 4 below it -4.
    ['from the top', [touch('top')], -4],
    // 0.1 over the top it reads 0: the top is at -0.1, and 4 below that.
    ['from the top over a feeler', [touch('top', { feeler: 0.1 })], -4.1],
    // The parallel is at -0.1, and 12 - 4 = 8 over it.
    ['from a parallel over a feeler', [touch('p', { feeler: 0.1 })], 7.9],
    // The parallel at 50: 50 + 8.
    ['from a parallel that reads 50', [touch('p', { reads: 50 })], 58],
    ['from what the part lies on', [touch('bottom')], 8],
    // Moved 25 up from 0.1 over the top, and 25 set: the top at -0.1 as before.
    ['moved and set', [touch('top', { feeler: 0.1 }), { move: 25 }, { set: 25 }], -4.1],
    // Moved down by the feeler, and 0 set: the top at 0.
    ['down by the feeler and 0', [touch('top', { feeler: 0.1 }), { move: -0.1 }, { set: 0 }], -4],
    // The parallel at -0.1, the top measured 11.9 over it: 11.8 - 4.
    ['from a parallel, the thickness measured', [touch('p', { feeler: 0.1 }), ACROSS], 7.8],
  ])('%s', (_, z, at) => {
    expect(depthIn(read(job(z)))?.exact).toBeCloseTo(at, 12);
    expect(placed(z, BLIND)).toBeCloseTo(at, 12);
  });

  it('is that of the part turned over, and through it', () => {
    // Turned over the drawn bottom is up: a pocket from the bottom is 4 below it.
    const over = job([touch('top', { feeler: 0.1 })], { setup: { flip: 'x' } }, { from: 'bottom' });
    expect(depthIn(read(over))?.exact).toBeCloseTo(-4.1, 12);
    // A pocket from the drawn top cannot be made so, and has no target.
    expect(depthIn(read(job([touch('top')], { setup: { flip: 'x' } })))).toBeNull();
    // Through, the point of a drill of 8 comes out by 4 / tan 59 = 2.403442...: the 118° point, common practice.
    const through = read(job([touch('top')], {}, { depth: 'through' }));
    expect(depthIn(through)?.exact).toBeCloseTo(-12 - 4 / Math.tan((59 * Math.PI) / 180), 9);
  });

  it('is shown in the unit of the readout', () => {
    // A feeler of 0.002 in: -0.002 - 4 / 25.4.
    const z = [touch('top', { feeler: 0.002, units: 'inch' })];
    const inch = job(z, { setup: { readout: { units: 'inch', resolution: 0.0005 } } });
    const [setup] = inch.setups as unknown as [{ zero: { x: Plain[]; y: Plain[] } }];
    for (const action of [...setup.zero.x, ...setup.zero.y]) action.units = 'mm';
    const depth = depthIn(read(inch));
    expect(depth?.exact).toBeCloseTo(-0.002 - 4 / 25.4, 12);
    expect(depth?.readout).toBe(-0.1595);
  });
});

describe('a length that is longer than it is taken for', () => {
  // Of lengths of one name in several setups the way decides whether their errors add up.
  const waysOf = (z: Plain[]) =>
    parseJob(JSON.parse(JSON.stringify(job(z)))).setups[0]?.zero.z?.links.map(({ kind, way }) => [kind, way]);

  it.each<[string, Plain[], [string, number][]]>([
    // Over a thicker feeler the tool stands higher when it reads 0, so that the top under it reads less.
    [
      'a feeler',
      [touch('top', { feeler: 0.1 })],
      [
        ['touch', -1],
        ['set', 1],
      ],
    ],
    // The same of a longer move up; after a longer one down it stands lower, and the top reads more.
    [
      'a move up',
      [touch('top'), { move: 25 }, { set: 0 }],
      [
        ['touch', -1],
        ['set', 1],
        ['move', -1],
        ['set', 1],
      ],
    ],
    [
      'a move down',
      [touch('top'), { move: -25 }, { set: 0 }],
      [
        ['touch', -1],
        ['set', 1],
        ['move', 1],
        ['set', 1],
      ],
    ],
    // A thicker part has its top further over the parallel; from the top down the parallel reads less.
    [
      'a part',
      [touch('p'), ACROSS],
      [
        ['touch', -1],
        ['set', 1],
        ['measured', 1],
      ],
    ],
    [
      'a part, downwards',
      [touch('top'), { ...ACROSS, from: 'top', to: 'bottom' }],
      [
        ['touch', -1],
        ['set', 1],
        ['measured', -1],
      ],
    ],
  ])('%s', (_, z, ways) => {
    expect(waysOf(z)).toEqual(ways);
  });
});

describe('a length in Z with a unit of its own', () => {
  /** Where a setup has both units, each length says in which it is given. */
  const depthOf = (z: Plain[]) => {
    const both = job(z);
    const [{ zero }] = both.setups as unknown as [{ zero: { x: Plain[]; y: Plain[] } }];
    for (const action of [...zero.x, ...zero.y]) action.units = 'mm';
    return depthIn(read(both));
  };
  const thick = { measured: 0.469, units: 'inch', tolerance: 0.001 };

  it.each<[string, Plain[], number]>([
    // The thickness measured as 0.469 in is 11.9126 mm, less 4.
    ['measured', [touch('p'), { ...thick, from: 'bottom', to: 'top' }], 7.9126],
    // Down from the top by as much, the parallel is at -11.9126, and 8 over it as the part is drawn.
    ['measured down', [touch('top'), { ...thick, from: 'top', to: 'p' }], -3.9126],
    ['a feeler', [touch('top', { feeler: 0.004, units: 'inch' })], -4.1016],
  ])('%s', (_, z, at) => {
    expect(depthOf(z)?.exact).toBeCloseTo(at, 12);
  });

  it('has its tolerance in that unit too', () => {
    // 0.001 in of the measured length, 0.01 mm of the touch and half a step of 0.005.
    const z = [
      touch('p', { feeler: 0.1, units: 'mm', tolerance: 0.01 }),
      { ...thick, from: 'bottom', to: 'top' },
    ];
    expect(depthOf(z)?.worst).toBeCloseTo(0.0254 + 0.01 + 0.0025, 12);
  });
});

describe('how far a depth may be off', () => {
  const TOUCH = { feeler: 0.1, tolerance: 0.01 };
  const part = { thicknessTolerance: 0.05 };

  it('is the chain and half a step; and the thickness, where that lies between', () => {
    const worst = (z: object, over: Plain, cut: Plain = {}) => depthIn(read(job([z], over, cut)))?.worst;
    expect(worst(touch('top', TOUCH), { part })).toBeCloseTo(0.0125, 12);
    expect(worst(touch('p', TOUCH), { part })).toBeCloseTo(0.0625, 12);
    expect(worst(touch('top', TOUCH), { part }, { depth: 'through' })).toBeCloseTo(0.0625, 12);
    expect(worst(touch('p', TOUCH), { part }, { depth: 'through' })).toBeCloseTo(0.0125, 12);
    // ISO 2768-1 m: 12 mm are off by 0.2 at most.
    expect(worst(touch('p', TOUCH), { part: { tolerances: 'm' } })).toBeCloseTo(0.2125, 12);
    expect(depthIn(read(job([touch('p', TOUCH)], { part })))?.rss).toBeCloseTo(
      Math.hypot(0.05, 0.01, 0.0025),
      12,
    );
  });

  it('may leave a skin under a cut that comes out by less', () => {
    const slot = {
      id: 'a',
      kind: 'swept',
      center: undefined,
      path: { svgPath: 'M20 15 H60' },
      depth: 'through',
    };
    expect(codes(read(job([touch('top', TOUCH)], { part }, slot)))).toContain('may-not-go-through');
    const drilled = read(job([touch('top', TOUCH)], { part }, { depth: 'through' }));
    expect(codes(drilled)).not.toContain('may-not-go-through');
    expect(codes(read(job([touch('top', TOUCH)], { part })))).not.toContain('may-not-go-through');
  });
});

describe('the sheet and the text', () => {
  it('say how Z is found and how far down it goes', () => {
    const report = read(
      job([touch('p', { feeler: 0.1, tolerance: 0.01 })], { part: { thicknessTolerance: 0.05 } }),
    );
    const sheet = sheetText(sheetOf(report));
    expect(sheet).toContain('touch p over a feeler of 0.1 mm');
    expect(sheet).toContain('Down to Z 7.900 ±0.0625 on the readout.');
    expect(textReport(report, { all: true })).toMatch(/z +touch p over a feeler of 0.1 mm/);
    expect(textReport(report, { all: true })).toMatch(/a +45\.000 +20\.000 +7\.900 +0\.0625/);
    expect(sheetText(sheetOf(read({ ...job([]), setups: undefined })))).not.toContain('Down to Z');
  });
});

describe('what is refused in Z', () => {
  it.each<[string, object[], string, string]>([
    ['a face that looks aside', [touch('left')], '/0/touch', 'there are "top", "bottom", "p"'],
    ['a parallel misspelt', [touch('q')], '/0/touch', 'no level face'],
    ['a tip', [touch('top', { tip: 10 })], '/0/tip', 'not a key that belongs here'],
    ['a feeler of no thickness', [touch('top', { feeler: 0 })], '/0/feeler', 'must be over 0'],
    ['a set before the touch', [{ set: 0 }], '/0/set', 'begin with "touch"'],
    ['no touch at all', [{ measured: 12, from: 'bottom', to: 'top' }], '/0/measured', 'begin with "touch"'],
    ['two touches', [touch('top'), touch('p')], '/1/touch', 'an axis starts once'],
    ['faces swapped', [touch('bottom'), { ...ACROSS, from: 'top', to: 'bottom' }], '/1/from', 'swap'],
    ['a height to the same face', [touch('bottom'), { ...ACROSS, to: 'p' }], '/1/to', 'nothing to measure'],
    ['a move without a set', [touch('top'), { move: 5 }], '/1', 'nothing is set after it'],
    ['bearing on a stop', [{ bears: 'bottom', on: 's' }], '/0', '"touch", "measured", "move" or "set"'],
    ['nothing', [], '', 'at least 1'],
  ])('%s', (_, z, path, words) => {
    try {
      read(job(z));
      expect.unreachable();
    } catch (error) {
      if (!(error instanceof JobError)) throw error;
      expect(error.issues.map((one) => one.path)).toEqual([`/setups/0/zero/z${path}`]);
      expect(error.issues[0]?.message).toContain(words);
    }
  });
});
