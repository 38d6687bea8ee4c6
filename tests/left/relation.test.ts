import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/* A plate 100 by 60 with a hole of radius 8 at (25, 30); the shop's resolution is 0.005. */

const outline = { rectangle: [100, 60], holes: [{ circle: 16, at: [25, 30] }] };

function relation(cut: object, more: object = {}): string | undefined {
  const job = {
    edgebite: 1,
    units: 'mm',
    part: { outline, thickness: 10 },
    cuts: [{ id: 'a', ...cut }],
    ...more,
  };
  return examine(parseJob(job)).cuts[0]?.relation;
}

const bore = (x: number, y: number, diameter: number) => ({ kind: 'bore', center: [x, y], diameter });
const ring = (x: number, y: number, diameter: number, wall: number) => ({
  kind: 'annular',
  center: [x, y],
  diameter,
  wall,
});
const swept = (svgPath: string, diameter: number) => ({ kind: 'swept', path: { svgPath }, diameter });

/** Just on either side of a limit. */
const HAIR = 1e-6;

describe('relation of a bore to the part', () => {
  it.each([
    ['far off', bore(130, 30, 20), 'clear'],
    ['off by a hair over the resolution', bore(110.005 + HAIR, 30, 20), 'clear'],
    ['off by a hair under the resolution', bore(110.005 - HAIR, 30, 20), 'grazes'],
    ['touching the side', bore(110, 30, 20), 'grazes'],
    ['into the side by a hair under the resolution', bore(109.995 + HAIR, 30, 20), 'grazes'],
    ['into the side by a hair over the resolution', bore(109.995 - HAIR, 30, 20), 'breaks out'],
    ['half out', bore(100, 30, 20), 'breaks out'],
    ['out by a hair', bore(90 + 2 * HAIR, 30, 20), 'breaks out'],
    ['touching the side from inside', bore(90, 30, 20), 'inside'],
    ['in by a hair', bore(90 - HAIR, 30, 20), 'inside'],
    ['well inside', bore(60, 30, 20), 'inside'],
    ['smaller than the resolution, inside', bore(60, 30, 0.004), 'inside'],
    ['centred on a corner', bore(0, 0, 10), 'breaks out'],
    ['smaller than the resolution, across a side', bore(100, 30, 0.008), 'grazes'],
    ['over the resolution, across a side', bore(100, 30, 0.03), 'breaks out'],
    ['touching a corner', bore(103, 64, 10), 'grazes'],
    ['past a corner by a hair over the resolution', bore(103.003 + HAIR, 64.004 + HAIR, 10), 'clear'],
    ['over all of the part', bore(50, 30, 120), 'swallows'],
    ['through all four corners', bore(50, 30, 2 * Math.hypot(50, 30)), 'swallows'],
    ['over all but the corners', bore(50, 30, 2 * Math.hypot(50, 30) - 0.01), 'breaks out'],
  ])('%s', (_, cut, wanted) => {
    expect(relation(cut)).toBe(wanted);
  });

  it.each([
    ['inside it, clear of its wall', bore(25, 30, 10), 'clear'],
    ['inside it, its wall nearer than the resolution', bore(25, 30, 15.995), 'grazes'],
    ['the same again', bore(25, 30, 16), 'grazes'],
    ['larger by under the resolution', bore(25, 30, 16.008), 'inside'],
    ['inside it, touching its wall', bore(28, 30, 10), 'grazes'],
    ['inside it, into its wall by over the resolution', bore(28.006, 30, 10), 'breaks out'],
    ['round it', bore(25, 30, 30), 'inside'],
    ['round it, off centre', bore(27, 31, 30), 'inside'],
    ['across its wall', bore(33, 30, 10), 'breaks out'],
  ])('where the part has a hole: %s', (_, cut, wanted) => {
    expect(relation(cut)).toBe(wanted);
  });

  it.each([
    [0.05, 'grazes'],
    [0.001, 'clear'],
    [1e-5, 'clear'],
  ])('hangs on the resolution that the job states: %f', (resolution, wanted) => {
    expect(relation(bore(110.02, 30, 20), { resolution })).toBe(wanted);
  });

  it('a bite of a hundredth counts where the resolution is finer', () => {
    expect(relation(bore(109.99, 30, 20), { resolution: 0.001 })).toBe('breaks out');
    expect(relation(bore(109.9999, 30, 20), { resolution: 1e-5 })).toBe('breaks out');
  });
});

