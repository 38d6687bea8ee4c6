import { examine, type JobDocument, parseJob, type Report, twinOf } from '@edgebite/core';
import { jobDocumentsWithSetup } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Done, numberOver, type XY } from '../datum/placed-zero.js';
import { runs } from '../tools/runs.js';
import { AGAINST_STOP, BAR, RING, SEAT, withNames } from './bar.js';

const twin = (job: JobDocument) => {
  const found = twinOf(parseJob(job));
  if (found === null) throw new Error('the job has no twin');
  return found;
};

const plain = (report: Report): Report => JSON.parse(JSON.stringify(report));

const FOUR = [1, 2, 3, 4];

/** The bar with four seats and its twin, for which one seat is written. */
const HANDED: JobDocument = {
  ...BAR,
  name: 'Bar, left hand',
  twin: { swaps: 'left and right', name: 'Bar, right hand' },
  repeat: [{ cuts: ['ring', 'seat'], row: { step: [38.1, 0], count: 4 } }],
};

/** A bar with its seats written one by one. */
function written(
  name: string,
  places: readonly number[],
  approach: number,
  setups: JobDocument['setups'],
): JobDocument {
  const cuts = [RING, { ...SEAT, passes: { ...SEAT.passes, approach } }].flatMap((cut) =>
    places.map((x, k) => ({ ...cut, id: `${cut.id} ${k + 1}`, center: [x, -2.3] as [number, number] })),
  );
  return withNames(
    { ...BAR, name, cuts, setups } as JobDocument,
    FOUR.map((k) => `ring ${k}`),
    FOUR.map((k) => `seat ${k}`),
  );
}

const LEFT = written('Bar, left hand', [22.7, 60.8, 98.9, 137], 85, [AGAINST_STOP]);

/** The right end bears on the stop, and the seats lie as far from it: 160 less 22.7 is 137.3, and so on. */
const RIGHT = written('Bar, right hand', [137.3, 99.2, 61.1, 23], 95, [
  {
    ...AGAINST_STOP,
    stops: [{ id: 'stop', face: 'right' }],
    zero: {
      ...AGAINST_STOP.zero,
      x: [
        { touch: 'stop', tip: 10, reads: 0, tolerance: 0.01 },
        { bears: 'right', on: 'stop', block: 20, tolerance: 0.01 },
      ],
    },
  },
]);

describe('a bar with four seats and its twin', () => {
  it('needs one seat, and has the targets of eight seats written out, to the last digit', () => {
    const targets = (report: Report) => report.setups.flatMap((setup) => setup.targets);
    const [left, right] = [examine(parseJob(HANDED)), examine(twin(HANDED))];
    expect(targets(left)).toEqual(targets(examine(parseJob(LEFT))));
    expect(targets(right)).toEqual(targets(examine(parseJob(RIGHT))));
    expect(targets(left).length).toBeGreaterThan(8);
    expect(targets(right).length).toBeGreaterThan(8);
  });

  it('reports the same as that written out', () => {
    expect(plain(examine(twin(HANDED)))).toEqual(plain(examine(parseJob(RIGHT))));
  });

  it('is its own twin again', () => {
    const again = twin({
      ...twin(HANDED).document,
      twin: { swaps: 'left and right', name: 'Bar, left hand' },
    });
    expect(plain(examine(again))).toEqual(plain(examine(parseJob(HANDED))));
  });
});

