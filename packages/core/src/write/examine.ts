import type { Cut } from '../cut/cut.js';
import { densityOf, massOf } from '../cutting/density.js';
import { cautionsOf } from '../find/cautions.js';
import { findingsOf } from '../find/findings.js';
import type { Said } from '../find/said.js';
import { edgeToJson, pointToJson, regionToJson } from '../format/json.js';
import { joined } from '../geometry/bounds.js';
import { DEGREE } from '../geometry/degree.js';
import type { Job } from '../job/job.js';
import type { Removal } from '../left/cells.js';
import type { Zone } from '../left/discs.js';
import { type Left, type LeftLike, whatIsLeft } from '../left/left.js';
import type { Piece } from '../left/pieces.js';
import { relationOf, type Standing, standingOf } from '../left/relation.js';
import { loopBounds } from '../region/measure.js';
import type { Region } from '../region/region.js';
import type { Report, ReportCut, ReportPiece } from '../report/report-schema.js';
import { type CenterCut, centerCuts } from '../result/center-cuts.js';
import { type Facts, factsOf } from '../result/facts.js';
import { removalOf } from '../result/removal.js';
import { type SetUp, setUp, withSetups } from '../result/set-up.js';
import { withShopNumbers } from '../result/shop-numbers.js';

/**
 * Makes the cuts of a job one after another and reports what is left: pieces with their roles, webs, knife edges,
 * floors, what each cut took, and what to watch. Lengths are in the job's unit, angles in degrees, areas and
 * volumes in its square and cubic unit.
 */
export function examine(job: Job): Report {
  return examined(job).report;
}

/** All of a report but what is said of it as a whole, and what it takes to change it in one place. */
export interface Looked {
  readonly report: Omit<Report, 'findings' | 'cautions'>;
  readonly facts: Facts;
  readonly centers: readonly CenterCut[];
  /** By web and by knife edge: boxes outside of which nothing has a say in it. */
  readonly webZones: readonly Zone[];
  readonly knifeZones: readonly Zone[];
  /** By slab: the tolerance that its section was searched with. */
  readonly tolerances: readonly number[];
}

/** The same with a whole report. */
export interface Examined extends Looked {
  readonly report: Report;
}

/** As `examine`, with what it takes to change the report in one place; what is said of rows goes into `said`. */
export function examined(job: Job, said?: Said): Examined {
  const set = setUp(job);
  const looked = lookedAt(job, set);
  return { ...looked, report: withFindings(job, looked.report, looked, set, said) };
}

/**
 * A report with what is said of it as a whole.
 * @param said findings on rows that were made before, to be used again
 */
export function withFindings(
  job: Job,
  body: Looked['report'],
  { facts, centers }: Pick<Looked, 'facts' | 'centers'>,
  set: SetUp,
  said?: Said,
): Report {
  const findings = findingsOf(job, facts, body, set, centers, said);
  return { ...body, findings, cautions: cautionsOf({ ...body, findings }) };
}

/**
 * Makes the cuts and looks at what is left.
 * @param like what to take slabs and tolerances from, for a look at some of the cuts of a job
 * @param isWanted of which cuts it is asked where their tools stand; all unless given
 */
export function lookedAt(job: Job, set: SetUp, like?: LeftLike, isWanted?: (id: string) => boolean): Looked {
  const removals = job.cuts.map((cut) => removalOf(cut, job.thickness));
  const { web, knifeEdge } = job.limits;
  const left = whatIsLeft(job.outline, job.thickness, removals, job.keep, web, knifeEdge * DEGREE, like);
  const standing = standingOf(left.cells);
  const facts = factsOf(job, left);
  const centers = centerCuts(job, removals, left, isWanted);
  const density = job.material === null ? null : densityOf(job.material);
  const plain: Omit<Report, 'findings' | 'cautions'> = {
    edgebite: 1,
    name: job.name,
    units: job.units,
    massUnit: density === null ? null : job.units === 'mm' ? 'g' : 'lb',
    material: job.material,
    thickness: job.thickness,
    outline: regionToJson(job.outline),
    keep: job.keep === null ? null : pointToJson(job.keep),
    limits: { web, knifeEdge },
    resolution: job.resolution,
    removedArea: left.openArea,
    removedVolume: left.taken.reduce((sum, { volume }) => sum + volume, 0),
    slabs: left.cells.slabs.map(({ from, to }, s) => ({ from, to, area: left.slabArea[s] as number })),
    pieces: left.pieces.pieces.map((piece, k) => pieceRow(job, left, piece, k, density)),
    ...sharpAndThin(left),
    floors: floorRows(job, left),
    passing: left.pieces.passing.map(({ freedBy, coreOf, volume }) => ({
      freedBy: cutId(job, freedBy),
      slug: coreOf !== null,
      volume,
      mass: density === null ? null : massOf(volume, density, job.units),
    })),
    cuts: job.cuts.map((cut, k) =>
      cutRow(job, left, standing, removals[k] as Removal, cut, k, centers[k] as CenterCut),
    ),
    setups: [],
    keepOut: [],
  };
  return {
    report: withShopNumbers(job, withSetups(job, set, plain)),
    facts,
    centers,
    webZones: left.webs.map(({ zone }) => zone),
    knifeZones: left.knifeEdges.map(({ zone }) => zone),
    tolerances: left.tolerances,
  };
}

