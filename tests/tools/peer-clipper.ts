import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { edgesOf, extentOf, lengthOf } from '@edgebite/core/testing';
import type { Clipper2ZFactoryFunction, MainModule } from 'clipper2-wasm/dist/clipper2z.js';
import type { Edge, Loop, Region } from '../region/kernel.js';
import { countLoops, nearOrigin, type Peer } from './peer.js';

/** Height of an arc over its chords, as a share of the extent. */
const CHORD_ERROR = 1e-6;

/** The operands have an extent of 100: eight decimals are a rounding of 1e-10 of it. */
const DECIMALS = 8;

/** Loads clipper2-wasm and wraps it: arcs become chords, one difference for all cuts. */
export async function clipperPeer(): Promise<Peer> {
  const require = createRequire(import.meta.url);
  const factory = require('clipper2-wasm') as Clipper2ZFactoryFunction;
  const path = require.resolve('clipper2-wasm').replace(/\.js$/, '.wasm');
  const clipper = await factory({ wasmBinary: new Uint8Array(await readFile(path)).buffer });
  return {
    name: 'clipper2-wasm',
    thin: 4 * CHORD_ERROR,
    areaSlack: (operands) => {
      const arcs = operands.flatMap(edgesOf).filter((e) => e.kind === 'arc');
      const extent = extentOf(...operands);
      // An arc lies at most the chord error off its chords; straight edges move by rounding only.
      return (
        arcs.reduce((sum, arc) => sum + lengthOf(arc), 0) * CHORD_ERROR * extent + 1e-9 * extent * extent
      );
    },
    subtract: (from, cuts) => {
      const { moved, areaFactor } = nearOrigin([from, ...cuts]);
      const loops = difference(clipper, moved[0] ?? [], moved.slice(1));
      const area = loops.reduce((sum, loop) => sum + loop.signedArea, 0) * areaFactor;
      return { area, ...countLoops(loops, 4 * CHORD_ERROR) };
    },
  };
}

function difference(
  clipper: MainModule,
  from: Region,
  cuts: readonly Region[],
): { signedArea: number; perimeter: number }[] {
  const subject = pathsOf(clipper, loopsOf(from));
  const clip = pathsOf(clipper, cuts.flatMap(loopsOf));
  const result = clipper.DifferenceD(subject, clip, clipper.FillRule.NonZero, DECIMALS);
  const loops = Array.from({ length: result.size() }, (_, k) => {
    const path = result.get(k);
    const points = Array.from({ length: path.size() }, (_unused, p) => {
      const point = path.get(p);
      const xy = [point.x, point.y] as const;
      point.delete();
      return xy;
    });
    path.delete();
    return measured(points);
  });
  for (const paths of [subject, clip, result]) paths.delete();
  return loops;
}

function loopsOf(region: Region): Loop[] {
  return region.flatMap((part) => [part.outer, ...part.holes]);
}

function pathsOf(clipper: MainModule, loops: readonly Loop[]): InstanceType<MainModule['PathsD']> {
  const paths = new clipper.PathsD();
  for (const loop of loops) {
    const path = clipper.MakePathD(loop.flatMap(chordPoints));
    paths.push_back(path);
    path.delete();
  }
  return paths;
}

/** Start points of the chords of an edge, x and y in turn. */
function chordPoints(edge: Edge): number[] {
  if (edge.kind === 'line') return [edge.a.x, edge.a.y];
  const { a, center, radius, ccw } = edge;
  const start = Math.atan2(a.y - center.y, a.x - center.x);
  const turn = lengthOf(edge) / radius;
  const half = Math.acos(1 - Math.min(1, (CHORD_ERROR * 100) / radius));
  const count = Math.max(1, Math.ceil(turn / (2 * half)));
  const points = [a.x, a.y];
  for (let k = 1; k < count; k += 1) {
    const angle = start + ((ccw ? turn : -turn) * k) / count;
    points.push(center.x + radius * Math.cos(angle), center.y + radius * Math.sin(angle));
  }
  return points;
}

function measured(points: readonly (readonly [number, number])[]): { signedArea: number; perimeter: number } {
  let signedArea = 0;
  let perimeter = 0;
  points.forEach(([x, y], k) => {
    const [nx, ny] = points[(k + 1) % points.length] ?? [x, y];
    signedArea += (x * ny - y * nx) / 2;
    perimeter += Math.hypot(nx - x, ny - y);
  });
  return { signedArea, perimeter };
}
