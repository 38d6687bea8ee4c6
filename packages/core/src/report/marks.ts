import type { Report, ReportKnifeEdge, ReportWeb } from './report-schema.js';

/** A web as drawings mark it and texts and findings list it: once, however many slabs it goes through. */
export interface WebMark {
  /** `W1`, `W2` ... in the order of the report, thinnest first. */
  readonly id: string;
  /** The first that it stands for. */
  readonly web: ReportWeb;
  /** All that it stands for: indices into the report's webs. */
  readonly members: readonly number[];
  /** The slabs that it goes through, going up: indices into the report's slabs. */
  readonly slabs: readonly number[];
}

/** A knife edge as drawings mark it and texts and findings list it: once, however many slabs it goes through. */
export interface KnifeMark {
  /** `K1`, `K2` ... in the order of the report, sharpest first. */
  readonly id: string;
  /** The first that it stands for. */
  readonly knifeEdge: ReportKnifeEdge;
  /** All that it stands for: indices into the report's knifeEdges. */
  readonly members: readonly number[];
  /** The slabs that it goes through, going up: indices into the report's slabs. */
  readonly slabs: readonly number[];
}

/**
 * The webs of a report, numbered. The same web in several slabs is one: its disc touches the metal in the same two
 * places, to the report's resolution, whichever cuts or edges are there in each slab.
 */
export function webMarks({ webs, resolution }: Pick<Report, 'webs' | 'resolution'>): readonly WebMark[] {
  return sameWebs(webs, resolution).map(({ first, members, slabs }, i) => ({
    id: `W${i + 1}`,
    web: first,
    members,
    slabs,
  }));
}

/**
 * The knife edges of a report, numbered. The same one in several slabs is one: its tip is in the same place, to the
 * report's resolution, and its angle the same to the last digit shown.
 */
export function knifeMarks({
  knifeEdges,
  resolution,
}: Pick<Report, 'knifeEdges' | 'resolution'>): readonly KnifeMark[] {
  return sameKnifeEdges(knifeEdges, resolution).map(({ first, members, slabs }, i) => ({
    id: `K${i + 1}`,
    knifeEdge: first,
    members,
    slabs,
  }));
}

type JsonPoint = readonly [number, number];

/** A find in one slab. */
interface InSlab {
  readonly at: JsonPoint;
  readonly between: readonly [string, string];
  readonly slab: number;
  readonly piece: string;
}

/** Finds that are one: the first of them, the numbers of all, and their slabs, going up. */
export interface Same<T> {
  readonly first: T;
  readonly members: readonly number[];
  readonly slabs: readonly number[];
}

/** Webs that are one in several slabs. */
export function sameWebs<T extends InSlab & Pick<ReportWeb, 'ends'>>(
  webs: readonly T[],
  resolution: number,
): readonly Same<T>[] {
  const near = (a: JsonPoint, b: JsonPoint): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) <= resolution;
  return together(webs, resolution, ({ ends: [a, b] }, { ends: [c, d] }) =>
    near(a, c) ? near(b, d) : near(a, d) && near(b, c),
  );
}

/** Half of the last digit that an angle is told with, degrees. */
const SAME_ANGLE = 0.05;

/** Knife edges that are one in several slabs. */
export function sameKnifeEdges<T extends InSlab & Pick<ReportKnifeEdge, 'angle'>>(
  edges: readonly T[],
  resolution: number,
): readonly Same<T>[] {
  return together(
    edges,
    resolution,
    (a, b) =>
      Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) <= resolution &&
      Math.abs(a.angle - b.angle) <= SAME_ANGLE,
  );
}

interface Group<T> {
  readonly first: T;
  readonly members: number[];
  readonly slabs: number[];
}

// Two in the same slab are two, however close. Of several that one could be the same as, rather one on the same piece
// and between the same edges: at a tangent two knife edges have one tip.
function together<T extends InSlab>(
  rows: readonly T[],
  near: number,
  isSame: (a: T, b: T) => boolean,
): readonly Same<T>[] {
  const groups: Group<T>[] = [];
  const cells = cellsOf<Group<T>>(near);
  rows.forEach((row, i) => {
    const possible = cells
      .around(row.at)
      .filter(({ first, slabs }) => !slabs.includes(row.slab) && isSame(first, row));
    const group = possible.find(({ first }) => namesOf(first) === namesOf(row)) ?? possible[0];
    if (group !== undefined) {
      group.members.push(i);
      group.slabs.push(row.slab);
      return;
    }
    const fresh: Group<T> = { first: row, members: [i], slabs: [row.slab] };
    groups.push(fresh);
    cells.add(row.at, fresh);
  });
  for (const { slabs } of groups) slabs.sort((a, b) => a - b);
  return groups;
}

function namesOf({ piece, between: [a, b] }: InSlab): string {
  return JSON.stringify([piece, a < b ? a : b, a < b ? b : a]);
}

/** Things by their place: those within a distance of a place lie in the nine cells round it. */
function cellsOf<T>(distance: number): {
  readonly add: (at: JsonPoint, thing: T) => void;
  readonly around: (at: JsonPoint) => readonly T[];
} {
  const cells = new Map<string, T[]>();
  const cell = ([x, y]: JsonPoint): readonly [number, number] => [
    Math.floor(x / (2 * distance)),
    Math.floor(y / (2 * distance)),
  ];
  return {
    add: (at, thing) => {
      const key = cell(at).join();
      const own = cells.get(key);
      if (own === undefined) cells.set(key, [thing]);
      else own.push(thing);
    },
    around: (at) => {
      const [column, row] = cell(at);
      const steps = [-1, 0, 1];
      return steps.flatMap((i) => steps.flatMap((j) => cells.get(`${column + i},${row + j}`) ?? []));
    },
  };
}
