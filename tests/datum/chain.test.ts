import {
  type Link,
  laid,
  placeUnder,
  readoutAt,
  type Setup,
  sizeOfLink,
  stackOf,
  targetAt,
  toStep,
} from '@edgebite/core';
import { describe, expect, it } from 'vitest';

const MM = { units: 'mm', tolerances: null, sizeTolerance: null } as const;
const INCH = { units: 'inch', tolerances: null, sizeTolerance: null } as const;

const link = (over: Partial<Link>): Link => ({
  kind: 'measured',
  action: 0,
  name: null,
  of: null,
  side: null,
  length: 0,
  by: over.length ?? 0,
  units: 'mm',
  way: 1,
  tolerance: null,
  ...over,
});

const axis = (at: number, ...links: readonly Partial<Link>[]) => ({
  place: 'a place',
  at,
  links: links.map(link),
  contact: { middle: 0, half: 0, lever: 0 },
});

const setup = (over: Partial<Setup>): Setup => ({
  id: 'a',
  name: null,
  lie: { flip: null, turn: 0 },
  angleTolerance: 0,
  stops: [],
  readout: { units: 'mm', resolution: 0.005 },
  heights: { units: 'mm', resolution: 0.005, on: 'readout', sense: 1 },
  zero: { x: axis(0), y: axis(0), z: null },
  cuts: [],
  ...over,
});

describe('one link', () => {
  it('is what the reading grows by, whatever its length', () => {
    // Half the tip: http://clough42.com/2017/11/30/making-split-cylinder-edge-finding-tool; 0.200 in gives 0.100 in.
    const tip = link({ kind: 'touch', length: 0.2, by: -0.1, units: 'inch', way: -1 });
    expect(sizeOfLink(tip, 'inch', null).offset).toBe(-0.1);
    expect(sizeOfLink(tip, 'mm', null).offset).toBeCloseTo(-2.54, 12);
  });

  it('is turned into the unit of the readout, its tolerance too', () => {
    // 25.4 mm to the inch: 127 mm are 5 in, 0.0254 mm are 0.001 in.
    const block = link({ kind: 'block', length: 127, tolerance: 0.0254 });
    expect(sizeOfLink(block, 'inch', null)).toEqual({ offset: 5, tolerance: 0.001, basis: 'given' });
  });

  it.each([
    // ISO 2768-1 table 1, class m: over 30 up to 120 mm 0.3; in inches 0.3 / 25.4.
    ['mm', 100, 'mm', 0.3],
    ['inch', 4, 'inch', 0.3 / 25.4],
    ['inch', 4, 'mm', 0.3],
  ] as const)(
    'measured in %s without a tolerance has the general one',
    (units, length, readout, tolerance) => {
      const size = sizeOfLink(link({ length, units }), readout, 'm');
      expect(size.tolerance).toBeCloseTo(tolerance, 15);
      expect(size.basis).toBe('general');
    },
  );

  it('of another kind, or of a length that the standard has nothing for, has none', () => {
    expect(sizeOfLink(link({ kind: 'block', length: 100 }), 'mm', 'm')).toMatchObject({
      tolerance: 0,
      basis: 'none',
    });
    expect(sizeOfLink(link({ length: 0.3 }), 'mm', 'm')).toMatchObject({ tolerance: 0, basis: 'none' });
    expect(sizeOfLink(link({ length: 100 }), 'mm', null)).toMatchObject({ tolerance: 0, basis: 'none' });
  });
});

