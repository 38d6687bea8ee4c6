import { readFileSync } from 'node:fs';
import {
  type CutChange,
  type Examiner,
  examine,
  examiner,
  type JobDocument,
  JobError,
  parseJob,
  type Report,
} from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { jobCases } from '../fuzz/job-cases.js';
import { jobNumber } from '../outside/machine/made/generate.js';
import { runs } from '../tools/runs.js';
import { firstDifference } from './report-difference.js';
import { type Step, stepsFor, wovenPlates } from './woven-plates.js';

/* A report after a change is that of the changed job, written down and read anew. */

/** Goes through some changes, and compares each report with that of the changed job, written down and read anew. */
function walk(document: JobDocument, steps: readonly Step[]): number {
  let made = 0;
  let bench: Examiner = examiner(parseJob(document));
  for (const { cut, change } of steps) {
    let next: Examiner;
    try {
      next = bench.changed(cut, change);
    } catch (error) {
      if (!(error instanceof JobError)) throw error;
      const cuts = bench.job.document.cuts.map((one) => (one.id === cut ? { ...one, ...change } : one));
      expect(() => parseJob({ ...bench.job.document, cuts }), `${cut} ${JSON.stringify(change)}`).toThrow(
        JobError,
      );
      continue;
    }
    const whole = examine(parseJob(JSON.parse(JSON.stringify(next.job.document))));
    expect(firstDifference(next.report, whole), `${cut} ${JSON.stringify(change)}`).toBeNull();
    made += 1;
    bench = next;
  }
  return made;
}

describe('a report after changes is that of the changed job', () => {
  test('on plates with holes of all kinds', () => {
    let made = 0;
    fc.assert(
      fc.property(wovenPlates, ({ document, steps }) => {
        made += walk(document, steps);
      }),
      { numRuns: runs(10) },
    );
    expect(made).toBeGreaterThan(runs(10));
  });

  test('on random jobs, many of them degenerate', () => {
    fc.assert(
      fc.property(
        jobCases.chain((document) => fc.tuple(fc.constant(document), stepsFor(document))),
        ([document, steps]) => {
          walk(document, steps);
        },
      ),
      { numRuns: runs(10) },
    );
  });

  test('on jobs with several setups, flips, turns, blind cuts, jaws and clamps', () => {
    let made = 0;
    fc.assert(
      fc.property(
        fc.nat(999).chain((seed) => {
          const { document } = parseJob(jobNumber(seed));
          return fc.tuple(fc.constant(document), stepsFor(document));
        }),
        ([document, steps]) => {
          made += walk(document, steps);
        },
      ),
      { numRuns: runs(10) },
    );
    expect(made).toBeGreaterThan(runs(10));
  });

  test.each(['held-slug', 'row-of-bites', 'saddle-block', 'tangent-bore', 'treadle-bracket-inch'])(
    'on the example %s',
    (name) => {
      const url = new URL(`../../examples/${name}.json`, import.meta.url);
      const document = JSON.parse(readFileSync(url, 'utf8')) as JobDocument;
      for (const steps of fc.sample(stepsFor(document), { seed: 3, numRuns: runs(2) })) walk(document, steps);
    },
  );
});

/** Holes of 6 mm on a pitch of 10 mm, and one bite in the edge. */
function plate(more: Partial<JobDocument> = {}): JobDocument {
  const holes = Array.from({ length: 96 }, (_, k) => ({
    id: `hole ${k}`,
    kind: 'bore' as const,
    center: [10 * (k % 12) + 10, 10 * Math.floor(k / 12) + 10] as [number, number],
    diameter: 6,
  }));
  return {
    edgebite: 1,
    units: 'mm',
    part: { outline: { rectangle: [130, 90] }, thickness: 5, material: 'mild steel' },
    limits: { web: 4.2 },
    cuts: [...holes, { id: 'bite', kind: 'bore', center: [45, 0], diameter: 4 }],
    ...more,
  };
}

test('a web far from the change, whose length the change has a say in', () => {
  const url = new URL('../cases/change-far-from-web.json', import.meta.url);
  const { document, steps } = JSON.parse(readFileSync(url, 'utf8')) as {
    document: JobDocument;
    steps: readonly Step[];
  };
  expect(walk(document, steps)).toBe(steps.length);
});

