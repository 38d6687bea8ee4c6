import { readdirSync, readFileSync } from 'node:fs';
import { examine, parseJob } from '@edgebite/core';
import { jobDocuments, jobDocumentsWithSetup } from '@edgebite/core/testing';
import { draw } from '@edgebite/svg';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const EXAMPLES = new URL('../../examples/', import.meta.url);

const jobs = [
  ...readdirSync(EXAMPLES)
    .filter((name) => name.endsWith('.json'))
    .map((name) => JSON.parse(readFileSync(new URL(name, EXAMPLES), 'utf8')) as unknown),
  ...fc.sample(jobDocuments, { numRuns: 3, seed: 5 }),
  ...fc.sample(jobDocumentsWithSetup, { numRuns: 3, seed: 5 }),
];

const bytesOf = (job: unknown): string => {
  const report = examine(parseJob(job));
  return JSON.stringify(report) + draw(report);
};

/** The same job with the keys of every object in reverse order. */
function reversed(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(reversed);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, held]) => [key, reversed(held)]),
  );
}

// Between versions of Node: node tests/tools/same-bytes.mjs NODE...
describe('the same job gives the same bytes of report and drawing', () => {
  it('whatever was examined before it, and in whatever order its keys stand', () => {
    const first = jobs.map(bytesOf);
    const backwards = [...jobs].reverse().map((job) => bytesOf(reversed(job)));
    expect(backwards.reverse()).toEqual(first);
  });

  it('as text and as a value', () => {
    for (const job of jobs.slice(0, 2)) expect(bytesOf(JSON.stringify(job))).toBe(bytesOf(job));
  });
});
