import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import type { Figure } from './figures.js';
import { libraries, libraryNamed } from './libraries.js';
import { contest } from './library.js';
import { cutProblems } from './problems.js';

const CASE = '10000-holes';
const MB = 1024 * 1024;

/**
 * Memory that the case of 10,000 holes takes, for each library in a process of its own, in which nothing runs but Node: what
 * turns TypeScript into JavaScript would weigh more than the case.
 */
export async function memoryFigures(): Promise<Figure[]> {
  const folder = mkdtempSync(fileURLToPath(new URL('memory-', import.meta.url)));
  const program = join(folder, 'memory.mjs');
  try {
    await build({
      entryPoints: [fileURLToPath(import.meta.url)],
      outdir: folder,
      outExtension: { '.js': '.mjs' },
      bundle: true,
      splitting: true,
      format: 'esm',
      platform: 'node',
      packages: 'external',
      // Node itself wants the file's whole name.
      alias: { 'paper/dist/paper-core': 'paper/dist/paper-core.js' },
      logLevel: 'error',
    });
    return (await libraries()).map(({ name }): Figure => {
      const child = spawnSync(process.execPath, ['--expose-gc', program, name], { encoding: 'utf8' });
      if (child.status !== 0) throw new Error(`memory: ${name} ended with ${child.status}: ${child.stderr}`);
      return JSON.parse(child.stdout) as Figure;
    });
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Runs as a program of its own: `memory.mjs NAME` measures one library and prints the figure. */
if (process.argv[1] === fileURLToPath(import.meta.url)) {
  process.stdout.write(JSON.stringify(await measured(process.argv[2] ?? '')));
}

async function measured(name: string): Promise<Figure> {
  const library = await libraryNamed(name);
  const problem = cutProblems().find((one) => one.name === CASE);
  if (library === undefined || problem === undefined) throw new RangeError(`memory: no library "${name}"`);
  const work = contest(problem, library);
  if (work === null) throw new RangeError(`memory: ${name} cannot do ${CASE}`);
  globalThis.gc?.();
  const rss = process.memoryUsage().rss;
  const heap = process.memoryUsage().heapUsed;
  const kept = work.whole();
  // `maxRSS` is in kilobytes, and the peak of the whole life of the process.
  const peakRss = process.resourceUsage().maxRSS / 1024;
  const rssGrown = Math.max(0, peakRss - rss / MB);
  globalThis.gc?.();
  const heapKept = (process.memoryUsage().heapUsed - heap) / MB;
  if (kept === undefined) throw new Error(`memory: ${name} gave nothing`);
  return { kind: 'memory', case: CASE, who: name, peakRss, rssGrown, heapKept };
}
