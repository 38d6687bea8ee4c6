import {
  disc,
  examine,
  generalTolerance,
  type JobDocument,
  parseJob,
  type Report,
  rectangle,
  stackOf,
  type ToleranceClass,
} from '@edgebite/core';
import { machineOf, seeded } from '../../datum/drawn-errors.js';
import { errorCases } from '../../datum/error-jobs.js';
import { geosMeasures } from '../../tools/geos-measure.js';
import { exact, loosely, type Pair, printed, type Reference, same } from '../reference.js';

/** ISO 2768-1:1989, table 1, a second time: over each of these lengths up to the next, mm; null where it has none. */
const LENGTHS = [0.5, 3, 6, 30, 120, 400, 1000, 2000, 4000] as const;
const GRADES: Readonly<Record<ToleranceClass, readonly (number | null)[]>> = {
  f: [0.05, 0.05, 0.1, 0.15, 0.2, 0.3, 0.5, null],
  m: [0.1, 0.1, 0.2, 0.3, 0.5, 0.8, 1.2, 2],
  c: [0.2, 0.3, 0.5, 0.8, 1.2, 2, 3, 4],
  v: [null, 0.5, 1, 1.5, 2.5, 4, 6, 8],
};

const NONE = -1;

function generalTolerances(): Pair[] {
  return (Object.keys(GRADES) as ToleranceClass[]).flatMap((grade) =>
    GRADES[grade].flatMap((wanted, k) => {
      const [over, to] = [LENGTHS[k] as number, LENGTHS[k + 1] as number];
      const first = k === 0 ? over : over + 0.001;
      return [first, to].map((length) => exact(generalTolerance(length, grade) ?? NONE, wanted ?? NONE));
    }),
  );
}

/** Draws of a job; a share of them that should be 0.9973 is off by 0.0004 on average. */
const DRAWS = 20_000;

/** Within three times its standard deviation on either side lies this share of a normal distribution. */
const WITHIN_THREE = 0.9973;

/** Numbers of a normal distribution (Box and Muller 1958, from memory). */
function normal(next: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
}

/** Width of a circle's opening in a face that is `depth` deep in it. */
const openingOf = (radius: number, depth: number): number => 2 * Math.sqrt(depth * (2 * radius - depth));

/** Of drawn errors, each a third of its tolerance as standard deviation: how many openings lie in the interval told. */
function openingsDrawn(): Pair[] {
  return errorCases()
    .filter(({ what }) => what === 'bite')
    .map(({ job, figure }, k) => {
      const report = examine(parseJob(JSON.parse(JSON.stringify(job))));
      const [cut] = report.cuts;
      const [low, high] = cut?.bites[0]?.openingInterval?.rss ?? [Number.NaN, Number.NaN];
      const next = seeded(500 + k);
      const machine = machineOf(job, report);
      let inside = 0;
      for (let n = 0; n < DRAWS; n++) {
        const drawn = new Map<string, number>();
        const depth = figure(machine, (cause) => {
          const value = drawn.get(cause) ?? normal(next) / 3;
          drawn.set(cause, value);
          return value;
        });
        const opening = openingOf((cut?.diameter ?? Number.NaN) / 2, depth);
        if (opening >= low && opening <= high) inside += 1;
      }
      return loosely(inside / DRAWS, WITHIN_THREE, 0.0015);
    });
}

/** A part with a hole, and a block beside it, over it or under it: the same ones every time. */
function blocked(count: number): { job: JobDocument; hole: [number, number, number]; block: number[] }[] {
  const next = seeded(77);
  const between = (low: number, high: number) => low + (high - low) * next();
  return Array.from({ length: count }, () => {
    const hole: [number, number, number] = [between(20, 60), between(15, 25), between(4, 9)];
    const block = [between(15, 65), between(8, 32), between(4, 14), between(4, 10)];
    const [x = 0, y = 0, width = 0, height = 0] = block;
    const job = {
      edgebite: 1,
      units: 'mm',
      part: { outline: { rectangle: [80, 40] }, thickness: 10 },
      keepOut: [
        { id: 'k', kind: 'clamp', shape: { rectangle: [width, height], at: [x, y] }, from: 4, to: 20 },
      ],
      cuts: [{ id: 'a', kind: 'bore', center: hole.slice(0, 2), diameter: 2 * hole[2] }],
    } as unknown as JobDocument;
    return { job, hole, block };
  });
}

