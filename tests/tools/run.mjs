/* Runs a TypeScript file of the tests with its arguments: node tests/tools/run.mjs FILE [ARGUMENTS] */
import { resolve } from 'node:path';
import { loadConfigFromFile, runnerImport } from 'vite';

const [file, ...rest] = process.argv.slice(2);
if (file === undefined) throw new Error('run.mjs: name a TypeScript file to run');
process.argv = [process.argv[0] ?? 'node', resolve(file), ...rest];
const loaded = await loadConfigFromFile({ command: 'serve', mode: 'test' }, 'vitest.config.ts');
await runnerImport(resolve(file), { ...loaded?.config, configFile: false, logLevel: 'error' });
