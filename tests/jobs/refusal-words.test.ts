import { describe, expect, it } from 'vitest';
import { issuesOf } from './issues-of.js';

/* What a fault of a job says is amiss, in full: from the job, by hand. */

type Plain = Record<string, unknown>;

const job = (over: Plain = {}): Plain => ({
  edgebite: 1,
  units: 'mm',
  part: { outline: { rectangle: [80, 40], corner: 6 }, thickness: 10 },
  cuts: [{ id: 'a', kind: 'bore', center: [20, 20], diameter: 8 }],
  ...over,
});

const zero = (over: Plain = {}): Plain => ({
  id: 's',
  zero: { x: [{ touch: 'left', tip: 10 }], y: [{ touch: 'front', tip: 10 }] },
  cuts: ['a'],
  ...over,
});

const path = (along: Plain): Plain => ({
  cuts: [{ id: 'a', kind: 'swept', diameter: 30, depth: 3, path: { along } }],
});

describe('a fault of a job', () => {
  it.each<readonly [string, unknown, string, string]>([
    [
      'a row along a rounded corner',
      job({ repeat: [{ cuts: ['a'], row: { along: 'outline:1', pitch: 9, count: 3 } }] }),
      '/repeat/0/row/along',
      'is "outline:1", which is round; a row runs along a straight edge. Give "round" instead',
    ],
    [
      'one setup with both units, and a zero without',
      job({ setups: [zero({ readout: { units: 'inch', resolution: 0.0005 } })] }),
      '/setups/0/zero/x/0/units',
      'is missing: this setup has both mm and inch, so say in which of them this is given',
    ],
    [
      // Under half of 40 less half of 30: at 5 no more than a line is left.
      'more allowance than a tool of 30 has in a plate of 40',
      job(path({ side: 'inside', allowance: 7 })),
      '',
      'with this tool the allowance may be 4.99 at most',
    ],
    [
      'an angle of approach in a word',
      job({
        tools: [
          {
            id: 't',
            kind: 'boring head',
            toolMaterial: 'HSS',
            smallest: 5,
            largest: 50,
            bar: 30,
            cuts: ['a'],
          },
        ],
        cuts: [
          {
            id: 'a',
            kind: 'bore',
            center: [20, 20],
            diameter: 8,
            passes: { kind: 'step in', bite: 1, approach: 'up' },
          },
        ],
      }),
      '/cuts/0/passes/approach',
      'an angle from -360 to 360 degrees or "smoothest"',
    ],
    [
      'a block in a word',
      job({
        setups: [
          zero({
            stops: [{ id: 'S', face: 'left' }],
            zero: {
              x: [
                { touch: 'S', tip: 10 },
                { bears: 'left', on: 'S', block: 'wide' },
              ],
              y: [{ touch: 'front', tip: 10 }],
            },
          }),
        ],
      }),
      '/setups/0/zero/x/1/block',
      'a length over 0 or a list of them',
    ],
    [
      'a lead in another word',
      job(path({ side: 'inside', lead: 'long' })),
      '/cuts/0/path/along/lead',
      'a radius, "largest" or "none"',
    ],
    [
      'an id with a letter that looks like another',
      job({
        cuts: [
          { id: 'a', kind: 'bore', center: [20, 20], diameter: 8 },
          { id: '\u0430', kind: 'bore', center: [50, 20], diameter: 8 },
        ],
      }),
      '/cuts/1/id',
      'is "\u0430" (with U+0430), which looks like "a" of cut 0; give it a name that nobody takes for the other',
    ],
    [
      'a text that breaks off in its second line',
      '{\n "edgebite": 1,',
      '',
      'the text is cut short at line 2, column 16',
    ],
    ['a sign too many', '{\n "edgebite": 1,,', '', '"," is out of place at line 2, column 16'],
  ])('%s', (_, input, where, words) => {
    expect(issuesOf(input)).toContainEqual({
      path: where === '' ? expect.any(String) : where,
      message: expect.stringContaining(words),
    });
  });
});
