import { offset } from '../combine/offset.js';
import { subtract } from '../combine/subtract.js';
import { JobError, type JobIssue } from '../document/errors.js';
import { plainFaults } from '../document/plain.js';
import type { OutlineDocument } from '../document/schema.js';
import type { DrawerDocument } from '../document/schema-drawer.js';
import { INTERPRETED, schemaIssues } from '../document/schema-issues.js';
import { valueOfText } from '../document/text.js';
import { tidied } from '../document/tidy.js';
import type { Point } from '../geometry/point.js';
import { roundedTo, shownNumber, shownPoint } from '../geometry/shown.js';
import { idIssues } from '../job/ids.js';
import type { Job } from '../job/job.js';
import { parseJob } from '../read/parse.js';
import { drawerIssues } from '../read/read-drawer.js';
import { withDrawer } from '../read/shared-drawer.js';
import { contains } from '../region/contains.js';
import { area, boundsOf, loopsOf } from '../region/measure.js';
import type { Loop, Region } from '../region/region.js';
import {
  type Aim,
  type AimStop,
  DEFAULT_ALLOWANCE,
  DEFAULT_HEAD_BITE,
  DEFAULT_MINUTES,
  DEFAULT_WAYS,
  type Pocket,
  SAME_SHARE,
} from './aim.js';
import { bittenOutline } from './bites.js';
import { layersOf } from './layers.js';
import { type AimDocument, aimSchema, type PocketDocument } from './schema-aim.js';

/**
 * Reads an aim from JSON, given as text or as its value: the finished part and the blank, checked, the metal to
 * remove between them, the tools.
 * @param shared a drawer to use instead of the aim's own
 * @throws JobError with all faults at once, each with a JSON Pointer to its place.
 */
export function parseAim(json: unknown, shared?: DrawerDocument): Aim {
  const given = typeof json === 'string' ? valueOfText(json) : json;
  const value = shared === undefined ? given : withDrawer(given, shared);
  const faults = plainFaults(value);
  if (faults.length > 0) throw new JobError(faults);
  const checked = aimSchema.safeParse(value, INTERPRETED);
  if (!checked.success) throw new JobError(schemaIssues(value, checked.error.issues));
  const document = tidied(checked.data) as AimDocument;
  const issues: JobIssue[] = [
    ...idIssues(document.drawer, '/drawer', 'tool'),
    ...drawerIssues(document.drawer),
  ];
  const blank = taken(document, document.blank, 'blank', issues);
  const finished = finishedOf(document, blank, issues);
  if (blank !== null && finished !== null) issues.push(...outsideIssues(blank.outline, finished.outline));
  const pockets = (document.pockets ?? []).flatMap(
    (pocket, k) => pocketOf(document, pocket, k, issues) ?? [],
  );
  issues.push(...stopIssues(document));
  if (issues.length > 0 || blank === null || finished === null) throw new JobError(issues);
  return aimOf(document, blank, finished.outline, pockets);
}

/** Two stops that a part cannot bear on at once. */
function stopIssues({ tip, stops = [] }: AimDocument): JobIssue[] {
  const isTwice = [true, false].some((along) => stops.filter((one) => isAlongX(one) === along).length > 1);
  if (tip === undefined || !isTwice) return [];
  return [{ path: '/stops', message: 'names two stops of one axis; with "tip" name one of them' }];
}

function isAlongX(side: AimStop): boolean {
  return side === 'left' || side === 'right';
}

function aimOf(document: AimDocument, job: Job, finished: Region, pockets: readonly Pocket[]): Aim {
  const { units, drawer, minutes = {} } = document;
  const { x, y } = job.keep ?? deepPlace(finished, pockets);
  return {
    job,
    finished,
    pockets,
    layers: layersOf(job.outline, finished, pockets),
    keep: [x, y],
    drawer,
    stops: document.stops ?? [],
    tip: document.tip ?? null,
    arcs: document.arcs ?? false,
    allowance: document.allowance ?? DEFAULT_ALLOWANCE[units],
    bite: document.bite ?? DEFAULT_HEAD_BITE[units],
    toolChange: minutes.toolChange ?? DEFAULT_MINUTES.toolChange,
    turning: minutes.turning ?? DEFAULT_MINUTES.turning,
    ways: document.ways ?? DEFAULT_WAYS,
    document,
  };
}

/** Halvings until a place is known that is about as far from any wall as can be. */
const HALVINGS = 8;

/** Digits after the point in which a place is told, as long as it stays on the part. */
const READABLE = [0, 1, 2, 3] as const;

