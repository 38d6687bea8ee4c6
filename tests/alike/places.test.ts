import { type CutDocument, type JobDocument, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

type Repeat = NonNullable<JobDocument['repeat']>;

const HOLE = { id: 'hole', kind: 'bore', center: [50, 0], diameter: 8 } as const satisfies CutDocument;

/** A plate about zero, 140 by 140, with cuts and repeats. */
function plate(cuts: readonly CutDocument[], repeat: Repeat): JobDocument {
  const outline = { rectangle: [140, 140] as [number, number], at: [-70, -70] as [number, number] };
  return { edgebite: 1, units: 'mm', part: { outline, thickness: 10 }, cuts: [...cuts], repeat };
}

function centersOf(job: JobDocument): [string, number, number][] {
  return parseJob(job).cuts.map((cut) =>
    cut.kind === 'swept' ? [cut.id, NaN, NaN] : [cut.id, cut.center.x, cut.center.y],
  );
}

describe('cuts round a centre', () => {
  // X = R cos(a0 + 360 (p - 1) / N): http://homews.co.uk/page401.html; the multipliers 0.5 and 0.86603 of six holes are in
  // https://jonilsson.github.io/machine-shop-tutorials/bolt_circles
  it('lie as printed for six on a circle', () => {
    const job = plate([HOLE], [{ cuts: ['hole'], round: { center: [0, 0], count: 6 } }]);
    const printed = [
      [50, 0],
      [25, 43.30127],
      [-25, 43.30127],
      [-50, 0],
      [-25, -43.30127],
      [25, -43.30127],
    ];
    centersOf(job).forEach(([id, x, y], k) => {
      expect(id).toBe(`hole ${k + 1}`);
      expect(x).toBeCloseTo(printed[k]?.[0] as number, 5);
      expect(y).toBeCloseTo(printed[k]?.[1] as number, 5);
    });
    // Half of 50 is 25, with no digit behind.
    expect(centersOf(job).map(([, x]) => x)).toEqual([50, 25, -25, -50, -25, 25]);
  });

  it('turn counter-clockwise by a step, quarter turns to the last digit', () => {
    const hole = { ...HOLE, center: [30.1, 10.2] as [number, number] };
    const job = plate([hole], [{ cuts: ['hole'], round: { center: [0.1, 0.2], turn: -90, count: 4 } }]);
    expect(centersOf(job).map(([, ...at]) => at)).toEqual([
      [30.1, 10.2],
      [10.1, -29.8],
      [-29.9, -9.8],
      [-9.9, 30.2],
    ]);
  });

  it('turn the way in of their passes with them', () => {
    const passes = { kind: 'step in', bite: 1, approach: 180 } as const;
    const repeat: Repeat = [{ cuts: ['hole'], round: { center: [0, 0], turn: 90, count: 3 } }];
    const { cuts } = parseJob(plate([{ ...HOLE, passes }], repeat));
    expect(cuts.map(({ plan }) => plan?.passes?.approach)).toEqual([180, 270, 0]);
  });
});

describe('mirrored cuts', () => {
  const at = (mirror: Extract<Repeat[number], { mirror: unknown }>['mirror'], center: [number, number]) =>
    centersOf(plate([{ ...HOLE, center }], [{ cuts: ['hole'], mirror }]))[1]?.slice(1);

  it('lie as far beyond the line', () => {
    expect(at({ x: 12.3 }, [30.1, 5])).toEqual([-5.5, 5]);
    expect(at({ y: -1.1 }, [30.1, 5])).toEqual([30.1, -7.2]);
    expect(
      at(
        {
          through: [
            [3, 1],
            [3, 8],
          ],
        },
        [30.1, 5],
      ),
    ).toEqual([-24.1, 5]);
    expect(
      at(
        {
          through: [
            [3, 1],
            [9, 1],
          ],
        },
        [30.1, 5],
      ),
    ).toEqual([30.1, -3]);
    // Mirrored in the line at 45 degrees through zero, x and y change places.
    expect(
      at(
        {
          through: [
            [0, 0],
            [9, 9],
          ],
        },
        [30, 5],
      ),
    ).toEqual([5, 30]);
  });

  it('lie about the middle of the part', () => {
    const job = plate([HOLE], [{ cuts: ['hole'], mirror: { middle: 'y' } }]);
    const moved = {
      ...job.part,
      outline: { rectangle: [140, 140.6] as [number, number], at: [-60, -70.1] as [number, number] },
    };
    const hole = { ...HOLE, center: [50, 10.3] as [number, number] };
    expect(centersOf({ ...job, part: moved, cuts: [hole] })[1]).toEqual(['hole 2', 50, -9.9]);
  });

  it('mirror the way in of their passes', () => {
    const approach = (mirror: Extract<Repeat[number], { mirror: unknown }>['mirror']) => {
      const passes = { kind: 'step in', bite: 1, approach: 30 } as const;
      const cut = { ...HOLE, center: [50, 20] as [number, number], passes };
      return parseJob(plate([cut], [{ cuts: ['hole'], mirror }])).cuts[1]?.plan?.passes?.approach;
    };
    expect(approach({ x: 0 })).toBe(150);
    expect(approach({ y: 0 })).toBe(-30);
    expect(
      approach({
        through: [
          [0, 0],
          [1, 1],
        ],
      }),
    ).toBeCloseTo(60, 12);
  });

  it('keep the metal on the same side of a path', () => {
    const path = {
      edges: [
        { kind: 'line', a: [-60, 80], b: [-40, 80] },
        { kind: 'arc', a: [-40, 80], b: [-30, 70], center: [-40, 70], ccw: false },
      ],
    } as const;
    const slot: CutDocument = { id: 'slot', kind: 'swept', diameter: 6, path } as unknown as CutDocument;
    const [, copy] = parseJob(plate([slot], [{ cuts: ['slot'], mirror: { x: 0 } }])).cuts;
    const edges = copy?.kind === 'swept' ? copy.path : [];
    expect(edges.map(({ a, b }) => [a, b])).toEqual([
      [
        { x: 30, y: 70 },
        { x: 40, y: 80 },
      ],
      [
        { x: 40, y: 80 },
        { x: 60, y: 80 },
      ],
    ]);
    // Clockwise as drawn: a tool that runs along with the metal on its right does so still.
    expect(edges[0]).toMatchObject({ kind: 'arc', ccw: false, center: { x: 40, y: 70 } });
  });
});

describe('groups and repeats of repeats', () => {
  const ids = (repeat: Repeat) =>
    parseJob(
      plate([HOLE, { ...HOLE, id: 'rim', diameter: 12 }, { ...HOLE, id: 'middle', center: [0, 0] }], repeat),
    ).cuts.map(({ id }) => id);

  it('are made cut by cut, or place by place', () => {
    const round = { center: [0, 0] as [number, number], count: 3 };
    const cuts = ['hole', 'rim'];
    expect(ids([{ cuts, round }])).toEqual([
      'hole 1',
      'hole 2',
      'hole 3',
      'rim 1',
      'rim 2',
      'rim 3',
      'middle',
    ]);
    expect(ids([{ cuts, order: 'place by place', round }])).toEqual([
      'hole 1',
      'rim 1',
      'hole 2',
      'rim 2',
      'hole 3',
      'rim 3',
      'middle',
    ]);
  });

  it('repeat what was repeated before', () => {
    const hole = { ...HOLE, center: [10, 10] as [number, number] };
    const job = plate(
      [hole],
      [
        { cuts: ['hole'], row: { step: [20, 0], count: 2 } },
        { cuts: ['hole'], row: { step: [0, 15], count: 2 } },
        { cuts: ['hole'], mirror: { x: 0 } },
      ],
    );
    expect(centersOf(job)).toEqual([
      ['hole 1', 10, 10],
      ['hole 2', 30, 10],
      ['hole 3', 10, 25],
      ['hole 4', 30, 25],
      ['hole 5', -10, 10],
      ['hole 6', -30, 10],
      ['hole 7', -10, 25],
      ['hole 8', -30, 25],
    ]);
  });
});
