import { readdirSync, readFileSync } from 'node:fs';
import { examine, parseJob, type Report, reportSchema } from '@edgebite/core';
import { jobDocumentsWithSetup } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { depthJobs } from '../left/depth-jobs.js';
import { runs } from '../tools/runs.js';
import { unknownNames } from './names-in.js';

const folder = new URL('../../examples/', import.meta.url);

const examples = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .map((name) => [name, JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as unknown] as const);

describe('reports of the examples', () => {
  it('are of several jobs', () => {
    expect(examples.length).toBeGreaterThanOrEqual(5);
  });

  it.each(examples)('%s', (_, json) => {
    isSound(examine(parseJob(json)));
  });

  it.each(examples)('%s: the same each time, from text too', (_, json) => {
    const report = examine(parseJob(json));
    expect(examine(parseJob(json))).toEqual(report);
    expect(examine(parseJob(JSON.parse(JSON.stringify(json))))).toEqual(report);
    expect(JSON.stringify(examine(parseJob(JSON.stringify(json))))).toBe(JSON.stringify(report));
  });
});

it('reports of generated jobs with a setup are as sound', () => {
  fc.assert(
    fc.property(jobDocumentsWithSetup, (document) => isSound(examine(parseJob(document)))),
    { numRuns: runs(40) },
  );
});

it('reports of generated jobs of many depths are as sound', () => {
  fc.assert(
    fc.property(depthJobs, (document) => isSound(examine(parseJob(document)))),
    { numRuns: runs(150) },
  );
});

/** Keeps to its schema, holds nothing that JSON cannot, in the promised orders, and names only what there is. */
function isSound(report: Report): void {
  expect(reportSchema.parse(report)).toEqual(report);
  expect(oddNumbers(report, '')).toEqual([]);
  // Strictly: no undefined, no -0, nothing that text would lose.
  expect(JSON.parse(JSON.stringify(report))).toStrictEqual(report);
  inOrder(report);
  namesHold(report);
}

/** Paths of numbers that are not finite. */
function oddNumbers(value: unknown, path: string): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, member]) => oddNumbers(member, `${path}/${key}`));
}

/** Angles in one step of so many radians are one, and come by feather and names; degrees, two steps. */
const SAME_ANGLE = (2e-9 * 180) / Math.PI;

function ascending(values: readonly number[], what: string, slack = 0): void {
  values.slice(1).forEach((value, k) => {
    expect(value, what).toBeGreaterThanOrEqual((values[k] as number) - slack);
  });
}

function inOrder({ pieces, webs, knifeEdges, slabs, findings }: Report): void {
  expect(pieces.map(({ role }) => role === 'kept')).toEqual(pieces.map((_, k) => k === 0));
  ascending(
    pieces.slice(1).map(({ volume }) => -volume),
    'pieces by volume, largest first',
  );
  ascending(
    webs.map(({ thickness }) => thickness),
    'webs thinnest first',
  );
  ascending(
    knifeEdges.map(({ angle }) => angle),
    'knife edges sharpest first',
    SAME_ANGLE,
  );
  ascending(
    slabs.flatMap(({ from, to }) => [from, to]),
    'slabs from the bottom up',
  );
  for (const { sections } of pieces) {
    ascending(
      sections.flatMap(({ from, to }) => [from, to]),
      'sections from the bottom up',
    );
  }
  const rank = { danger: 0, check: 1, note: 2 };
  ascending(
    findings.map(({ level }) => rank[level]),
    'dangers before checks before notes',
  );
}

function namesHold(report: Report): void {
  const { pieces, webs, knifeEdges, floors, limits } = report;
  expect(unknownNames(report)).toEqual([]);
  for (const { thickness } of webs) expect(thickness).toBeLessThan(limits.web);
  for (const { angle } of knifeEdges) expect(angle).toBeLessThan(limits.knifeEdge);
  for (const { holds } of floors) {
    if (holds !== null) expect(pieces.find(({ id }) => id === holds)?.role).toMatch(/^(held slug|hanging)$/);
  }
}
