import { describe, expect, it } from 'vitest';
import { issuesOf } from './issues-of.js';

type Plain = Record<string, unknown>;

// Edges of a rectangle: 0 in front, 1 at the right, 2 at the back, 3 at the left; the hole is one circle.
const PART = {
  outline: { rectangle: [80, 30], holes: [{ circle: 8, at: [60, 15] }] },
  thickness: 12,
};

const job = (cut: Plain): Plain => ({ edgebite: 1, units: 'mm', part: PART, cuts: [cut] });
const bore = (center: unknown, over: Plain = {}): Plain =>
  job({ id: 'a', kind: 'bore', diameter: 10, center, ...over });
const ring = (center: unknown): Plain => job({ id: 'a', kind: 'annular', diameter: 10, wall: 2, center });
const passes = (given: unknown): Plain => bore([10, 10], { passes: given });
const along = (given: unknown, diameter = 6): Plain =>
  job({ id: 'a', kind: 'swept', diameter, path: { along: given } });
const face = { on: 'outline:1', along: 15 };
const distances = (...list: unknown[]): Plain => bore({ distances: list });
const inFrom = { edge: 'outline:0', distance: 10 };

/** Name of the case; the job; the paths that must be reported, all of them and no others; words of a message. */
type Case = readonly [name: string, job: unknown, paths: readonly string[], words?: string];

