import { readFileSync } from 'node:fs';
import {
  aimJsonSchema,
  examine,
  jobJsonSchema,
  measured,
  parseAim,
  parseJob,
  propose,
  rangeOf,
} from '@edgebite/core';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import type { Answer, Outcome, Question } from '../../packages/previewer/page/src/worker/messages.js';
import { patched, patchOf } from '../../packages/previewer/page/src/worker/patch.js';

/* What the worker answers is what the library says of the same job, asked beside it. */

let ask: (question: Question) => Answer;
let greeting: Answer;

beforeAll(async () => {
  const posted: Answer[] = [];
  const listeners: ((event: { readonly data: Question }) => void)[] = [];
  vi.stubGlobal('self', {
    postMessage: (message: Answer) => posted.push(message),
    addEventListener: (_: string, listener: (event: { readonly data: Question }) => void) =>
      listeners.push(listener),
  });
  await import('../../packages/previewer/page/src/worker/worker.js');
  greeting = posted[0] as Answer;
  ask = (question) => {
    for (const listener of listeners) listener({ data: question });
    return posted.at(-1) as Answer;
  };
});

const JOB = {
  edgebite: 1,
  units: 'mm',
  part: { outline: { rectangle: [80, 40] }, thickness: 10, material: 'mild steel' },
  cuts: [
    { id: 'bite', kind: 'bore', center: [30, 41], diameter: 12 },
    { id: 'hole', kind: 'bore', center: [60, 20], diameter: 9, from: 'bottom', depth: 4 },
  ],
};

/** The job and the outcome that the worker last had to do with. */
let handed: unknown = null;
let outcome: unknown = null;

/** What comes of a job, told and heard as changes. */
function examined(job: unknown): Outcome {
  const answer = ask({ kind: 'examine', number: 3, change: patchOf(handed, job) });
  if (answer.kind !== 'examined') throw new Error(`answered with ${answer.kind}`);
  expect(answer.number).toBe(3);
  handed = job;
  outcome = patched(outcome, answer.change);
  return outcome as Outcome;
}

const AIM = JSON.parse(readFileSync(new URL('../whole/aims/link.json', import.meta.url), 'utf8'));

/** As it comes over from another thread. */
const sent = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

afterAll(() => {
  vi.unstubAllGlobals();
});

it('hands over both schemas before anything is asked', () => {
  expect(greeting).toEqual({ kind: 'schema', schema: jobJsonSchema(), aimSchema: aimJsonSchema() });
});

