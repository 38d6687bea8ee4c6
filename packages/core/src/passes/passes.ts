/*
 * Room: the passes that step in to a place, or open a bore out.
 * In: the final circle of the tool, the metal round it, the most it may bite.
 * Out: passes with centre, bite and load, or the reason why there are none.
 */

import { intersect } from '../combine/boolean.js';
import { subtract } from '../combine/subtract.js';
import { checkNotNegative, checkOverZero, checkPlace } from '../geometry/checks.js';
import type { Point, Vector } from '../geometry/point.js';
import { shownNumber } from '../geometry/shown.js';
import { type EngagedArc, type Engagement, engagementOf } from '../load/engagement.js';
import type { RadialBite } from '../load/largest-bite.js';
import { discOf, nothingOf } from '../load/tool-circle.js';
import { distanceTo } from '../load/touch.js';
import { area } from '../region/measure.js';
import type { Region } from '../region/region.js';
import { approachAlong, smoothestApproach } from './approach.js';
import { type Around, aroundOf } from './clear-stand.js';
import { type LaidPass, layOut, type Motion, markOver, markUnder, type Task } from './layout.js';

/** The passes to plan. Lengths in the unit of the metal. */
export interface PassOptions {
  /** The metal at that depth before this cut: the part, less earlier cuts. */
  readonly metal: Region;
  /** Of the final cut. */
  readonly center: Point;
  readonly radius: number;
  /** The deepest bite that a pass may take. */
  readonly bite: number;
  /** The allowance that the pass before the last leaves; default 0. */
  readonly finish?: number | undefined;
  /** Whether the last pass is repeated, to take the metal that the tool sprang away from. */
  readonly spring?: boolean | undefined;
  /** How deep the cut is, for volumes and times. */
  readonly depth?: number | undefined;
  /** Feed per turn, and turns per minute. */
  readonly feed?: { readonly perTurn: number; readonly rpm: number } | undefined;
}

/** One pass: straight down, and up again. Lengths in the unit of the metal, angles in radians, areas square. */
export interface Pass {
  /** `rough`, then one `finish`, which forms the wall, then a `spring` pass if it was asked for. */
  readonly role: 'rough' | 'finish' | 'spring';
  readonly center: Point;
  readonly radius: number;
  /** How far the centre has moved, or the radius grown, since the pass before, or since first touch. */
  readonly step: number;
  /** Area of the metal that it removes, and that times the depth; null without a depth. */
  readonly area: number;
  readonly volume: number | null;
  /** The deepest bite along a radius, and which radius; null where it removes nothing. */
  readonly bite: RadialBite | null;
  readonly engagement: Engagement;
  /** The longest arc that a tooth cuts without a break. */
  readonly longestCut: { readonly angle: number; readonly length: number };
  /** Null without a feed. */
  readonly minutes: number | null;
}

/** Passes that together are the final cut, and nothing more. */
export interface PassPlan {
  /** In order; none where there is nothing to cut. The last but a spring pass stands exactly on the final cut. */
  readonly passes: readonly Pass[];
  /** Unit vector along which the centre moves; null where it stands still. */
  readonly approach: Vector | null;
  /** From first touch to the final cut, in centre or radius. */
  readonly travel: number;
  readonly area: number;
  readonly volume: number | null;
  readonly minutes: number | null;
  /** Largest over mean area of the passes that remove something: 1 is even. 1 where there is none. */
  readonly unevenness: number;
}

