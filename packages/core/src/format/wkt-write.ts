import type { ArcEdge, Edge } from '../geometry/edge.js';
import { pointAlong, sweep } from '../geometry/measure.js';
import type { Point } from '../geometry/point.js';
import type { Loop, Region, RegionPart } from '../region/region.js';
import { inPieces } from './split-arc.js';

/** An arc that comes round to its start by less than this angle is written as two: three points would be ill set. */
const ALL_ROUND = (5 / 3) * Math.PI;

/**
 * Well-known text of a region: a POLYGON if it has no arcs, else a CURVEPOLYGON; a MULTISURFACE of these if it
 * has several parts. All digits that a double needs are written.
 * Source: ISO/IEC 13249-3 and OGC 06-103r4, well-known text.
 */
export function toWkt(region: Region): string {
  const [first, ...others] = region;
  if (first === undefined) return 'CURVEPOLYGON EMPTY';
  if (others.length === 0) return partText(first);
  return `MULTISURFACE (${region.map(partText).join(', ')})`;
}

function partText(part: RegionPart): string {
  const loops = [part.outer, ...part.holes];
  const straight = loops.every((loop) => loop.every((edge) => edge.kind === 'line'));
  return `${straight ? 'POLYGON' : 'CURVEPOLYGON'} (${loops.map(loopText).join(', ')})`;
}

function loopText(loop: Loop): string {
  const runs = runsOf(loop);
  return runs.length === 1 ? (runs[0] as string) : `COMPOUNDCURVE (${runs.join(', ')})`;
}

/** Stretches of lines alone or arcs alone, each as text. */
function runsOf(loop: Loop): string[] {
  const runs: Edge[][] = [];
  for (const edge of loop) {
    const run = runs.at(-1);
    if (run?.[0]?.kind === edge.kind) run.push(edge);
    else runs.push([edge]);
  }
  return runs.map((run) =>
    run[0]?.kind === 'arc' ? arcRun(run as ArcEdge[]) : list(run, (edge) => [edge.b]),
  );
}

function arcRun(run: readonly ArcEdge[]): string {
  const arcs = run.flatMap((arc) => (sweep(arc) > ALL_ROUND ? inPieces(arc, 2) : [arc]));
  return `CIRCULARSTRING ${list(arcs, (arc) => [pointAlong(arc, 0.5), arc.b])}`;
}

function list<E extends Edge>(run: readonly E[], points: (edge: E) => readonly Point[]): string {
  const all = [(run[0] as E).a, ...run.flatMap(points)];
  return `(${all.map((p) => `${p.x + 0} ${p.y + 0}`).join(', ')})`;
}
