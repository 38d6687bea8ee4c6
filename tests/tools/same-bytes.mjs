// Whether the same job gives the same bytes, of report, drawing and text:
//   node tests/tools/same-bytes.mjs [NODE...]   each NODE another node to run them by, such as one of 22 or 24
// Without any it says the digest of what this node gives. Reads dist, so build first.
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { execPath } from 'node:process';
import { fileURLToPath } from 'node:url';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/** Generated jobs besides the examples. */
const GENERATED = 60;

async function digest() {
  const { examine, parseJob } = await import('@edgebite/core');
  const { jobDocuments, jobDocumentsWithSetup } = await import('@edgebite/core/testing');
  const { draw } = await import('@edgebite/svg');
  const { textReport } = await import('@edgebite/previewer');
  const { default: fc } = await import('fast-check');
  const folder = join(ROOT, 'examples');
  const files = readdirSync(folder).filter((name) => name.endsWith('.json'));
  const jobs = [
    ...files.sort().map((name) => readFileSync(join(folder, name), 'utf8')),
    ...fc.sample(jobDocuments, { numRuns: GENERATED, seed: 5 }).map((job) => JSON.stringify(job)),
    ...fc.sample(jobDocumentsWithSetup, { numRuns: GENERATED, seed: 5 }).map((job) => JSON.stringify(job)),
  ];
  const hash = createHash('sha256');
  for (const job of jobs) {
    const report = examine(parseJob(job));
    hash
      .update(JSON.stringify(report))
      .update(draw(report))
      .update(textReport(report, { all: true }));
  }
  return `${jobs.length} jobs ${hash.digest('hex')}`;
}

const others = process.argv.slice(2);
if (others.length === 0) {
  console.log(await digest());
} else {
  const own = fileURLToPath(import.meta.url);
  const said = [execPath, ...others].map((node) => ({
    version: execFileSync(node, ['--version'], { encoding: 'utf8' }).trim(),
    digest: execFileSync(node, [own], { encoding: 'utf8' }).trim(),
  }));
  for (const { version, digest: one } of said) console.log(`${version}: ${one}`);
  if (new Set(said.map((one) => one.digest)).size > 1) {
    console.error('they differ');
    process.exitCode = 1;
  }
}
