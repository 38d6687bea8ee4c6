import { along, axesOf, type Lie } from '../datum/lie.js';
import { outermost } from '../datum/outermost.js';
import type { Laid } from '../datum/setup.js';
import { nearestOnEdge } from '../geometry/distance.js';
import type { Edge } from '../geometry/edge.js';
import { gapBetween } from '../geometry/edge-gap.js';
import type { Job, PartName } from '../job/job.js';
import type { Region } from '../region/region.js';

/** Two places along an axis that differ by less than this share of the part's length along it are level. */
const LEVEL = 1e-9;

const AS_DRAWN: Lie = { flip: null, turn: 0 };

/**
 * What people call the edges of a part: by the names that the job gives them, else by the side that a straight edge is
 * as the part lies. Where it lies in several ways, an edge is named as it lies in the setup of the cut that is nearest to
 * it, which is the one to be cut there. Edges inside of the outermost ones, two in one line and slanting ones have no such
 * name.
 */
export function edgeNames(job: Job, lays: readonly Laid[]): readonly PartName[] {
  const given = new Set(job.names.map(({ of }) => of));
  const lies = new Map(lays.map(({ setup: { lie } }) => [lieName(lie), lie]));
  if (lies.size === 0) lies.set('', AS_DRAWN);
  const sides = new Map([...lies].map(([name, lie]) => [name, sidesOf(job.outline, lie)]));
  const all = new Set([...sides.values()].flatMap((own) => [...own.keys()]));
  const named = job.outline.flatMap(({ outer }) => outer).filter((edge) => all.has(edge));
  return [
    ...job.names,
    ...named.flatMap((edge): PartName[] => {
      const { source } = edge;
      if (source === undefined || given.has(source)) return [];
      const lay = lies.size > 1 ? layAt(job, lays, edge) : (lays[0] ?? null);
      if (lay === null && lays.length > 0) return [];
      const side = sides.get(lay === null ? '' : lieName(lay.setup.lie))?.get(edge);
      return side === undefined ? [] : [{ of: source, name: side + lieWords(lay, lies.size) }];
    }),
  ];
}

/** The same for all lies that are the same. */
function lieName({ flip, turn }: Lie): string {
  // Turned over about one axis is turned over about the other and half round.
  const round = flip === 'x' ? turn + 180 : turn;
  return `${flip === null ? 'top' : 'bottom'} ${((round % 360) + 360) % 360}`;
}

function lieWords(lay: Laid | null, ways: number): string {
  if (lay === null) return '';
  return ways > 1 ? ` in setup ${lay.setup.id}` : ' as it lies';
}

/** How the part lies when the cut nearest to an edge is made; of several as near, the first. */
function layAt({ cuts }: Job, lays: readonly Laid[], edge: Edge): Laid | null {
  let nearest: { readonly gap: number; readonly lay: Laid | null } = { gap: Infinity, lay: null };
  for (const cut of cuts) {
    const lay = lays.find(({ setup }) => setup.cuts.includes(cut.id));
    if (lay === undefined) continue;
    const middle =
      cut.kind === 'swept'
        ? Math.min(...cut.path.map((one) => gapBetween(one, edge, 0).distance))
        : nearestOnEdge(edge, cut.center).distance;
    const gap = Math.max(0, middle - cut.diameter / 2);
    if (gap < nearest.gap) nearest = { gap, lay };
  }
  return nearest.lay;
}

/** The straight edges that are all of a side of a part, each with what people call that side. */
function sidesOf(outline: Region, lie: Lie): ReadonlyMap<Edge, string> {
  const { x, y } = axesOf(lie);
  const sides = new Map<Edge, string>();
  for (const [axis, low, high] of [
    [x, 'the left end', 'the right end'],
    [y, 'the front', 'the back'],
  ] as const) {
    const [least, most] = outermost(outline, axis);
    const slack = LEVEL * (most - least);
    for (const [place, side] of [
      [least, low],
      [most, high],
    ] as const) {
      const there = outline.flatMap(({ outer }) =>
        outer.filter(
          ({ kind, a, b }) =>
            kind === 'line' && [a, b].every((end) => Math.abs(along(end, axis) - place) <= slack),
        ),
      );
      const [edge] = there;
      if (edge !== undefined && there.length === 1) sides.set(edge, side);
    }
  }
  return sides;
}
