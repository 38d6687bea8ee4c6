import { readdirSync, readFileSync } from 'node:fs';
import { examine, parseJob, type Report, reportSchema } from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { depthJobs } from '../left/depth-jobs.js';
import { runs } from '../tools/runs.js';

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

function ascending(values: readonly number[], what: string): void {
  values.slice(1).forEach((value, k) => {
    expect(value, what).toBeGreaterThanOrEqual(values[k] as number);
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
  const { pieces, cuts, webs, knifeEdges, floors, findings, limits, slabs } = report;
  const ids = pieces.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  const sources = new Set([
    ...cuts.map(({ source }) => source),
    ...report.outline.flatMap(({ outer, holes }) => [outer, ...holes].flat().map(({ source }) => source)),
  ]);
  for (const { between, slab, piece, thickness } of webs) {
    for (const source of between) expect(sources).toContain(source);
    expect(thickness).toBeLessThan(limits.web);
    expect(slab).toBeLessThan(slabs.length);
    expect(ids).toContain(piece);
  }
  knifeEdges.forEach(({ between, angle, piece }, k) => {
    for (const source of between) expect(sources).toContain(source);
    expect(angle).toBeLessThan(limits.knifeEdge);
    expect(pieces.find(({ id }) => id === piece)?.horns).toContain(k);
  });
  for (const { under, holds } of floors) {
    expect(cuts.map(({ id }) => id)).toContain(under);
    if (holds !== null) expect(pieces.find(({ id }) => id === holds)?.role).toMatch(/^(held slug|hanging)$/);
  }
  for (const { about } of findings)
    for (const name of about) expect(isKnown(report, sources, name), name).toBe(true);
}

function isKnown(report: Report, sources: ReadonlySet<string | undefined>, name: string): boolean {
  const [kind, rest] = [name.slice(0, name.indexOf(':')), name.slice(name.indexOf(':') + 1)];
  switch (kind) {
    case 'piece':
      return report.pieces.some(({ id }) => id === rest);
    case 'body':
      return report.bodies.some(({ id }) => id === rest);
    case 'step':
      return report.steps[Number(rest)] !== undefined;
    case 'tool':
      return report.steps.some(({ tool }) => tool === rest);
    case 'web':
      return report.webs[Number(rest)] !== undefined;
    case 'knifeEdge':
      return report.knifeEdges[Number(rest)] !== undefined;
    case 'setup':
      return report.setups.some(({ id }) => id === rest);
    case 'keepOut':
      return report.keepOut.some(({ id }) => id === rest);
    case 'floor':
      return report.floors[Number(rest)] !== undefined;
    default:
      return sources.has(name);
  }
}
