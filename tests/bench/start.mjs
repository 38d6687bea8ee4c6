// What it costs to start, in time of the processor, beside plain Node in the same run: npm run start. Turn about, so that a busy
// machine is as bad for all; least and middle of each, and how many times plain Node the least is.
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const PRELOAD = fileURLToPath(new URL('cpu-at-exit.cjs', import.meta.url));
const TURNS = 15;

/** @param {string} text */
const module = (text) => ['--input-type=module', '-e', text];
const bin = 'packages/previewer/bin/edgebite.js';
const jobs = readdirSync(join(ROOT, 'examples')).filter((name) => name.endsWith('.json'));

/** @type {[name: string, args: string[]][]} */
const CASES = [
  ['plain node', ['-e', '0']],
  ['an empty module', module('')],
  ...['core', 'core/geometry', 'core/machining', 'svg', 'svg/tree', 'previewer'].map(
    (/** @type {string} */ entry) =>
      /** @type {[string, string[]]} */ ([
        `import @edgebite/${entry}`,
        module(`import '@edgebite/${entry}';`),
      ]),
  ),
  ['edgebite --version', [bin, '--version']],
  ...jobs.map(
    (name) => /** @type {[string, string[]]} */ ([`check ${name}`, [bin, 'check', join('examples', name)]]),
  ),
];

/** @param {string[]} args */
function cpu(args) {
  const { output, error } = spawnSync(process.execPath, ['-r', PRELOAD, ...args], {
    cwd: join(ROOT, 'packages', 'previewer', '..', '..'),
    stdio: ['ignore', 'ignore', 'inherit', 'pipe'],
  });
  if (error) throw error;
  const micros = Number(String(output?.[3]));
  if (!(micros > 0)) throw new Error(`start.mjs: ${args.join(' ')} did not say what it took`);
  return micros / 1000;
}

/** @type {Map<string, number[]>} */
const times = new Map(CASES.map(([name]) => [name, []]));
for (let turn = 0; turn < TURNS; turn++) for (const [name, args] of CASES) times.get(name)?.push(cpu(args));

/** @type {number | null} */
let plain = null;
for (const [name, all] of times) {
  const sorted = all.toSorted((a, b) => a - b);
  const least = sorted[0] ?? 0;
  const middle = sorted[Math.floor(sorted.length / 2)] ?? 0;
  plain ??= least;
  const over = least - plain;
  console.log(
    `${name.padEnd(44)} ${least.toFixed(0).padStart(5)} ms least, ${middle.toFixed(0).padStart(5)} middle, ${(least / plain).toFixed(2)} of plain node, ${over.toFixed(0)} over it`,
  );
}
