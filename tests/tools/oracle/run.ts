import { mkdirSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { caseOf } from './cases.js';
import { judge, type Verdict } from './contract.js';
import { ExactReference, OutOfTime } from './exact.js';
import { oracleFamilies } from './families.js';

/*
 * npm run exact -- --cases 200000 --seed 1
 * The library's overlays against exact arithmetic, on families of nearly degenerate input. Exit code 1 if anything broke
 * the contract; the cases that did go to a folder, one file each. Those that the reference finds no answer to in the time
 * that it has are left open, and counted.
 */

const { values } = parseArgs({
  options: {
    cases: { type: 'string', default: '2000' },
    seed: { type: 'string', default: '1' },
    family: { type: 'string', multiple: true },
    welds: { type: 'string', default: '8' },
    seconds: { type: 'string', default: '60' },
    program: { type: 'string', default: 'out/oracle' },
    failures: { type: 'string', default: 'out/oracle-failures' },
  },
});

const chosen = oracleFamilies.filter(({ name }) => values.family?.includes(name) ?? true);
if (chosen.length === 0) {
  throw new RangeError(`--family: choose from ${oracleFamilies.map(({ name }) => name).join(', ')}`);
}
const each = Math.ceil(Number(values.cases) / chosen.length);
const seed = Number(values.seed);
const k = Number(values.welds);
if (!(each > 0 && Number.isInteger(seed) && k > 0))
  throw new RangeError('--cases, --seed and --welds are numbers over 0');

const seconds = Number(values.seconds);
if (!(seconds > 0)) throw new RangeError('--seconds is a number over 0');
const reference = new ExactReference(values.program, seconds);
let failed = 0;
let open = 0;
let tried = 0;
for (const family of chosen) {
  let worst = 0;
  let broken = 0;
  let undrawn = 0;
  for (let number = 0; number < each; number++) {
    const one = caseOf(family, seed, number);
    if (one === null) {
      undrawn++;
      continue;
    }
    tried++;
    const verdict = await judge(one, reference, k).catch((error: unknown): Verdict | null => {
      if (error instanceof OutOfTime) return null;
      throw error;
    });
    if (verdict === null) {
      console.log(`${family.name} ${number} is left open: the reference found no answer in ${seconds} s`);
      open++;
      continue;
    }
    const { fault, welds } = verdict;
    if (Number.isFinite(welds)) worst = Math.max(worst, welds);
    if (fault === null) continue;
    broken++;
    if (broken > 20) continue;
    mkdirSync(values.failures, { recursive: true });
    const file = `${values.failures}/${family.name}-${seed}-${number}.json`;
    writeFileSync(file, JSON.stringify({ family: family.name, seed, number, fault, ...one }));
  }
  failed += broken;
  console.log(
    `${family.name}: ${each - undrawn} cases, ${undrawn} not drawn, ${broken} outside the contract, ` +
      `off by at most ${worst.toPrecision(3)} welds along the boundary`,
  );
}
reference.close();
console.log(
  `${tried} cases in ${chosen.length} families, ${failed} outside the contract of ${k} welds, ${open} left open`,
);
if (failed > 0) process.exitCode = 1;
