import {
  disc,
  examine,
  type Point,
  parseJob,
  type Region,
  ring,
  subtract,
  union,
  websOf,
} from '@edgebite/core';
import { boxRegion } from '@edgebite/core/testing';
import type { Figure } from './figures.js';
import { median } from './measure.js';

/*
 * Work in which much lies in one place: how its time grows, and what memory it takes for each edge and crossing. Each size is
 * done once, after half of it, since the larger ones take seconds.
 */

interface Row {
  readonly name: string;
  readonly sizes: readonly number[];
  readonly work: (size: number) => () => unknown;
  /** Edges given, and places where they cross: work in which all cross grows with these. */
  readonly cost: (size: number) => number;
}

const pairs = (n: number) => 2 * n + n * (n - 1);

function polar(angle: number, distance: number): Point {
  return { x: Math.cos(angle) * distance, y: Math.sin(angle) * distance };
}

const times = <T>(count: number, make: (k: number) => T): T[] =>
  Array.from({ length: count }, (_, k) => make(k));

/** Circles of many sizes through one point. */
function pencil(count: number): Region[] {
  return times(count, (k) => {
    const radius = 10 + ((k * 7.3) % 30);
    return disc(polar(k * 2.399963, radius), radius);
  });
}

/** Circles each of which crosses all others. */
function heap(count: number): Region[] {
  return times(count, (k) => disc(polar(k * 2.399963, (8 * k) / count), 40 + (k % 7)));
}

function bores(count: number, make: (k: number) => object): unknown {
  return {
    edgebite: 1,
    units: 'mm',
    part: { outline: { rectangle: [300, 300], at: [-150, -150] }, thickness: 100 },
    cuts: times(count, (k) => ({ id: `c${k}`, kind: 'bore', ...make(k) })),
  };
}

function job(document: unknown): () => unknown {
  const parsed = parseJob(document as Parameters<typeof parseJob>[0]);
  return () => examine(parsed);
}

/** A thin ring whose two sides are drawn in many short edges. */
function thinRing(edges: number): Region {
  const side = (radius: number, way: 1 | -1) =>
    times(edges / 2, (k) => polar((way * 4 * Math.PI * k) / edges, radius)).map((a, k, all) => ({
      kind: 'line' as const,
      a,
      b: all[(k + 1) % all.length] as Point,
    }));
  return [{ outer: side(50, 1), holes: [side(49.5, -1)] }];
}

/** A plate with a round hole drawn in many short edges, near a straight side. */
function fineHole(edges: number): Region {
  const hole = times(edges, (k) => polar((-2 * Math.PI * k) / edges, 10)).map((a, k, all) => ({
    kind: 'line' as const,
    a,
    b: all[(k + 1) % all.length] as Point,
  }));
  const corners: readonly Point[] = [
    { x: -40, y: -10.5 },
    { x: 40, y: -10.5 },
    { x: 40, y: 40 },
    { x: -40, y: 40 },
  ];
  const outer = corners.map((a, k) => ({ kind: 'line' as const, a, b: corners[(k + 1) % 4] as Point }));
  return [{ outer, holes: [hole] }];
}

/** A wavy disc drawn in many short edges. */
function wavy(edges: number): Point[] {
  return times(edges, (k) => polar((2 * Math.PI * k) / edges, 100 + Math.sin((24 * Math.PI * k) / edges)));
}

/** Slots as swept cuts, each from one place to another. */
function swept(ways: readonly (readonly [Point, Point])[]): unknown {
  const cuts = ways.map(([a, b], k) => ({
    id: `s${k}`,
    kind: 'swept',
    diameter: 0.5,
    depth: 5,
    path: { svgPath: `M${a.x} ${a.y} L${b.x} ${b.y}` },
  }));
  return {
    edgebite: 1,
    units: 'mm',
    part: { outline: { rectangle: [300, 300], at: [-150, -150] }, thickness: 100 },
    cuts,
  };
}

/** Half of the slots lie across the others. */
function grid(count: number): (readonly [Point, Point])[] {
  const half = count / 2;
  return times(count, (k) => {
    const at = (200 * ((k % half) + 0.5)) / half - 100;
    return k < half
      ? [
          { x: -110, y: at },
          { x: 110, y: at },
        ]
      : [
          { x: at, y: -110 },
          { x: at, y: 110 },
        ];
  });
}

