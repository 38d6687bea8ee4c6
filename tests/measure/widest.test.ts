import { examine, measured, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/* A block of 100 by 60 with a seat of radius 15, its centre so far under the back face, y = 60. */
const job = (inside: number, outline: object = { rectangle: [100, 60] }) =>
  parseJob({
    edgebite: 1,
    units: 'mm',
    part: { outline, thickness: 20 },
    keep: [5, 5],
    gauges: { pins: [8] },
    cuts: [{ id: 'seat', kind: 'bore', center: [50, 60 - inside], diameter: 30 }],
  } as never);

const acrossOf = (one: ReturnType<typeof job>) =>
  examine(one).checks[0]?.ways.filter(({ kind }) => kind === 'across') ?? [];

describe('across the widest place', () => {
  it('is measured where the arc goes round by five degrees past both ends of a diameter, as a diameter', () => {
    // The level diameter ends 15 sin(5 degrees) = 1.3073 under the horns of a seat whose centre lies so deep.
    const least = 15 * Math.sin((5 * Math.PI) / 180);
    expect(acrossOf(job(least - 1e-6))).toEqual([]);
    const [way] = acrossOf(job(least + 1e-6));
    expect(way).toMatchObject({ reading: 30, byRadius: 2, byPlace: 0, horn: null, face: null });
    expect(Math.abs(way?.along?.[0] ?? 0)).toBeCloseTo(1, 12);
    expect(way?.along?.[1]).toBeCloseTo(0, 12);
  });

  it('lies between two openings too, where a bore breaks out at both sides of a bar', () => {
    // A bar of 100 by 24, the bore in its middle, open at front and back: half of it is metal, 12/15 = sin 53.13 degrees up
    // and down on either side. Only level across there is metal at both ends.
    const bar = parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline: { rectangle: [100, 24] }, thickness: 20 },
      keep: [5, 5],
      cuts: [{ id: 'seat', kind: 'bore', center: [50, 12], diameter: 30 }],
    });
    const ends = examine({ ...bar, keep: bar.keep });
    // The bar falls into two; each half has an arc of 106.26 degrees alone.
    expect(ends.checks.flatMap(({ ways }) => ways.filter(({ kind }) => kind === 'across'))).toEqual([]);
    // With a bridge round one opening both arcs are of one part.
    const bridged = parseJob({
      edgebite: 1,
      units: 'mm',
      part: {
        outline: {
          edges: [
            [0, 0],
            [100, 0],
            [100, 60],
            [0, 60],
          ].map((a, k, all) => ({ kind: 'line', a, b: all[(k + 1) % 4] })),
          holes: [{ rectangle: [60, 26], at: [20, 24] }],
        },
        thickness: 20,
      },
      keep: [5, 5],
      cuts: [{ id: 'seat', kind: 'bore', center: [50, 12], diameter: 30 }],
    } as never);
    const [way] = acrossOf(bridged);
    expect(way?.reading).toBe(30);
    expect(Math.abs(way?.along?.[0] ?? 0)).toBeCloseTo(1, 9);
  });

  it('tells the radius alone, whatever the place', () => {
    const deep = job(6);
    const way = examine(deep).checks[0]?.ways.findIndex(({ kind }) => kind === 'across') ?? -1;
    const depth = examine(deep).checks[0]?.ways.findIndex(({ kind }) => kind === 'depth') ?? -1;
    // 29.6 across: radius 14.8; 20.9 deep: the centre 6.1 under the face.
    const { fit } = measured(deep, {
      cut: 'seat',
      readings: [
        { way, value: 29.6, tolerance: 0.02 },
        { way: depth, value: 20.9, tolerance: 0.02 },
      ],
    });
    expect(fit.radius?.value).toBeCloseTo(14.8, 9);
    expect(fit.radius?.worst[0]).toBeCloseTo(14.79, 9);
    expect(fit.y?.value).toBeCloseTo(60 - 6.1, 9);
    expect(fit.x).toBeNull();
  });
});
