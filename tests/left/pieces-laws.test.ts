import {
  area,
  coreOf,
  examine,
  footprint,
  intersect,
  type Job,
  parseJob,
  perimeter,
  type Region,
  type Report,
  regionFromReport,
  subtract,
  union,
} from '@edgebite/core';
import { validateRegion } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../tools/runs.js';
import { type DepthJob, depthJobs, FOUND_JOBS, THICKNESS } from './depth-jobs.js';

/* Pieces and sums of a report against sections cut one by one, slab by slab, with the region operations alone. */

interface Slab {
  readonly from: number;
  readonly to: number;
  /** What is left in it after 0, 1, 2, ... cuts. */
  readonly after: readonly Region[];
}

/** Area that may go astray to rounding and welding. */
const SLACK = 1e-5;

function slabsOf(job: Job): Slab[] {
  const spans = job.cuts.map((cut) => {
    if (cut.through) return [0, THICKNESS] as const;
    return cut.from === 'top' ? ([THICKNESS - cut.depth, THICKNESS] as const) : ([0, cut.depth] as const);
  });
  const heights = [...new Set([0, THICKNESS, ...spans.flat()])].sort((a, b) => a - b);
  return heights.slice(1).map((to, k) => {
    const from = heights[k] as number;
    let left = job.outline;
    const after = [left];
    job.cuts.forEach((cut, c) => {
      const [low, high] = spans[c] as readonly [number, number];
      if (low <= from && to <= high) left = subtract(left, [footprint(cut)]);
      after.push(left);
    });
    return { from, to, after };
  });
}

const lastOf = (slab: Slab): Region => slab.after[slab.after.length - 1] as Region;

interface PartAt {
  readonly slab: number;
  readonly part: Region;
  readonly volume: number;
}

/** Parts of sections, by connected body: those of neighbouring slabs are joined where they share area. */
function bodiesOf(slabs: readonly Slab[], within: (slab: Slab) => boolean = () => true): PartAt[][] {
  const parts = slabs.flatMap((slab, s) =>
    within(slab)
      ? lastOf(slab).map((part): PartAt => {
          return { slab: s, part: [part], volume: area([part]) * (slab.to - slab.from) };
        })
      : [],
  );
  const group = parts.map((_, k) => k);
  const leader = (k: number): number => (group[k] === k ? k : leader(group[k] as number));
  parts.forEach((p, i) => {
    parts.forEach((q, j) => {
      if (q.slab === p.slab + 1 && shared(p.part, q.part) > SLACK) group[leader(i)] = leader(j);
    });
  });
  const bodies = new Map<number, PartAt[]>();
  parts.forEach((part, k) => {
    bodies.set(leader(k), [...(bodies.get(leader(k)) ?? []), part]);
  });
  return [...bodies.values()];
}

const shared = (a: Region, b: Region) => area(intersect([a, b]));

function bodyVolumes(slabs: readonly Slab[]): number[] {
  return bodiesOf(slabs)
    .map((body) => sum(body.map(({ volume }) => volume)))
    .filter((volume) => volume > SLACK)
    .sort((a, b) => b - a);
}

/**
 * Volume of all that would be slugs but for a floor: what hangs together on a ring cut's side of its end, lies in its
 * core, and is joined to the kept body beyond that end only.
 */
function heldVolume(job: Job, slabs: readonly Slab[], kept: Report['pieces'][number]): number {
  const lowest = kept.sections[0] as Report['pieces'][number]['sections'][number];
  const there = slabs.findIndex(({ from }) => from === lowest.from);
  const isKeptPart = ({ slab, part }: PartAt) =>
    slab === there && shared(part, regionFromReport(lowest.region)) > SLACK;
  const body = bodiesOf(slabs).find((parts) => parts.some(isKeptPart)) ?? [];
  const claimed: Region[][] = slabs.map(() => []);
  for (const cut of job.cuts) {
    if (cut.kind !== 'annular' || cut.through) continue;
    // What is kept lies in the core itself: nothing in it hangs on anything.
    if (area(subtract(union(body.map(({ part }) => part)), [coreOf(cut)])) <= SLACK) continue;
    const isBeside = ({ from, to }: Slab) =>
      cut.from === 'top' ? from >= THICKNESS - cut.depth : to <= cut.depth;
    for (const parts of bodiesOf(slabs, isBeside)) {
      const plan = union(parts.map(({ part }) => part));
      if (area(subtract(plan, [coreOf(cut)])) > SLACK) continue;
      const beyond = body.filter(({ slab }) => !isBeside(slabs[slab] as Slab));
      const hangs = parts.some(({ slab, part }) =>
        beyond.some((other) => Math.abs(other.slab - slab) === 1 && shared(other.part, part) > SLACK),
      );
      const isKept = parts.some(({ slab, part }) =>
        body.some((b) => b.slab === slab && shared(b.part, part) > SLACK),
      );
      if (hangs && isKept) for (const { slab, part } of parts) (claimed[slab] as Region[]).push(part);
    }
  }
  return sum(
    claimed.map((regions, s) => area(union(regions)) * ((slabs[s] as Slab).to - (slabs[s] as Slab).from)),
  );
}

/** Volumes of the bodies of a report: held slugs are put back on the piece that holds them. */
function reportedBodies({ pieces }: Report): number[] {
  const held = pieces.filter(({ role }) => role === 'held slug').reduce((sum, { volume }) => sum + volume, 0);
  const whole = pieces.filter(({ role }) => role !== 'held slug');
  return whole
    .map(({ role, volume }) => (role === 'kept' ? volume + held : volume))
    .filter((volume) => volume > SLACK)
    .sort((a, b) => b - a);
}

