import type { Point, Report } from '@edgebite/core';
import { placed } from '@edgebite/core/testing';
import type { JobWay } from './job-ways.js';

/*
 * Reports of one job written down in two ways. Rounding differs between them, so what it may decide is left out:
 * webs and angles right at their limits, splinters as thin as the weld tolerance, which of two pieces of the same
 * volume is kept.
 */

/** Lengths agree to this share of the extent; areas and volumes accordingly. */
const LENGTH = 1e-8;

/** Places agree to this share: tips of tangent edges slide by the root of the weld tolerance. */
const PLACE = 1e-4;

/** Angles at tips of tangent edges turn by as much, in degrees. */
const ANGLE = 0.02;

/** Webs and pieces under this share of the extent may be closed by welding. */
const THIN = 1e-8;

type Row = Readonly<Record<string, string | number | readonly number[]>>;

/**
 * The first difference between the report of a plain job and that of one written another way, or null.
 * @param joints where edges of the plain outline join
 * @param named whether webs and knife edges must be between the same edges too
 */
export function reportDifference(
  plain: Report,
  other: Report,
  given: JobWay,
  extent: number,
  joints: readonly Point[],
  named: boolean,
): string | null {
  const way = named ? given : { ...given, rename: null };
  const n = plain.slabs.length;
  if (other.slabs.length !== n) return `slabs: ${other.slabs.length} against ${n}`;
  const near = nearness(extent, plain.thickness);
  const s = way.by.scale;
  const slabOf = (k: number): number => (way.flipped ? n - 1 - k : k);
  const expectedSlabs = plain.slabs.map((_, k) => (plain.slabs[slabOf(k)] as Report['slabs'][number]).area);
  const slabs = other.slabs.map(({ area }) => area / (s * s));
  const rows: [string, Row[], Row[]][] = [
    [
      'slabs',
      expectedSlabs.map((area, slab) => ({ slab, area })),
      slabs.map((area, slab) => ({ slab, area })),
    ],
    ['pieces', piecesOf(plain, 1, way, extent), piecesOf(other, s, way, extent)],
    ['webs', webs(plain, true, way, extent), webs(other, false, way, extent)],
    ['knife edges', knives(plain, true, way, extent, joints), knives(other, false, way, extent, joints)],
    ['floors', floors(plain, true, way), floors(other, false, way)],
    ['cuts', cuts(plain, 1, way), cuts(other, s, way)],
    ['removed', [removed(plain, 1)], [removed(other, s)]],
  ];
  for (const [name, wanted, got] of rows) {
    const fault = unmatched(wanted, got, near);
    if (fault !== null) return `${name}: ${fault}`;
  }
  return null;
}

type Near = (key: string, a: unknown, b: unknown) => boolean;

function nearness(extent: number, thickness: number): Near {
  const slack: Record<string, number> = {
    area: LENGTH * extent * extent,
    volume: LENGTH * extent * extent * thickness,
    perimeter: 10 * PLACE * extent,
    thickness: LENGTH * extent,
    kerf: 10 * PLACE * extent,
    angle: ANGLE,
    length: PLACE * extent,
    strip: PLACE * extent,
    feather: PLACE * extent,
    at: PLACE * extent,
    slab: 0,
    holes: 0,
  };
  return (key, a, b) => {
    if (typeof a === 'number' && typeof b === 'number') return Math.abs(a - b) <= (slack[key] ?? 0);
    if (!Array.isArray(a) || !Array.isArray(b)) return a === b;
    return Math.hypot(a[0] - b[0], a[1] - b[1]) <= (slack[key] ?? 0) + (a[2] ?? 0);
  };
}

/** Rows are the same if each of the one list has a partner in the other. */
function unmatched(wanted: readonly Row[], got: readonly Row[], near: Near): string | null {
  const rest = [...got];
  for (const row of wanted) {
    const at = rest.findIndex((one) =>
      Object.entries(row).every(([key, value]) => near(key, value, one[key])),
    );
    if (at < 0) return `missing ${JSON.stringify(row)} among ${JSON.stringify(rest)}`;
    rest.splice(at, 1);
  }
  return rest.length === 0 ? null : `too many: ${JSON.stringify(rest)}`;
}

/** Whether rounding decides which piece is kept: none is named, or several hold the place, and two are as large. */
function isTie(report: Report): boolean {
  const [kept, ...others] = report.pieces;
  return (
    kept !== undefined && others.some(({ volume }) => Math.abs(volume - kept.volume) <= 1e-6 * kept.volume)
  );
}

function piecesOf(report: Report, s: number, { reordered }: JobWay, extent: number): Row[] {
  return report.pieces
    .filter(({ area, perimeter }) => (2 * area) / perimeter / s > THIN * extent)
    .map(({ role, area, volume, perimeter, holes, freedBy, sections }) => ({
      role: isTie(report) ? '' : role,
      area: area / (s * s),
      volume: volume / (s * s * s),
      perimeter: perimeter / s,
      holes,
      sections: sections.length,
      // Which cut sets a piece free is a matter of their order.
      freedBy: reordered || isTie(report) ? '' : (freedBy ?? ''),
    }));
}

