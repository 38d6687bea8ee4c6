// The demo: checks the example job, draws it, and says which file to open. Run it with `npm run demo`.
import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const job = 'examples/saddle-block.json';
const drawing = join('out', 'saddle-block.svg');

/**
 * Runs the `edgebite` command and returns what it printed. Exit 1 is no fault: it says that there are findings.
 * @param {string[]} args
 */
function edgebite(...args) {
  console.log(`$ edgebite ${args.join(' ')}`);
  const command = join('packages', 'previewer', 'bin', 'edgebite.js');
  const result = spawnSync(process.execPath, [command, ...args], { cwd: root, encoding: 'utf8' });
  process.stderr.write(result.stderr);
  if (result.status !== 0 && result.status !== 1) {
    throw new Error(`edgebite ${args[0]} ended with ${result.status ?? result.signal}`);
  }
  return result.stdout;
}

console.log(edgebite('check', job));
mkdirSync(join(root, 'out'), { recursive: true });
console.log(edgebite('draw', job, '-o', drawing));
console.log(`Open ${drawing} in a browser.`);