describe('a handle', () => {
  test('says the same whichever of those made from one job was asked before', () => {
    const bench = examiner(parseJob(plate()));
    const near = bench.moved('hole 20', [91, 21]);
    const far = bench.changed('bite', { diameter: 7 }).moved('hole 1', [21, 11]);
    const again = near.moved('bite', [47, 0]);
    for (const { report, job } of [bench, near, far, again]) {
      expect(firstDifference(report, examine(parseJob(job.document)))).toBeNull();
    }
  });

  test('is not changed by what is made of it', () => {
    const bench = examiner(parseJob(plate()));
    const before = JSON.stringify(bench.report);
    bench.moved('hole 20', { x: 91, y: 21 }).changed('hole 20', { diameter: 7 });
    expect(JSON.stringify(bench.report)).toBe(before);
    expect(bench.moved('hole 20', [91, 21]).report).toEqual(bench.moved('hole 20', { x: 91, y: 21 }).report);
  });

  test('takes the diameter as well', () => {
    const next = examiner(parseJob(plate())).changed('hole 9', { diameter: 4.5 });
    expect(firstDifference(next.report, examine(next.job))).toBeNull();
    expect(next.report.cuts[9]?.diameter).toBe(4.5);
  });

  test.each<[string, string, Step['change']]>([
    ['a hole that breaks out', 'hole 0', { center: [2, 10] }],
    ['a depth, which makes slabs', 'hole 9', { depth: 2 }],
    ['a bite in the edge', 'bite', { center: [46, 0] }],
    ['a hole that leaves the part', 'hole 9', { center: [200, 10] }],
  ])('follows %s', (_, cut, change) => {
    const next = examiner(parseJob(plate())).changed(cut, change);
    expect(firstDifference(next.report, examine(next.job))).toBeNull();
  });

  test('follows where a place that is held is cut away', () => {
    const bench = examiner(parseJob(plate({ keep: [95, 25] })));
    const next = bench.moved('hole 20', [95, 24]);
    expect(next.report.findings[0]?.code).toBe('held-place-cut-away');
  });

  test('comes to the same by another way', () => {
    const bench = examiner(parseJob(plate()));
    const there = bench.moved('hole 20', [92, 21]).moved('hole 21', [101, 19]);
    const back = there.moved('hole 21', [100, 20]).moved('hole 20', [90, 20]);
    expect(firstDifference(back.report, bench.report)).toBeNull();
  });

  test('names faults by their place in the job', () => {
    const bench = examiner(parseJob(plate()));
    const fault = (work: () => unknown): readonly { path: string }[] => {
      try {
        work();
      } catch (error) {
        if (error instanceof JobError) return error.issues;
        throw error;
      }
      return [];
    };
    expect(fault(() => bench.moved('hole 20', [Number.NaN, 0])).map(({ path }) => path)).toEqual([
      '/cuts/20/center/0',
    ]);
    expect(fault(() => bench.changed('hole 20', { diameter: -1 })).map(({ path }) => path)).toEqual([
      '/cuts/20/diameter',
    ]);
    expect(() => bench.moved('nowhere', [0, 0])).toThrow(RangeError);
  });

  test('keeps the id and the kind of a cut, from plain JavaScript too', () => {
    const bench = examiner(parseJob(plate()));
    for (const change of [
      { id: 'other' },
      { kind: 'annular' },
      { id: undefined },
      { kind: 'bore' },
    ] as Record<string, unknown>[]) {
      const [key = ''] = Object.keys(change);
      expect(() => bench.changed('hole 20', change as CutChange)).toThrow(
        `changed: cut "hole 20": its ${key} cannot be changed`,
      );
    }
  });

  test('has no centre to move of a swept cut', () => {
    const swept = { id: 'slot', kind: 'swept' as const, diameter: 4, path: { svgPath: 'M5 85 L20 85' } };
    const bench = examiner(parseJob(plate({ cuts: [swept] })));
    expect(() => bench.moved('slot', [0, 0])).toThrow(/path/);
    const report: Report = bench.changed('slot', { path: { svgPath: 'M5 84 L20 84' } }).report;
    expect(report.cuts[0]?.path?.[0]?.a).toEqual([5, 84]);
  });
});
