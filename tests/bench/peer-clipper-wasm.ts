import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { loopsOf } from '@edgebite/core';
import type { Clipper2ZFactoryFunction, PathsD } from 'clipper2-wasm/dist/clipper2z.js';
import { chordArea, chordList, openChordList } from './chord-list.js';
import type { Library } from './library.js';
import { SIZE } from './problems.js';

/** Decimals that coordinates are rounded to: 1e-8 mm on a part of 100 mm. */
const DECIMALS = 8;

/**
 * clipper2-wasm at some chord tolerances, shares of the size. Whole paths go in by `assign` and come out by `view`,
 * and results stay in its memory between cuts: fed point by point it is several times slower.
 */
export async function clipperWasm(tolerances: readonly number[]): Promise<Library<PathsD, Float64Array[]>[]> {
  const require = createRequire(import.meta.url);
  const factory = require('clipper2-wasm') as Clipper2ZFactoryFunction;
  const path = require.resolve('clipper2-wasm').replace(/\.js$/, '.wasm');
  const clipper = await factory({ wasmBinary: new Uint8Array(await readFile(path)).buffer });
  const { ClipType, FillRule, JoinType, EndType } = clipper;
  // One path and one clipper serve all conversions and cuts.
  const path1 = new clipper.PathD();
  const engine = new clipper.ClipperD(DECIMALS);
  return tolerances.map((share) => ({
    name: `clipper2-wasm@${share.toExponential()}`,
    take: (regions) => {
      const paths = new clipper.PathsD();
      for (const region of regions) {
        for (const loop of loopsOf(region)) {
          path1.assign(chordList(loop, share * SIZE, 3));
          paths.push_back(path1);
        }
      }
      return paths;
    },
    subtract: (from, cuts) => {
      const left = new clipper.PathsD();
      engine.AddSubject(from);
      engine.AddClip(cuts);
      engine.ExecutePath(ClipType.Difference, FillRule.NonZero, left);
      engine.Clear();
      return left;
    },
    xor: (one, other) => {
      const result = new clipper.PathsD();
      engine.AddSubject(one);
      engine.AddClip(other);
      engine.ExecutePath(ClipType.Xor, FillRule.NonZero, result);
      engine.Clear();
      return result;
    },
    sweep: (path, radius) => {
      const paths = new clipper.PathsD();
      path1.assign(openChordList(path, share * SIZE, 3));
      paths.push_back(path1);
      const grown = clipper.InflatePathsD(
        paths,
        radius,
        JoinType.Round,
        EndType.Round,
        2,
        DECIMALS,
        share * SIZE,
      );
      paths.delete();
      return grown;
    },
    grow: (region, distance) =>
      clipper.InflatePathsD(region, distance, JoinType.Round, EndType.Polygon, 2, DECIMALS, share * SIZE),
    give: (result) => {
      const loops: Float64Array[] = [];
      const count = result.size();
      for (let k = 0; k < count; k += 1) {
        const loop = result.get(k);
        loops.push(loop.view().slice());
        loop.delete();
      }
      return loops;
    },
    areaOf: (given) => chordArea(given, 3),
    free: (paths) => paths.delete(),
    takesOverlaps: true,
    error: () => share * SIZE,
  }));
}
