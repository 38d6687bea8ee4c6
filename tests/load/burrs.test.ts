import { contains, examine, parseJob, type Report, regionFromReport } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

type Plain = Record<string, unknown>;

const zero = { x: [{ touch: 'left', tip: 10, reads: 0 }], y: [{ touch: 'front', tip: 10, reads: 0 }] };

const stepsOn = (cuts: readonly Plain[], lie: Plain = {}): Report['steps'] =>
  examine(
    parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline: { rectangle: [80, 40] }, thickness: 20 },
      setups: [{ id: 'a', ...lie, zero, cuts: cuts.map(({ id }) => id) }],
      cuts,
    }),
  ).steps;

const SEAT = { id: 'seat', kind: 'bore', center: [40, 44], diameter: 30 };

/**
 * Where a tooth leaves metal, found by going round its circle in small steps, clockwise as a person over the table sees it. The
 * part that lies bottom up is seen from its other side, so that on the drawing the tooth goes counter-clockwise.
 */
function leavingPlaces({ before, center, diameter, up }: Report['steps'][number], slab: number) {
  const metal = regionFromReport(before?.[slab]?.region ?? []);
  const [x, y] = center as readonly [number, number];
  const count = 3600;
  const at = (k: number) => {
    const angle = ((up === 'top' ? -1 : 1) * 2 * Math.PI * (k + 0.5)) / count;
    return { x: x + (diameter / 2) * Math.cos(angle), y: y + (diameter / 2) * Math.sin(angle) };
  };
  const isIn = Array.from({ length: count }, (_, k) => contains(metal, at(k)) === 'inside');
  return isIn.flatMap((is, k) => (is && !isIn[(k + 1) % count] ? [at(k)] : []));
}

const HORN = Math.sqrt(15 ** 2 - 4 ** 2);

describe('burrs', () => {
  it.each([
    { lie: {}, from: 'top', x: 40 - HORN },
    { lie: { turn: 180 }, from: 'top', x: 40 - HORN },
    { lie: { turn: 37 }, from: 'top', x: 40 - HORN },
    { lie: { flip: 'x' }, from: 'bottom', x: 40 + HORN },
    { lie: { flip: 'y', turn: 90 }, from: 'bottom', x: 40 + HORN },
  ])('are where the teeth leave, with the part lying as $lie', ({ lie, from, x }) => {
    const [step] = stepsOn([{ ...SEAT, from }], lie);
    const { leaves, under } = (step as Report['steps'][number]).burrs ?? { leaves: [], under: 0 };
    expect(leaves).toHaveLength(1);
    expect(leaves[0]?.at[0]).toBeCloseTo(x, 9);
    expect(leaves[0]?.at[1]).toBeCloseTo(40, 9);
    expect([leaves[0]?.from, leaves[0]?.to]).toEqual([0, 20]);
    const [sampled] = leavingPlaces(step as Report['steps'][number], 0);
    expect(Math.hypot((sampled?.x ?? 0) - x, (sampled?.y ?? 0) - 40)).toBeLessThan(0.05);
    // The rim under the face: 2 R acos(4 / 15).
    expect(under).toBeCloseTo(30 * Math.acos(4 / 15), 9);
  });

  it('have their place in readout numbers', () => {
    const [step] = stepsOn([SEAT], { turn: 180 });
    // Turned round, the left horn lies to the right: 80 - (40 - 14.457) + 5; the back edge lies in front, 5 from the zero.
    expect(step?.burrs?.leaves[0]?.readout[0]).toBeCloseTo(45 + HORN, 2);
    expect(step?.burrs?.leaves[0]?.readout[1]).toBe(5);
  });

  it('are below only where the tool breaks through', () => {
    const [blind] = stepsOn([{ ...SEAT, depth: 8 }]);
    expect(blind?.burrs?.under).toBe(0);
    expect(blind?.burrs?.leaves[0]?.to).toBe(8);
    const [whole] = stepsOn([{ ...SEAT, center: [40, 20] }]);
    expect(whole?.burrs).toEqual({ leaves: [], under: expect.closeTo(30 * Math.PI, 9) });
  });

  it('of a later cut are where the metal ends that is left, height by height', () => {
    // The slot takes the upper 6 at the left horn: there the tooth leaves at its wall, below at the face.
    const slot = { id: 'slot', kind: 'swept', diameter: 10, depth: 6, path: { svgPath: 'M28 20 V45' } };
    const [, step] = stepsOn([slot, SEAT]);
    const { leaves } = step?.burrs ?? { leaves: [] };
    expect(leaves.map(({ from, to }) => [from, to])).toEqual([
      [0, 6],
      [6, 20],
    ]);
    expect(leaves[0]?.at[0]).toBeCloseTo(33, 9);
    expect(leaves[1]?.at[0]).toBeCloseTo(40 - HORN, 9);
    const layers = step?.before ?? [];
    layers.forEach((layer, k) => {
      const [sampled] = leavingPlaces(step as Report['steps'][number], k);
      const told = leaves.find(({ from }) => 20 - from === layer.to);
      expect(
        Math.hypot((sampled?.x ?? 0) - (told?.at[0] ?? 0), (sampled?.y ?? 0) - (told?.at[1] ?? 0)),
      ).toBeLessThan(0.05);
    });
  });

  it('are none where nothing is cut', () => {
    const [, step] = stepsOn([SEAT, { ...SEAT, id: 'again' }]);
    expect(step?.burrs).toEqual({ leaves: [], under: 0 });
  });
});