describe('what a twin is made of', () => {
  it.each([
    [{ rectangle: [40, 20], at: [3, 1] }, 'outline:1', 'outline:3'],
    [{ rectangle: [40, 20], corner: 2 }, 'outline:2', 'outline:6'],
    [{ slot: [40, 20], angle: 90 }, 'outline:0', 'outline:0'],
    [{ svgPath: 'M0 0 H40 V20 H0 Z' }, 'outline:1', 'outline:1'],
    [
      {
        edges: [
          { kind: 'line', a: [0, 0], b: [40, 0] },
          { kind: 'line', a: [40, 0], b: [40, 20], name: 'nose' },
          { kind: 'line', a: [40, 20], b: [0, 20] },
          { kind: 'line', a: [0, 20], b: [0, 0] },
        ],
      },
      'nose',
      'nose',
    ],
  ])('keeps a face by its name or number: %j', (outline, face, mirrored) => {
    const other = face === 'outline:0' ? 'front' : 'front';
    const job = {
      edgebite: 1,
      units: 'mm',
      part: { outline, thickness: 5 },
      twin: { swaps: 'left and right' },
      setups: [
        { id: 's', zero: { x: [{ touch: face, tip: 6 }], y: [{ touch: other, tip: 6 }] }, cuts: ['a'] },
      ],
      cuts: [{ id: 'a', kind: 'bore', center: [5, 5], diameter: 3 }],
    } as unknown as JobDocument;
    const [one, two] = [parseJob(job), twin(job)];
    const [x] = two.document.setups?.[0]?.zero.x ?? [];
    expect(x).toEqual({ touch: mirrored, tip: 6 });
    const at = (found: typeof one) => examine(found).setups[0]?.targets[0]?.exact ?? [];
    expect(at(two)[0]).toBeCloseTo(-(at(one)[0] as number), 12);
    expect(at(two)[1]).toBeCloseTo(at(one)[1] as number, 12);
  });

  it('has holes, keep-outs, the place that is held and marks on the other side', () => {
    const job = {
      ...HANDED,
      part: {
        ...BAR.part,
        outline: {
          rectangle: [160, 32],
          holes: [
            { circle: 6, at: [10, 20], name: 'dowel' },
            { svgPath: 'M70 20 h10 v4 h-10 Z', name: 'window' },
          ],
        },
      },
      keep: [150, 30],
      keepOut: [{ id: 'jaw', kind: 'jaw', shape: { rectangle: [30, 10], at: [5, 32] }, from: -20, to: 6 }],
      setups: [
        {
          ...AGAINST_STOP,
          stops: undefined,
          zero: { x: [{ 'dial in': [10, 3], reads: 4 }], y: [{ 'dial in': 'dowel' }] },
        },
      ],
    } as unknown as JobDocument;
    const { document } = twin(job);
    expect(document.part.outline.holes).toEqual([
      { circle: 6, at: [150, 20], name: 'dowel' },
      {
        name: 'window',
        edges: [
          { kind: 'line', a: [90, 20], b: [80, 20] },
          { kind: 'line', a: [80, 20], b: [80, 24] },
          { kind: 'line', a: [80, 24], b: [90, 24] },
          { kind: 'line', a: [90, 24], b: [90, 20] },
        ],
      },
    ]);
    expect(document.keep).toEqual([10, 30]);
    expect(document.keepOut?.[0]?.shape).toEqual({ rectangle: [30, 10], at: [125, 32] });
    expect(document.setups?.[0]?.zero.x).toEqual([{ 'dial in': [150, 3], reads: -4 }]);
  });

  it('is milled the same way round, stretches included', () => {
    const rim = (along: object) =>
      ({
        edgebite: 1,
        units: 'mm',
        part: { outline: { rectangle: [40, 20] }, thickness: 5 },
        twin: { swaps: 'left and right' },
        cuts: [
          {
            id: 'rim',
            kind: 'swept',
            diameter: 6,
            path: { along: { side: 'outside', lead: 'none', ...along } },
          },
        ],
      }) as JobDocument;
    const pathOf = (job: ReturnType<typeof parseJob>) =>
      job.cuts.flatMap((cut) => (cut.kind === 'swept' ? cut.path.map(({ a, b }) => [a, b] as const) : []));
    const turn = (path: ReturnType<typeof pathOf>) =>
      Math.sign(path.reduce((sum, [a, b]) => sum + (a.x - 20) * (b.y - 10) - (b.x - 20) * (a.y - 10), 0));
    for (const milling of ['climb', 'conventional']) {
      const job = rim({ milling });
      expect(turn(pathOf(twin(job)))).toBe(turn(pathOf(parseJob(job))));
    }
    const part = rim({ from: { edge: 'outline:0', distance: 5 }, to: [40, 12] });
    const [path, other] = [pathOf(parseJob(part)), pathOf(twin(part))];
    // Both go round the stretch the same way: what one begins at, the other ends at, mirrored.
    const ends = (all: typeof path) => [all[0]?.[0], all.at(-1)?.[1]];
    const [begin, end] = ends(path);
    expect(ends(other)).toEqual([end, begin].map((p) => ({ x: 40 - (p?.x ?? 0), y: p?.y })));
  });
});

