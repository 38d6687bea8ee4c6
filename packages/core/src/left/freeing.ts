import type { Groups } from '../region/groups.js';
import { bodiesOf, type Cells, cellVolume, STANDS } from './cells.js';

/** A body that came loose and was cut away later on: the machinist meets it all the same. */
export interface Passing {
  /** Number of the cut that set it loose. */
  readonly freedBy: number;
  /** Number of the annular cut in whose core it lay; null if it lay in none. */
  readonly coreOf: number | null;
  readonly volume: number;
}

/** Which cut set each body loose. */
export interface Freed {
  /** By leader of a body that is left. */
  readonly freed: ReadonlyMap<number, number>;
  readonly passing: readonly Passing[];
}

/**
 * For each body but the kept one, the cut that parted them: cuts are taken back one by one, last first, and the
 * one that joins the two again is the one. Metal that comes back without joining the kept body was loose already
 * when it was cut away.
 * @param leaders of the bodies that are left
 * @param kept leader of the kept one
 */
export function freeingCuts(cells: Cells, leaders: Iterable<number>, kept: number): Freed {
  const freed = new Map<number, number>();
  const passing: Passing[] = [];
  if (kept < 0) return { freed, passing };
  const present = new Uint8Array(cells.taker.length);
  for (let cell = 0; cell < present.length; cell++) if (cells.taker[cell] === STANDS) present[cell] = 1;
  const bodies = bodiesOf(cells, (cell) => cells.taker[cell] === STANDS);
  const standing = new Set([...leaders].filter((leader) => leader !== kept));
  let gone: Gone[] = [];
  const byCut = cellsByCut(cells);
  for (let cut = cells.removals.length - 1; cut >= 0; cut--) {
    const back = byCut[cut] as readonly number[];
    if (back.length === 0) continue;
    putBack(cells, bodies, present, back);
    const home = bodies.leader(kept);
    for (const leader of standing) {
      if (bodies.leader(leader) !== home) continue;
      freed.set(leader, cut);
      standing.delete(leader);
    }
    for (const own of gone) {
      if (bodies.leader(own[0] as number) === home) passing.push(passingOf(cells, cut, own));
    }
    gone = stillGone(bodies, back, gone, [home, ...[...standing].map((leader) => bodies.leader(leader))]);
  }
  return { freed, passing: passing.reverse() };
}

function cellsByCut(cells: Cells): number[][] {
  const byCut: number[][] = cells.removals.map(() => []);
  for (let cell = 0; cell < cells.taker.length; cell++) {
    const cut = cells.taker[cell] as number;
    if (cut >= 0) (byCut[cut] as number[]).push(cell);
  }
  return byCut;
}

function putBack(cells: Cells, bodies: Groups, present: Uint8Array, back: readonly number[]): void {
  const n = cells.slabs.length;
  const { faceOf } = cells.subdivision;
  const { start, half } = cells.borders;
  const join = (cell: number, other: number) => {
    if (present[other] === 1) bodies.join(cell, other);
  };
  for (const cell of back) {
    present[cell] = 1;
    const face = Math.floor(cell / n);
    const s = cell % n;
    if (s > 0) join(cell, cell - 1);
    if (s < n - 1) join(cell, cell + 1);
    for (let k = start[face] as number; k < (start[face + 1] as number); k++) {
      join(cell, (faceOf[(half[k] as number) ^ 1] as number) * n + s);
    }
  }
}

/** The cells of a body that hangs on nothing and is cut away in the end. */
type Gone = number[];

/** The bodies that hang on nothing once some cells are back: on no kept piece, and on none that is left. */
function stillGone(
  bodies: Groups,
  back: readonly number[],
  before: readonly Gone[],
  homes: readonly number[],
): Gone[] {
  const isHome = new Set(homes);
  const byLeader = new Map<number, Gone>();
  const add = (cells: readonly number[]) => {
    const leader = bodies.leader(cells[0] as number);
    if (isHome.has(leader)) return;
    const known = byLeader.get(leader);
    if (known === undefined) byLeader.set(leader, [...cells]);
    else for (const cell of cells) known.push(cell);
  };
  for (const cells of before) add(cells);
  for (const cell of back) add([cell]);
  return [...byLeader.values()];
}

function passingOf(cells: Cells, freedBy: number, own: Gone): Passing {
  return {
    freedBy,
    coreOf: commonCore(cells, own),
    volume: own.reduce((sum, cell) => sum + cellVolume(cells, cell), 0),
  };
}

/** The first ring-shaped cut that has all of a body in its core; null if there is none. */
export function commonCore(cells: Cells, own: readonly number[]): number | null {
  const n = cells.slabs.length;
  const coresAt = (cell: number) => cells.cores[Math.floor(cell / n)] as readonly number[];
  let common = coresAt(own[0] as number);
  for (const cell of own) {
    if (common.length === 0) break;
    const here = coresAt(cell);
    if (here !== common) common = common.filter((cut) => here.includes(cut));
  }
  return common[0] ?? null;
}
