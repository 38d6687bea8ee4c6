import type { Report, ReportKnifeEdge, ReportWeb } from '@edgebite/core';
import type { Place } from '../view/edges.js';

/** A web as it is marked on drawings and in texts: once, however many slabs it goes through. */
export interface WebMark {
  /** `W1`, `W2` ... in the order of the report, thinnest first. */
  readonly id: string;
  readonly web: ReportWeb;
  /** All that it stands for: indices into the report's webs. */
  readonly members: readonly number[];
  /** The slabs it goes through, going up: indices into the report's slabs. */
  readonly slabs: readonly number[];
}

/** A knife edge as it is marked on drawings and in texts: once, however many slabs it goes through. */
export interface KnifeMark {
  /** `K1`, `K2` ... in the order of the report, sharpest first. */
  readonly id: string;
  readonly knifeEdge: ReportKnifeEdge;
  /** All that it stands for: indices into the report's knifeEdges. */
  readonly members: readonly number[];
  /** The slabs it goes through, going up: indices into the report's slabs. */
  readonly slabs: readonly number[];
}

/** The webs of a report, numbered; the same web in several slabs is one mark. */
export function webMarks(report: Report): readonly WebMark[] {
  const same = (a: ReportWeb, b: ReportWeb): boolean =>
    near(a.at, b.at, report.resolution) && Math.abs(a.thickness - b.thickness) <= report.resolution;
  return gathered(report.webs, same).map(({ first, members, slabs }, i) => ({
    id: `W${i + 1}`,
    web: first,
    members,
    slabs,
  }));
}

/** The knife edges of a report, numbered; the same one in several slabs is one mark. */
export function knifeMarks(report: Report): readonly KnifeMark[] {
  const same = (a: ReportKnifeEdge, b: ReportKnifeEdge): boolean => near(a.at, b.at, report.resolution);
  return gathered(report.knifeEdges, same).map(({ first, members, slabs }, i) => ({
    id: `K${i + 1}`,
    knifeEdge: first,
    members,
    slabs,
  }));
}

/** The name of the piece that a knife edge is on, as drawings have it; null on the kept one, where they all are else. */
export function ownerOf(report: Report, { piece }: ReportKnifeEdge): string | null {
  const owner = report.pieces.find(({ id }) => id === piece);
  return owner === undefined || owner.role === 'kept' ? null : owner.label;
}

interface Placed {
  readonly between: readonly [string, string];
  readonly slab: number;
  readonly piece: string;
}

interface Group<T> {
  readonly first: T;
  readonly members: number[];
  readonly slabs: number[];
}

// Only finds in different slabs are ever one: two in the same slab are two, however close.
function gathered<T extends Placed>(items: readonly T[], same: (a: T, b: T) => boolean): Group<T>[] {
  const groups: Group<T>[] = [];
  const byName = new Map<string, Group<T>[]>();
  items.forEach((item, i) => {
    const name = JSON.stringify([item.piece, [...item.between].sort()]);
    const alike = byName.get(name) ?? [];
    const group = alike.find((g) => !g.slabs.includes(item.slab) && same(g.first, item));
    if (group !== undefined) {
      group.members.push(i);
      group.slabs.push(item.slab);
      return;
    }
    const fresh: Group<T> = { first: item, members: [i], slabs: [item.slab] };
    groups.push(fresh);
    alike.push(fresh);
    byName.set(name, alike);
  });
  for (const group of groups) group.slabs.sort((a, b) => a - b);
  return groups;
}

function near(a: Place, b: Place, tolerance: number): boolean {
  return Math.hypot(a[0] - b[0], a[1] - b[1]) <= tolerance;
}
