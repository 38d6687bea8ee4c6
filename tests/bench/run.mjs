/*
 * Runs a TypeScript file of this folder with its arguments against the built packages, not their sources: what is
 * measured is what is shipped, loaded by Node itself. node tests/bench/run.mjs FILE [ARGUMENTS]
 */
import { resolve } from 'node:path';
import { runnerImport } from 'vite';

const [file, ...rest] = process.argv.slice(2);
if (file === undefined) throw new Error('run.mjs: name a TypeScript file to run');
process.argv = [process.argv[0] ?? 'node', resolve(file), ...rest];
await runnerImport(resolve(file), { logLevel: 'error' });
