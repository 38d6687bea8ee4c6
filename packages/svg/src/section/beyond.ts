import type { Report, ReportRegion } from '@edgebite/core';
import { type Sight, sightsFrom } from './nearest.js';
import { sectionIn } from './section-in.js';
import { tangentAt, type Wall, yAt } from './walls.js';

/** An edge behind the cutting plane as it is seen: upright at an x, or level at a height. */
export type EdgeBeyond =
  | { readonly kind: 'upright'; readonly x: number; readonly from: number; readonly to: number }
  | { readonly kind: 'level'; readonly height: number; readonly from: number; readonly to: number };

/** What is left of a part in a slab, all pieces together. */
interface Layer {
  readonly from: number;
  readonly to: number;
  readonly region: ReportRegion;
}

/**
 * Sine of the least angle at which two walls meet in an edge: a degree. Walls that run into each other have none to be
 * seen, and rounding leaves them far less than that.
 */
const CREASE = Math.sin(Math.PI / 180);

/**
 * The edges of a part behind a level, seen along y by someone in front of it, and not hidden by metal that is nearer:
 * where walls end or meet, and where floors and faces end. Those of the faces that are cut are not among them.
 */
export function edgesBeyond(report: Report, level: number): readonly EdgeBeyond[] {
  const near = report.resolution / 100;
  const layers = layersOf(report).map((layer) => ({ ...layer, sights: sightsFrom(layer.region, level) }));
  const uprights = layers.flatMap(({ from, to, sights }) =>
    uprightsOf(sights, near).map((x): EdgeBeyond => ({ kind: 'upright', x, from, to })),
  );
  const levels = [null, ...layers].flatMap((below, i) => {
    const above = layers[i] ?? null;
    const height = above?.from ?? below?.to ?? 0;
    return levelsOf(below?.sights ?? [], above?.sights ?? [], near).map(
      ([from, to]): EdgeBeyond => ({ kind: 'level', height, from, to }),
    );
  });
  return [...joinedUp(uprights), ...levels];
}

function layersOf({ slabs, pieces }: Report): readonly Layer[] {
  return slabs.map(({ from, to }) => ({
    from,
    to,
    region: pieces.flatMap((piece) => sectionIn(piece, { from, to })),
  }));
}

/** Where an upright edge is seen between two stretches of a slab. */
function uprightsOf(sights: readonly Sight[], near: number): readonly number[] {
  return [null, ...sights].flatMap((left, i) => {
    const right = sights[i] ?? null;
    const x = right?.from ?? left?.to ?? 0;
    return isEdge(left?.seen ?? null, right?.seen ?? null, x, near) ? [x] : [];
  });
}

function isEdge(left: Sight['seen'], right: Sight['seen'], x: number, near: number): boolean {
  // The ends of the cut faces are drawn with them.
  if (left === right || left === 'cut' || right === 'cut') return false;
  if (left === null || right === null) return true;
  if (Math.abs(yAt(left, x) - yAt(right, x)) > near) return true;
  if (left.edge === right.edge) return false;
  const [ax, ay] = tangentAt(left, x);
  const [bx, by] = tangentAt(right, x);
  return Math.abs(ax * by - ay * bx) > CREASE || ax * bx + ay * by < 0;
}

/** Where an edge is seen between two slabs that lie on each other: stretches along x. */
function levelsOf(
  below: readonly Sight[],
  above: readonly Sight[],
  near: number,
): readonly (readonly [number, number])[] {
  const stops = [...new Set([...below, ...above].flatMap(({ from, to }) => [from, to]))].sort(
    (a, b) => a - b,
  );
  const found: [number, number][] = [];
  let [b, a] = [0, 0];
  for (let i = 0; i + 1 < stops.length; i++) {
    const [from, to] = [stops[i] as number, stops[i + 1] as number];
    while (b < below.length && (below[b] as Sight).to <= from) b++;
    while (a < above.length && (above[a] as Sight).to <= from) a++;
    if (!differ(seenIn(below[b], from), seenIn(above[a], from), from, to, near)) continue;
    const last = found.at(-1);
    if (last !== undefined && last[1] === from) last[1] = to;
    else found.push([from, to]);
  }
  return found;
}

function seenIn(sight: Sight | undefined, from: number): Sight['seen'] {
  return sight !== undefined && sight.from <= from ? sight.seen : null;
}

function differ(below: Sight['seen'], above: Sight['seen'], from: number, to: number, near: number): boolean {
  if (below === 'cut' || above === 'cut') return false;
  if (below === null || above === null) return below !== above;
  return !isSame(below, above, from, to, near);
}

// Two walls may cross in the middle of the stretch, but hardly in both places.
function isSame(a: Wall, b: Wall, from: number, to: number, near: number): boolean {
  return [0.5, 0.3].every((share) => {
    const x = from + share * (to - from);
    return Math.abs(yAt(a, x) - yAt(b, x)) <= near;
  });
}

/** Upright edges that go on from one slab into the next are one. */
function joinedUp(edges: readonly EdgeBeyond[]): readonly EdgeBeyond[] {
  const lines = new Map<number, { kind: 'upright'; x: number; from: number; to: number }[]>();
  for (const edge of edges) {
    if (edge.kind !== 'upright') continue;
    const own = lines.get(edge.x) ?? [];
    const last = own.at(-1);
    if (last !== undefined && last.to === edge.from) last.to = edge.to;
    else own.push({ ...edge });
    lines.set(edge.x, own);
  }
  return [...lines.values()].flat();
}
