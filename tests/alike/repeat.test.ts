import { type CutDocument, examine, examiner, type JobDocument, measured, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { AGAINST_STOP, BAR, RING, SEAT, withNames } from './bar.js';

const FOUR = [1, 2, 3, 4];

/** The bar with four seats 38.1 apart, each written once. */
const ROW: JobDocument = {
  ...BAR,
  repeat: [{ cuts: ['ring', 'seat'], row: { step: [38.1, 0], count: 4 } }],
};

/** The places as a person writes them: 22.7, and 38.1 more each time. */
const PLACES = [22.7, 60.8, 98.9, 137] as const;

const WRITTEN: JobDocument = withNames(
  {
    ...BAR,
    cuts: [RING, SEAT].flatMap((cut) =>
      PLACES.map((x, k) => ({ ...cut, id: `${cut.id} ${k + 1}`, center: [x, -2.3] as [number, number] })),
    ),
  },
  FOUR.map((k) => `ring ${k}`),
  FOUR.map((k) => `seat ${k}`),
);

/** As data: sections of steps are worked out when they are asked for. */
const plain = (job: JobDocument) => JSON.parse(JSON.stringify(examine(parseJob(job))));

describe('cuts in a row', () => {
  it('report the same as the cuts written out, to the last digit', () => {
    expect(plain(ROW)).toEqual(plain(WRITTEN));
  });

  it('are told by numbers, in the order of the job', () => {
    const { setups, tools, cuts } = parseJob(ROW);
    const ids = ['ring 1', 'ring 2', 'ring 3', 'ring 4', 'seat 1', 'seat 2', 'seat 3', 'seat 4'];
    expect(cuts.map(({ id }) => id)).toEqual(ids);
    expect(setups[0]?.cuts).toEqual(ids);
    expect(tools.map((tool) => tool.cuts)).toEqual([ids.slice(0, 4), ids.slice(4)]);
  });

  it.each([
    ['turned', { turn: 180 }],
    ['turned by a quarter', { turn: 90 }],
    ['turned by thirty', { turn: 30 }],
    ['flipped about x', { flip: 'x' }],
    ['flipped about y and turned', { flip: 'y', turn: 270 }],
  ] as const)('are the same with the part %s', (_, lie) => {
    const y = [{ touch: 'front', tip: 10, reads: 0 }] as const;
    const x = [{ touch: 'left', tip: 10, reads: 0 }] as const;
    const zero =
      'turn' in lie && lie.turn === 30
        ? { x: [{ 'dial in': [0, 0], reads: 0 }], y: [{ 'dial in': [0, 0] }] }
        : { x, y };
    const laid = (job: JobDocument): JobDocument =>
      ({
        ...job,
        setups: job.setups?.map(({ stops: _stops, ...setup }) => ({ ...setup, ...lie, zero })),
      }) as JobDocument;
    expect(plain(laid(ROW)).setups).toEqual(plain(laid(WRITTEN)).setups);
    expect(plain(laid(ROW))).toEqual(plain(laid(WRITTEN)));
  });

  it('are made in two setups, some in each', () => {
    const split = (job: JobDocument, first: string[], second: string[]): JobDocument => ({
      ...job,
      setups: [
        { ...AGAINST_STOP, cuts: first },
        { ...AGAINST_STOP, id: 'other end', cuts: second },
      ],
    });
    const repeat: JobDocument['repeat'] = [
      { cuts: ['ring', 'seat'], order: 'place by place', row: { step: [38.1, 0], count: 4 } },
    ];
    const half = (from: number, to: number) => [from, to].flatMap((k) => [`ring ${k}`, `seat ${k}`]);
    const job = parseJob(split({ ...ROW, repeat }, half(1, 2), half(3, 4)));
    expect(job.cuts.map(({ id }) => id)).toEqual([...half(1, 2), ...half(3, 4)]);
    expect(job.setups.map(({ cuts }) => cuts)).toEqual([half(1, 2), half(3, 4)]);
  });

  it('are measured one by one', () => {
    const readings = [{ way: 0, value: 21.23, tolerance: 0.02 }];
    expect(measured(parseJob(ROW), { cut: 'seat 2', readings })).toEqual(
      measured(parseJob(WRITTEN), { cut: 'seat 2', readings }),
    );
  });

  it('keep the job as it is written', () => {
    const { document, plain: out } = parseJob(ROW);
    expect(document).toEqual(ROW);
    expect(out).not.toHaveProperty('repeat');
    expect(plain(out)).toEqual(plain(ROW));
  });

  it('run along an edge by its name, or a side, the way that it runs', () => {
    const centers = (row: NonNullable<JobDocument['repeat']>[number]) =>
      parseJob({ ...BAR, repeat: [row] }).cuts.flatMap((cut) => (cut.kind === 'bore' ? [cut.center] : []));
    const cuts = ['ring', 'seat'];
    const expected = [22.7, 60.8, 98.9].map((x) => ({ x, y: -2.3 }));
    expect(centers({ cuts, row: { along: 'front', pitch: 38.1, count: 3 } })).toEqual(expected);
    expect(centers({ cuts, row: { along: 'back', pitch: -38.1, count: 3 } })).toEqual(expected);
    expect(centers({ cuts, row: { along: 'outline:0', pitch: 38.1, count: 3 } })).toEqual(expected);
    expect(centers({ cuts, row: { along: 'left', pitch: -10, count: 2 } })[1]).toEqual({ x: 22.7, y: 7.7 });
  });

  it('follow the written one, however its place is given', () => {
    const placed = (center: Extract<CutDocument, { kind: 'bore' }>['center']) =>
      parseJob({ ...ROW, cuts: [{ ...RING }, { ...SEAT, center }] }).cuts.slice(4);
    const by = placed([20, -4.75]);
    expect(placed({ on: 'front', along: 20, depth: 6 })).toMatchObject(by.map(({ id }) => ({ id })));
    const centers = placed({ on: 'front', along: 20, depth: 6 }).map((cut) =>
      'center' in cut ? cut.center : null,
    );
    expect(centers).toEqual(by.map((cut) => ('center' in cut ? cut.center : null)));
  });

  it('move with the written one when it is changed alone', () => {
    const { report } = examiner(parseJob(ROW)).moved('seat', [20, 1]).changed('seat', { diameter: 22 });
    const cuts = [RING, { ...SEAT, center: [20, 1] as [number, number], diameter: 22 }];
    expect(JSON.parse(JSON.stringify(report))).toEqual(plain({ ...ROW, cuts }));
    const one = examiner(parseJob(ROW));
    expect(() => one.moved('seat 2', [20, 1])).toThrow('moved: "seat 2" is a copy; change the cut');
    expect(() => one.changed('sea', {})).toThrow('changed: the job has no cut "sea"');
  });
});
