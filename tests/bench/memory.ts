import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Figure } from './figures.js';
import { libraries } from './libraries.js';
import { contest } from './library.js';
import { cutProblems } from './problems.js';

const CASE = '10000-holes';
const MB = 1024 * 1024;

/** Memory that the case of 10,000 holes takes, for each library in a process of its own. */
export async function memoryFigures(): Promise<Figure[]> {
  const run = fileURLToPath(new URL('run.mjs', import.meta.url));
  const self = fileURLToPath(import.meta.url);
  return (await libraries()).map(({ name }): Figure => {
    const child = spawnSync(process.execPath, ['--expose-gc', run, self, name], { encoding: 'utf8' });
    if (child.status !== 0) throw new Error(`memory: ${name} ended with ${child.status}: ${child.stderr}`);
    return JSON.parse(child.stdout) as Figure;
  });
}

/** Runs as a program of its own: `memory.ts NAME` measures one library and prints the figure. */
if (process.argv[1] === fileURLToPath(import.meta.url)) {
  process.stdout.write(JSON.stringify(await measured(process.argv[2] ?? '')));
}

async function measured(name: string): Promise<Figure> {
  const library = (await libraries()).find((one) => one.name === name);
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
