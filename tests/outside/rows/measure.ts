import { coverageOf, fitCircle, type MeasureWay, readingOf } from '@edgebite/core';
import { deepest, heightOver, pinsBelow, sampledArc, widthAt } from '../../measure/sampled.js';
import { exact, loosely, type Pair, type Reference } from '../reference.js';

const height = (chord: number, radius: number): number =>
  readingOf({ kind: 'height', chord }, { center: { x: 0, y: 0 }, radius });

/** The radius that a height over a chord tells. */
const radiusOf = (chord: number, value: number): number =>
  fitCircle({ center: { x: 0, y: 0 }, radius: chord }, [
    { way: { kind: 'height', chord }, value, tolerance: 0.01 },
  ]).radius?.value ?? Number.NaN;

const top = { source: 'outline:2', at: { x: 0, y: 0 }, into: { dx: 0, dy: -1 } };

/** Points of the sampled arcs, and what their steps may be off by, as a share of radius and step squared. */
const COUNT = 4000;
const SHARE = 40;

function sampledReadings(): Pair[] {
  return [8, 15, 40].flatMap((radius) =>
    [0.2, 0.5, 0.8].flatMap((share) => {
      const depth = 2 * radius * share;
      const center = { x: 0, y: radius - depth };
      const half = Math.acos((radius - depth) / radius);
      const arc = sampledArc(center, radius, -Math.PI / 2 - half, -Math.PI / 2 + half, COUNT);
      const within = SHARE * radius * ((2 * half) / COUNT) ** 2;
      const chord = radius * Math.sin(Math.min(half, Math.PI / 2));
      const pin = 0.3 * radius;
      const read = (way: MeasureWay) => readingOf(way, { center, radius });
      return [
        loosely(read({ kind: 'depth', face: top }), deepest(arc, 0), within),
        loosely(read({ kind: 'opening', face: top, under: depth / 4 }), widthAt(arc, 0, depth / 4), within),
        loosely(read({ kind: 'height', chord }), heightOver(arc, chord), within),
        loosely(
          read({ kind: 'to pins', face: top, pin, pins: 1 }),
          pinsBelow(arc, 0, center, pin, 1),
          within,
        ),
        loosely(
          read({ kind: 'to pins', face: top, pin, pins: 2 }),
          pinsBelow(arc, 0, center, pin, 2),
          within,
        ),
      ];
    }),
  );
}

/** How a partial bore is measured. */
export const measureReferences: readonly Reference[] = [
  {
    quantity: 'measuring an arc',
    letters: 'MH',
    source: "Machinery's Handbook, 31st ed., p. 79",
    kind: 'worked example',
    checks: 'chord 16 and height 6: radius 8 1/3, there and back',
    pairs: () => [exact(radiusOf(16, 6), 25 / 3), exact(height(16, 25 / 3), 6)],
  },
  {
    quantity: 'measuring an arc',
    source: 'help.matheass.eu, circular sections: from chord and height',
    kind: 'worked example',
    checks: 'chord 21 and height 6: radius 12.1875, there and back',
    pairs: () => [exact(radiusOf(21, 6), 12.1875), exact(height(21, 12.1875), 6)],
  },
  {
    quantity: 'measuring an arc',
    source: 'JCGM 101:2008, 9.2.3 and 9.2.4 (from memory)',
    kind: 'worked example',
    checks: '95 % of sums of four even spreads: 3.88 of like ones, 17.0 of three of 1 and one of 10',
    pairs: () => {
      const one = Math.sqrt(3);
      return [
        loosely(coverageOf([one, one, one, one], 0.95), 2 * Math.sqrt(3) * (2 - 0.6 ** 0.25), 1e-4),
        loosely(coverageOf([one, one, one, 10 * one], 0.95), 17, 0.05),
      ];
    },
  },
  {
    quantity: 'measuring an arc',
    source: 'sums of like even spreads (Irwin and Hall, from memory)',
    kind: 'closed form of our own',
    checks: '95 % of one, two and three: 0.95, 2 (1 - sqrt(0.05)), 3 - cbrt(1.2)',
    pairs: () => [
      loosely(coverageOf([1], 0.95), 0.95, 1e-9),
      loosely(coverageOf([1, 1], 0.95), 2 * (1 - Math.sqrt(0.05)), 1e-5),
      loosely(coverageOf([1, 1, 1], 0.95), 3 - Math.cbrt(1.2), 1e-5),
    ],
  },
  {
    quantity: 'measuring an arc',
    source: 'arcs of 4,000 points, pins pushed in until they touch one (tests/measure/sampled.ts)',
    kind: 'independent computation',
    checks: 'depth, opening, height over a chord, one pin and two, in seats of three sizes and depths',
    pairs: sampledReadings,
  },
];