/** Names of two edges in an order of their own: which comes first may depend on numbers. */
function names(between: readonly [string, string], rename: ((source: string) => string) | null): string {
  if (rename === null) return '';
  return between.map(rename).sort().join(' ');
}

function withoutNumbers(text: string): string {
  return text.replace(/(outline|hole:\d+):\d+/g, '$1');
}

function webs(report: Report, isPlain: boolean, way: JobWay, extent: number): Row[] {
  const s = isPlain ? 1 : way.by.scale;
  const limit = report.limits.web / s;
  return report.webs
    .map((web) => ({
      thickness: web.thickness / s,
      // The middle of a strip lies anywhere along it where other metal takes part of it away; allow for its length.
      at: [...spot(web.at, isPlain, way), web.strip / s],
      // A foot on a corner is named after the first of its two edges, which is another one once they are counted anew.
      between: way.reordered ? '' : webNames(web.between, isPlain, way),
      length: web.length / s,
      strip: web.strip / s,
      slab: slabFor(report, web.slab, isPlain, way),
    }))
    .filter(({ thickness }) => thickness > THIN * extent && thickness < limit - LENGTH * extent);
}

function webNames(between: Report['webs'][number]['between'], isPlain: boolean, way: JobWay): string {
  const text = names(between, renameFor(isPlain, way));
  return way.renumbered ? withoutNumbers(text) : text;
}

function knives(
  report: Report,
  isPlain: boolean,
  way: JobWay,
  extent: number,
  joints: readonly Point[],
): Row[] {
  const s = isPlain ? 1 : way.by.scale;
  const placedJoints = joints.map(({ x, y }) => spot([x, y], true, way));
  return report.knifeEdges
    .filter(({ angle }) => angle < report.limits.knifeEdge - ANGLE)
    .map((edge) => {
      const at = spot(edge.at, isPlain, way);
      const text = names(edge.between, renameFor(isPlain, way));
      // The tip of tangent edges slides past a joint too, and lies on the next edge then.
      const slides =
        edge.angle < ANGLE &&
        placedJoints.some(([x, y]) => Math.hypot(at[0] - x, at[1] - y) <= PLACE * extent);
      return {
        angle: edge.angle,
        at,
        between: way.reordered ? '' : slides ? withoutNumbers(text) : text,
        feather: edge.feather === null ? 'none' : edge.feather / s,
        slab: slabFor(report, edge.slab, isPlain, way),
      };
    });
}

function floors(report: Report, isPlain: boolean, way: JobWay): Row[] {
  const s = isPlain ? 1 : way.by.scale;
  const rows = report.floors.map((floor) => ({
    thickness: floor.thickness / s,
    area: floor.area / (s * s),
    under: way.reordered ? '' : floor.under,
    holds: floor.holds === null ? 'nothing' : 'a slug',
    kerf: floor.kerfLength === null || way.reordered ? 'none' : floor.kerfLength / s,
    slab: slabFor(report, floor.slab, isPlain, way),
  }));
  return way.reordered ? together(rows) : rows;
}

/**
 * Of cuts that end at the same height, the first one has the floor that they share, and that floor holds what the
 * first one cut round: only the sum is fixed.
 */
function together<T extends { thickness: number; area: number; slab: number }>(rows: readonly T[]): Row[] {
  const sums: { thickness: number; area: number; slab: number }[] = [];
  for (const { thickness, area, slab } of rows) {
    const at = sums.findIndex(
      (one) => Math.abs(one.thickness - thickness) <= LENGTH * thickness && one.slab === slab,
    );
    const known = sums[at];
    if (known === undefined) sums.push({ thickness, area, slab });
    else sums[at] = { ...known, area: known.area + area };
  }
  return sums;
}

function cuts(report: Report, s: number, { reordered }: JobWay): Row[] {
  return report.cuts.map(({ id, relation, removedArea, removedVolume }) => ({
    id,
    relation,
    // What a cut takes in its turn hangs on the order.
    area: reordered ? 0 : removedArea / (s * s),
    volume: reordered ? 0 : removedVolume / (s * s * s),
  }));
}

function removed(report: Report, s: number): Row {
  return { area: report.removedArea / (s * s), volume: report.removedVolume / (s * s * s) };
}

/** Places of both reports are compared where the other one has them, brought back to the plain one's size. */
function spot(at: readonly [number, number], isPlain: boolean, { by }: JobWay): [number, number] {
  const { x, y } = isPlain ? placed({ x: at[0], y: at[1] }, by) : { x: at[0], y: at[1] };
  return [x / by.scale, y / by.scale];
}

function renameFor(isPlain: boolean, { rename }: JobWay): ((source: string) => string) | null {
  return isPlain || rename === null ? rename : (source) => source;
}

function slabFor(report: Report, slab: number, isPlain: boolean, { flipped }: JobWay): number {
  return isPlain && flipped ? report.slabs.length - 1 - slab : slab;
}
