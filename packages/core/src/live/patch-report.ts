import { densityOf, massOf } from '../cutting/density.js';
import type { Job } from '../job/job.js';
import type { Zone } from '../left/discs.js';
import type { Report, ReportPiece, ReportRegion } from '../report/report-schema.js';
import { setUp } from '../result/set-up.js';
import { withFindings } from '../write/examine.js';
import {
  hasVertex,
  holdsPlace,
  type KeptLoop,
  type KeptRegion,
  keptArea,
  keptLoop,
  keptPerimeter,
  openedArea,
  withHoles,
} from './kept-loops.js';
import { type Change, idsOf, meetsAny, type Near } from './patch.js';
import { cutNumberBy, type Kept, type Stand } from './stand.js';

/** With other pieces this near in volume, the last digits say which is the largest and so is kept. */
const CLEARLY_LARGER = 1 + 1e-9;

/** Puts what a look near a change has found in the place of what was there; null where the two do not fit. */
export function patchedReport(stand: Stand, kept: Kept, job: Job, change: Change, near: Near): Stand | null {
  const loops = patchedLoops(stand, kept, change, near);
  if (loops === null) return null;
  const webs = patchedRows(
    stand.report.webs,
    stand.webZones,
    near.report.webs,
    near.webZones,
    change,
    (row) => row.thickness,
  );
  const knives = patchedRows(
    stand.report.knifeEdges,
    stand.knifeZones,
    near.report.knifeEdges,
    near.knifeZones,
    change,
    (row) => row.angle,
  );
  if (!areKept(loops, webs.fresh, knives.fresh)) return null;
  const pieces = patchedPieces(stand, loops, job, knives.rows);
  if (pieces === null) return null;
  const cuts = replaced(stand.report.cuts, near.report.cuts, near);
  const { findings: _, cautions: __, ...old } = stand.report;
  const body = {
    ...old,
    removedArea: loops.otherOpened + openedArea(loops.view),
    removedVolume: cuts.reduce((sum, { removedVolume }) => sum + removedVolume, 0),
    slabs: old.slabs.map((slab, s) => ({ ...slab, area: slabArea(loops, s) })),
    pieces,
    webs: webs.rows,
    knifeEdges: knives.rows,
    floors: patchedFloors(stand, job, change, near),
    cuts,
  };
  const centers = replaced(stand.centers, near.centers, near);
  const facts = { ...stand.facts, bears: replaced(stand.facts.bears, near.facts.bears, near) };
  return {
    report: withFindings(job, body, { facts, centers }, setUp(job), stand.said),
    facts,
    centers,
    webZones: webs.zones,
    knifeZones: knives.zones,
    tolerances: stand.tolerances,
    numberOf: stand.numberOf,
    boxes: change.boxes,
    rowBoxes: change.rowBoxes,
    kept: loops,
    said: stand.said,
  };
}

/** By cut, with what was found anew for those that the change has a say in. */
function replaced<T>(old: readonly T[], fresh: readonly T[], { cuts, rows }: Near): T[] {
  const made = [...old];
  const isRow = new Set(rows);
  cuts.forEach((number, k) => {
    if (isRow.has(number)) made[number] = fresh[k] as T;
  });
  return made;
}

function patchedLoops(stand: Stand, kept: Kept, { group }: Change, near: Near): Kept | null {
  const cutNumber = cutNumberBy(stand.numberOf);
  const [piece, ...others] = near.report.pieces;
  if (piece?.role !== 'kept') return null;
  const isOwn = (loop: KeptLoop) => group.has(loop.first);
  const runsAlong = (loop: ReportRegion[number]['outer']) =>
    loop.some(({ source }) => group.has(cutNumber(source)));
  if (others.some(({ view }) => view.some(({ outer, holes }) => [outer, ...holes].some(runsAlong))))
    return null;
  const freshIn = (region: ReportRegion): KeptLoop[] | null => {
    if (region.some(({ outer }) => runsAlong(outer))) return null;
    const fresh = region
      .flatMap(({ holes }) => holes.filter(runsAlong))
      .map((hole) => keptLoop(hole, cutNumber));
    return fresh.every(
      (loop, k) => isOwn(loop) && (k === 0 || (fresh[k - 1] as KeptLoop).first <= loop.first),
    )
      ? fresh
      : null;
  };
  const withFresh = (old: KeptRegion, region: ReportRegion): KeptRegion | null => {
    const fresh = freshIn(region);
    return fresh && withHoles(old, isOwn, fresh);
  };
  const view = withFresh(kept.view, piece.view);
  if (view === null) return null;
  const sections = kept.sections.map((old, g): KeptRegion | null => {
    const slabs = near.report.slabs.filter((_, s) => kept.sectionOf[s] === g);
    const there = new Set(
      slabs.map(({ from, to }) => piece.sections.findIndex((one) => one.from <= from && to <= one.to)),
    );
    const [only] = there;
    if (there.size !== 1 || only === undefined || only < 0) return null;
    return old === kept.view
      ? view
      : withFresh(old, (piece.sections[only] as { region: ReportRegion }).region);
  });
  if (sections.some((one) => one === null)) return null;
  const own = sections as KeptRegion[];
  // Neighbours that have come to be the same are one section.
  if (own.some((one, g) => g > 0 && isSame(one, own[g - 1] as KeptRegion))) return null;
  return { ...kept, view, sections: own };
}

