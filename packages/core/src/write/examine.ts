/*
 * Room: the one writer: `examine`.
 * In: a `Job`.
 * Out: a `Report`: plain JSON that drawing, sheet, text and page read.
 */

import type { Cut } from '../cut/cut.js';
import { massOf } from '../cutting/density.js';
import { cautionsOf } from '../find/cautions.js';
import { findingsOf } from '../find/findings.js';
import { edgeToJson, pointToJson, regionToJson } from '../format/json.js';
import { DEGREE } from '../geometry/angle.js';
import { joined } from '../geometry/bounds.js';
import { cutSource } from '../geometry/source.js';
import { partOf, type Tick, ticking, unwatched, type Watch } from '../geometry/watch.js';
import { givensOf } from '../job/givens.js';
import type { Job } from '../job/job.js';
import type { Removal, Slab } from '../left/cells.js';
import type { Left } from '../left/left.js';
import type { Piece } from '../left/pieces.js';
import { relationOf } from '../left/relation.js';
import { forgetful, type Memory } from '../memory/memory.js';
import { loopBounds } from '../region/measure.js';
import type { Region } from '../region/region.js';
import type { Report, ReportCut, ReportPiece, ReportRows, ReportStep } from '../report/report-schema.js';
import { floorBreakOff, webBreakOff } from '../result/break-off.js';
import type { CenterCut } from '../result/center-cuts.js';
import { biteFinder } from '../result/face-bites.js';
import { floorSpan, knifeInterval, webInterval } from '../result/intervals.js';
import { runningOf, toolsByCut } from '../result/running.js';
import { keepOutRows, setupRows } from '../result/setup-rows.js';
import { type Result, resultOf } from '../step/result.js';
import { batchRows } from './batch-rows.js';
import { bodyRows } from './body-rows.js';
import { breakRow } from './break-row.js';
import { checkRows } from './check-rows.js';
import { seamRows } from './seams.js';
import { mergeRows, stepRows } from './step-rows.js';

/**
 * Makes the cuts of a job one after another and reports the result: pieces with their roles, webs, knife edges,
 * floors, the metal that each cut took, each step on the way, findings and cautions. Lengths are in the job's unit,
 * angles in degrees, areas and volumes in its square and cubic unit.
 * @param watch receives the progress; aborting its signal ends the call with that reason
 */
export function examine(job: Job, watch?: Watch): Report {
  return examineWith(forgetful, job, watch);
}

/** The same, with what was worked out of the job before. */
export function examineWith(memory: Memory, job: Job, watch?: Watch): Report {
  const tick = ticking(watch);
  const report = reportOf(resultOf(job, partOf(tick, 0, 0.7), memory), partOf(tick, 0.7, 1), memory);
  tick(1);
  return report;
}

/** Writes a result down. */
export function reportOf(result: Result, tick: Tick = unwatched, memory: Memory = forgetful): Report {
  tick(0);
  const body = bodyOf(result, memory);
  tick(0.3);
  const { findings, ofSteps } = findingsOf(result, body);
  // Added to the row as it is: a copy would work out its sections, which most never ask for.
  const steps = body.steps.map(
    (step, k): ReportStep => Object.assign(step, { findings: [...(ofSteps[k] ?? [])] }),
  );
  return { ...body, steps, findings: [...findings], cautions: cautionsOf({ ...body, findings }) };
}

