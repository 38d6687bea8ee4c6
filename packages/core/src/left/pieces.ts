import type { Point } from '../geometry/point.js';
import { faceAt } from '../overlay/faces.js';
import type { Groups } from '../region/groups.js';
import { area, perimeter } from '../region/measure.js';
import type { Region, RegionPart } from '../region/region.js';
import { bodiesOf, type Cells, cellVolume, STANDS } from './cells.js';
import { commonCore, freeingCuts, type Passing } from './freeing.js';
import { type HeldSlugs, heldSlugs } from './held.js';
import { planOf, type Section, sectionsBySlab, sectionsOf } from './sections.js';

/** What is left of the part, or comes off it. */
export type Role = 'kept' | 'slug' | 'held slug' | 'hanging' | 'offcut';

/** A connected body of metal, or a slug that only a floor still joins to one. */
export interface Piece {
  readonly id: string;
  readonly role: Role;
  /** Plan view: the union of its sections. */
  readonly plan: Region;
  readonly area: number;
  readonly perimeter: number;
  readonly volume: number;
  /** Number of the cut that set it loose, or that would but for the floor; null for the kept piece. */
  readonly freedBy: number | null;
  /** Number of the annular cut in whose core it lies; null where that is not what made it. */
  readonly coreOf: number | null;
  readonly sections: readonly Section[];
}

/** All pieces, and which of them each cell belongs to. */
export interface Pieces {
  readonly pieces: readonly Piece[];
  /** By cell: index in `pieces`, -1 for no metal. */
  readonly pieceOf: Int32Array;
  /** By slab, from the bottom up: the parts of its section, and the piece that each belongs to. */
  readonly sections: readonly (readonly SectionPart[])[];
  /** Bodies that were loose for a while, until a later cut took them. */
  readonly passing: readonly Passing[];
  /** Whether the point that was to be kept is metal still; null if none was named. */
  readonly keepStands: boolean | null;
}

/** A part of the section of a slab. */
export interface SectionPart {
  readonly part: RegionPart;
  /** Index in `pieces`. */
  readonly piece: number;
}

interface Draft {
  readonly cells: number[];
  readonly role: Role;
  readonly freedBy: number | null;
  readonly coreOf: number | null;
  readonly volume: number;
}

/**
 * Sorts the standing cells into pieces: kept first, then by volume.
 * @param keep where the part is clamped; without it, or where nothing is left there, the largest body is kept
 * @param hanging cells of each body that only thin metal joins to the kept one
 */
export function piecesOf(
  cells: Cells,
  keep: Point | null,
  hanging: readonly (readonly number[])[] = [],
): Pieces {
  const stands = (cell: number) => cells.taker[cell] === STANDS;
  const bodies = bodiesOf(cells, stands);
  const members = membersOf(cells, bodies);
  const keptBody = chooseKept(cells, members, bodies, keep);
  const held = lettingStand(
    cells,
    heldSlugs(cells, (cell) => bodies.leader(cell) === keptBody.leader),
    members.get(keptBody.leader) ?? [],
    keptBody.place,
  );
  const hangs = new Set(hanging.flat());
  const { freed, passing } = freeingCuts(cells, members.keys(), keptBody.leader);
  const slugs = held.slugs.filter(({ cells: own }) => !own.some((cell) => hangs.has(cell)));
  const claimed = new Set([...hangs, ...slugs.flatMap(({ cells: own }) => own)]);
  const drafts: Draft[] = slugs.map(({ cells: own, cut }) => ({
    cells: own,
    role: 'held slug',
    freedBy: cut,
    coreOf: cut,
    volume: volumeOf(cells, own),
  }));
  for (const own of hanging) {
    const core = commonCore(cells, own);
    drafts.push({
      cells: [...own],
      role: 'hanging',
      freedBy: core,
      coreOf: core,
      volume: volumeOf(cells, own),
    });
  }
  for (const [leader, all] of members) {
    const own = all.filter((cell) => !claimed.has(cell));
    const core = leader === keptBody.leader ? null : commonCore(cells, own);
    drafts.push({
      cells: own,
      role: leader === keptBody.leader ? 'kept' : core === null ? 'offcut' : 'slug',
      freedBy: freed.get(leader) ?? null,
      coreOf: core,
      volume: volumeOf(cells, own),
    });
  }
  return { ...finished(cells, drafts), passing, keepStands: keptBody.keepStands };
}

/** Cells of the body that is kept, held slugs and what hangs included, and those of them where it is held. */
export interface KeptCells {
  readonly cells: readonly number[];
  readonly place: readonly number[];
}

/** The body that is kept in the end; no cells where nothing is left. */
export function keptCells(cells: Cells, keep: Point | null): KeptCells {
  const stands = (cell: number) => cells.taker[cell] === STANDS;
  const bodies = bodiesOf(cells, stands);
  const members = membersOf(cells, bodies);
  const { leader, place } = chooseKept(cells, members, bodies, keep);
  const own = new Set(members.get(leader));
  return { cells: [...own], place: place.filter((cell) => own.has(cell)) };
}