/** Slots through one place. */
function star(count: number): (readonly [Point, Point])[] {
  return times(count, (k) => [
    polar((Math.PI * k) / count, 110),
    polar((Math.PI * k) / count + Math.PI, 110),
  ]);
}

/** Discs strewn over a plate, each of which overlaps a few others. */
function strewn(count: number): Region[] {
  const size = Math.sqrt(count) * 7;
  return times(count, (k) =>
    disc(
      { x: ((k * 0.754877666246693) % 1) * size, y: ((k * 0.569840290998053) % 1) * size },
      2 + (k % 5) * 0.7,
      `cut:${k}`,
    ),
  );
}

function plateUnder(cuts: number): Region {
  const size = Math.sqrt(cuts) * 7;
  return boxRegion(0, 0, size, size);
}

const ROWS: readonly Row[] = [
  {
    name: 'through-a-point',
    sizes: [25, 50, 100, 200],
    work: (n) => union.bind(null, pencil(n)),
    cost: pairs,
  },
  { name: 'all-cross', sizes: [62, 125, 250], work: (n) => union.bind(null, heap(n)), cost: pairs },
  {
    name: 'same-circle',
    sizes: [125, 250, 500],
    work: (n) =>
      union.bind(
        null,
        times(n, () => disc({ x: 0, y: 0 }, 10)),
      ),
    cost: (n) => 2 * n,
  },
  {
    name: 'rings-by-depth',
    sizes: [10, 20, 40],
    work: (n) => job(bores(n, (k) => ({ center: [0, 0], diameter: 4 * (k + 1), depth: 90 - k }))),
    cost: (n) => 2 * n,
  },
  {
    name: 'nested-blind',
    sizes: [25, 50, 100],
    work: (n) => job(bores(n, (k) => ({ center: [0, 0], diameter: 2 * (k + 1), depth: 90 - (80 * k) / n }))),
    cost: (n) => 2 * n,
  },
  {
    name: 'thin-ring-webs',
    sizes: [250, 500, 1000],
    work: (n) => websOf.bind(null, thinRing(n), 1),
    cost: (n) => n,
  },
  {
    name: 'fine-hole-webs',
    sizes: [500, 1000, 2000, 4000],
    work: (n) => websOf.bind(null, fineHole(n), 1),
    cost: (n) => n,
  },
  {
    name: 'long-outline',
    sizes: [6250, 12500, 25000, 50000],
    work: (n) =>
      job({
        edgebite: 1,
        units: 'mm',
        part: {
          outline: {
            svgPath: `M${wavy(n)
              .map(({ x, y }) => `${x},${y}`)
              .join('L')}z`,
          },
          thickness: 10,
        },
        cuts: [{ id: 'one', kind: 'bore', center: [100, 0], diameter: 8 }],
      }),
    cost: (n) => n,
  },
  {
    name: 'swept-grid',
    sizes: [34, 68, 136],
    work: (n) => job(swept(grid(n))),
    cost: (n) => 4 * n + n * n,
  },
  {
    name: 'swept-star',
    sizes: [24, 48, 96],
    work: (n) => job(swept(star(n))),
    cost: (n) => 4 * n + 2 * n * (n - 1),
  },
  {
    name: 'strewn',
    sizes: [625, 1250, 2500, 5000],
    work: (n) => subtract.bind(null, plateUnder(n), strewn(n)),
    cost: (n) => n,
  },
  {
    name: 'crossing-rings',
    sizes: [20, 40, 80],
    work: (n) =>
      union.bind(
        null,
        times(n, (k) => ring(polar(k * 2.4, 20), 30, 25)),
      ),
    cost: (n) => 4 * n + 4 * n * (n - 1),
  },
];

/** Time over that of half the size, by processor time, for work in which much lies in one place. */
export function crowdFigures(): Figure[] {
  return ROWS.map(({ name, sizes, work, cost }): Figure => {
    const runs = sizes.map((size) => {
      const run = work(size);
      run();
      return cpuOf(run);
    });
    // Over the growth of what is given and crosses, for one doubling of it.
    const factors = runs.slice(1).map((time, k) => {
      const grown = cost(sizes[k + 1] as number) / cost(sizes[k] as number);
      return (time / (runs[k] as number)) ** (Math.LN2 / Math.log(grown));
    });
    return { kind: 'growth', case: name, sizes, times: runs, factors, median: median(factors) };
  });
}

/** Milliseconds of processor time. */
function cpuOf(run: () => unknown): number {
  const before = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}
