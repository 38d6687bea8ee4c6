import { edgebite, type Library } from './library.js';
import { clipperTs } from './peer-clipper-ts.js';
import { clipperWasm } from './peer-clipper-wasm.js';
import { flattenLibrary } from './peer-flatten.js';
import { paperLibrary } from './peer-paper.js';

/** Chord tolerances that the flattening libraries are given, as shares of the size. */
const TOLERANCES = [1e-4, 1e-5, 1e-6];

/** A library of which only the names of things matter, not their form. */
export type AnyLibrary = Library<unknown, unknown>;

/** All libraries, ours first. */
export async function libraries(): Promise<AnyLibrary[]> {
  const all = [
    edgebite,
    flattenLibrary(1),
    flattenLibrary(3),
    ...(await clipperWasm(TOLERANCES)),
    ...clipperTs(TOLERANCES),
    paperLibrary(),
  ];
  return all as unknown as AnyLibrary[];
}
