import { isDeepStrictEqual } from 'node:util';
import {
  footprint,
  type Job,
  loopsOf,
  type Region,
  type Report,
  regionFromReport,
  reportSchema,
  subtract,
  union,
  xor,
} from '@edgebite/core';
import { areaOf, commonExtent, difference, validateRegion } from '@edgebite/core/testing';

/** Slack of areas and volumes, as a share of the blank's squared extent, times its thickness for volumes. */
const AMOUNT = 1e-9;

/**
 * What every report must satisfy by itself.
 * Throws Error with the first rule that is broken: its name, a colon, and numbers.
 */
export function checkReport(job: Job, report: Report): void {
  const written: unknown = JSON.parse(JSON.stringify(report));
  const schema = reportSchema.safeParse(written);
  if (!schema.success) throw new Error(`schema: ${schema.error.message}`);
  // A reader leaves out what it does not know.
  if (!isDeepStrictEqual(schema.data, written)) throw new Error('schema: a key of the report is not in it');
  finite(report, '');
  const extent = commonExtent(job.outline);
  const area = AMOUNT * extent * extent;
  amountsAddUp(job, report, area);
  slabsStack(report, job.thickness);
  inOrder(report);
  refersToWhatIsThere(report);
  sectionsAreSound(job, report, extent, area);
  necksAreNecks(report, extent);
}

function finite(value: unknown, path: string): void {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`finite: ${path} is ${value}`);
  if (typeof value !== 'object' || value === null) return;
  for (const [key, inner] of Object.entries(value)) finite(inner, `${path}/${key}`);
}

function equal(rule: string, got: number, wanted: number, slack: number): void {
  if (!(Math.abs(got - wanted) <= slack)) throw new Error(`${rule}: ${got} against ${wanted}`);
}

const sum = <T>(list: readonly T[], of: (one: T) => number): number =>
  list.reduce((total, one) => total + of(one), 0);

function amountsAddUp(job: Job, report: Report, area: number): void {
  const { thickness } = job;
  const volume = area * thickness;
  const blank = areaOf(job.outline);
  const left = sum(report.pieces, (piece) => piece.volume);
  equal('volume is conserved', left + report.removedVolume, blank * thickness, volume);
  equal(
    'cuts take what is removed',
    sum(report.cuts, (cut) => cut.removedVolume),
    report.removedVolume,
    volume,
  );
  equal(
    'slabs hold what is left',
    sum(report.slabs, (slab) => slab.area * (slab.to - slab.from)),
    left,
    volume,
  );
  if (report.removedArea > blank + area) throw new Error(`removed area: ${report.removedArea} of ${blank}`);
  for (const cut of report.cuts) {
    if (cut.removedArea > blank + area) throw new Error(`area of a cut: ${cut.removedArea} of ${blank}`);
    if (cut.removedVolume > cut.removedArea * cut.depth + volume) {
      throw new Error(`a cut takes no more than its area times its depth: ${cut.removedVolume}`);
    }
    const nothing = cut.relation === 'clear' && cut.removedVolume > volume;
    if (nothing) throw new Error(`a cut that is clear takes nothing: ${cut.id} took ${cut.removedVolume}`);
  }
  for (const piece of report.pieces) {
    const own = sum(
      piece.sections,
      (section) => areaOf(regionFromReport(section.region)) * (section.to - section.from),
    );
    equal('a piece is the stack of its sections', own, piece.volume, volume);
    equal('area of a piece is that of its view', areaOf(regionFromReport(piece.view)), piece.area, area);
  }
  const [plan] = report.pieces;
  // What is open and all views together cover the outline; views of pieces over one another overlap.
  const views = sum(report.pieces, (piece) => piece.area);
  if (views + report.removedArea < blank - area)
    throw new Error(`views and holes: ${views} + ${report.removedArea}`);
  if (plan === undefined && Math.abs(report.removedArea - blank) > area) {
    throw new Error(`nothing is left, but ${report.removedArea} of ${blank} is removed`);
  }
}

function slabsStack(report: Report, thickness: number): void {
  let height = 0;
  for (const { from, to } of report.slabs) {
    if (from !== height || !(to > from)) throw new Error(`slabs stack: from ${from} to ${to} over ${height}`);
    height = to;
  }
  if (height !== thickness) throw new Error(`slabs stack: up to ${height}, not ${thickness}`);
}

function inOrder(report: Report): void {
  sorted(
    'webs thinnest first',
    report.webs.map((web) => web.thickness),
  );
  sorted(
    'knife edges sharpest first',
    report.knifeEdges.map((edge) => edge.angle),
    SAME_ANGLE,
  );
  const [kept, ...others] = report.pieces;
  if (kept !== undefined && kept.role !== 'kept') throw new Error(`the kept piece comes first: ${kept.role}`);
  if (others.some(({ role }) => role === 'kept')) throw new Error('one piece is kept: there are more');
  sorted(
    'pieces largest first',
    others.map((piece) => -piece.volume),
  );
  const rank = { danger: 0, check: 1, note: 2 };
  sorted(
    'findings by level',
    report.findings.map(({ level }) => rank[level]),
  );
}