const CENTERS: readonly Case[] = [
  ['no centre', bore(undefined), ['/cuts/0/center'], 'a place [x, y] or an object with exactly one of'],
  ['a centre that is a text', bore('middle'), ['/cuts/0/center'], 'it is "middle"'],
  ['a centre of one number', bore([1]), ['/cuts/0/center']],
  ['a placement by nothing', bore({}), ['/cuts/0/center'], 'it has none'],
  ['a placement by two things', bore({ ...face, depth: 4, opening: 5 }), ['/cuts/0/center'], 'and'],
  ['an unknown key beside a depth', bore({ ...face, depth: 4, deep: 1 }), ['/cuts/0/center/deep']],
  ['a depth without a face', bore({ along: 5, depth: 4 }), ['/cuts/0/center/on'], 'is missing'],
  ['a depth of 0', bore({ ...face, depth: 0 }), ['/cuts/0/center/depth'], 'must be over 0'],
  [
    'a depth of a whole diameter',
    bore({ ...face, depth: 10 }),
    ['/cuts/0/center/depth'],
    'from there on it is a full hole',
  ],
  [
    'an edge that is not there',
    bore({ ...face, on: 'outline:9', depth: 4 }),
    ['/cuts/0/center/on'],
    'it has outline:0, outline:1',
  ],
  [
    'a face that is an arc',
    bore({ ...face, on: 'hole:0:0', depth: 4 }),
    ['/cuts/0/center/on'],
    'a face is straight',
  ],
  [
    'a place beyond the end of the face',
    bore({ on: 'outline:1', along: 31, depth: 4 }),
    ['/cuts/0/center/along'],
    'which is 30 long',
  ],
  ['a place before its start', bore({ ...face, along: -1, depth: 4 }), ['/cuts/0/center/along']],
  ['an end that there is not', bore({ ...face, from: 'middle', depth: 4 }), ['/cuts/0/center/from']],
  ['a depth with a pick', bore({ ...face, depth: 4, pick: 'inside' }), ['/cuts/0/center/pick']],
  [
    'an opening over the diameter',
    bore({ ...face, opening: 11 }),
    ['/cuts/0/center/opening'],
    '10 wide at most',
  ],
  [
    'an opening with two answers',
    bore({ ...face, opening: 8 }),
    ['/cuts/0/center'],
    'has 2 answers: "outside" with its centre at (83, 15) and "inside" with its centre at (77, 15)',
  ],
  [
    'a pick that is none of them',
    bore({ ...face, opening: 8, pick: 'left' }),
    ['/cuts/0/center/pick'],
    'must be "outside" or "inside"; it is "left"',
  ],
  ['a pick that is a number', bore({ ...face, opening: 8, pick: 1 }), ['/cuts/0/center/pick']],
  [
    'a pick and a place',
    bore({ ...face, opening: 8, pick: 'inside', near: [0, 0] }),
    ['/cuts/0/center/near'],
    'give one of the two',
  ],
  [
    'a place as near to both answers',
    bore({ ...face, opening: 8, near: [80, 12] }),
    ['/cuts/0/center/near'],
    'is as near to',
  ],
  [
    'a place further off than the cut is wide',
    bore({ ...face, opening: 8, near: [60, 15] }),
    ['/cuts/0/center/near'],
    'and so further off than the cut is wide, 10; give a place nearer',
  ],
  ['a place of three numbers', bore({ ...face, opening: 8, near: [1, 2, 3] }), ['/cuts/0/center/near']],
  [
    'a pick where there is one answer',
    bore({ ...face, opening: 10, pick: 'inside' }),
    ['/cuts/0/center/pick'],
    'leave it out',
  ],
  [
    'three points in line',
    bore({
      through: [
        [0, 0],
        [1, 1],
        [2, 2],
      ],
    }),
    ['/cuts/0/center/through'],
    'are in line',
  ],
  [
    'a point given twice',
    bore({
      through: [
        [0, 0],
        [0, 0],
        [2, 2],
      ],
    }),
    ['/cuts/0/center/through'],
    'must be apart',
  ],
  [
    'two points',
    bore({
      through: [
        [0, 0],
        [1, 1],
      ],
    }),
    ['/cuts/0/center/through'],
  ],
  [
    'a diameter that is not that of the points',
    bore(
      {
        through: [
          [80, 10],
          [75, 15],
          [80, 20],
        ],
      },
      { diameter: 11 },
    ),
    ['/cuts/0/diameter'],
    'the circle through the three points is 10 across',
  ],
  ['no diameter with a point', bore([5, 5], { diameter: undefined }), ['/cuts/0/diameter'], 'is missing'],
  ['no diameter with a depth', bore({ ...face, depth: 4 }, { diameter: undefined }), ['/cuts/0/diameter']],
  [
    'a circle as large as a mountain',
    bore(
      {
        through: [
          [0, 0],
          [1, 1e-9],
          [2, 0],
        ],
      },
      { diameter: undefined },
    ),
    ['/cuts/0/center'],
    'coordinates go up to',
  ],
  [
    'tangent to one edge twice',
    bore({ tangent: ['outline:1', 'outline:1'] }),
    ['/cuts/0/center/tangent'],
    'names outline:1 twice',
  ],
  ['tangent to one edge', bore({ tangent: ['outline:1'] }), ['/cuts/0/center/tangent']],
  [
    'tangent to edges that are not there',
    bore({ tangent: ['outline:7', 'hole:3:0'] }),
    ['/cuts/0/center/tangent/0', '/cuts/0/center/tangent/1'],
    'has no edge hole:3:0',
  ],
  [
    'tangent to two faces too far apart',
    bore({ tangent: ['outline:0', 'outline:2'] }),
    ['/cuts/0/center/tangent'],
    'the nearest radius that does is 15',
  ],
  [
    'tangent to two faces that it just fits between',
    bore({ tangent: ['outline:0', 'outline:2'] }, { diameter: 30 }),
    ['/cuts/0/center/tangent'],
    'give its centre by distances instead',
  ],
  [
    'tangent to a face and a hole, with two answers',
    bore({ tangent: ['outline:2', 'hole:0:0'] }, { diameter: 14 }),
    ['/cuts/0/center'],
    'name one by "pick", or give a place "near" it',
  ],
  ['one distance', distances(inFrom), ['/cuts/0/center/distances']],
  [
    'a distance from nothing',
    distances(inFrom, { distance: 5 }),
    ['/cuts/0/center/distances/1'],
    'exactly one of the keys "edge", "along", "corner" or "from"; it has none',
  ],
  ['a distance that is a number', distances(inFrom, 5), ['/cuts/0/center/distances/1']],
  [
    'a distance from an edge that is not there',
    distances(inFrom, { edge: 'outline:8', distance: 5 }),
    ['/cuts/0/center/distances/1/edge'],
  ],
  [
    'a distance along an arc',
    distances(inFrom, { along: 'hole:0:0', end: 'start', distance: 5 }),
    ['/cuts/0/center/distances/1/along'],
    'along straight edges only',
  ],
  [
    'a distance along, from no end',
    distances(inFrom, { along: 'outline:1', distance: 5 }),
    ['/cuts/0/center/distances/1/end'],
    'is missing',
  ],
  [
    'a distance under 0',
    distances({ ...inFrom, distance: -1 }, inFrom),
    ['/cuts/0/center/distances/0/distance'],
  ],
  [
    'a side that there is not',
    distances({ ...inFrom, side: 'left' }, { edge: 'outline:1', distance: 5 }),
    ['/cuts/0/center/distances/0/side'],
  ],
  [
    'the same distance twice',
    distances(inFrom, inFrom),
    ['/cuts/0/center/distances'],
    'say the same; give one across it',
  ],
  [
    'distances that no place has',
    distances(inFrom, { corner: 'outline:0', end: 'start', distance: 4 }),
    ['/cuts/0/center/distances'],
    'can come as near as 10',
  ],
  [
    'distances that two places have',
    distances(inFrom, { corner: 'outline:2', end: 'start', distance: 25 }),
    ['/cuts/0/center'],
    'has 2 answers: "left"',
  ],
  ['a ring placed where it cannot be', ring({ ...face, depth: 12 }), ['/cuts/0/center/depth']],
  ['a clearance of 0', bore([5, 5], { clearance: 0 }), ['/cuts/0/clearance'], 'must be over 0'],
];