/**
 * Steps a cutter of fixed radius in: its centre moves along a straight line from where it first touches the metal
 * to the true centre, and at each stop it goes straight down. No pass bites deeper than the bite given, the first no
 * more than the others; the steps are even, and stops that would cut air are left out. The last stop before a spring
 * pass is the true centre, to the last bit.
 *
 * Every stop is checked by an overlay: what it cuts must be metal that the final cut removes. Where the centre lies
 * inside a straight face that is not so, as the mouth of the hole is narrower than the cutter; then open out.
 *
 * Source: definition; the bite of a step d is at most d, since the discs of two stops are d apart.
 * @param options `approach` is the direction in which the centre moves. Unless given it is the one of 72, 5 degrees
 *   apart and counted from the one that leads straight at the middle of the metal, with the smoothest load: the
 *   smallest ratio of the largest to the mean area removed over 24 even steps. Within 5 % of the best, the shortest
 *   way wins. With a `clear` gap, directions from which the tool can stand so far clear of the metal before its first pass,
 *   and of what is in the way, come before all others.
 * @throws RangeError if a number is not finite or out of its range, the finish allowance is over the bite, a feed is
 *   given without a depth, there would be over a thousand passes, or a stop would cut metal outside of the final cut
 *   (where, how much, and the bite from which on there is no such stop).
 */
export function stepIn(
  options: PassOptions & {
    readonly approach?: Vector | undefined;
    readonly clear?: { readonly gap: number; readonly avoid?: readonly Region[] | undefined } | undefined;
  },
): PassPlan {
  const task = taskOf('stepIn', options);
  const around = clearanceIn(options);
  const direction = options.approach === undefined ? null : unitOf(options.approach);
  if (task.metal.length === 0) return planned(options, [], direction);
  const rest = subtract(options.metal, [discOf(task.final)]);
  const { approach, passes } =
    direction === null ? smoothestApproach(task, rest, around) : approachAlong(task, rest, direction);
  return planned(options, passes, approach);
}

/** What a tool that steps in is to stand clear of before; null where that was not asked for. */
function clearanceIn({ metal, clear }: Parameters<typeof stepIn>[0]): Around | null {
  if (clear === undefined) return null;
  checkOverZero('stepIn', 'clear.gap', clear.gap);
  const keepOuts = (clear.avoid ?? []).map((region, k) => ({ id: String(k), region }));
  return aroundOf([metal], clear.gap, keepOuts);
}

function unitOf({ dx, dy }: Vector): Vector {
  const length = Math.hypot(dx, dy);
  if (!(length > 0) || !Number.isFinite(length)) {
    throw new RangeError(
      `stepIn: approach is (${dx}, ${dy}); it must be finite and not 0, to be a direction`,
    );
  }
  return { dx: dx / length, dy: dy / length };
}

/**
 * Opens a cut out: the centre stands still and the radius grows from where it first touches the metal to the full
 * one, as with a boring head. No pass bites deeper than the bite given, the first no more than the others; the steps
 * are even, and those that would cut air are left out. All passes lie within the last.
 *
 * Source: definition; the discs of two passes differ by a ring as wide as the step.
 * @param options `smallest` is the smallest radius that the tool can be set to; 0 unless given. `mark` is what one
 *   graduation of its dial changes the radius by: every pass then stands whole graduations short of the last one, and the
 *   finish allowance is the next mark that is not over the bite. Any radius can be set unless it is given.
 * @throws RangeError if a number is not finite or out of its range, the finish allowance is over the bite, a feed is
 *   given without a depth, there would be over a thousand passes, a graduation is over the bite, or the tool at its
 *   smallest bites too deep (and what to rough out first).
 */
export function openOut(
  options: PassOptions & { readonly smallest?: number | undefined; readonly mark?: number | undefined },
): PassPlan {
  const task = markedTask(taskOf('openOut', options), options.mark);
  const { center, radius } = task.final;
  const smallest = options.smallest ?? 0;
  checkNotNegative('openOut', 'smallest', smallest);
  if (smallest > radius) {
    throw new RangeError(
      `openOut: smallest is ${shownNumber(smallest)}; it must not be over the radius, ${shownNumber(radius)}`,
    );
  }
  if (task.metal.length === 0) return planned(options, [], null);
  const motion: Motion = {
    stand: (short) => ({ center, radius: short === 0 ? radius : radius - short }),
    touch: (metal) => radius - distanceTo(metal, center),
    furthest: radius - smallest,
  };
  const passes = layOut('openOut', motion, task, () => null);
  return planned(options, passes as LaidPass[], null);
}

