import { type Meeting, meetsMetal } from './clear.js';
import { clearanceOf, type Tool } from './job.js';
import { type Metal, metalAt } from './metal.js';
import type { Done, Run } from './run.js';
import type { Place } from './shapes.js';
import { lengthOf, spansOf } from './spans.js';
import { depthAfter } from './steps.js';

/** A tool that goes this deep into metal on its way cuts it; less is sampling. */
const CUTS = 0.01;

/** How much nearer than the clearance counts as too near. */
const NEAR = 0.02;

/** A tool moved in a straight line. */
function driven(tool: Tool, to: Place): Tool {
  if (tool.kind !== 'disc' && tool.kind !== 'ring') throw new Error('driven: a path is not backed off');
  const path = [{ kind: 'line' as const, a: tool.center, b: to }];
  return tool.kind === 'disc'
    ? { kind: 'path', path, radius: tool.radius }
    : { kind: 'driven ring', path, radius: tool.radius, wall: tool.wall };
}

/** A tool as it stands somewhere, thicker all round. */
function grown(tool: Tool, at: Place, by: number): Tool {
  if (tool.kind !== 'disc' && tool.kind !== 'ring') throw new Error('grown: only for tools that stand');
  const radius = tool.radius + by;
  return tool.kind === 'disc'
    ? { kind: 'disc', center: at, radius }
    : { kind: 'ring', center: at, radius, wall: Math.min(tool.wall + 2 * by, radius) };
}

/** The metal that a tool has to come clear of before it is lifted: after its step, at all heights that it passes. */
export function wallsOf(run: Run, { step, before, after }: Done): Metal[] {
  const wasLoose = new Set<number>();
  for (const owner of before.owner) if (owner > 0) wasLoose.add(owner);
  return run.slabs.flatMap((slab, s) => {
    const isPassed = depthAfter(run.job, step, slab) <= step.depth + 1e-9;
    return isPassed ? [metalAt(run, after, s, (body) => wasLoose.has(body))] : [];
  });
}

/** What happens on the way from where a tool stands to another place, and when it is lifted there. */
export function backingOff(run: Run, done: Done, to: Place): Meeting | 'too near' {
  const { tool, cut } = done.step;
  const walls = wallsOf(run, done);
  const way = worstOf(walls.map((metal) => meetsMetal(driven(tool, to), metal, CUTS)));
  if (way !== 'clear') return way;
  const room = grown(tool, to, clearanceOf(run.job, cut) - NEAR);
  const end = worstOf(walls.map((metal) => meetsMetal(room, metal, CUTS)));
  return end === 'meets' ? 'too near' : end;
}

function worstOf(all: readonly Meeting[]): Meeting {
  if (all.includes('meets')) return 'meets';
  return all.includes('untold') ? 'untold' : 'clear';
}

/** Ways tried to each side of straight back, and how far apart, radians. */
const WAYS = 3;
const APART = Math.PI / 24;

/** A way for a disc must leave half a turn free of walls; a gap smaller by this (radians) is surely none. */
const SURE = 0.02;

/**
 * A place that a tool can surely be moved to and lifted at, with room to spare; null where none was found, which
 * does not say that there is none.
 */
export function someWayOff(run: Run, done: Done): Place | null {
  const { tool, cut } = done.step;
  if (tool.kind !== 'disc' && tool.kind !== 'ring') return null;
  const gap = widestGap(wallsOf(run, done), tool.center, tool.radius);
  if (gap === null || gap.width < Math.PI + SURE) return null;
  const clearance = clearanceOf(run.job, cut) + 2 * NEAR;
  const far = Math.sqrt(clearance * (2 * tool.radius + clearance));
  for (let k = -WAYS; k <= WAYS; k++) {
    const angle = gap.middle + k * APART;
    for (const by of [0, clearance * 1.5, far]) {
      const to: Place = [tool.center[0] + by * Math.cos(angle), tool.center[1] + by * Math.sin(angle)];
      if (backingOff(run, done, to) !== 'clear') continue;
      const room = grown(tool, to, clearance);
      if (wallsOf(run, done).every((metal) => meetsMetal(room, metal, CUTS) === 'clear')) return to;
    }
  }
  return null;
}

/** The widest stretch of a circle, as drawn, beside which no wall stands at any height. */
function widestGap(
  walls: readonly Metal[],
  center: Place,
  radius: number,
): { middle: number; width: number } | null {
  const OUTSIDE = 1e-3;
  const SHORTEST = 1e-3;
  const spans = spansOf(0, 2 * Math.PI, SHORTEST, (angle, half) => {
    const far = radius + OUTSIDE;
    const [x, y] = [center[0] + far * Math.cos(angle), center[1] + far * Math.sin(angle)];
    let isOut = true;
    for (const metal of walls) {
      const { low, high } = metal.bounds(x, y, far * half, center);
      if (low > 0 && metal.whose(x, y) !== 'lifted') return 'in';
      if (high >= 0 && !(low > 0)) isOut = false;
    }
    return isOut ? 'out' : 'split';
  });
  if (lengthOf(spans, 'in') === 0 && lengthOf(spans, 'untold') === 0)
    return { middle: 0, width: 2 * Math.PI };
  const [first, last] = [spans[0], spans.at(-1)];
  const gaps = spans.flatMap(({ from, to, state }) => (state === 'out' ? [{ from, to }] : []));
  const start = gaps[0];
  const end = gaps.at(-1);
  if (start === undefined || end === undefined) return null;
  if (first?.state === 'out' && last?.state === 'out' && gaps.length > 1) {
    gaps.splice(0, 1);
    end.to += start.to;
  }
  const widest = gaps.reduce((a, b) => (b.to - b.from > a.to - a.from ? b : a));
  return { middle: (widest.from + widest.to) / 2, width: widest.to - widest.from };
}
