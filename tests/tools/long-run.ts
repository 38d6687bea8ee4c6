import { mkdirSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { type CutCase, families, validateRegion } from '@edgebite/core/testing';
import fc from 'fast-check';
import { comparePeer, type Disagreement } from './compare-peers.js';
import { disagreementReport } from './disagreement-report.js';
import { flattenFamilies, WAYS, wrongIn } from './flatten-families.js';
import { obeysAllLaws } from './law-run.js';
import { clipperPeer } from './peer-clipper.js';
import { flattenPeer } from './peer-flatten.js';

/*
 * npm run prove -- --cases 100000 --seed 7
 * Laws on generated cases of every family, then the peers, then the families in which @flatten-js/core fails.
 * Exit code 1 if anything failed. Nothing that is drawn is left out.
 */

const { values } = parseArgs({
  options: {
    cases: { type: 'string', default: '100000' },
    peers: { type: 'string', default: '6000' },
    flatten: { type: 'string', default: '1000' },
    seed: { type: 'string', default: '1' },
    family: { type: 'string' },
    report: { type: 'string', default: 'docs/peer-disagreements.md' },
    failures: { type: 'string', default: 'prove-failures' },
  },
});

const seed = wholeNumber('seed', values.seed);
const chosen = families.filter((f) => values.family === undefined || f.name === values.family);
if (chosen.length === 0) throw new RangeError(`--family ${values.family}: there is no family of that name`);
let failed = 0;

console.log(`seed ${seed}`);
proveLaws(Math.ceil(wholeNumber('cases', values.cases) / chosen.length));
await provePeers(Math.ceil(wholeNumber('peers', values.peers) / chosen.length));
proveFlattenFamilies(wholeNumber('flatten', values.flatten));
console.log(failed === 0 ? 'all held' : `${failed} failed`);
if (failed > 0) process.exitCode = 1;

function proveLaws(perFamily: number): void {
  if (perFamily === 0) return;
  let total = 0;
  for (const family of chosen) {
    const started = performance.now();
    let worst = 0;
    const wrong = tally(family.name, fc.sample(family.cases, sampling(family.name, perFamily)), (cutCase) => {
      worst = Math.max(worst, obeysAllLaws(cutCase, family));
    });
    total += perFamily;
    const ms = ((performance.now() - started) / perFamily).toFixed(1);
    const deviation = worst.toExponential(1);
    console.log(
      `laws ${family.name}: ${perFamily} cases, 0 skipped, ${wrong} failed, area off by at most ${deviation}, ${ms} ms each`,
    );
  }
  console.log(`laws: ${total} cases in ${chosen.length} families`);
}

async function provePeers(perFamily: number): Promise<void> {
  if (perFamily === 0) return;
  const found: Disagreement[] = [];
  let unexplained = 0;
  const peers = [await clipperPeer(), flattenPeer];
  for (const family of chosen) {
    const cases = fc.sample(family.cases, sampling(`peers ${family.name}`, perFamily));
    for (const peer of peers) {
      const before = found.length;
      const wrong = tally(`${family.name}-${peer.name.replace(/\W+/g, '-')}`, cases, (cutCase) => {
        const disagreement = comparePeer(peer, cutCase, family.marginal);
        if (disagreement) found.push(disagreement);
      });
      unexplained += wrong;
      console.log(
        `peer ${peer.name}, ${family.name}: ${perFamily} cases, ${found.length - before} explained, ${wrong} unexplained`,
      );
    }
  }
  const cases = perFamily * chosen.length;
  console.log(`peers: ${cases} cases each, ${found.length} disagreements explained`);
  writeFileSync(
    values.report,
    disagreementReport(found, { seed, cases, peers: peers.map((p) => p.name), unexplained }),
  );
}

function proveFlattenFamilies(perFamily: number): void {
  if (perFamily === 0) return;
  for (const { name, cases } of flattenFamilies) {
    const wrong = tally(
      name.replace(/\W+/g, '-'),
      fc.sample(cases, sampling(name, perFamily)),
      (flattenCase) => {
        const fault = wrongIn(flattenCase);
        if (fault !== null) throw new Error(fault);
        for (const way of WAYS) validateRegion(flattenCase.run(way), { extent: flattenCase.extent });
      },
    );
    console.log(`flatten family ${name}: ${perFamily} cases in ${WAYS.length} encodings, ${wrong} failed`);
  }
}

/** Failures of a check, counted; the first three of a name are kept as JSON. */
function tally<T extends object>(name: string, cases: readonly T[], check: (one: T) => void): number {
  let wrong = 0;
  cases.forEach((one, index) => {
    try {
      check(one);
    } catch (error) {
      wrong += 1;
      const message = error instanceof Error ? error.message : String(error);
      if (wrong <= 3) keep(`${name}-${index}`, message, one);
    }
  });
  failed += wrong;
  return wrong;
}

function keep(name: string, message: string, failing: object): void {
  const path = `${values.failures}/${name}.json`;
  mkdirSync(values.failures, { recursive: true });
  writeFileSync(path, JSON.stringify({ seed, message, case: failing as CutCase }, null, 1));
  console.log(`FAILED ${name} (kept in ${path}): ${message}`);
}

/** Each family draws its own numbers, whatever the other families do. */
function sampling(name: string, numRuns: number): { seed: number; numRuns: number } {
  const own = [...name].reduce((hash, letter) => (hash * 31 + letter.charCodeAt(0)) | 0, seed);
  return { seed: own, numRuns };
}

function wholeNumber(option: string, text: string): number {
  const value = Number(text);
  if (!Number.isSafeInteger(value) || value < 0)
    throw new RangeError(`--${option} ${text}: not a whole number`);
  return value;
}
