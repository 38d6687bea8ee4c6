import fc from 'fast-check';

/*
 * Jobs with cuts of many depths from both sides, drawn from small whole numbers: levels, centres and circles often
 * coincide, as they do in real work.
 */

/** Thickness of every such part. */
export const THICKNESS = 12;

const whole = (min: number, max: number) => fc.integer({ min, max });

const shape = fc.oneof(
  fc.record({ rectangle: fc.tuple(whole(60, 110), whole(40, 70)) }),
  fc.record({ rectangle: fc.tuple(whole(60, 110), whole(40, 70)), corner: whole(1, 15) }),
  fc.record({ circle: whole(50, 90), at: fc.constant([45, 30]) }),
  fc.record({
    slot: fc.tuple(whole(80, 110), whole(30, 60)),
    at: fc.constant([50, 30]),
    angle: whole(0, 180),
  }),
  fc.record({
    rectangle: fc.constant([100, 60]),
    holes: fc.tuple(fc.record({ circle: whole(6, 30), at: fc.constant([50, 30]) })),
  }),
);

const place = fc.tuple(whole(0, 11), whole(0, 7)).map(([x, y]) => [x * 10 - 5, y * 10 - 5]);

const depth = fc.oneof(fc.constant('through'), fc.constantFrom(3, 4, 5, 6, 8, 9), whole(1, THICKNESS - 1));

const from = fc.constantFrom('top', 'bottom');

const bore = fc.record({ kind: fc.constant('bore'), center: place, diameter: whole(2, 50), depth, from });

const annular = fc
  .record({
    kind: fc.constant('annular'),
    center: place,
    diameter: whole(12, 60),
    part: whole(1, 8),
    depth,
    from,
  })
  .map(({ part, ...rest }) => ({ ...rest, wall: (rest.diameter * part) / 20 }));

/** The same ring in the same place at other depths, or a bore there. */
const again = fc
  .record({
    center: place,
    diameter: whole(16, 50),
    depths: fc.tuple(depth, depth),
    bored: whole(0, 3),
    turn: fc.boolean(),
  })
  .map(({ center, diameter, depths, bored, turn }) => {
    const ring = { kind: 'annular', center, diameter, wall: diameter / 8, depth: depths[0], from: 'top' };
    const second =
      bored === 0
        ? { ...ring, depth: depths[1], from: 'bottom' }
        : bored === 1
          ? { kind: 'bore', center, diameter: diameter / 2, depth: depths[1], from: 'top' }
          : bored === 2
            ? { kind: 'bore', center, diameter, depth: depths[1], from: 'bottom' }
            : { ...ring, diameter: diameter / 2, wall: diameter / 12, depth: depths[1] };
    return turn ? [second, ring] : [ring, second];
  });

const swept = fc
  .record({ a: place, b: place, diameter: whole(2, 16), depth, from })
  .filter(({ a, b }) => a[0] !== b[0] || a[1] !== b[1])
  .map(({ a, b, ...rest }) => ({
    kind: 'swept',
    path: { svgPath: `M${a.join(' ')} L${b.join(' ')}` },
    ...rest,
  }));

/** A job document, valid for `parseJob`. */
export const depthJobs = fc
  .record({
    outline: shape,
    cuts: fc.array(
      fc.oneof(
        bore.map((c) => [c]),
        annular.map((c) => [c]),
        swept.map((c) => [c]),
        again,
      ),
      {
        minLength: 1,
        maxLength: 5,
      },
    ),
    keep: fc.option(place, { nil: undefined }),
  })
  .map(({ outline, cuts }) => ({
    edgebite: 1,
    units: 'mm',
    part: { outline, thickness: THICKNESS },
    cuts: cuts.flat().map((cut, k) => ({ id: `c${k}`, ...cut })),
  }));

/** What such a job looks like to a test. */
export interface DepthJob {
  readonly cuts: readonly object[];
}

const ringAt = (x: number, y: number, diameter: number, wall: number, depth: number, from: string) => {
  return { kind: 'annular', center: [x, y], diameter, wall, depth, from };
};

const found = (outline: object, cuts: readonly object[]) => ({
  edgebite: 1,
  units: 'mm',
  part: { outline, thickness: THICKNESS },
  cuts: cuts.map((cut, k) => ({ id: `c${k}`, ...cut })),
});

/** Jobs that long runs have found, shrunken. */
export const FOUND_JOBS = [
  [
    'what is kept lies in the core of two rings that meet',
    found({ circle: 50, at: [45, 30] }, [
      ringAt(35, 35, 28, 3.5, 4, 'top'),
      ringAt(35, 35, 28, 3.5, 8, 'bottom'),
      ringAt(45, 5, 39, 4.875, 7, 'top'),
      ringAt(45, 5, 39, 4.875, 5, 'bottom'),
      { kind: 'bore', center: [55, 35], diameter: 37, depth: 9, from: 'top' },
    ]),
  ],
  [
    'a slug from below that hangs on a slug from above',
    found({ circle: 67, at: [45, 30] }, [
      ringAt(15, -5, 29, 1.45, 4, 'top'),
      ringAt(25, 5, 12, 1.8, 8, 'bottom'),
    ]),
  ],
  [
    'two slugs whose cores overlap, at levels that overlap',
    found({ rectangle: [60, 40], corner: 1 }, [
      ringAt(5, -5, 16, 2, 3, 'top'),
      { kind: 'bore', center: [5, -5], diameter: 8, depth: 'through', from: 'top' },
      ringAt(-5, -5, 28, 1.4, 10, 'bottom'),
      ringAt(25, -5, 36, 4.5, 3, 'top'),
      ringAt(25, -5, 36, 4.5, 3, 'bottom'),
    ]),
  ],
] as const;