const PASSES: readonly Case[] = [
  ['passes that are true', passes(true), ['/cuts/0/passes']],
  ['passes of no kind', passes({ bite: 1 }), ['/cuts/0/passes/kind'], '"step in" or "open out"'],
  ['passes without a bite', passes({ kind: 'step in' }), ['/cuts/0/passes/bite'], 'is missing'],
  ['a bite of 0', passes({ kind: 'open out', bite: 0 }), ['/cuts/0/passes/bite'], 'must be over 0'],
  [
    'more to finish than the bite',
    passes({ kind: 'step in', bite: 1, finish: 1.5 }),
    ['/cuts/0/passes/finish'],
    'must be at most the bite, 1; it is 1.5',
  ],
  [
    'an approach when opening out',
    passes({ kind: 'open out', bite: 1, approach: 0 }),
    ['/cuts/0/passes/approach'],
    'not a key that belongs here',
  ],
  [
    'an approach in words',
    passes({ kind: 'step in', bite: 1, approach: 'left' }),
    ['/cuts/0/passes/approach'],
    'or "smoothest"; it is "left"',
  ],
  [
    'an approach of two turns',
    passes({ kind: 'step in', bite: 1, approach: 720 }),
    ['/cuts/0/passes/approach'],
  ],
  [
    'a smallest setting over the diameter',
    passes({ kind: 'open out', bite: 1, smallest: 11 }),
    ['/cuts/0/passes/smallest'],
    'at most the diameter, 10; it is 11',
  ],
  ['a spring pass in words', passes({ kind: 'step in', bite: 1, spring: 'yes' }), ['/cuts/0/passes/spring']],
  [
    'a feed without turns',
    passes({ kind: 'step in', bite: 1, feed: { perTurn: 0.1 } }),
    ['/cuts/0/passes/feed/rpm'],
  ],
  [
    'no turns at all',
    passes({ kind: 'step in', bite: 1, feed: { perTurn: 0.1, rpm: 0 } }),
    ['/cuts/0/passes/feed/rpm'],
    'must be over 0',
  ],
  [
    'passes of a ring',
    job({
      id: 'a',
      kind: 'annular',
      diameter: 10,
      wall: 2,
      center: [9, 9],
      passes: { kind: 'step in', bite: 1 },
    }),
    ['/cuts/0/passes'],
    'not a key that belongs here',
  ],
];

