import type { CutDocument, JobDocument } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { issuesOf } from '../jobs/issues-of.js';
import { BAR, RING, SEAT } from './bar.js';

type Repeat = NonNullable<JobDocument['repeat']>;

const ROW: Repeat[number] = { cuts: ['ring', 'seat'], row: { step: [38.1, 0], count: 4 } };

/** What is wrong with the bar, as `path: message`. */
function faults(change: Partial<Record<keyof JobDocument, unknown>>): string[] {
  return issuesOf({ ...BAR, repeat: [ROW], ...change }).map(({ path, message }) => `${path}: ${message}`);
}

describe('a repeat that cannot be', () => {
  const [vice] = BAR.setups;
  const [cutter, head] = BAR.tools;
  const long = 'a'.repeat(199);
  const rim = { id: 'rim', kind: 'swept', diameter: 6, path: { along: { side: 'outside' } } } as CutDocument;

  it.each<[string, Partial<Record<keyof JobDocument, unknown>>, string]>([
    [
      'names no cut',
      { repeat: [{ ...ROW, cuts: ['sea'] }] },
      '/repeat/0/cuts/0: is "sea", but no cut has that id',
    ],
    ['names a copy', { repeat: [{ ...ROW, cuts: ['seat 2'] }] }, '/repeat/0/cuts/0: is "seat 2", but no cut'],
    [
      'names a cut twice',
      { repeat: [{ ...ROW, cuts: ['seat', 'seat'] }] },
      '/repeat/0/cuts/1: is "seat", which is named before',
    ],
    [
      'has no way',
      { repeat: [{ cuts: ['seat'] }] },
      '/repeat/0: must have exactly one of the keys "row", "round" or "mirror"; it has none',
    ],
    [
      'has two ways',
      { repeat: [{ ...ROW, mirror: { x: 1 } }] },
      '/repeat/0: must have exactly one of the keys',
    ],
    [
      'has no step',
      { repeat: [{ cuts: ['seat'], row: { count: 3 } }] },
      '/repeat/0/row: must have exactly one of the keys "step" or "along"',
    ],
    [
      'has one only',
      { repeat: [{ cuts: ['seat'], row: { step: [9, 0], count: 1 } }] },
      '/repeat/0/row/count: must be at least 2; it is 1',
    ],
    [
      'has two and a half',
      { repeat: [{ cuts: ['seat'], row: { step: [9, 0], count: 2.5 } }] },
      '/repeat/0/row/count: must be a whole number; it is 2.5',
    ],
    [
      'goes nowhere',
      { repeat: [{ cuts: ['seat'], row: { step: [0, 0], count: 3 } }] },
      '/repeat/0/row/step: is 0, so that',
    ],
    [
      'has no pitch',
      { repeat: [{ cuts: ['seat'], row: { along: 'front', pitch: 0, count: 3 } }] },
      '/repeat/0/row/pitch: is 0',
    ],
    [
      'runs along no edge',
      { repeat: [{ cuts: ['seat'], row: { along: 'frnt', pitch: 9, count: 3 } }] },
      '/repeat/0/row/along: is "frnt", but the outline has no edge frnt',
    ],
    [
      'does not turn',
      { repeat: [{ cuts: ['seat'], round: { center: [0, 0], turn: 0, count: 3 } }] },
      '/repeat/0/round/turn: is 0',
    ],
    [
      'turns too often',
      { repeat: [{ cuts: ['seat'], round: { center: [80, 16], turn: 90, count: 5 } }] },
      '/repeat/0: puts "seat 5" where "seat 1" is already',
    ],
    [
      'turns about itself',
      { repeat: [{ cuts: ['seat'], round: { center: [22.7, -2.3], turn: 90, count: 2 } }] },
      '/repeat/0: puts "seat 2" where "seat 1" is already',
    ],
    [
      'mirrors on itself',
      { repeat: [{ cuts: ['seat'], mirror: { x: 22.7 } }] },
      '/repeat/0: puts "seat 2" where "seat 1" is already',
    ],
    [
      'has no line',
      {
        repeat: [
          {
            cuts: ['seat'],
            mirror: {
              through: [
                [1, 1],
                [1, 1],
              ],
            },
          },
        ],
      },
      '/repeat/0/mirror/through: has one place twice',
    ],
    [
      'has no axis',
      { repeat: [{ cuts: ['seat'], mirror: { middle: 'left' } }] },
      '/repeat/0/mirror/middle: must be "x" or "y"; it is "left"',
    ],
    [
      'goes too far',
      { repeat: [{ cuts: ['seat'], row: { step: [9e6, 0], count: 3 } }] },
      '/repeat/0: puts "seat 3" 18000022.7 from zero; coordinates go up to 10000000',
    ],
    [
      'makes too many',
      { repeat: [ROW, { cuts: ['seat'], row: { step: [0.001, 0], count: 90_000 } }] },
      '/repeat/1: makes 360004 cuts of the job; at most 100000',
    ],
    [
      'takes the name of a cut',
      { cuts: [RING, SEAT, { ...SEAT, id: 'seat 3', center: [9, 9] }] },
      '/cuts/2/id: is "seat 3", which is taken for a copy of cut 1, "seat"',
    ],
    [
      'takes a name that looks like it',
      { cuts: [RING, SEAT, { ...SEAT, id: 'seat\u00a03', center: [9, 9] }] },
      '/cuts/2/id: is "seat\u00a03", which is taken for a copy',
    ],
    [
      'makes a name too long',
      { cuts: [RING, SEAT, { ...SEAT, id: long }], repeat: [ROW, { ...ROW, cuts: [long] }] },
      '/cuts/2/id: is so long that a copy',
    ],
    [
      'follows the outline',
      { cuts: [RING, SEAT, rim], repeat: [{ ...ROW, cuts: ['rim'] }] },
      '/repeat/0/cuts/0: is "rim", whose path follows the outline',
    ],
    [
      'goes place by place over others',
      {
        cuts: [RING, { ...SEAT, id: 'b', center: [9, 9] }, SEAT],
        repeat: [{ ...ROW, order: 'place by place' }],
      },
      '/repeat/0/order: is "place by place", but other cuts',
    ],
    [
      'is named with its copies in a setup',
      { setups: [{ ...vice, cuts: ['ring', 'seat', 'seat 2'] }] },
      '/setups/0/cuts/2: is "seat 2", and entry 1, "seat", names "seat 2" already',
    ],
    [
      'is named twice in a tool',
      { tools: [cutter, { ...head, cuts: ['seat 1', 'seat'] }] },
      '/tools/1/cuts/1: is "seat", and entry 0, "seat 1", names "seat 1" already',
    ],
    [
      'is made by a tool that does not fit',
      { tools: [{ ...cutter, cuts: ['ring', 'seat 2'] }] },
      '/tools/0/cuts/1: names "seat 2", a bore; its tool must be "drill", "boring head"',
    ],
    [
      'has no such copy',
      { setups: [{ ...vice, cuts: ['ring', 'seat 5'] }] },
      '/setups/0/cuts/1: is "seat 5", but the job has no such cut',
    ],
  ])('%s', (_, change, expected) => {
    const found = faults(change);
    expect(
      found.some((one) => one.startsWith(expected)),
      found.join('\n'),
    ).toBe(true);
  });

  it('tells one fault of a written cut once, where it is written', () => {
    expect(faults({ cuts: [RING, { ...SEAT, diameter: 1e-9 }] })).toEqual([
      '/cuts/1/diameter: must be at least 0.000001; it is 1e-9',
    ]);
    const wall = faults({ cuts: [{ ...RING, wall: 12 }, SEAT] });
    expect(wall).toEqual(['/cuts/0/wall: must be under half the diameter, 10; it is 12']);
  });

  it('says which copy it is that does not go', () => {
    // So far out that its circle has no digits left.
    const small = { ...SEAT, diameter: 0.001, passes: undefined, center: [22.7, -2.3] };
    const repeat = [{ cuts: ['seat'], row: { step: [3e6, 0], count: 3 } }];
    const [fault, ...others] = faults({ cuts: [RING, small], repeat });
    expect(others).toEqual([]);
    expect(fault).toMatch(/^\/cuts\/1\/diameter: of copy "seat 2" is 0.001, too small to keep its shape/);
  });

  it('tells of a cut that is none before its copies are thought of', () => {
    const odd = [
      null,
      7,
      [],
      {},
      { kind: 'drill' },
      { ...SEAT, id: 7 },
      { ...SEAT, center: [Number.NaN, 0] },
    ];
    for (const cut of odd) {
      const found = faults({ cuts: [RING, cut], setups: [{ ...vice, cuts: ['ring', 'seat 2'] }] });
      expect(found.length).toBeGreaterThan(0);
      for (const one of found) expect(one).not.toMatch(/NaN from|undefined|seat 2/);
      expect(found.some((one) => one.startsWith('/cuts/1'))).toBe(true);
    }
    const large = { ...SEAT, center: [1n, 0] };
    expect(faults({ cuts: [RING, large] })[0]).toMatch(/^\/cuts\/1\/center\/0: must be a number/);
  });

  it('does not call names unknown while copies are not known', () => {
    const found = faults({
      repeat: [{ ...ROW, row: { step: 5, count: 4 } }],
      setups: [{ ...vice, cuts: ['seat 2'] }],
    });
    expect(found).toEqual(['/repeat/0/row/step: must be a list; it is 5']);
  });
});