function pieceRow(job: Job, left: Left, piece: Piece, number: number, density: number | null): ReportPiece {
  return {
    id: piece.id,
    label: labelOf(piece),
    role: piece.role,
    area: piece.area,
    perimeter: piece.perimeter,
    volume: piece.volume,
    mass: density === null ? null : massOf(piece.volume, density, job.units),
    bounds: boundsJson(piece.plan),
    holes: piece.plan.reduce((sum, { holes }) => sum + holes.length, 0),
    freedBy: piece.freedBy === null ? null : cutId(job, piece.freedBy),
    horns: left.knifeEdges.flatMap((edge, k) => (edge.piece === number ? [k] : [])),
    view: regionToJson(piece.plan),
    sections: piece.sections.map(({ from, to, region }) => ({ from, to, region: regionToJson(region) })),
  };
}

/** What a drawing calls a piece: `KEPT`, `SLUG 1`. */
function labelOf({ id }: Piece): string {
  return id.replace('-', ' ').toUpperCase();
}

function cutId(job: Job, number: number): string {
  return (job.cuts[number] as Cut).id;
}

function sharpAndThin(left: Left): Pick<Report, 'webs' | 'knifeEdges'> {
  const pieceId = (number: number) => (left.pieces.pieces[number] as Piece).id;
  const named = ([a, b]: readonly [string | null, string | null]): [string, string] => [a ?? '', b ?? ''];
  return {
    webs: left.webs.map((web) => ({
      thickness: web.thickness,
      at: pointToJson(web.at),
      ends: [pointToJson(web.ends[0]), pointToJson(web.ends[1])],
      between: named(web.between),
      interval: null,
      length: web.length,
      strip: web.strip,
      slab: web.slab,
      piece: pieceId(web.piece),
      breakOff: null,
    })),
    knifeEdges: left.knifeEdges.map((edge) => ({
      angle: edge.angle / DEGREE,
      at: pointToJson(edge.at),
      between: named(edge.between),
      interval: null,
      feather: edge.feather,
      slab: edge.slab,
      piece: pieceId(edge.piece),
    })),
  };
}

function floorRows(job: Job, left: Left): Report['floors'] {
  return left.floors.map((floor) => ({
    thickness: floor.thickness,
    area: floor.area,
    under: cutId(job, floor.under),
    holds: floor.holds === null ? null : (left.pieces.pieces[floor.holds] as Piece).id,
    kerfLength: floor.kerfLength,
    at: pointToJson(floor.at),
    slab: floor.slab,
    breakOff: null,
  }));
}

function cutRow(
  job: Job,
  left: Left,
  standing: Standing,
  removal: Removal,
  cut: Cut,
  number: number,
  center: CenterCut,
): ReportCut {
  const taken = left.taken[number] as Left['taken'][number];
  return {
    id: cut.id,
    source: `cut:${cut.id}`,
    kind: cut.kind,
    center: cut.kind === 'swept' ? null : pointToJson(cut.center),
    diameter: cut.diameter,
    wall: cut.kind === 'annular' ? cut.wall : null,
    path: cut.kind === 'swept' ? cut.path.map(edgeToJson) : null,
    from: cut.from,
    depth: cut.depth,
    through: cut.through,
    footprint: regionToJson(removal.footprint),
    relation: relationOf(standing, number, cut, job.outline, job.resolution),
    bites: [],
    removedArea: taken.area,
    removedVolume: taken.volume,
    ...center.row,
    running: null,
  };
}

/** The box round a region that is not empty: [min x, min y, max x, max y]. */
function boundsJson(region: Region): [number, number, number, number] {
  const box = region.map(({ outer }) => loopBounds(outer)).reduce(joined);
  return [box.minX + 0, box.minY + 0, box.maxX + 0, box.maxY + 0];
}
