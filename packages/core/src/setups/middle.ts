import { described } from '../document/described.js';
import type { Edge } from '../geometry/edge.js';
import { distance, type Point } from '../geometry/point.js';
import type { PartName } from '../job/job.js';
import { loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';

/** Two lengths are one if they differ by no more than this share: what is left of the arithmetic of a drawing. */
const SAME = 1e-6;

/**
 * The middle of a hole, a boss or a slot that can be dialled in, by its name or number; or what is wrong with it, to go
 * after its key.
 */
export function middleNamed(name: string, outline: Region, names: readonly PartName[]): Point | string {
  const of = names.find((one) => one.name === name)?.of ?? name;
  const owner = (loop: readonly Edge[]) => (loop[0]?.source ?? '').replace(/:\d+$/, '');
  const loops = loopsOf(outline);
  const loop = loops.find((one) => owner(one) === of);
  if (loop === undefined)
    return `is ${described(name)}, but the part has no such hole; there ${known(loops.map(owner), names)}`;
  return (
    middleOfLoop(loop) ??
    `is ${described(name)}, which is neither round nor a slot, so it has no middle to dial in; touch its faces instead`
  );
}

function known(owners: readonly string[], names: readonly PartName[]): string {
  const shown = owners.map((owner) => described(names.find(({ of }) => of === owner)?.name ?? owner));
  return shown.length === 1 ? `is only ${shown[0]}` : `are ${shown.slice(0, LISTED).join(', ')}`;
}

/** So many names a message lists. */
const LISTED = 8;

/** The middle of a circle, or of a slot with half-round ends; null for other shapes. */
function middleOfLoop(loop: readonly Edge[]): Point | null {
  const arcs = loop.filter((edge) => edge.kind === 'arc');
  const [first, ...rest] = arcs;
  if (first === undefined) return null;
  const isOne = (a: Point, b: Point) => distance(a, b) <= SAME * first.radius;
  if (arcs.length === loop.length)
    return rest.every((arc) => isOne(arc.center, first.center)) ? first.center : null;
  const other = rest.find((arc) => !isOne(arc.center, first.center));
  if (other === undefined) return null;
  const ends = [first.center, other.center];
  const isSlot =
    arcs.every((arc) => ends.some((end) => isOne(arc.center, end))) &&
    arcs.every((arc) => Math.abs(arc.radius - first.radius) <= SAME * first.radius) &&
    loop.filter(({ kind }) => kind === 'line').length === 2;
  return isSlot
    ? { x: (first.center.x + other.center.x) / 2, y: (first.center.y + other.center.y) / 2 }
    : null;
}
