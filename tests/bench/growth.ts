import { examine, parseJob, type Region, subtract, websOf } from '@edgebite/core';
import type { Figure } from './figures.js';
import { type Effort, median, timed } from './measure.js';
import { holeGrid } from './problems.js';

/** Numbers of holes, each double the one before, as columns and rows of a pitch of 1 mm. */
const GRIDS = [
  [50, 25],
  [50, 50],
  [100, 50],
  [100, 100],
] as const;

/** How times grow with the number of holes: of the overlay, of the search for webs, and of a whole job. */
export function growthFigures(effort: Effort): Figure[] {
  const plates = GRIDS.map(([columns, rows]) => holeGrid(columns, rows, 1));
  const sections = plates.map(({ plate, holes }) => subtract(plate, holes));
  const jobs = GRIDS.map(([columns, rows]) => parseJob(sieve(columns, rows)));
  const works: [string, (() => unknown)[]][] = [
    [
      'holes',
      plates.map(
        ({ plate, holes }) =>
          () =>
            subtract(plate, holes),
      ),
    ],
    ['webs', sections.map((section: Region) => () => websOf(section, 0.5))],
    ['examine', jobs.map((job) => () => examine(job))],
  ];
  return works.map(([name, all]) => growthOf(name, all, effort));
}

function growthOf(name: string, works: readonly (() => unknown)[], effort: Effort): Figure {
  const times = timed(works, effort).map(({ cpu }) => cpu);
  const factors = times.slice(1).map((time, k) => time / (times[k] as number));
  const sizes = GRIDS.map(([columns, rows]) => columns * rows);
  return { kind: 'growth', case: name, sizes, times, factors, median: median(factors) };
}

function sieve(columns: number, rows: number): unknown {
  const cuts = Array.from({ length: columns * rows }, (_, k) => ({
    id: `hole ${k + 1}`,
    kind: 'bore',
    center: [(k % columns) + 0.5, Math.floor(k / columns) + 0.5],
    diameter: 0.7,
  }));
  return {
    edgebite: 1,
    units: 'mm',
    part: { outline: { rectangle: [columns, rows] }, thickness: 5 },
    limits: { web: 0.5 },
    cuts,
  };
}
