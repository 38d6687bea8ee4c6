import type { SideName } from '../datum/chain.js';
import { axesOf } from '../datum/lie.js';
import { outermost } from '../datum/outermost.js';
import type { PlainCut } from '../document/schema.js';
import { SIDES } from '../document/schema-setups.js';
import { extentOf } from '../geometry/bounds.js';
import { distance } from '../geometry/point.js';
import type { PartName } from '../job/job.js';
import { boundsOf, loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';
import { lookOf } from '../setups/faces.js';

/** The keys of a centre or a path that name edges and holes of the part. */
const NAMING = ['on', 'edge', 'along', 'corner', 'loop', 'tangent', 'from'];

/** A cut with edges and holes by their numbers, where the job calls them by names or by sides of the part as drawn. */
export function byNumbers(
  cut: PlainCut,
  { names, outline }: { readonly names: readonly PartName[]; readonly outline: Region | null },
): PlainCut {
  // A job with faults may have anything here.
  if (typeof cut !== 'object' || cut === null) return cut;
  const { center, path } = cut as { readonly center?: unknown; readonly path?: unknown };
  const numberOf = (value: string, key: string): string => {
    const named = names.find(({ name }) => name === value);
    if (named !== undefined) return named.of;
    const side = SIDES.find((one) => one === value);
    if (side === undefined || outline === null) return value;
    const edges = edgesAt(side, outline);
    // A distance square to a side is the same from each of its pieces; all else needs one edge.
    return (key === 'from' || edges.length === 1 ? edges[0] : undefined) ?? value;
  };
  const numbered = (value: unknown, key: string | null): unknown => {
    if (typeof value === 'string') return key !== null && NAMING.includes(key) ? numberOf(value, key) : value;
    if (Array.isArray(value)) return value.map((one) => numbered(one, key));
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(
      Object.entries(value).map(([own, held]) => {
        // "from" names an end of an edge, unless a distance off a face goes with it.
        const isEnd = own === 'from' && typeof held === 'string' && !('off' in value);
        return [own, isEnd ? held : numbered(held, own)];
      }),
    );
  };
  return {
    ...cut,
    ...(typeof center === 'object' ? { center: numbered(center, null) } : {}),
    ...(typeof path === 'object' ? { path: numbered(path, null) } : {}),
  } as PlainCut;
}

/** Share of the part's extent by which an edge may lie off its outermost place. */
const SAME = 1e-9;

/** The straight edges that are the outermost of a part as drawn to one side. */
function edgesAt(side: SideName, outline: Region): string[] {
  const { axis, outward } = lookOf(side);
  const way = axesOf({ flip: null, turn: 0 })[axis];
  const at = outermost(outline, way)[outward < 0 ? 0 : 1];
  const box = boundsOf(outline);
  const slack = SAME * (box === null ? 0 : extentOf(box));
  const isThere = (p: { readonly x: number; readonly y: number }) =>
    Math.abs((axis === 'x' ? p.x : p.y) - at) <= slack;
  return loopsOf(outline)
    .flat()
    .filter((edge) => edge.kind === 'line' && isThere(edge.a) && isThere(edge.b))
    .sort((p, q) => distance(q.a, q.b) - distance(p.a, p.b))
    .flatMap(({ source }) => (source === undefined ? [] : [source]));
}
