import type { Said } from '../find/said.js';
import { type Bounds, extentOf, grown } from '../geometry/bounds.js';
import type { Job } from '../job/job.js';
import type { JobCut } from '../job/plan.js';
import { boundsOf } from '../region/measure.js';
import type { ReportRegion } from '../report/report-schema.js';
import { reachOf } from '../result/center-cuts.js';
import { type Examined, examined } from '../write/examine.js';
import { type CutNumber, type KeptRegion, keptArea, keptRegion, openedArea } from './kept-loops.js';
import { boxOfCut } from './neighbourhood.js';

/** A job examined, with what the next change is measured against. */
export interface Stand extends Examined {
  readonly numberOf: ReadonlyMap<string, number>;
  /** By cut: the box round what it can cut, and round all that its row tells of. */
  readonly boxes: readonly Bounds[];
  readonly rowBoxes: readonly Bounds[];
  /** Loops of the kept piece; null where a change is not to be looked at alone. */
  readonly kept: Kept | null;
  /** Findings made before, shared by all that come of one job. */
  readonly said: Said;
}

/** The kept piece, loop by loop. */
export interface Kept {
  readonly view: KeptRegion;
  /** As in the report: one for each stretch of height with the same faces. */
  readonly sections: readonly KeptRegion[];
  /** By slab: which section of the kept piece it is in; -1 for none. */
  readonly sectionOf: readonly number[];
  /** What stays when loops change: area by slab that other pieces have, and what they and rounding add to the sums. */
  readonly otherArea: readonly number[];
  readonly otherVolume: number;
  readonly otherOpened: number;
}

/** Examines a job as a whole. */
export function standOf(job: Job): Stand {
  const said: Said = new WeakMap();
  const all = examined(job, said);
  const numberOf = new Map(job.cuts.map(({ id }, k) => [id, k]));
  const boxes = job.cuts.map(boxOfCut);
  const rowBoxes = boxes.map((box, k) => rowBoxOf(job, job.cuts[k] as JobCut, box));
  return {
    ...all,
    numberOf,
    boxes,
    rowBoxes,
    kept: keptOf(job, all, cutNumberBy(numberOf), boxes),
    said,
  };
}

/** Tells the numbers of cuts by sources. */
export function cutNumberBy(numberOf: ReadonlyMap<string, number>): CutNumber {
  return (source) => (source?.startsWith('cut:') ? (numberOf.get(source.slice(4)) ?? -1) : -1);
}

/** The box round all that the row of a cut tells of. */
export function rowBoxOf(job: Job, cut: JobCut, box: Bounds): Bounds {
  return cut.kind === 'swept' ? box : grown(box, reachOf(job, cut));
}

/**
 * Cuts this many times the part's extent away make the overlay of all take points for one that are further apart
 * than in an overlay of some.
 */
const FAR_OUT = 1e4;

/** Whether a cut lies too far out for the part to be looked at without it. */
export function isFarOut(part: Bounds, { minX, minY, maxX, maxY }: Bounds): boolean {
  const field = grown(part, FAR_OUT * extentOf(part));
  return minX < field.minX || minY < field.minY || maxX > field.maxX || maxY > field.maxY;
}

function keptOf(job: Job, { report }: Examined, cutNumber: CutNumber, boxes: readonly Bounds[]): Kept | null {
  const part = boundsOf(job.outline) as Bounds;
  // Of setups and keep-outs every change has a say in the whole report.
  if (job.setups.length > 0 || job.keepOuts.length > 0 || boxes.some((box) => isFarOut(part, box)))
    return null;
  const piece = report.pieces[0];
  if (piece?.role !== 'kept') return null;
  const read = (json: ReportRegion) => keptRegion(json, cutNumber);
  const view = read(piece.view);
  const sections = piece.sections.map(({ region }) => (piece.sections.length === 1 ? view : read(region)));
  if (view === null || sections.some((one) => one === null)) return null;
  const own = sections as KeptRegion[];
  const sectionOf = report.slabs.map(({ from, to }) =>
    piece.sections.findIndex((one) => one.from <= from && to <= one.to),
  );
  const areas = sectionOf.map((k) => (k < 0 ? 0 : keptArea(own[k] as KeptRegion)));
  const volume = piece.sections.reduce(
    (sum, { from, to }, k) => sum + keptArea(own[k] as KeptRegion) * (to - from),
    0,
  );
  return {
    view,
    sections: own,
    sectionOf,
    otherArea: report.slabs.map(({ area }, s) => area - (areas[s] as number)),
    otherVolume: piece.volume - volume,
    otherOpened: report.removedArea - openedArea(view),
  };
}
