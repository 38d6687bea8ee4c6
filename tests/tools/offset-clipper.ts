import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Region } from '@edgebite/core';
import type { Clipper2ZFactoryFunction } from 'clipper2-wasm/dist/clipper2z.js';
import { measuredLoop, type PolygonAnswer, polygonsOf, totalOf } from './chords.js';

/** Coordinates are rounded to this many decimals; regions are up to a few hundred in size. */
const DECIMALS = 8;

/** As `offset`, arcs as chords of a given height. */
export type ClipperOffset = (region: Region, distance: number, sagitta: number) => PolygonAnswer;

/** Loads clipper2-wasm and wraps its offset with round joins. */
export async function clipperOffset(): Promise<ClipperOffset> {
  const require = createRequire(import.meta.url);
  const factory = require('clipper2-wasm') as Clipper2ZFactoryFunction;
  const path = require.resolve('clipper2-wasm').replace(/\.js$/, '.wasm');
  const clipper = await factory({ wasmBinary: new Uint8Array(await readFile(path)).buffer });
  return (region, distance, sagitta) => {
    const paths = new clipper.PathsD();
    for (const loop of polygonsOf(region, sagitta).flat()) {
      const one = clipper.MakePathD(loop.flatMap(({ x, y }) => [x, y]));
      paths.push_back(one);
      one.delete();
    }
    const { JoinType, EndType } = clipper;
    // The limit is for mitred joins only.
    const result = clipper.InflatePathsD(
      paths,
      distance,
      JoinType.Round,
      EndType.Polygon,
      2,
      DECIMALS,
      sagitta,
    );
    const loops = Array.from({ length: result.size() }, (_, k) => {
      const loop = result.get(k);
      const points = Array.from({ length: loop.size() }, (_unused, p) => {
        const point = loop.get(p);
        const xy = { x: point.x, y: point.y };
        point.delete();
        return xy;
      });
      loop.delete();
      return measuredLoop(points);
    });
    for (const one of [paths, result]) one.delete();
    return totalOf(loops);
  };
}
