import {
  area,
  examine,
  fromReport,
  intersect,
  JobError,
  type Proposal,
  type ProposedWay,
  parseAim,
  parseJob,
  propose,
  type Region,
  xor,
} from '@edgebite/core';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { longRun, runs } from '../tools/runs.js';
import { dangersIn, isSound, orders } from './brute.js';
import { leftAt, type MixedPart, mixedParts } from './mixed-parts.js';
import { drawers } from './parts.js';

/** Of the plate's area: only rounding lies below it. */
const SAME = 1e-9;

/** Of an aim whose outline is refused as such there is nothing to propose. */
function proposed({ aim }: MixedPart): Proposal | null {
  try {
    return propose(parseAim(aim));
  } catch (error) {
    if (error instanceof JobError) return null;
    throw error;
  }
}

/** At every height the kept piece is the part, and no cut goes into what is to stay there. */
function checkFinished(part: MixedPart, { job }: ProposedWay): void {
  const parsed = parseJob(job);
  const report = examine(parsed);
  const { pieces, cuts } = fromReport(report);
  const { thickness } = part.aim;
  const nothing = SAME * area(part.blank);
  const marks = [
    ...new Set([
      0,
      thickness,
      ...part.taken.flatMap(({ depth }) => (depth === null ? [] : [depth, thickness - depth])),
    ]),
  ];
  marks.sort((a, b) => a - b);
  const [kept] = pieces;
  for (let k = 1; k < marks.length; k++) {
    const middle = ((marks[k - 1] as number) + (marks[k] as number)) / 2;
    const expected = leftAt(part, middle);
    const section = kept?.sections.find(({ from, to }) => from < middle && middle < to);
    expect(area(xor([section?.region ?? [], expected]))).toBeLessThan(nothing);
    parsed.cuts.forEach(({ from, depth, through }, n) => {
      const isThere = through || (from === 'top' ? middle > thickness - depth : middle < depth);
      const footprint: Region = cuts[n]?.footprint ?? [];
      if (isThere) expect(area(intersect([footprint, expected]))).toBeLessThan(nothing);
    });
  }
  for (const { role } of report.pieces.slice(1)) expect(['slug', 'offcut']).toContain(role);
}

function checkReach({ aim }: MixedPart, { job }: ProposedWay): void {
  for (const cut of job.cuts) {
    const own = aim.drawer.find(({ id }) => id === cut.tool);
    const depth = typeof cut.depth === 'number' ? cut.depth : aim.thickness;
    expect(depth).toBeLessThanOrEqual(
      own === undefined ? 0 : own.kind === 'boring head' ? own.bar : own.reach,
    );
    if (cut.kind === 'swept') expect(own?.kind).toBe('end mill');
  }
}

/** So many cuts are tried in all orders: 6 orders in the suite, 720 in a long run. */
const TRIED = longRun() ? 6 : 3;

function checkOrder({ job, row }: ProposedWay): boolean {
  if (job.cuts.length > TRIED) return false;
  const all = orders(job.cuts).flatMap((cuts) => {
    const report = examine(parseJob({ ...job, cuts }));
    return isSound(report) ? [dangersIn(report)] : [];
  });
  expect(row.dangers.length).toBe(Math.min(...all));
  return true;
}

test('slots and pockets from both sides come out as they were taken', () => {
  const counts = { ways: 0, tried: 0, refused: 0, swept: 0, blind: 0 };
  fc.assert(
    fc.property(mixedParts(3, drawers(3, 8)), (part) => {
      const proposal = proposed(part);
      if (proposal === null) return;
      const { ways, refusals } = proposal;
      expect(ways.length > 0).toBe(refusals.length === 0);
      counts.refused += Math.sign(refusals.length);
      counts.ways += ways.length;
      for (const way of ways) {
        checkFinished(part, way);
        checkReach(part, way);
        counts.swept += Math.sign(way.job.cuts.filter(({ kind }) => kind === 'swept').length);
        counts.blind += Math.sign(way.job.cuts.filter(({ depth }) => depth !== undefined).length);
      }
      if (ways[0] !== undefined) counts.tried += Number(checkOrder(ways[0]));
    }),
    { numRuns: runs(25) },
  );
  if (longRun()) console.log(counts);
  expect(Math.min(...Object.values(counts))).toBeGreaterThan(0);
});