describe('chains worked by hand', () => {
  it('left and front edge touched with a 10 mm tip, zero set as it touches', () => {
    // The spindle stands 5 to the left of the edge where the readout shows 0, so the edge is at +5:
    // x = 92 + 5 = 97, y = 20 + 5 = 25.
    const finder = { kind: 'touch', length: 10, by: 5, way: 1, tolerance: 0.01 } as const;
    const lay = laid(setup({ zero: { x: axis(0, finder), y: axis(0, finder), z: null } }), MM);
    expect(readoutAt(lay, { x: 92, y: 20 })).toEqual([97, 25]);
    expect(placeUnder(lay, [0, 0])).toEqual({ x: -5, y: -5 });
    // Worst: 0.010 of the finder and half a step of 0.005: 0.0125. Squares: sqrt(0.0001 + 0.00000625) = 0.0103078.
    expect(targetAt(lay, { x: 92, y: 20 }).worst[0]).toBeCloseTo(0.0125, 15);
    expect(targetAt(lay, { x: 92, y: 20 }).rss[0]).toBeCloseTo(0.010307764, 9);
  });

  it('a stop, a gauge block, and the part on it', () => {
    // The stop's face looks to the right, so the tip of 10 touches it from there: it is at -5. Then a block of 25, on
    // which the part bears: the left edge is at -5 + 25 = 20, and a hole 60 in from it at 80.
    const x = axis(
      0,
      { kind: 'touch', length: 10, by: -5, way: -1, tolerance: 0.01 },
      { kind: 'block', length: 25, tolerance: 0.001 },
      { kind: 'bears', length: null, way: 1, tolerance: 0.005 },
    );
    const lay = laid(setup({ zero: { x, y: axis(0), z: null } }), MM);
    expect(readoutAt(lay, { x: 60, y: 5.2 })).toEqual([80, 5.2]);
    // 0.010 + 0.001 + 0.005 = 0.016; sqrt(100 + 1 + 25) / 1000 = 0.0112250.
    expect(lay.x.worst).toBeCloseTo(0.016, 15);
    expect(lay.x.rss).toBeCloseTo(0.011224972, 9);
  });

  it('turned half round against the same stop: both ends alike', () => {
    // A part 90 by 40. Turned by 180 degrees its drawn right end, x = 90, is at the left, and its back, y = 40, in front.
    // Along the machine's x the end lies at -90. A hole at (-4, 20) is 94 in from it: 5 + 94 = 99; y: 40 - 20 + 5 = 25.
    const finder = { kind: 'touch', length: 10, by: 5 } as const;
    const lay = laid(
      setup({
        lie: { flip: null, turn: 180 },
        zero: { x: axis(-90, finder), y: axis(-40, finder), z: null },
      }),
      MM,
    );
    expect(readoutAt(lay, { x: -4, y: 20 })).toEqual([99, 25]);
    // The mirror image of that hole, (94, 20), with the part as drawn: 94 + 5 = 99 too.
    const asDrawn = laid(setup({ zero: { x: axis(0, finder), y: axis(0, finder), z: null } }), MM);
    expect(readoutAt(asDrawn, { x: 94, y: 20 })).toEqual([99, 25]);
  });

  it('turned over about y, the end at the right touched from the right', () => {
    // Mirrored, the drawn left end (x = 0) is at the right. The spindle stands half of 0.200 in to its right where the
    // readout shows 0, so that end is at -0.100; a hole 2.900 in from it is at -0.100 - 2.900 = -3.000.
    const x = axis(0, { kind: 'touch', length: 0.2, by: -0.1, units: 'inch', way: -1 });
    const lay = laid(
      setup({
        lie: { flip: 'y', turn: 0 },
        readout: { units: 'inch', resolution: 0.0005 },
        zero: { x, y: axis(0), z: null },
      }),
      INCH,
    );
    expect(readoutAt(lay, { x: 2.9, y: 0.53 })).toEqual([-3, 0.53]);
  });

  it('a part in mm on a readout in inches, with a block in mm and a tip in inches', () => {
    // Left end at 0.100 + 20 / 25.4 = 0.100 + 0.787402 = 0.887402 in. A hole at 54 mm: 54 / 25.4 = 2.125984 in, so it
    // is at 3.013386 in; the nearest step of 0.0005 is 3.0135, which is 0.000114 more.
    const x = axis(
      0,
      { kind: 'touch', length: 0.2, by: 0.1, units: 'inch' },
      { kind: 'block', length: 20, units: 'mm' },
    );
    const lay = laid(
      setup({ readout: { units: 'inch', resolution: 0.0005 }, zero: { x, y: axis(0), z: null } }),
      MM,
    );
    const { exact, readout, roundingError } = targetAt(lay, { x: 54, y: 0 });
    expect(exact[0]).toBeCloseTo(3.013386, 6);
    expect(readout).toEqual([3.0135, 0]);
    expect(roundingError[0]).toBeCloseTo(0.000114, 6);
  });

  it('from a punch mark of the part, moved over by a length dialled in', () => {
    // The readout is zeroed 12.5 short of the mark at (30, 10): the mark is at +12.5, and a hole at 45 is 15 further.
    const lay = laid(
      setup({ zero: { x: axis(30, { kind: 'set', length: 12.5 }), y: axis(10), z: null } }),
      MM,
    );
    expect(readoutAt(lay, { x: 45, y: 10 })).toEqual([27.5, 0]);
  });
});

describe('stacked tolerances', () => {
  it('are those of a worked example', () => {
    // https://ficientdesign.com/tolerance-stack-up-analysis: parts of 2.000 +-.005, 1.500 +-.003 and .500 +-.002 in a
    // housing of 4.020 +-.005; gap .020, worst +-.015, by squares +-.00794; the parts alone +-.00616.
    expect(stackOf([0.005, 0.003, 0.002]).rss).toBeCloseTo(0.00616, 5);
    const { worst, rss } = stackOf([0.005, 0.003, 0.002, 0.005]);
    expect(worst).toBeCloseTo(0.015, 15);
    expect(rss).toBeCloseTo(0.00794, 5);
  });

  it('of that example as a chain: the gap, from zero at one wall of the housing to the other', () => {
    const part = (length: number, tolerance: number) =>
      ({ length, by: -length, tolerance, units: 'inch', way: -1 }) as const;
    const x = axis(
      0,
      { length: 4.02, tolerance: 0.005, units: 'inch', way: 1 },
      part(2, 0.005),
      part(1.5, 0.003),
      part(0.5, 0.002),
    );
    const lay = laid(
      setup({ readout: { units: 'inch', resolution: 0.0001 }, zero: { x, y: axis(0), z: null } }),
      INCH,
    );
    expect(lay.x.offset).toBeCloseTo(0.02, 12);
    expect(lay.x.worst).toBeCloseTo(0.015, 15);
    expect(lay.x.rss).toBeCloseTo(0.00794, 5);
  });

  it('of nothing are nothing', () => {
    expect(stackOf([])).toEqual({ worst: 0, rss: 0 });
  });
});

describe('rounding to a step', () => {
  it.each([
    [97.0024, 0.005, 97],
    [97.0026, 0.005, 97.005],
    [-97.0026, 0.005, -97.005],
    [3.013386, 0.0005, 3.0135],
    [0.3, 0.1, 0.3],
    [0, 0.005, 0],
    [-0.001, 0.005, 0],
    // Halfway goes away from zero, to either side, though 0.0025 / 0.005 is not exactly a half in binary.
    [1.0025, 0.005, 1.005],
    [-1.0025, 0.005, -1.005],
  ])('%f in steps of %f is %f', (value, step, rounded) => {
    expect(toStep(value, step)).toBe(rounded);
  });
});
