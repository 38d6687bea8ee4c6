import type { Library } from './library.js';

/** Chord tolerances that the flattening libraries are given, as shares of the size. */
const TOLERANCES = [1e-4, 1e-5, 1e-6];

/** A library of which only the names of things matter, not their form. */
export type AnyLibrary = Library<unknown, unknown>;

/** Where libraries come from, by what their names begin with; ours first. Each is loaded when it is asked for. */
const SOURCES: Readonly<Record<string, () => Promise<readonly unknown[]>>> = {
  edgebite: async () => [(await import('./library.js')).edgebite],
  'flatten-js': async () => {
    const { flattenLibrary } = await import('./peer-flatten.js');
    return [flattenLibrary(1), flattenLibrary(3)];
  },
  'clipper2-wasm': async () => (await import('./peer-clipper-wasm.js')).clipperWasm(TOLERANCES),
  'clipper2-ts': async () => (await import('./peer-clipper-ts.js')).clipperTs(TOLERANCES),
  'paper.js': async () => [(await import('./peer-paper.js')).paperLibrary()],
};

/** All libraries, ours first. */
export async function libraries(): Promise<AnyLibrary[]> {
  const all: unknown[] = [];
  for (const load of Object.values(SOURCES)) all.push(...(await load()));
  return all as AnyLibrary[];
}

/** The library of that name, with none of the others loaded; undefined if there is none. */
export async function libraryNamed(name: string): Promise<AnyLibrary | undefined> {
  const load = SOURCES[name.split('@')[0] ?? ''];
  const found = ((await load?.()) ?? []) as readonly AnyLibrary[];
  return found.find((one) => one.name === name);
}