/** A place well within a region, to hold it by. */
function deepPlace(finished: Region, pockets: readonly Pocket[]): Point {
  const whole = subtract(
    finished,
    pockets.map(({ region }) => region),
  );
  const region = whole.length === 0 ? finished : whole;
  const box = boundsOf(region);
  let [low, high] = box === null ? [0, 0] : [0, Math.min(box.maxX - box.minX, box.maxY - box.minY) / 2];
  let core = region;
  for (let k = 0; k < HALVINGS || low === 0; k++) {
    const middle = (low + high) / 2;
    const left = offset(region, -middle);
    if (left.length === 0) high = middle;
    else [low, core] = [middle, left];
  }
  const place = (loopsOf(core)[0] as Loop)[0]?.a as Point;
  return (
    READABLE.map((digits) => ({ x: roundedTo(place.x, digits), y: roundedTo(place.y, digits) })).find(
      (one) => contains(region, one) === 'inside',
    ) ?? place
  );
}

/** The region of a pocket; null if it has faults, which are taken down. */
function pocketOf(
  document: AimDocument,
  { depth, from = 'top', islands, ...shape }: PocketDocument,
  k: number,
  issues: JobIssue[],
): Pocket | null {
  const { thickness } = document;
  if (depth >= thickness) {
    const message = `is ${depth}; it must be less than the thickness, ${thickness}: what goes through belongs to "finished"`;
    issues.push({ path: `/pockets/${k}/depth`, message });
  }
  const outline = islands === undefined ? shape : { ...shape, holes: islands };
  const region = regionOf(document, outline, `/pockets/${k}`, issues);
  return region === null ? null : { region, from, depth };
}

/** The region of a shape; null if it has faults, which are taken down. */
function regionOf(
  { edgebite, units, thickness }: AimDocument,
  outline: OutlineDocument,
  place: string,
  issues: JobIssue[],
): Region | null {
  try {
    return parseJob({ edgebite, units, part: { outline, thickness }, cuts: [] }).outline;
  } catch (error) {
    if (!(error instanceof JobError)) throw error;
    for (const { path, message } of error.issues) {
      if (path.startsWith('/part/outline')) {
        // To a shape, the islands of a pocket are its holes.
        const own = path.replace('/part/outline', '').replace(/^\/holes(?=\/|$)/, '/islands');
        issues.push({ path: `${place}${own}`, message });
      }
    }
    return null;
  }
}

/** What is to be left: its outline, or the blank without its bites; null if it has faults, which are taken down. */
function finishedOf(document: AimDocument, blank: Job | null, issues: JobIssue[]): Job | null {
  const { finished } = document;
  if (!('bites' in finished)) return taken(document, finished, 'finished', issues);
  const bites = finished.bites.map((bite, k) => regionOf(document, bite, `/finished/bites/${k}`, issues));
  const known = bites.filter((bite) => bite !== null);
  if (blank === null || known.length < bites.length) return null;
  const outline = bittenOutline(blank.outline, known, issues);
  return outline === null ? null : taken(document, outline, 'finished', issues);
}

/** An aim's blank or finished part, read as the part of a job without cuts; its faults are told in the aim's own paths. */
function taken(
  document: AimDocument,
  outline: OutlineDocument,
  key: 'blank' | 'finished',
  issues: JobIssue[],
): Job | null {
  const { edgebite, name, units, thickness, material, limits, resolution, machine, keep } = document;
  try {
    return parseJob(
      tidied({
        edgebite,
        name,
        units,
        part: { outline, thickness, material },
        limits,
        resolution,
        machine,
        keep,
        cuts: [],
      }),
    );
  } catch (error) {
    if (!(error instanceof JobError)) throw error;
    const isOwn = (path: string) => key === 'finished' || path.startsWith('/part/outline');
    for (const { path, message } of error.issues) {
      if (isOwn(path)) issues.push({ path: placeIn(document, path, key), message });
    }
    return null;
  }
}

/** The place in an aim of a fault of its blank or finished part; edges that bites have left stand nowhere in it. */
function placeIn({ finished }: AimDocument, path: string, key: 'blank' | 'finished'): string {
  const isBitten = key === 'finished' && 'bites' in finished && path.startsWith('/part/outline');
  return isBitten ? '/finished/bites' : path.replace('/part/outline', `/${key}`);
}

/** Nothing can be left where the blank has none. */
function outsideIssues(blank: Region, finished: Region): JobIssue[] {
  const over = subtract(finished, [blank]);
  const size = area(over);
  if (size <= SAME_SHARE * area(blank)) return [];
  const at = (loopsOf(over)[0] as Loop)[0]?.a;
  const where = at === undefined ? '' : `, by ${shownPoint(at)}`;
  const message = `goes beyond the blank by an area of ${shownNumber(size)}${where}; draw the blank larger or the part smaller`;
  return [{ path: '/finished', message }];
}