const PATHS: readonly Case[] = [
  ['a path along nothing', along(undefined), ['/cuts/0/path']],
  ['a path along a text', along('outline'), ['/cuts/0/path/along'], 'must be an object'],
  ['a path on no side', along({}), ['/cuts/0/path/along/side'], '"inside" or "outside"'],
  [
    'a path drawn and along',
    job({ id: 'a', kind: 'swept', diameter: 6, path: { svgPath: 'M0 0H9', along: {} } }),
    ['/cuts/0/path/along'],
  ],
  ['an allowance under 0', along({ side: 'outside', allowance: -1 }), ['/cuts/0/path/along/allowance']],
  [
    'a loop that there is not',
    along({ side: 'outside', loop: 'hole:4' }),
    ['/cuts/0/path/along/loop'],
    'must be "outline", "hole:0" or "all"; it is "hole:4"',
  ],
  [
    'a stretch without an end',
    along({ side: 'outside', from: [0, 0] }),
    ['/cuts/0/path/along/to'],
    'is missing',
  ],
  ['a stretch without a start', along({ side: 'outside', to: [0, 0] }), ['/cuts/0/path/along/from']],
  [
    'a stretch of a loop, begun elsewhere',
    along({ side: 'outside', loop: 'outline', start: [1, 1], from: [0, 0], to: [80, 0] }),
    ['/cuts/0/path/along/loop', '/cuts/0/path/along/start'],
  ],
  [
    'a stretch from one place to the same',
    along({ side: 'outside', from: [20, 0], to: [20, 0] }),
    ['/cuts/0/path/along'],
    'are one place',
  ],
  [
    'a stretch from one loop to another',
    along({ side: 'outside', from: [20, 0], to: { edge: 'hole:0:0' } }),
    ['/cuts/0/path/along'],
    'on different loops',
  ],
  ['a place that is a number', along({ side: 'outside', from: 5, to: [0, 0] }), ['/cuts/0/path/along/from']],
  [
    'a place on no edge',
    along({ side: 'outside', from: { edge: 'outline:8' }, to: [0, 0] }),
    ['/cuts/0/path/along/from/edge'],
  ],
  [
    'a place beyond the end of its edge',
    along({ side: 'outside', from: { edge: 'outline:1', distance: 31 }, to: [0, 0] }),
    ['/cuts/0/path/along/from/distance'],
    'only 30 long',
  ],
  [
    'a way of milling that there is not',
    along({ side: 'outside', milling: 'up' }),
    ['/cuts/0/path/along/milling'],
  ],
  ['a lead of 0', along({ side: 'outside', lead: 0 }), ['/cuts/0/path/along/lead'], 'must be over 0'],
  [
    'a lead too large for a hole',
    along({ side: 'outside', loop: 'hole:0', lead: 9 }),
    ['/cuts/0/path/along/lead'],
    'no lead-in of radius 9 fits',
  ],
  [
    'a tool that does not fit into a hole',
    along({ side: 'outside', loop: 'hole:0' }, 9),
    ['/cuts/0/path/along'],
  ],
  [
    'a tool that fits nowhere inside',
    along({ side: 'inside' }, 40),
    ['/cuts/0/path/along'],
    'fits nowhere inside',
  ],
  [
    'a side that a drawn path is to stay on, in words that there are not',
    job({ id: 'a', kind: 'swept', diameter: 6, path: { svgPath: 'M0 0H9' }, stays: 'left' }),
    ['/cuts/0/stays'],
  ],
];

function check([, input, paths, words]: Case): void {
  const issues = issuesOf(JSON.parse(JSON.stringify(input)));
  expect(issues.map(({ path }) => path).sort()).toEqual([...paths].sort());
  if (words !== undefined) expect(issues.map(({ message }) => message).join('\n')).toContain(words);
  for (const { message } of issues) expect(message).not.toMatch(/undefined|NaN|placeBy|centerPath|: at/);
}

const named = (cases: readonly Case[]) => cases.map((one) => [one[0], one] as const);

describe('faults of placed centres', () => {
  it.each(named(CENTERS))('%s', (_, one) => check(one));
});

describe('faults of passes', () => {
  it.each(named(PASSES))('%s', (_, one) => check(one));
});

describe('faults of paths along the outline', () => {
  it.each(named(PATHS))('%s', (_, one) => check(one));
});
