import { cpus } from 'node:os';
import { parseArgs } from 'node:util';
import { crowdFigures } from './crowds.js';
import { type Figure, lineOf } from './figures.js';
import { growthFigures } from './growth.js';
import { type AnyLibrary, libraries } from './libraries.js';
import { type Contest, contest, type Problem } from './library.js';
import { type Effort, FULL, QUICK, type Timing, timed } from './measure.js';
import { memoryFigures } from './memory.js';
import { MOVED_CASES, movedFigures } from './moved-case.js';
import { type OwnCase, ownCases } from './own-cases.js';
import { cutProblems, offsetProblems } from './problems.js';
import { proofFigures } from './proof.js';
import { PROPOSE_CASE, proposeFigures } from './propose-case.js';
import { RANGE_CASE, rangeFigures } from './range-case.js';
import { platesToGrow, shapeCuts, sweptProblems, xorProblems } from './shape-problems.js';

/*
 * npm run bench -- --case one-cut --quick --json
 * Every case with every library that can do it, in one process, in turn. docs/performance.md says how to read it.
 */

/** Our own area must be this close to the expected one, as a share of it. */
const OUR_ERROR = 1e-9;

const { values } = parseArgs({
  options: {
    case: { type: 'string', multiple: true },
    json: { type: 'boolean', default: false },
    quick: { type: 'boolean', default: false },
  },
});
const effort: Effort = values.quick ? QUICK : FULL;
const found: Figure[] = [];

const problems: readonly Problem[] = [
  ...cutProblems(),
  ...shapeCuts(),
  ...offsetProblems(),
  ...platesToGrow(),
  ...xorProblems(),
  ...sweptProblems(),
];
const own = ownCases();
const names = [
  ...problems.map(({ name }) => name),
  ...own.map(({ name }) => name),
  ...MOVED_CASES.map(({ name }) => name),
  RANGE_CASE,
  PROPOSE_CASE,
  'growth',
  'crowds',
  'memory',
];
const unknown = (values.case ?? []).find((name) => !names.includes(name));
if (unknown !== undefined) throw new RangeError(`--case ${unknown}: there are ${names.join(', ')}`);
const wanted = (name: string): boolean => values.case?.includes(name) ?? true;

const all = await libraries();
for (const problem of problems) {
  if (!wanted(problem.name)) continue;
  report(comparison(problem, all));
  report(proofFigures(problem, effort));
}
for (const one of own) if (wanted(one.name)) report([ownFigure(one)]);
for (const one of MOVED_CASES) if (wanted(one.name)) report(movedFigures(one, effort));
if (wanted(RANGE_CASE)) report(rangeFigures(effort));
if (wanted(PROPOSE_CASE)) report(proposeFigures(effort));
if (wanted('growth')) report(growthFigures(effort));
if (wanted('crowds')) report(crowdFigures());
if (wanted('memory')) report(await memoryFigures());
if (values.json) console.log(JSON.stringify({ machine: machine(), figures: found }, null, 1));

function report(figures: readonly Figure[]): void {
  found.push(...figures);
  if (!values.json) for (const figure of figures) console.log(lineOf(figure));
}

/** Times of all libraries, and theirs over ours. */
function comparison(problem: Problem, everyone: readonly AnyLibrary[]): Figure[] {
  const contests = everyone.flatMap((library) => contest(problem, library) ?? []);
  const expected = problem.expected();
  const right = contests.map((one, k) => isRight(one, expected, k === 0 ? OUR_ERROR * expected : one.slack));
  if (right[0] === false) {
    process.exitCode = 1;
    console.error(`${problem.name}: our own area is ${contests[0]?.answer()}, not ${expected}`);
  }
  const works = [...contests.map((one) => one.whole), ...contests.map((one) => one.bare)];
  const times = timed(works, effort);
  for (const one of contests) one.done();
  const rows = contests.map(({ library }, k) => ({
    who: library,
    ...(times[k] as Timing),
    bare: (times[k + contests.length] as Timing).wall,
    right: right[k] === true,
  }));
  const [ours, ...theirs] = rows;
  if (ours === undefined) throw new Error(`${problem.name}: nobody took part`);
  const over = (kind: 'ratio' | 'bare' | 'cpu', of: 'wall' | 'bare' | 'cpu'): Figure[] =>
    theirs.map((peer) => ({
      kind,
      case: problem.name,
      who: peer.who,
      ratio: peer.right ? peer[of] / ours[of] : null,
    }));
  const lines = rows.map((row): Figure => ({ kind: 'time', case: problem.name, ...row }));
  return [...lines, ...over('ratio', 'wall'), ...over('bare', 'bare'), ...over('cpu', 'cpu')];
}

function isRight(one: Contest, expected: number, slack: number): boolean {
  try {
    return Math.abs(one.answer() - expected) <= slack;
  } catch {
    // No answer is no right one; the time it takes to fail is printed and means nothing.
    return false;
  }
}

function ownFigure({ name, whole, bare, isRight: right }: OwnCase): Figure {
  const [all, alone] = timed([whole, bare], effort);
  if (all === undefined || alone === undefined) throw new Error(`${name}: not timed`);
  const ok = right();
  if (!ok) process.exitCode = 1;
  return {
    kind: 'time',
    case: name,
    who: 'edgebite',
    wall: all.wall,
    cpu: all.cpu,
    bare: alone.wall,
    right: ok,
  };
}

function machine(): Record<string, unknown> {
  const [first] = cpus();
  return { node: process.version, processor: first?.model ?? 'unknown', cores: cpus().length };
}