/** Angles in one step of so many radians are one, and come by feather and names; degrees, two steps. */
const SAME_ANGLE = (2e-9 * 180) / Math.PI;

function sorted(rule: string, values: readonly number[], slack = 0): void {
  values.forEach((value, k) => {
    const before = values[k - 1];
    if (before !== undefined && before > value + slack) throw new Error(`${rule}: ${before} before ${value}`);
  });
}

function refersToWhatIsThere(report: Report): void {
  const pieces = new Set(report.pieces.map(({ id }) => id));
  const sources = new Set([
    ...loopsOf(regionFromReport(report.outline)).flatMap((loop) => loop.map(({ source }) => source ?? '')),
    ...report.cuts.map(({ source }) => source),
  ]);
  if (pieces.size < report.pieces.length) throw new Error('ids of pieces: one is there twice');
  for (const { piece, slab, between } of [...report.webs, ...report.knifeEdges]) {
    if (!pieces.has(piece)) throw new Error(`refers to a piece: ${piece}`);
    if (report.slabs[slab] === undefined) throw new Error(`refers to a slab: ${slab}`);
    for (const name of between) if (!sources.has(name)) throw new Error(`refers to an edge: ${name}`);
  }
  for (const { id, horns } of report.pieces) {
    const own = report.knifeEdges.flatMap(({ piece }, k) => (piece === id ? [k] : []));
    if (JSON.stringify(own) !== JSON.stringify(horns)) throw new Error(`horns: ${horns.join()} of ${id}`);
  }
  for (const { holds } of report.floors) {
    if (holds !== null && !pieces.has(holds)) throw new Error(`a floor holds a piece: ${holds}`);
  }
}

/** The section of a slab by another way: the outline less the cuts that reach it, without pieces or cells. */
function sectionsAreSound(job: Job, report: Report, extent: number, area: number): void {
  for (const piece of report.pieces) {
    validateRegion(regionFromReport(piece.view), { extent });
    for (const { region } of piece.sections) validateRegion(regionFromReport(region), { extent });
  }
  report.slabs.forEach((slab) => {
    const middle = (slab.from + slab.to) / 2;
    const reaching = job.cuts.filter((cut) => cut.through || reach(cut, job.thickness, middle));
    const wanted = subtract(job.outline, reaching.map(footprint));
    const drawn = report.pieces.map(({ sections }) =>
      sections
        .filter(({ from, to }) => from < middle && middle < to)
        .flatMap(({ region }) => regionFromReport(region)),
    );
    // What hangs is a piece of its own, though one part of a section may run through it and on.
    const isJoined = report.pieces.some(({ role }) => role === 'hanging');
    const found = isJoined ? union(drawn) : drawn.flat();
    if (difference(found, wanted, extent) !== null) {
      const others = job.cuts.filter((cut) => !reaching.includes(cut)).map(footprint);
      const differ = difference(found, amid(wanted, others), extent);
      if (differ !== null) throw new Error(`section of a slab: ${differ}`);
    }
    equal('area of a slab', slab.area, areaOf(wanted), area);
  });
}

/**
 * The same region in an overlay with others that change nothing of it. Where one of these passes a contact so near that it
 * meets both sides in one place, they are welded from there to the contact, and a hole that touches becomes part of the outside.
 */
function amid(region: Region, others: readonly Region[]): Region {
  return xor([region, ...others, ...others]);
}

function reach(cut: Job['cuts'][number], thickness: number, height: number): boolean {
  return cut.from === 'top' ? height > thickness - cut.depth : height < cut.depth;
}

/** Places and sizes of webs and knife edges, as far as they can be told by themselves. */
function necksAreNecks(report: Report, extent: number): void {
  const near = 1e-8 * extent;
  for (const web of report.webs) {
    const [p, q] = web.ends;
    equal('ends of a web', Math.hypot(p[0] - q[0], p[1] - q[1]), web.thickness, near);
    equal(
      'middle of a web',
      Math.hypot((p[0] + q[0]) / 2 - web.at[0], (p[1] + q[1]) / 2 - web.at[1]),
      0,
      near,
    );
    if (!(web.thickness < report.limits.web)) throw new Error(`a web is under the limit: ${web.thickness}`);
    if (web.strip > web.length + near) throw new Error(`strip of a web: ${web.strip} of ${web.length}`);
  }
  for (const edge of report.knifeEdges) {
    if (!(edge.angle < report.limits.knifeEdge))
      throw new Error(`a knife edge is under the limit: ${edge.angle}`);
  }
}