/** A task whose passes fall on the marks of a dial. */
function markedTask(task: Task, mark: number | undefined): Task {
  if (mark === undefined) return task;
  checkOverZero('openOut', 'mark', mark);
  const { bite, finish } = task;
  if (mark > bite) {
    throw new RangeError(
      `openOut: a graduation changes the radius by ${shownNumber(mark)}, over the bite, ${shownNumber(bite)}; ` +
        `allow a bite of ${shownNumber(mark)} at least`,
    );
  }
  const over = markOver(finish, mark);
  return { ...task, mark, finish: over <= bite ? over : markUnder(finish, mark) };
}

/** Checks what is asked for, and finds the metal that the final cut removes. */
function taskOf(where: string, options: PassOptions): Task {
  const { metal, center, radius, bite, finish = 0, depth, feed } = options;
  checkPlace(where, 'center', center);
  checkOverZero(where, 'radius', radius);
  checkOverZero(where, 'bite', bite);
  checkNotNegative(where, 'finish', finish);
  if (finish > bite) {
    throw new RangeError(
      `${where}: the finish allowance is ${shownNumber(finish)}; it must not be over the bite, ${shownNumber(bite)}`,
    );
  }
  if (depth !== undefined) checkOverZero(where, 'depth', depth);
  if (feed !== undefined) {
    checkOverZero(where, 'feed.perTurn', feed.perTurn);
    checkOverZero(where, 'feed.rpm', feed.rpm);
    if (depth === undefined)
      throw new RangeError(`${where}: a feed is given without a depth; give the depth too`);
  }
  const final = { center, radius };
  const nothing = nothingOf(metal, final);
  const within = intersect([metal, discOf(final)]);
  return { final, metal: area(within) <= nothing ? [] : within, bite, finish, mark: 0, nothing };
}

function planned(options: PassOptions, laid: readonly LaidPass[], approach: Vector | null): PassPlan {
  const passes: Pass[] = [];
  let metal = options.metal;
  for (const pass of laid) {
    passes.push(passOf(options, pass, metal));
    metal = subtract(metal, [discOf(pass.stand)]);
  }
  const [first] = laid;
  const last = laid[laid.length - 1];
  if (options.spring === true && last !== undefined) {
    passes.push({
      ...passOf(options, { ...last, step: 0, removed: [], bite: null }, metal),
      role: 'spring',
    });
  }
  const areas = passes.map((pass) => pass.area).filter((size) => size > 0);
  const sum = areas.reduce((all, size) => all + size, 0);
  return {
    passes,
    approach,
    travel: first === undefined ? 0 : first.short + first.step,
    area: sum,
    volume: options.depth === undefined ? null : sum * options.depth,
    minutes:
      options.feed === undefined ? null : passes.reduce((all, { minutes }) => all + (minutes as number), 0),
    unevenness: areas.length === 0 ? 1 : (Math.max(...areas) * areas.length) / sum,
  };
}

function passOf(options: PassOptions, { short, stand, step, removed, bite }: LaidPass, metal: Region): Pass {
  const { depth, feed } = options;
  const engagement = engagementOf(metal, stand.center, stand.radius);
  const size = area(removed);
  return {
    role: short === 0 ? 'finish' : 'rough',
    ...stand,
    step,
    area: size,
    volume: depth === undefined ? null : size * depth,
    bite,
    engagement,
    longestCut: longestOf(engagement.arcs),
    minutes: feed === undefined || depth === undefined ? null : depth / (feed.perTurn * feed.rpm),
  };
}

function longestOf(arcs: readonly EngagedArc[]): Pass['longestCut'] {
  let longest = { angle: 0, length: 0 };
  for (const { sweep, length } of arcs) if (sweep > longest.angle) longest = { angle: sweep, length };
  return longest;
}