describe('signs of a twin', () => {
  // Part, tip, stop and blocks as shapes on a plane: the part and what is done are mirrored by hand.
  const bar = (turn: number, flip?: 'x' | 'y') => ({
    solid: [
      [
        [0, 0],
        [160, 0],
        [160, 32],
        [0, 32],
      ] as XY[],
    ],
    turn,
    ...(flip === undefined ? {} : { flip }),
  });

  it.each([
    [0, undefined],
    [90, undefined],
    [180, undefined],
    [270, 'x'],
    [90, 'y'],
    [0, 'y'],
  ] as const)('are those of placed shapes, turned by %d and flipped about %s', (turn, flip) => {
    const job: JobDocument = {
      ...HANDED,
      cuts: [SEAT].map(({ passes: _, ...cut }) => cut),
      tools: undefined,
      repeat: [{ cuts: ['seat'], row: { step: [38.1, 0], count: 4 } }],
      setups: [
        {
          ...AGAINST_STOP,
          turn,
          ...(flip === undefined ? {} : { flip }),
          zero: {
            x: [
              { touch: 'stop', tip: 10, reads: 3 },
              { bears: 'left', on: 'stop', block: 20 },
              { move: 2 },
              { set: 7 },
              { measured: turn % 180 === 0 ? 160 : 32, from: 'left', to: 'right' },
            ],
            y: [{ touch: 'front', tip: 6, reads: 1, then: 'move half the tip and set 0' }],
          },
          cuts: ['seat'],
        },
      ],
    } as JobDocument;
    const table = { ...bar((360 - turn) % 360, flip), stops: { stop: 'right' } };
    const x: Done[] = [
      { touch: 'stop', across: 10, reads: -3 },
      { bears: 'right', on: 'stop', blocks: [20] },
      { move: -2 },
      { set: -7 },
      { measured: turn % 180 === 0 ? 160 : 32, from: 'right', to: 'left' },
    ];
    const y: Done[] = [{ touch: 'front', across: 6, reads: 1, half: true }];
    const targets = examine(twin(job)).setups[0]?.targets ?? [];
    expect(targets).toHaveLength(4);
    targets.forEach(({ exact }, k) => {
      const place: XY = [[137.3, 99.2, 61.1, 23][k] as number, -2.3];
      expect(exact[0]).toBeCloseTo(numberOver(table, 0, x, place), 9);
      expect(exact[1]).toBeCloseTo(numberOver(table, 1, y, place), 9);
    });
  });
});

describe('any job and its twin', () => {
  const swaps = fc.constantFrom('left and right' as const, 'front and back' as const);

  it('have the same targets, with the other sign along one axis, and leave the same', () => {
    fc.assert(
      fc.property(jobDocumentsWithSetup, swaps, (job, sides) => {
        const [one, other] = [examine(parseJob(job)), examine(twin({ ...job, twin: { swaps: sides } }))];
        const axis = sides === 'left and right' ? 0 : 1;
        const exact = (report: Report) =>
          report.setups.flatMap(({ targets }) => targets.map((row) => row.exact));
        const found = exact(other);
        // A path may begin at its other end.
        const key = ([x, y]: readonly [number, number]) =>
          `${x.toFixed(6)} ${y.toFixed(6)}`.replaceAll('-0.000000', '0.000000');
        const mirrored = exact(one).map(
          (at) => at.map((value, k) => (k === axis ? 0 - value : value)) as [number, number],
        );
        expect(found.map(key).sort()).toEqual(mirrored.map(key).sort());
        const left = (report: Report) =>
          report.pieces.map(({ role, volume }) => `${role} ${volume.toPrecision(6)}`).sort();
        expect(left(other)).toEqual(left(one));
        expect(other.findings.map(({ code }) => code).sort()).toEqual(
          one.findings.map(({ code }) => code).sort(),
        );
      }),
      { numRuns: runs(60) },
    );
  });
});