describe('asked of a job', () => {
  it('gives the figures of its report', () => {
    const report = examine(parseJob(JOB));
    const { summary } = examined(JOB);
    if (summary === null) throw new Error('no summary');
    const { cuts, pieces, ...rest } = summary;
    expect(report).toMatchObject(sent(rest) as object);
    expect(cuts.map(({ worked: _, ...cut }) => cut)).toEqual(
      report.cuts.map(({ id, relation, depth, through, from, removedVolume }) => ({
        ...{ id, relation, depth, through, from, removedVolume },
      })),
    );
    expect(report.pieces).toMatchObject(pieces);
  });

  it('tells of a job that differs in one cut what differs, and comes to the same', () => {
    const before = examined(JOB);
    const [bite, hole] = JOB.cuts;
    const moved = { ...JOB, cuts: [bite, { ...hole, center: [58, 21] }] };
    const after = examined(moved);
    expect(after.sketch?.cuts[0]).toBe(before.sketch?.cuts[0]);
    expect(after.sketch?.cuts[1]?.center).toEqual([58, 21]);
    // A change of everything, to the same job.
    expect(after).toEqual([examined({ ...moved, units: 'inch' }), examined(moved)][1]);
    expect(examined(JOB)).toEqual(before);
  });

  it('gives its faults, and no report', () => {
    const bad = { ...JOB, units: 'cm' };
    expect(examined(bad)).toMatchObject({ summary: null, sketch: null, issues: [{ path: '/units' }] });
    expect(ask({ kind: 'report', number: 5, job: bad })).toEqual({ kind: 'report', number: 5, report: null });
    expect(ask({ kind: 'report', number: 6, job: JOB })).toEqual({
      ...{ kind: 'report', number: 6 },
      report: examine(parseJob(JOB)),
    });
  });

  it('gives what comes of a range, or why it cannot be told', () => {
    const query = { cut: 'bite', along: 'y', from: 38, to: 43 } as const;
    const answer = ask({ kind: 'range', number: 7, job: JOB, query });
    expect(answer).toEqual({
      ...{ kind: 'range', number: 7 },
      range: { report: rangeOf(parseJob(JOB), query), fault: null },
    });
    const unknown = ask({ kind: 'range', number: 8, job: JOB, query: { ...query, cut: 'bight' } });
    expect(unknown).toMatchObject({ range: { report: null, fault: expect.stringContaining('bight') } });
    const faulty = ask({ kind: 'range', number: 9, job: { ...JOB, cuts: 3 }, query });
    expect(faulty).toMatchObject({ range: { report: null, fault: expect.stringMatching(/^the job /) } });
  });

  it('gives how the arcs of one cut are measured, and what readings say', () => {
    const job = parseJob(JOB);
    const checks = examine(job).checks.filter(({ cut }) => cut === 'bite');
    expect(checks.length).toBeGreaterThan(0);
    const asked = { cut: 'bite', arc: 0, readings: [] };
    expect(ask({ kind: 'measure', number: 10, job: JOB, asked })).toEqual({
      ...{ kind: 'measure', number: 10 },
      measure: { checks, measured: null, fault: null },
    });
    const readings = (checks[0]?.ways ?? [])
      .slice(0, 2)
      .map(({ reading }, k) => ({ way: k, value: reading, tolerance: 0.01 }));
    const told = { ...asked, readings };
    expect(ask({ kind: 'measure', number: 11, job: JOB, asked: told })).toEqual({
      ...{ kind: 'measure', number: 11 },
      measure: { checks, measured: measured(job, told), fault: null },
    });
  });
});

describe('asked of an aim', () => {
  it('gives the ways, or what is amiss', () => {
    const answer = ask({ kind: 'propose', number: 12, aim: AIM });
    if (answer.kind !== 'ways') throw new Error('no ways');
    const { ways, refusals } = propose(parseAim(AIM));
    expect(answer.ways.ways.map(({ job, row }) => [job, row])).toEqual(
      ways.map(({ job, row }) => [job, row]),
    );
    expect(answer.ways.refusals).toEqual(refusals.map(({ message }) => message));
    expect(answer.ways).toMatchObject({ units: AIM.units, issues: [] });
    expect(ask({ kind: 'check', number: 13, aim: AIM })).toEqual({ kind: 'checked', number: 13, issues: [] });
    const bad = { ...AIM, thickness: -1 };
    expect(ask({ kind: 'check', number: 14, aim: bad })).toMatchObject({ issues: [{ path: '/thickness' }] });
    expect(ask({ kind: 'propose', number: 15, aim: bad })).toMatchObject({
      ways: { ways: [], refusals: [], issues: [{ path: '/thickness' }] },
    });
  });
});

describe('asked of a text', () => {
  const opened = (text: string) => ask({ kind: 'open', number: 16, text });

  it('tells a job from an aim, with or without the mark of its encoding', () => {
    for (const mark of ['', '\ufeff']) {
      expect(opened(mark + JSON.stringify(JOB))).toMatchObject({ job: JOB, isAim: false, issues: [] });
      expect(opened(mark + JSON.stringify(AIM))).toMatchObject({ job: AIM, isAim: true, issues: [] });
    }
  });

  it('keeps a job whose faults fields can mend, and none of a text that is no job', () => {
    const bad = { ...JOB, units: 'cm' };
    expect(opened(JSON.stringify(bad))).toMatchObject({
      job: bad,
      isAim: false,
      issues: [{ path: '/units' }],
    });
    expect(opened('{ "units": ')).toMatchObject({ job: null, isAim: false, issues: [{ path: '' }] });
    // What is left is said, and what is cut as well: a job with a key too many.
    const both = { ...JOB, finished: { rectangle: [80, 40] } };
    expect(opened(JSON.stringify(both))).toMatchObject({ job: both, isAim: false });
  });
});