const isHit = ({ findings }: Report): boolean => findings.some(({ code }) => code === 'hits-clamp');

/** Whether the cutter runs into the clamp, against an overlap of fine polygons. */
async function hitsByGeos(): Promise<Pair[]> {
  const geos = await geosMeasures();
  return blocked(40).map(({ job, hole: [x, y, r], block: [left = 0, front = 0, width = 0, height = 0] }) => {
    const clamp = [{ outer: rectangle(width, height, { at: { x: left, y: front } }), holes: [] }];
    const overlap = geos.common(disc({ x, y }, r), clamp, 1e-6);
    return same(isHit(examine(parseJob(job))) === overlap > 1e-3);
  });
}

/** What the readout shows over the left end of a plate after a tip has touched it from outside at 0. */
function touchedAt(tip: number, units: 'mm' | 'inch'): number {
  const report = examine(
    parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline: { rectangle: [80, 40] }, thickness: 10 },
      setups: [
        {
          id: 'flat',
          zero: {
            x: [{ touch: 'left', tip, units, reads: 0 }],
            y: [{ touch: 'front', tip, units, reads: 0 }],
          },
          cuts: ['eye'],
        },
      ],
      cuts: [{ id: 'eye', kind: 'bore', center: [20, 20], diameter: 8 }],
    }),
  );
  return report.setups[0]?.zero.x.at ?? Number.NaN;
}

/** Zeros, targets, tolerances, keep-outs. */
export const datumReferences: readonly Reference[] = [
  {
    quantity: 'general tolerance',
    source: 'ISO 2768-1:1989, table 1, as printed at fabriqax.com',
    kind: 'standard',
    checks: 'all lengths and classes, at both ends of each range; -1 where the standard has none',
    pairs: generalTolerances,
  },
  {
    quantity: 'worst case, root of squares',
    source: 'ficientdesign.com, tolerance stack-up of three blocks in a housing',
    kind: 'worked example',
    checks:
      'worst 0.015; root of squares of the stack 0.00616, with the housing 0.00794; ten parts of 0.1: 0.316',
    pairs: () => {
      const stack = [0.005, 0.003, 0.002];
      return [
        printed(stackOf([...stack, 0.005]).worst, 0.015, 3),
        printed(stackOf(stack).rss, 0.00616, 5),
        printed(stackOf([...stack, 0.005]).rss, 0.00794, 5),
        printed(stackOf(Array.from({ length: 10 }, () => 0.1)).rss, 0.316, 3),
      ];
    },
  },
  {
    quantity: 'zero',
    source:
      'half the tip lies between spindle and edge (clough42.com, making an edge finder); inch of 25.4 mm',
    kind: 'closed form of our own',
    checks: 'tips of 10 and of 0.2 in',
    pairs: () => [exact(touchedAt(10, 'mm'), 5), exact(touchedAt(0.2, 'inch'), 2.54)],
  },
  {
    quantity: 'opening by root of squares',
    source: `${DRAWS} drawn errors a job, normally distributed`,
    kind: 'independent computation',
    checks: `of errors with a third of their tolerance as standard deviation, ${WITHIN_THREE} lie in the interval told`,
    pairs: openingsDrawn,
  },
  {
    quantity: 'keep-outs',
    source: 'geos-wasm',
    kind: 'library',
    checks:
      'whether a hole runs into a clamp, 40 generated pairs, by the area that fine polygons have in common',
    agrees: true,
    pairs: hitsByGeos,
  },
];