/** By leader, the cells of each body that stands. */
function membersOf(cells: Cells, bodies: Groups): Map<number, number[]> {
  const members = new Map<number, number[]>();
  for (let cell = 0; cell < cells.taker.length; cell++) {
    if (cells.taker[cell] !== STANDS) continue;
    const leader = bodies.leader(cell);
    const list = members.get(leader);
    if (list === undefined) members.set(leader, [cell]);
    else list.push(cell);
  }
  return members;
}

function volumeOf(cells: Cells, own: readonly number[]): number {
  return own.reduce((sum, cell) => sum + cellVolume(cells, cell), 0);
}

function chooseKept(
  cells: Cells,
  members: ReadonlyMap<number, readonly number[]>,
  bodies: Groups,
  keep: Point | null,
): { leader: number; keepStands: boolean | null; place: readonly number[] } {
  let place: readonly number[] = [];
  let candidates = [...members.keys()];
  let keepStands: boolean | null = null;
  if (keep !== null) {
    const n = cells.slabs.length;
    const face = faceAt(cells.subdivision, keep);
    place = cells.slabs.map((_, s) => face * n + s).filter((cell) => cells.taker[cell] === STANDS);
    keepStands = place.length > 0;
    if (keepStands) candidates = [...new Set(place.map((cell) => bodies.leader(cell)))];
  }
  let leader = -1;
  let most = -1;
  for (const candidate of candidates) {
    const volume = volumeOf(cells, members.get(candidate) as number[]);
    if (volume > most) {
      most = volume;
      leader = candidate;
    }
  }
  return { leader, keepStands, place };
}

/**
 * Slugs can stand on each other and be all that is left of the body that is kept. Then the one at the place that is
 * held, or the largest, is what the others stand on, and no slug.
 */
function lettingStand(
  cells: Cells,
  held: HeldSlugs,
  body: readonly number[],
  place: readonly number[],
): HeldSlugs {
  if (body.some((cell) => held.claimed[cell] === 0)) return held;
  const atPlace = held.slugs.filter(({ cells: own }) => own.some((cell) => place.includes(cell)));
  const [base] = (atPlace.length > 0 ? atPlace : [...held.slugs]).sort(
    (a, b) => volumeOf(cells, b.cells) - volumeOf(cells, a.cells),
  );
  if (base === undefined) return held;
  const claimed = held.claimed.slice();
  for (const cell of base.cells) claimed[cell] = 0;
  return { slugs: held.slugs.filter((slug) => slug !== base), claimed };
}

/** What the ids of pieces begin with; what hangs is named after what it will be when it lets go. */
function nameOf({ role, coreOf }: Draft): string {
  if (role === 'hanging') return coreOf === null ? 'offcut' : 'slug';
  return role === 'held slug' ? 'slug' : role;
}

function finished(cells: Cells, drafts: readonly Draft[]): Omit<Pieces, 'keepStands' | 'passing'> {
  const sorted = drafts
    .filter((draft) => draft.cells.length > 0)
    .sort((a, b) => rank(a) - rank(b) || b.volume - a.volume);
  const draftOf = new Int32Array(cells.taker.length).fill(-1);
  sorted.forEach((draft, d) => {
    for (const cell of draft.cells) draftOf[cell] = d;
  });
  const bySlab = sectionsBySlab(cells, draftOf);
  const pieces: Piece[] = [];
  const pieceOfDraft = new Int32Array(sorted.length).fill(-1);
  const counts = new Map<string, number>();
  sorted.forEach((draft, d) => {
    const sections = sectionsOf(cells, draft.cells, bySlab, d);
    // Slivers thinner than the weld tolerance are no metal.
    if (sections.length === 0) return;
    const name = nameOf(draft);
    const number = (counts.get(name) ?? 0) + 1;
    counts.set(name, number);
    pieceOfDraft[d] = pieces.length;
    const plan = planOf(cells, draft.cells, sections);
    pieces.push({
      id: name === 'kept' ? name : `${name}-${number}`,
      role: draft.role,
      plan,
      area: area(plan),
      perimeter: perimeter(plan),
      volume: draft.volume,
      freedBy: draft.role === 'kept' ? null : draft.freedBy,
      coreOf: draft.coreOf,
      sections,
    });
  });
  const sections = bySlab.map((byDraft) =>
    [...byDraft].flatMap(([d, parts]) => parts.map((part) => ({ part, piece: pieceOfDraft[d] as number }))),
  );
  return { pieces, pieceOf: draftOf.map((d) => (d < 0 ? -1 : (pieceOfDraft[d] as number))), sections };
}

function rank(draft: Draft): number {
  return draft.role === 'kept' ? 0 : 1;
}
