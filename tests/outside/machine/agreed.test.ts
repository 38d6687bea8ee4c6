import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { runs } from '../../tools/runs.js';
import { jobNumber } from './made/generate.js';
import { loadIn } from './sim/load.js';
import { metalAt } from './sim/metal.js';
import { type Run, run } from './sim/run.js';
import { stepsOf, takenBy } from './sim/steps.js';

/* The simulation against what a report says of the finished part and of the cuts: both must tell the same. */

const JOBS = runs(12);
const CELLS = 112;

type Report = ReturnType<typeof examine>;

const both = Array.from({ length: JOBS }, (_, k) => {
  const job = jobNumber(k);
  const report = examine(parseJob(job));
  const passes = (id: string) =>
    report.cuts
      .find((cut) => cut.id === id)
      ?.passes?.list.map(({ center, diameter }) => ({ center, diameter })) ?? null;
  return { k, report, done: run(job, stepsOf(job, passes), CELLS) };
});

const taken = ({ steps }: Run) => steps.flatMap(({ takes }) => [...takes.values()]);

describe('the simulation and the finished part', () => {
  it('agree about what the cuts took', () => {
    for (const { k, report, done } of both) {
      const sum = taken(done).reduce((all, { volume }) => all + volume, 0);
      const slack = taken(done).reduce((all, one) => all + one.slack, 0);
      expect(Math.abs(sum - report.removedVolume), `job ${k}`).toBeLessThanOrEqual(slack);
    }
  });

  it('agree about the bodies that are left', () => {
    let counted = 0;
    for (const { k, report, done } of both) {
      if (done.doubts > 0 || done.end === null) continue;
      const { flood, kept } = done.end;
      const loose = [...flood.bodies.values()].filter((body) => body !== kept);
      const told = report.pieces.filter(({ role }) => role === 'slug' || role === 'offcut');
      for (const body of loose) {
        const one = told.find(({ volume }) => Math.abs(volume - body.volume) <= body.slack);
        expect(one, `job ${k}: a body of ${body.volume}`).toBeDefined();
        counted++;
      }
      const rest = report.pieces.filter(({ role }) => role === 'kept' || role === 'held slug');
      const volume = rest.reduce((sum, one) => sum + one.volume, 0);
      expect(Math.abs(volume - kept.volume), `job ${k}`).toBeLessThanOrEqual(kept.slack);
      counted++;
    }
    expect(counted).toBeGreaterThan(JOBS);
  });

  it('agree about the load of each bore in the first metal of its turn, where nothing is loose', () => {
    let counted = 0;
    for (const { k, report, done } of both) {
      for (const { step, before } of done.steps) {
        const { tool } = step;
        const [first] = takenBy(step, done.slabs);
        const isLoose = before.owner.some((owner) => owner > 0 || owner < -1);
        if (tool.kind !== 'disc' || step.pass !== null || first === undefined || isLoose) continue;
        const told = rowOf(report, step.cut.id);
        const metal = metalAt(done, before, first, () => true);
        const found = loadIn(metal, { ...tool, wall: null }, { flip: null, turn: 0 });
        expect(Math.abs(found.share - told.share), `job ${k}, ${step.cut.id}`).toBeLessThanOrEqual(
          found.slack + 1e-5,
        );
        if (found.strikes !== null) expect(found.strikes, `job ${k}, ${step.cut.id}`).toBe(told.entries);
        expect(Math.abs(found.sideLoad - told.sideLoad.size)).toBeLessThanOrEqual(found.loadSlack + 1e-5);
        counted++;
      }
    }
    expect(counted).toBeGreaterThan(JOBS);
  });
});

function rowOf(report: Report, id: string) {
  const load = report.cuts.find((cut) => cut.id === id)?.load;
  if (load === null || load === undefined) throw new Error(`no load of ${id}`);
  return load;
}
