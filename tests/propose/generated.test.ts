import { area, examine, fromReport, intersect, type ProposedWay, parseJob, xor } from '@edgebite/core';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { longRun, runs } from '../tools/runs.js';
import { dangersIn, isSound, orders } from './brute.js';
import { proposed } from './checks.js';
import { drawers, type MadePart, madeParts } from './parts.js';

/** Of the plate's area: only rounding lies below it. */
const SAME = 1e-9;

function checkFinished({ blank, finished }: MadePart, { job }: ProposedWay): void {
  const report = examine(parseJob(job));
  const nothing = SAME * area(blank);
  const { pieces, cuts } = fromReport(report);
  expect(report.pieces[0]?.role).toBe('kept');
  for (const { region } of pieces[0]?.sections ?? [])
    expect(area(xor([region, finished]))).toBeLessThan(nothing);
  for (const { footprint } of cuts) expect(area(intersect([footprint, finished]))).toBeLessThan(nothing);
  for (const { role } of report.pieces.slice(1)) expect(['slug', 'offcut']).toContain(role);
}

function checkTools({ aim }: MadePart, { job }: ProposedWay): void {
  for (const cut of job.cuts) {
    const own = aim.drawer.find(({ id }) => id === cut.tool);
    const depth = typeof cut.depth === 'number' ? cut.depth : aim.thickness;
    expect(depth).toBeLessThanOrEqual(
      own === undefined ? 0 : own.kind === 'boring head' ? own.bar : own.reach,
    );
    if (own?.kind !== 'boring head') continue;
    expect(cut.diameter).toBeGreaterThanOrEqual(own.smallest - 1e-9);
    expect(cut.diameter).toBeLessThanOrEqual(own.largest + 1e-9);
  }
}

/** The fewest dangers of all orders of the same cuts, whatever they mean: up to so many cuts. */
function fewestDangers({ job }: ProposedWay): number {
  const all = orders(job.cuts).flatMap((cuts) => {
    const report = examine(parseJob({ ...job, cuts }));
    return isSound(report) ? [dangersIn(report)] : [];
  });
  return Math.min(...all);
}

/** So many cuts are tried in all orders: 6 orders in the suite, 720 in a long run. */
const TRIED = longRun() ? 6 : 3;

/** Of three arcs that run into each other all orders take up to half a minute: those come in a long run, and in the count. */
const DISCS = longRun() ? 4 : 2;

test('what is proposed leaves the part and nothing else, in an order that no other one betters', () => {
  let ways = 0;
  let tried = 0;
  let refused = 0;
  fc.assert(
    fc.property(madeParts(DISCS, drawers(2, 8)), (part) => {
      const proposal = proposed(part.aim);
      if (proposal === null) return;
      expect(proposal.ways.length > 0).toBe(proposal.refusals.length === 0);
      refused += Math.sign(proposal.refusals.length);
      ways += proposal.ways.length;
      for (const way of proposal.ways) {
        checkFinished(part, way);
        checkTools(part, way);
        expect(way.report).toEqual(examine(parseJob(way.job)));
        expect(way.row.dangers.length).toBe(dangersIn(way.report));
      }
      const [best] = proposal.ways;
      if (best === undefined || best.job.cuts.length > TRIED) return;
      tried++;
      expect(best.row.dangers.length).toBe(fewestDangers(best));
    }),
    { numRuns: runs(40) },
  );
  if (longRun()) console.log(`${ways} ways, ${tried} tried in all orders, ${refused} parts refused`);
  expect(Math.min(ways, tried, refused)).toBeGreaterThan(0);
});

/** What has to be so of a drawer where a place is refused for a reason. */
function checkReason({ aim, discs }: MadePart, code: string, feature: number): void {
  const size = 2 * (discs[feature]?.radius ?? 0);
  const isExact = (diameter: number) => Math.abs(diameter - size) < 1e-9;
  const ofSize = aim.drawer.filter((tool) =>
    tool.kind === 'boring head'
      ? size >= tool.smallest && size <= tool.largest
      : isExact(tool.diameter) || (tool.kind === 'end mill' && tool.diameter < size),
  );
  expect(code === 'no-size').toBe(ofSize.length === 0);
  // A tool of just the size needs nothing before it.
  const alone = ofSize.filter((tool) => tool.kind !== 'boring head' && isExact(tool.diameter));
  const reaching = alone.filter((tool) => tool.kind !== 'boring head' && 2 * tool.reach >= aim.thickness);
  if (code === 'reach') expect(reaching).toEqual([]);
  if (code === 'no-way-in') expect(alone).toEqual([]);
}

test('what nothing in the drawer makes is refused, with the place and the reason', () => {
  let refused = 0;
  fc.assert(
    fc.property(madeParts(3, drawers(1, 3)), (part) => {
      const proposal = proposed(part.aim);
      for (const { code, feature, at, message } of proposal?.refusals ?? []) {
        const disc = part.discs.findIndex(
          ({ center, radius }) =>
            Math.hypot(center.x - at[0], center.y - at[1]) < 1e-6 &&
            message.includes((2 * radius).toFixed(3)),
        );
        expect(feature).not.toBeNull();
        expect(disc).toBeGreaterThanOrEqual(0);
        checkReason(part, code, disc);
        expect(message).not.toMatch(/NaN|undefined/);
        refused++;
      }
    }),
    { numRuns: runs(60) },
  );
  expect(refused).toBeGreaterThan(0);
});
