import { type Bounds, boxAround, boxesMeet, extentOf, grown } from '../geometry/bounds.js';
import type { Job } from '../job/job.js';
import type { JobCut } from '../job/plan.js';
import type { Zone } from '../left/discs.js';
import { boundsOf } from '../region/measure.js';
import { setUp } from '../result/set-up.js';
import { type Looked, lookedAt } from '../write/examine.js';
import { holdsPlace, type KeptLoop } from './kept-loops.js';
import { boxOfCut, hangingTogether, isClearOf, meetingAny, placeOfCut } from './neighbourhood.js';
import { patchedReport } from './patch-report.js';
import { isFarOut, type Kept, rowBoxOf, type Stand } from './stand.js';

/** Cuts closer than this share of the part's extent hang together: far over the distance at which points are welded. */
const GAP_SHARE = 1e-6;

/** With more cuts in one group than this a look at the whole job is as quick. */
const MOST_TOGETHER = 64;

/** What is looked at first round a change, in web limits: metal as thick as that on either side of it. */
const FIRST_REACH = 1;

/** How often what is looked at may prove too little. */
const ROUNDS = 4;

/** A change of one cut that can be looked at alone. */
export interface Change {
  /** Numbers of the cuts that hang together with the changed one, before or after, and itself. */
  readonly group: ReadonlySet<number>;
  /** Boxes in which boundary changes. */
  readonly places: readonly Bounds[];
  /** By cut: boxes after the change. */
  readonly boxes: readonly Bounds[];
  readonly rowBoxes: readonly Bounds[];
}

/** A look at some cuts of a job, with what they say of the change. */
export interface Near extends Looked {
  /** Numbers of the cuts that it is a look at, in order. */
  readonly cuts: readonly number[];
  /** Numbers of the cuts whose rows the change has a say in, in order. */
  readonly rows: readonly number[];
}

/**
 * What examining a job anew would find after one cut has changed, made from what was found before and a look at what
 * is near the change; null where that cannot be told from a look nearby.
 *
 * It can where the changed cut, and all that hang together with it before and after, lie clear of the outline and of
 * all other cuts, in the metal of the kept piece, with nothing loose between them. Then they make holes in the kept
 * piece, and what they change ends where the boxes end that are kept with each web and knife edge.
 */
export function patched(job: Job, stand: Stand, next: Job, number: number): Stand | null {
  const { kept } = stand;
  if (kept === null) return null;
  const change = changeOf(job, stand, kept, next, number);
  if (change === null) return null;
  const near = nearOf(stand, next, change);
  return near === null ? null : patchedReport(stand, kept, next, change, near);
}

function changeOf(job: Job, stand: Stand, kept: Kept, next: Job, number: number): Change | null {
  const before = job.cuts[number] as JobCut;
  const after = next.cuts[number] as JobCut;
  if (before.from !== after.from || before.depth !== after.depth || before.through !== after.through)
    return null;
  const part = boundsOf(job.outline) as Bounds;
  const gap = GAP_SHARE * extentOf(part);
  const box = boxOfCut(after);
  if (isFarOut(part, box)) return null;
  const boxes = stand.boxes.with(number, box);
  const rowBoxes = stand.rowBoxes.with(number, rowBoxOf(next, after, box));
  const group = hangingTogether(stand.boxes, [number], gap);
  for (const k of hangingTogether(boxes, [number], gap)) group.add(k);
  if (group.size > MOST_TOGETHER) return null;
  // Of cuts on one another the names and the order of the walls depend on the height.
  if (group.size > 1 && stand.report.slabs.length > 1) return null;
  const members = [...[...group].map((k) => job.cuts[k] as JobCut), after];
  if (!members.every((cut) => isIsland(job, kept, group, cut, gap))) return null;
  const places = [...group].flatMap((k) => [stand.boxes[k] as Bounds, boxes[k] as Bounds]);
  const grownPlaces = places.map((place) => grown(place, gap));
  const { keep } = job;
  if (keep !== null) {
    const point = boxAround(keep);
    if (grownPlaces.some((place) => boxesMeet(place, point))) return null;
  }
  return holdsLoose(stand.report, idsOf(job, group)) ? null : { group, places: grownPlaces, boxes, rowBoxes };
}