const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);

function near(found: number, wanted: number, what: string): void {
  expect(Math.abs(found - wanted), `${what}: ${found} for ${wanted}`).toBeLessThan(SLACK * THICKNESS);
}

function checked(document: DepthJob): void {
  const job = parseJob(document);
  const report = examine(job);
  const slabs = slabsOf(job);
  // Depths that no cut reaches the part with still make slabs; both sides have them.
  expect(report.slabs.map(({ from, to }) => [from, to])).toEqual(slabs.map(({ from, to }) => [from, to]));
  slabs.forEach((slab, s) => {
    near(report.slabs[s]?.area as number, area(lastOf(slab)), `area of slab ${s}`);
    const height = (slab.from + slab.to) / 2;
    const there = report.pieces.flatMap((piece) =>
      piece.sections
        .filter(({ from, to }) => from < height && height < to)
        .map(({ region }) => regionFromReport(region)),
    );
    near(sum(there.map(area)), area(lastOf(slab)), `sections in slab ${s}`);
    near(area(union(there)), area(lastOf(slab)), `sections in slab ${s} as one`);
    near(
      area(intersect([union(there), lastOf(slab)])),
      area(lastOf(slab)),
      `sections in slab ${s} where they should be`,
    );
  });
  const outlineVolume = area(job.outline) * THICKNESS;
  near(sum(report.pieces.map(({ volume }) => volume)) + report.removedVolume, outlineVolume, 'volume');
  near(
    sum(report.cuts.map(({ removedVolume }) => removedVolume)),
    report.removedVolume,
    'what the cuts took',
  );
  report.cuts.forEach((cut, c) => {
    const taken = slabs.map(
      ({ after, from, to }) => (area(after[c] as Region) - area(after[c + 1] as Region)) * (to - from),
    );
    near(cut.removedVolume, sum(taken), `volume of cut ${c}`);
    const plan = union(slabs.map(({ after }) => subtract(after[c] as Region, [after[c + 1] as Region])));
    near(cut.removedArea, area(plan), `area of cut ${c}`);
  });
  near(report.removedArea, area(subtract(job.outline, slabs.map(lastOf))), 'area with nothing left');
  const [mine, theirs] = [reportedBodies(report), bodyVolumes(slabs)];
  expect(mine, `bodies ${mine} for ${theirs}`).toHaveLength(theirs.length);
  mine.forEach((volume, k) => {
    near(volume, theirs[k] as number, `body ${k}`);
  });
  const kept = report.pieces.find(({ role }) => role === 'kept');
  if (kept !== undefined) {
    const held = report.pieces.filter(({ role }) => role === 'held slug');
    near(sum(held.map(({ volume }) => volume)), heldVolume(job, slabs, kept), 'held slugs');
  }
  for (const piece of report.pieces) {
    const sections = piece.sections.map(({ region }) => regionFromReport(region));
    for (const region of sections) validateRegion(region);
    const plan = union(sections);
    near(piece.area, area(plan), `area of ${piece.id}`);
    near(piece.perimeter, perimeter(plan), `perimeter of ${piece.id}`);
    near(
      piece.volume,
      sum(piece.sections.map(({ from, to }, k) => area(sections[k] as Region) * (to - from))),
      `volume of ${piece.id}`,
    );
  }
  for (const floor of report.floors) {
    expect(floor.thickness).toBeGreaterThan(0);
    expect(floor.thickness).toBeLessThan(THICKNESS);
    expect(floor.area).toBeGreaterThan(0);
    expect(floor.holds === null).toBe(floor.kerfLength === null);
  }
}

describe('pieces of generated jobs of many depths', () => {
  it('add up, slab by slab and cut by cut', () => {
    let held = 0;
    fc.assert(
      fc.property(depthJobs, (document) => {
        checked(document);
        held += examine(parseJob(document)).pieces.filter(({ role }) => role === 'held slug').length;
      }),
      { numRuns: runs(250) },
    );
    expect(held).toBeGreaterThan(20);
  });

  it.each(FOUND_JOBS)('add up where %s', (_, document) => {
    checked(document);
  });

  it('do not hang on the order of the cuts', () => {
    fc.assert(
      fc.property(depthJobs, fc.infiniteStream(fc.nat()), (document, picks) => {
        const cuts = [...document.cuts];
        const shuffled = {
          ...document,
          cuts: document.cuts.map(() => cuts.splice((picks.next().value as number) % cuts.length, 1)[0]),
        };
        const [a, b] = [examine(parseJob(document)), examine(parseJob(shuffled))];
        const rows = ({ pieces }: Report) =>
          pieces
            .map(({ role, volume, area: size, perimeter: length, holes }) =>
              [role, volume.toFixed(3), size.toFixed(3), length.toFixed(3), holes].join(' '),
            )
            .sort();
        expect(rows(b)).toEqual(rows(a));
        near(b.removedVolume, a.removedVolume, 'volume');
        expect(b.webs.map(({ thickness }) => thickness.toFixed(6))).toEqual(
          a.webs.map(({ thickness }) => thickness.toFixed(6)),
        );
        expect(b.knifeEdges.map(({ angle }) => angle.toFixed(3))).toEqual(
          a.knifeEdges.map(({ angle }) => angle.toFixed(3)),
        );
      }),
      { numRuns: runs(150) },
    );
  });
});