/** All of a report but what is said of it. */
function bodyOf(result: Result, memory: Memory): ReportRows {
  const { job, set, left, density } = result;
  const cuts = cutRows(result, memory);
  return {
    edgebite: 1,
    name: job.name,
    units: job.units,
    massUnit: density === null ? null : job.units === 'mm' ? 'g' : 'lb',
    material: job.material,
    thickness: job.thickness,
    outline: regionToJson(job.outline),
    keep: job.keep === null ? null : pointToJson(job.keep),
    limits: { ...job.limits },
    resolution: job.resolution,
    removedArea: left.openArea,
    removedVolume: left.taken.reduce((sum, { volume }) => sum + volume, 0),
    slabs: left.cells.slabs.map(({ from, to }, s) => ({ from, to, area: left.slabArea[s] as number })),
    pieces: left.pieces.pieces.map((piece, k) => pieceRow(job, left, piece, k, density)),
    webs: webRows(result),
    knifeEdges: knifeRows(result),
    floors: floorRows(result),
    steps: stepRows(result),
    bodies: bodyRows(result),
    merges: mergeRows(result),
    cuts,
    names: set.names.map(({ of, name }) => ({ of, name })),
    seams: seamRows(job, set.moving),
    checks: checkRows(result),
    setups: setupRows(job, set.lays, cuts),
    batch: batchRows(result),
    keepOut: keepOutRows(job),
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

type Named = readonly [string, string];

/** The piece that a mark is on, and what it lies between. */
function ownerOf(left: Left, { piece, between: [a, b] }: Left['webs'][number] | Left['knifeEdges'][number]) {
  return { piece: (left.pieces.pieces[piece] as Piece).id, between: [a ?? '', b ?? ''] satisfies Named };
}

function webRows({ job, set, left }: Result): Report['webs'] {
  return left.webs.map((web) => {
    const { piece, between } = ownerOf(left, web);
    const { thickness, ends, slab, strip } = web;
    return {
      thickness,
      at: pointToJson(web.at),
      ends: [pointToJson(ends[0]), pointToJson(ends[1])],
      between,
      interval: webInterval(job, set.moving, { thickness, ends, between, strip }),
      length: web.length,
      strip,
      slab,
      piece,
      breakOff: webBreakOff(job, left.cells.slabs[slab] as Slab, thickness),
    };
  });
}

function knifeRows({ job, set, left }: Result): Report['knifeEdges'] {
  return left.knifeEdges.map((edge) => {
    const { piece, between } = ownerOf(left, edge);
    const angle = edge.angle / DEGREE;
    return {
      angle,
      at: pointToJson(edge.at),
      between,
      interval: knifeInterval(job, set.moving, { angle, at: edge.at, between }),
      feather: edge.feather,
      break: breakRow(edge, job.limits.web, left.cells.subdivision.graph.curves.tolerance),
      slab: edge.slab,
      piece,
    };
  });
}

function floorRows({ job, set, left }: Result): Report['floors'] {
  return left.floors.map((floor) => {
    const row = {
      thickness: floor.thickness,
      interval: floorSpan(job, set.lays, floor),
      area: floor.area,
      under: cutId(job, floor.under),
      holds: floor.holds === null ? null : (left.pieces.pieces[floor.holds] as Piece).id,
      kerfLength: floor.kerfLength,
      at: pointToJson(floor.at),
      slab: floor.slab,
    };
    return { ...row, breakOff: floorBreakOff(job, row) };
  });
}

function cutRows(result: Result, memory: Memory): ReportCut[] {
  const { job, set } = result;
  const givens = givensOf(job);
  const tools = toolsByCut(job);
  const bitesOf = biteFinder(job);
  return job.cuts.map((cut, number): ReportCut => {
    const row = cutRow(result, cut, number);
    const placed = memory.same(`placed ${number}`, set.moving.cuts.get(cut.id) ?? []);
    const tool = tools.get(cut.id);
    return Object.assign(row, {
      bites:
        cut.kind === 'swept' || row.relation !== 'breaks out'
          ? []
          : memory.of(`bites ${number}`, [cut, placed, ...givens], () =>
              bitesOf(placed, cut.center, cut.diameter / 2),
            ),
      running: tool === undefined ? null : runningOf(job, row, tool),
    });
  });
}

/** The row of a cut, but for what its tool and the faces make of it. */
function cutRow(
  { job, left, standing, centers }: Result,
  cut: Cut,
  number: number,
): Omit<ReportCut, 'bites' | 'running'> {
  const removal = left.cells.removals[number] as Removal;
  const center = centers[number] as CenterCut;
  const taken = left.taken[number] as Left['taken'][number];
  return {
    id: cut.id,
    source: cutSource(cut.id),
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
    removedArea: taken.area,
    removedVolume: taken.volume,
    ...center.row,
  };
}

/** The box round a region that is not empty: [min x, min y, max x, max y]. */
function boundsJson(region: Region): [number, number, number, number] {
  const box = region.map(({ outer }) => loopBounds(outer)).reduce(joined);
  return [box.minX + 0, box.minY + 0, box.maxX + 0, box.maxY + 0];
}