/** Whether a cut lies in the metal of the kept piece, or does once its own group is looked past. */
function isIsland(job: Job, kept: Kept, group: ReadonlySet<number>, cut: JobCut, gap: number): boolean {
  const isOther = ({ first }: KeptLoop) => !group.has(first);
  return isClearOf(job.outline, cut, boxOfCut(cut), gap) && holdsPlace(kept.view, placeOfCut(cut), isOther);
}

/** The ids of some cuts. */
export function idsOf(job: Job, group: Iterable<number>): Set<string> {
  return new Set([...group].map((k) => (job.cuts[k] as JobCut).id));
}

/** Whether something is loose, was for a while, or hangs on a floor, because of some cuts. */
function holdsLoose({ pieces, passing, floors }: Looked['report'], ids: ReadonlySet<string>): boolean {
  return (
    pieces.some(({ freedBy }) => freedBy !== null && ids.has(freedBy)) ||
    passing.some(({ freedBy }) => ids.has(freedBy)) ||
    floors.some(({ under, holds }) => holds !== null && ids.has(under))
  );
}

/** Looks at as many cuts as have a say near the change. */
function nearOf(stand: Stand, next: Job, { group, places, boxes, rowBoxes }: Change): Near | null {
  const gap = GAP_SHARE * extentOf(boundsOf(next.outline) as Bounds);
  const like = { slabs: stand.report.slabs, tolerances: stand.tolerances };
  const rows = [...new Set([...group, ...meetingAny(rowBoxes, places)])].sort((a, b) => a - b);
  const rowZones = rows.map((k) => rowBoxes[k] as Bounds);
  const asked = idsOf(next, rows);
  const reach = FIRST_REACH * next.limits.web;
  // What had a say in what is in doubt now has to be there, or the look would come to another end and not tell.
  const doubtful = [...stand.webZones, ...stand.knifeZones].filter((zone) => meetsAny(zone, places));
  const around = [...places.map((box) => grown(box, reach)), ...rowZones, ...doubtful.flat()];
  let chosen = hangingTogether(boxes, [...rows, ...meetingAny(boxes, around)], gap);
  for (let round = 0; round < ROUNDS; round++) {
    if (chosen.size > next.cuts.length / 2) return null;
    const cuts = [...chosen].sort((a, b) => a - b);
    const some = withCutsOnly(next, cuts);
    const local = lookedAt(some, setUp(some), like, (id) => asked.has(id));
    const zones = [...local.webZones, ...local.knifeZones].filter((zone) => meetsAny(zone, places));
    const wanted = meetingAny(boxes, zones.flat()).filter((k) => !chosen.has(k));
    if (wanted.length > 0) {
      chosen = hangingTogether(boxes, [...chosen, ...wanted], gap);
      continue;
    }
    const near = { ...local, cuts, rows };
    return holdsLoose(local.report, idsOf(next, group)) || liftsOther(stand, next, near) ? null : near;
  }
  return null;
}

/** Whether one of some boxes meets one of some others. */
export function meetsAny(zone: Zone, others: readonly Bounds[]): boolean {
  for (const box of zone) for (const other of others) if (boxesMeet(box, other)) return true;
  return false;
}

function withCutsOnly(job: Job, cuts: readonly number[]): Job {
  const { document } = job;
  return {
    ...job,
    cuts: cuts.map((k) => job.cuts[k] as JobCut),
    document: { ...document, cuts: cuts.map((k) => document.cuts[k] as (typeof document.cuts)[number]) },
  };
}

/** Whether some ring has the kept piece in its core in the one report and not in the other. */
function liftsOther(stand: Stand, { cuts, keep }: Job, near: Near): boolean {
  if (keep !== null && stand.facts.keepStands !== false) return false;
  const held = [stand.report, near.report].map(({ pieces }) => pieces[0]?.view[0]?.outer[0]?.a);
  return near.cuts.some((k) => {
    const cut = cuts[k] as JobCut;
    if (cut.kind !== 'annular') return false;
    const within = held.map(
      (at) => at !== undefined && Math.hypot(at[0] - cut.center.x, at[1] - cut.center.y) < cut.diameter / 2,
    );
    return within[0] !== within[1];
  });
}
