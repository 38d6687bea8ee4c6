/*
 * Room: the door for jobs: `parseJob`.
 * In: JSON text or a value, perhaps a drawer of tools.
 * Out: a `Job`, or one `JobError` with all faults.
 */

import { writtenOut } from '../alike/written-out.js';
import { generalTolerance } from '../datum/general-tolerance.js';
import { inUnit } from '../datum/length-unit.js';
import { JobError } from '../document/errors.js';
import { plainFaults } from '../document/plain.js';
import { type JobDocument, jobSchemaFor, type PlainCut, type PlainDocument } from '../document/schema.js';
import type { DrawerDocument } from '../document/schema-drawer.js';
import { INTERPRETED, schemaIssues } from '../document/schema-issues.js';
import { valueOfText } from '../document/text.js';
import { tidied } from '../document/tidy.js';
import { extentOf } from '../geometry/bounds.js';
import { shownPoint } from '../geometry/shown.js';
import { Faults } from '../job/faults.js';
import { idIssues } from '../job/ids.js';
import {
  DEFAULT_BREAK_THROUGH,
  DEFAULT_KNIFE_EDGE,
  DEFAULT_RESOLUTION,
  DEFAULT_WEB,
  type Job,
  SHORTEST_CHORD,
} from '../job/job.js';
import type { JobCut } from '../job/plan.js';
import { pointOf } from '../job/read-edges.js';
import { contains } from '../region/contains.js';
import { boundsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';
import { readNames } from '../setups/names.js';
import { readBatch } from '../setups/read-batch.js';
import { readKeepOuts } from '../setups/read-keep-outs.js';
import { type ReadPart, readSetups } from '../setups/read-setups.js';
import { crossingIssues } from './crossings.js';
import { type PartSize, readCut } from './read-cut.js';
import { withToolsWritten } from './read-drawer.js';
import { readOutline } from './read-outline.js';
import { readMachine, readTools } from './read-tools.js';
import { withDrawer } from './shared-drawer.js';

/**
 * Reads a job from JSON, given as text or as its value. Its shapes are worked out and checked; defaults, and sizes
 * that cuts take from tools of a drawer, are filled in. Every number in the job is then finite, every size over 0,
 * and no outline is open or crosses itself.
 * @param shared a drawer to use instead of the job's own
 * @throws JobError with all faults at once, each with a JSON Pointer to its place.
 */
export function parseJob(json: unknown, shared?: DrawerDocument): Job {
  const given = typeof json === 'string' ? valueOfText(json) : json;
  const value = shared === undefined ? given : withDrawer(given, shared);
  const faults = new Faults();
  faults.add(plainFaults(value));
  const checked = jobSchemaFor(value).safeParse(value, INTERPRETED);
  if (!checked.success) {
    const issues = schemaIssues(value, checked.error.issues);
    faults.add(issues.filter(({ path }) => faults.holds(path)));
  }
  // With faults in it this is not a whole job yet; only what is sound is looked at.
  const document = (checked.success ? tidied(checked.data) : value) as JobDocument;
  const outline = readOutline(document, faults);
  const names = readNames(document, outline, faults);
  const sized = withToolsWritten(document, faults);
  const written = readCuts(sized.document, { outline, names }, sized.faults);
  const out = repeatsOf(sized.document, written, { outline, names }, sized.faults);
  const plain = out.document;
  checkKeep(document, outline, faults);
  const setups = readSetups(plain, { outline, names }, out.faults);
  const keepOuts = readKeepOuts(document, faults);
  const tools = readTools(plain, out.faults);
  const machine = readMachine(document, faults);
  const batch = readBatch(plain, { outline, names }, standsIn(out.cuts), faults);
  if (faults.issues.length > 0 || outline === null) throw new JobError(faults.issues);
  return { ...jobOf(document, outline, out.cuts), plain, names, setups, batch, keepOuts, tools, machine };
}

/** About how many places a tool goes to for a cut of an id: one, or one for each edge of a path. */
function standsIn(cuts: readonly JobCut[]): (id: string) => number {
  const stands = new Map(cuts.map((cut) => [cut.id, cut.kind === 'swept' ? cut.path.length + 1 : 1]));
  return (id) => stands.get(id) ?? 0;
}

/** A job with its repeats written out, and the cuts that it comes to. */
function repeatsOf(
  document: PlainDocument,
  written: readonly (JobCut | null)[],
  { outline, names }: ReadPart,
  faults: Faults,
): { readonly document: PlainDocument; readonly faults: Faults; readonly cuts: readonly JobCut[] } {
  if (!faults.holds('') || document.repeat === undefined) {
    return { document, faults, cuts: crossed(written, faults) };
  }
  const part = outline === null ? null : { outline, names };
  const out = writtenOut(document, written, part, faults);
  // While copies are not known, nobody can tell what cut is meant by a name.
  const isName = (path: string) => /^\/cuts\/\d+\/id$/.test(path);
  if (out === null) return { document, faults: faults.hiding(isName), cuts: [] };
  const size = sizeOf(out.document, { outline, names }, faults);
  const cuts = out.copies.map(({ cut, by }, k) => {
    const own = out.document.cuts[k] as PlainCut;
    const first = written[cut] ?? null;
    if (first === null || by.length > 0) return first && readCut(own, `/cuts/${k}`, size, out.faults);
    return { ...first, id: own.id };
  });
  return { document: out.document as PlainDocument, faults: out.faults, cuts: crossed(cuts, faults) };
}

/** The cuts that could be read, with a fault taken down where they cross each other too often. */
function crossed(cuts: readonly (JobCut | null)[], faults: Faults): JobCut[] {
  const read = cuts.filter((cut) => cut !== null);
  faults.add(crossingIssues(read));
  return read;
}

function readCuts(document: PlainDocument, part: ReadPart, faults: Faults): (JobCut | null)[] {
  if (!faults.holds('/cuts')) return [];
  const { cuts } = document;
  const ids = idIssues(cuts);
  const size = sizeOf(document, part, faults);
  const read = cuts.map((cut, i) => readCut(cut, `/cuts/${i}`, size, faults));
  faults.add(ids);
  return read;
}

function sizeOf(document: JobDocument, { outline, names }: ReadPart, faults: Faults): PartSize {
  const box = outline && boundsOf(outline);
  return {
    thickness: faults.sound('/part/thickness') ? document.part.thickness : null,
    extent: box && extentOf(box),
    outline,
    names,
    units: document.units,
    resolution: faults.sound('/resolution')
      ? (document.resolution ?? DEFAULT_RESOLUTION[document.units] ?? 0)
      : 0,
  };
}

function checkKeep(document: JobDocument, outline: Region | null, faults: Faults): void {
  if (outline === null || !faults.sound('/keep') || document.keep === undefined) return;
  const keep = pointOf(document.keep);
  if (contains(outline, keep) !== 'outside') return;
  const message = `${shownPoint(keep)} is not on the part; it must lie inside the outline and in none of its holes`;
  faults.add([{ path: '/keep', message }]);
}

function jobOf(
  document: JobDocument,
  outline: Region,
  cuts: readonly JobCut[],
): Omit<Job, 'plain' | 'names' | 'setups' | 'batch' | 'keepOuts' | 'tools' | 'machine'> {
  const { units, part, keep, limits = {} } = document;
  const web = limits.web ?? DEFAULT_WEB[units];
  return {
    name: document.name ?? '',
    units,
    outline,
    thickness: part.thickness,
    thicknessTolerance: part.thicknessTolerance ?? generalOf(part, units),
    material: part.material ?? null,
    keep: keep === undefined ? null : pointOf(keep),
    limits: {
      web,
      hold: limits.hold ?? web,
      breakThrough: limits.breakThrough ?? DEFAULT_BREAK_THROUGH[units],
      knifeEdge: limits.knifeEdge ?? DEFAULT_KNIFE_EDGE,
    },
    resolution: document.resolution ?? DEFAULT_RESOLUTION[units],
    cuts,
    tolerances: part.tolerances ?? null,
    sizeTolerance: part.sizeTolerance ?? null,
    gauges: {
      pins: document.gauges?.pins ?? [],
      balls: document.gauges?.balls ?? [],
      feet: document.gauges?.feet ?? [],
      shortest: SHORTEST_CHORD[units],
    },
    document,
  };
}

/** The general tolerance of the thickness, in the unit of the job; 0 where the part names no class or there is none. */
function generalOf({ thickness, tolerances }: JobDocument['part'], units: JobDocument['units']): number {
  const general =
    tolerances === undefined ? null : generalTolerance(inUnit(thickness, units, 'mm'), tolerances);
  return general === null ? 0 : inUnit(general, 'mm', units);
}
