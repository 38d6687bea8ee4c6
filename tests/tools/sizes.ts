/*
 * What a use of the packages costs a page: bundled for browsers, minified and gzipped, from what is built.
 *   npm run sizes     prints the bytes of each use beside what it may have and what is aimed at
 */
import { pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';

/** A use, the bytes that it may have, and those that are aimed at. */
export interface Use {
  readonly name: string;
  readonly code: string;
  readonly most: number;
  readonly aim: number;
}

/** Uses as pages have them. `most` is what holds today, with a little room; it only ever goes down, or up with a reason here:
 * zod is 27,000 of what reads a job, and leaves 5,000 in all that stands in one file with it; edges
 * behind a section are 1,200 of a drawing. */
export const USES: readonly Use[] = [
  {
    name: 'subtract',
    code: "export { subtract } from '@edgebite/core/geometry';",
    most: 30_500,
    aim: 15_000,
  },
  {
    name: 'examine of a parsed job',
    code: "export { examine } from '@edgebite/core';",
    most: 134_500,
    aim: 60_000,
  },
  {
    name: 'parseJob and examine',
    code: "export { examine, parseJob } from '@edgebite/core';",
    most: 202_000,
    aim: 100_000,
  },
  { name: 'draw', code: "export { draw } from '@edgebite/svg';", most: 45_500, aim: 60_000 },
];

/** The bytes of a piece of code with all that it needs. */
export async function bytesOf(code: string): Promise<number> {
  const stdin = { contents: code, resolveDir: process.cwd() };
  const { outputFiles } = await build({
    stdin,
    bundle: true,
    minify: true,
    format: 'esm',
    write: false,
    logLevel: 'error',
  });
  return gzipSync(outputFiles[0]?.contents ?? '', { level: 9 }).length;
}

/** Holds all uses to what they may have; returns them in words. */
export async function sizesHeld(): Promise<string> {
  const said: string[] = [];
  const over: string[] = [];
  for (const { name, code, most, aim } of USES) {
    const bytes = await bytesOf(code);
    said.push(`${name} ${bytes} of ${most} (aim ${aim})`);
    if (bytes > most) over.push(`${name}: ${bytes} bytes, over the budget of ${most}`);
  }
  if (over.length > 0) throw new Error(over.join('\n'));
  return said.join('; ');
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  for (const { name, code, most, aim } of USES) {
    console.log(`${name.padEnd(26)} ${String(await bytesOf(code)).padStart(7)} of ${most}, aim ${aim}`);
  }
}
