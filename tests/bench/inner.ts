import { fileURLToPath, pathToFileURL } from 'node:url';
import { buildSync } from 'esbuild';

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** What an overlay is made of, which no entry has: built as the packages are, so that it runs as fast as they do. */
export async function inner(): Promise<typeof import('./inner-parts.js')> {
  const outfile = at('../../out/inner/overlay.mjs');
  buildSync({ entryPoints: [at('inner-parts.ts')], outfile, bundle: true, format: 'esm', platform: 'node' });
  return import(/* @vite-ignore */ pathToFileURL(outfile).href);
}
