import { mkdirSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { offset } from '@edgebite/core';
import fc from 'fast-check';
import { offsetDifference, sagittaFor } from './compare-offsets.js';
import { comparableCases, type OffsetCase, offsetCases } from './offset-cases.js';
import { checkOffset } from './offset-check.js';
import { clipperOffset } from './offset-clipper.js';
import { geosOffsets } from './offset-geos.js';

/*
 * node tests/tools/run.mjs tests/tools/offset-run.ts --cases 100000 --peers 2000 --seed 7
 * Offsets against their definition, and again on their own results; then against GEOS and clipper2-wasm.
 * Exit code 1 if anything failed. Nothing that is drawn is left out.
 */

const { values } = parseArgs({
  options: {
    cases: { type: 'string', default: '20000' },
    peers: { type: 'string', default: '2000' },
    chords: { type: 'string', default: '1e-4' },
    seed: { type: 'string', default: '1' },
    failures: { type: 'string', default: 'prove-failures' },
  },
});

const seed = wholeNumber('seed', values.seed);
const chords = Number(values.chords);
if (!(chords > 0 && chords < 0.01)) throw new RangeError(`--chords ${values.chords}: not a share under 0.01`);
let failed = 0;

console.log(`seed ${seed}`);
proveDefinition(wholeNumber('cases', values.cases));
await provePeers(wholeNumber('peers', values.peers));
console.log(failed === 0 ? 'all held' : `${failed} failed`);
if (failed > 0) process.exitCode = 1;

function proveDefinition(count: number): void {
  const cases = fc.sample(offsetCases, { seed, numRuns: count });
  let off = 0;
  let probes = 0;
  const measure = (one: OffsetCase, got = offset(one.region, one.distance)) => {
    const measured = checkOffset(one, got);
    off = Math.max(off, measured.off);
    probes += measured.probes;
  };
  const wrong = tally('definition', cases, (one) => measure(one));
  console.log(
    `definition: ${count} cases, ${probes} probes, ${wrong} failed, boundary off by at most ${off} of the size`,
  );
  // Grown or shrunk once more by the same distance, and back.
  const again = cases.flatMap(({ region, distance }) => {
    const result = offset(region, distance);
    return result.length === 0
      ? []
      : [distance, -distance].map((next) => ({ region: result, distance: next }));
  });
  off = 0;
  const wrongAgain = tally('again', again, (one) => measure(one));
  console.log(
    `again on results: ${again.length} cases, ${wrongAgain} failed, boundary off by at most ${off} of the size`,
  );
}

async function provePeers(count: number): Promise<void> {
  const cases = fc.sample(comparableCases, { seed: seed + 1, numRuns: count });
  const geos = await geosOffsets();
  for (const [name, peer] of [
    ['geos', geos.offset],
    ['clipper', await clipperOffset()],
  ] as const) {
    const started = performance.now();
    const wrong = tally(name, cases, (one) => {
      const sagitta = sagittaFor(one, chords);
      const found = offsetDifference(one, peer(one.region, one.distance, sagitta), sagitta);
      if (found !== null) throw new Error(found);
    });
    const ms = ((performance.now() - started) / count).toFixed(1);
    console.log(`${name}: ${count} cases, chords of ${chords} of the size, ${wrong} failed, ${ms} ms each`);
  }
}

/** Failures of a check, counted; the first three of a name are kept as JSON. */
function tally(name: string, cases: readonly OffsetCase[], check: (one: OffsetCase) => void): number {
  let wrong = 0;
  cases.forEach((one, index) => {
    try {
      check(one);
    } catch (error) {
      wrong += 1;
      const message = error instanceof Error ? error.message : String(error);
      if (wrong <= 3) keep(`offset-${name}-${index}`, message, one);
    }
  });
  failed += wrong;
  return wrong;
}

function keep(name: string, message: string, one: OffsetCase): void {
  const path = `${values.failures}/${name}.json`;
  mkdirSync(values.failures, { recursive: true });
  writeFileSync(path, JSON.stringify({ seed, message, case: one }, null, 1));
  console.log(`FAILED ${name} (kept in ${path}): ${message}`);
}

function wholeNumber(option: string, text: string): number {
  const value = Number(text);
  if (!Number.isSafeInteger(value) || value < 0)
    throw new RangeError(`--${option} ${text}: not a whole number`);
  return value;
}
