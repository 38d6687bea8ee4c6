import type { ReportRegion } from '@edgebite/core';
import { stretchesAt } from '../view/scan.js';
import { type Wall, wallsOf, yAt } from './walls.js';

/** What a stretch of a slab shows to someone who looks along y from a level: where it is cut, a wall behind, or nothing. */
export interface Sight {
  readonly from: number;
  readonly to: number;
  readonly seen: 'cut' | Wall | null;
}

/**
 * What is seen of a section from a level on, looking along y: from left to right, each stretch with the first that is
 * met there. Between two ends of walls none crosses another, so that one place says for all of the stretch which is
 * nearest.
 */
export function sightsFrom(region: ReportRegion, level: number): readonly Sight[] {
  const cuts = stretchesAt(region, level);
  const walls = wallsOf(region)
    .filter(({ edge }) => highestOf(edge) > level)
    .sort((a, b) => a.from - b.from);
  const stops = [...new Set([...cuts.flat(), ...walls.flatMap(({ from, to }) => [from, to])])].sort(
    (a, b) => a - b,
  );
  const sights: Sight[] = [];
  let open: Wall[] = [];
  let next = 0;
  for (let i = 0; i + 1 < stops.length; i++) {
    const [from, to] = [stops[i] as number, stops[i + 1] as number];
    open = open.filter((wall) => wall.to > from);
    while (next < walls.length && (walls[next] as Wall).from <= from) {
      open.push(walls[next] as Wall);
      next++;
    }
    const middle = (from + to) / 2;
    const isCut = cuts.some(([a, b]) => a <= from && b >= to);
    sights.push({ from, to, seen: isCut ? 'cut' : nearest(open, middle, level) });
  }
  return sights;
}

function highestOf(edge: Wall['edge']): number {
  return edge.kind === 'line' ? Math.max(edge.a[1], edge.b[1]) : edge.center[1] + edge.radius;
}

function nearest(walls: readonly Wall[], x: number, level: number): Wall | null {
  let best: { wall: Wall; y: number } | null = null;
  for (const wall of walls) {
    const y = wall.to > x ? yAt(wall, x) : Number.NEGATIVE_INFINITY;
    if (y > level && y < (best?.y ?? Number.POSITIVE_INFINITY)) best = { wall, y };
  }
  return best?.wall ?? null;
}