describe('relation of a ring cut', () => {
  it.each([
    ['its core round the whole part', ring(50, 30, 140, 5), 'clear'],
    [
      'its core just round the part, touching the corners',
      ring(50, 30, 2 * Math.hypot(50, 30) + 10, 5),
      'grazes',
    ],
    ['inside', ring(70, 30, 30, 4), 'inside'],
    ['inside, touching a side', ring(70, 30, 60, 4), 'inside'],
    ['out at a side', ring(90, 30, 30, 4), 'breaks out'],
    ['its core on the hole', ring(25, 30, 24, 3), 'inside'],
    ['its inner rim in the hole', ring(25, 30, 22, 6), 'inside'],
    ['its outer rim touching a side from outside', ring(115, 30, 30, 4), 'grazes'],
    ['wide enough to take all', ring(50, 130, 340, 169), 'swallows'],
    ['a core under the resolution, nearer than that to the side', ring(110.004, 30, 20, 9.998), 'grazes'],
    ['a core under the resolution, further than that', ring(110.006, 30, 20, 9.998), 'clear'],
    ['a wall under the resolution, across a side', ring(100, 30, 20, 0.008), 'grazes'],
    ['a wall over the resolution, across a side', ring(100, 30, 20, 0.012), 'breaks out'],
    ['all of its core and its wall over the hole', ring(25, 30, 20, 1.5), 'inside'],
  ])('%s', (_, cut, wanted) => {
    expect(relation(cut)).toBe(wanted);
  });
});

describe('relation of a swept cut', () => {
  it.each([
    ['beside the part', swept('M0 70 H100', 10), 'clear'],
    ['along a side, touching it', swept('M0 65 H100', 10), 'grazes'],
    ['along a side, half in', swept('M-10 60 H110', 10), 'breaks out'],
    ['inside', swept('M50 20 H80', 10), 'inside'],
    ['flush with a side, which it opens', swept('M50 5 H80', 10), 'breaks out'],
    ['out at one end', swept('M50 30 H110', 10), 'breaks out'],
    ['round the part', swept('M-10 -10 H110 V70 H-10 Z', 10), 'clear'],
    ['over all of it', swept('M-10 30 H110', 80), 'swallows'],
  ])('%s', (_, cut, wanted) => {
    expect(relation(cut)).toBe(wanted);
  });
});

describe('relation of a hole that touches a side a little beside its rounded corner', () => {
  // The rounded corner of radius 14 ends at (0, 14), and the hole of the same radius touches the side at (0, 14.001): up to
  // there they are within the sagitta, 0.001² / 28, which is a weld tolerance of the part.
  const [c, s] = [3 / 5, 4 / 5];
  const turned = (x: number, y: number) => [c * x - s * y, s * x + c * y].join(' ');
  const round = (x: number, y: number) => `A14 14 0 0 1 ${turned(x, y)}`;
  const side = (x: number, y: number) => `L${turned(x, y)}`;
  const svgPath = `M${turned(14, 0)} ${side(60, 0)} ${side(60, 60)} ${side(0, 60)} ${side(0, 14)} ${round(14, 0)} Z`;

  it.each([14.001, 14.0005, 14.002, 14.01])(
    'at a height of %d is "inside", however the part is turned',
    (y) => {
      const hole = { kind: 'bore', diameter: 28 };
      const straight = { svgPath: 'M14 0 L60 0 L60 60 L0 60 L0 14 A14 14 0 0 1 14 0 Z' };
      const more = (shape: object) => ({ part: { outline: shape, thickness: 10 } });
      const place = turned(14, y).split(' ').map(Number);
      expect(relation({ ...hole, center: [14, y] }, more(straight))).toBe('inside');
      expect(relation({ ...hole, center: place }, more({ svgPath }))).toBe('inside');
    },
  );
});