/** Whether two sections have the same boundary, whatever its edges are named. */
function isSame(one: KeptRegion, other: KeptRegion): boolean {
  if (one.holes.length !== other.holes.length) return false;
  const sizes = ({ outer, holes }: KeptRegion) =>
    [outer, ...holes].map(({ area, length, box }) => [area, length, box.minX]);
  const theirs = sizes(other);
  return sizes(one).every((own, k) => own.every((value, m) => value === theirs[k]?.[m]));
}

function slabArea(kept: Kept, s: number): number {
  const section = kept.sections[kept.sectionOf[s] as number];
  return (kept.otherArea[s] as number) + (section === undefined ? 0 : keptArea(section));
}

/** Whether all webs and knife edges that were found near the change are of the kept piece. */
function areKept(kept: Kept, webs: Report['webs'], knives: Report['knifeEdges']): boolean {
  const inSection = (
    { slab, piece }: { readonly slab: number; readonly piece: string },
    test: (section: KeptRegion) => boolean,
  ): boolean => {
    const section = kept.sections[kept.sectionOf[slab] as number];
    return piece === 'kept' && section !== undefined && test(section);
  };
  return (
    webs.every((web) => inSection(web, (section) => holdsPlace(section, { x: web.at[0], y: web.at[1] }))) &&
    knives.every((edge) => inSection(edge, (section) => hasVertex(section, edge.at)))
  );
}

/** Rows in their order, those that the change has a say in taken from the look nearby. */
function patchedRows<T extends { readonly slab: number; readonly at: readonly [number, number] }>(
  old: readonly T[],
  oldZones: readonly Zone[],
  found: readonly T[],
  foundZones: readonly Zone[],
  { places }: Change,
  size: (row: T) => number,
): { rows: T[]; zones: Zone[]; fresh: T[] } {
  const order = (a: T, b: T) =>
    size(a) - size(b) || a.slab - b.slab || a.at[0] - b.at[0] || a.at[1] - b.at[1];
  const rows: T[] = [];
  const zones: Zone[] = [];
  const fresh = found.flatMap((row, k) => {
    const zone = foundZones[k] as Zone;
    return meetsAny(zone, places) ? [{ row, zone }] : [];
  });
  let next = 0;
  const add = (row: T, zone: Zone) => {
    rows.push(row);
    zones.push(zone);
  };
  old.forEach((row, k) => {
    const zone = oldZones[k] as Zone;
    if (meetsAny(zone, places)) return;
    for (let one = fresh[next]; one !== undefined && order(one.row, row) < 0; one = fresh[next]) {
      add(one.row, one.zone);
      next++;
    }
    add(row, zone);
  });
  for (const one of fresh.slice(next)) add(one.row, one.zone);
  return { rows, zones, fresh: fresh.map(({ row }) => row) };
}

function patchedPieces(
  stand: Stand,
  kept: Kept,
  job: Job,
  knives: Report['knifeEdges'],
): ReportPiece[] | null {
  const density = job.material === null ? null : densityOf(job.material);
  const [first, ...others] = stand.report.pieces as readonly [ReportPiece, ...ReportPiece[]];
  const volume = first.sections.reduce(
    (sum, { from, to }, g) => sum + keptArea(kept.sections[g] as KeptRegion) * (to - from),
    kept.otherVolume,
  );
  // Without a place that is held, the largest is kept.
  const isChosen = job.keep !== null && stand.facts.keepStands !== false;
  if (!isChosen && others.some((other) => volume < CLEARLY_LARGER * other.volume)) return null;
  const horns = new Map<string, number[]>(stand.report.pieces.map(({ id }) => [id, []]));
  knives.forEach(({ piece }, k) => {
    horns.get(piece)?.push(k);
  });
  const hornsOf = (piece: ReportPiece) => {
    const own = horns.get(piece.id) ?? [];
    return own.length === piece.horns.length && own.every((k, m) => k === piece.horns[m]) ? piece.horns : own;
  };
  return [
    {
      ...first,
      area: keptArea(kept.view),
      perimeter: keptPerimeter(kept.view),
      volume,
      mass: density === null ? null : massOf(volume, density, job.units),
      holes: kept.view.holes.length,
      horns: hornsOf(first),
      view: kept.view.json,
      sections: first.sections.map((section, g) => ({
        ...section,
        region: (kept.sections[g] as KeptRegion).json,
      })),
    },
    ...others.map((other) => {
      const own = hornsOf(other);
      return own === other.horns ? other : { ...other, horns: own };
    }),
  ];
}

/** Floors by cut, as in the whole report; those under the group from the look nearby. */
function patchedFloors(stand: Stand, job: Job, { group }: Change, near: Near): Report['floors'] {
  const ids = idsOf(job, group);
  const numberOf = ({ under }: Report['floors'][number]) => stand.numberOf.get(under) as number;
  const isOwn = ({ under }: Report['floors'][number]) => ids.has(under);
  if (!stand.report.floors.some(isOwn) && !near.report.floors.some(isOwn)) return stand.report.floors;
  return [...stand.report.floors.filter((row) => !isOwn(row)), ...near.report.floors.filter(isOwn)].sort(
    (a, b) => numberOf(a) - numberOf(b),
  );
}
