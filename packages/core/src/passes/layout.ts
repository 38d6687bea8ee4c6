import { intersect } from '../combine/boolean.js';
import { subtract } from '../combine/subtract.js';
import { shownNumber } from '../geometry/shown.js';
import { largestIn, type RadialBite } from '../load/largest-bite.js';
import { discOf, type ToolCircle } from '../load/tool-circle.js';
import { area } from '../region/measure.js';
import type { Region } from '../region/region.js';

/** A way to come up to the final cut: by moving the centre, or by growing the radius. */
export interface Motion {
  /** Where the tool stands when it is this far short of the final cut; at 0, exactly the final cut. */
  readonly stand: (short: number) => ToolCircle;
  /** How far short of the final cut it first touches some metal, which lies within the final cut. */
  readonly touch: (metal: Region) => number;
  /** The furthest short of the final cut that the tool can stand. */
  readonly furthest: number;
}

/** What is to be cut, and how. */
export interface Task {
  readonly final: ToolCircle;
  /** The metal that the final cut removes. */
  readonly metal: Region;
  /** The deepest bite, and what the pass before the last leaves. */
  readonly bite: number;
  readonly finish: number;
  /** Every pass stands a whole number of these short of the last; 0 where it can stand anywhere. */
  readonly mark: number;
  /** Area that counts as none. */
  readonly nothing: number;
}

/** One pass: where it stands, and what it finds there. */
export interface LaidPass {
  readonly short: number;
  readonly stand: ToolCircle;
  /** How far it goes on from the pass before it, or from first touch. */
  readonly step: number;
  readonly removed: Region;
  readonly bite: RadialBite | null;
}

/** A distance that is a whole number of bites but for this share of one is that number of bites: rounding. */
const COUNT_SLACK = 1e-9;

/** So many passes nobody makes by hand; a bite that asks for more is a slip of the decimal point. */
export const MOST_PASSES = 1000;

/**
 * Passes that take some metal step by step, the last one on the final cut. Each starts from where the tool first
 * touches what is left, so that none goes through air, and the distance to go is shared out evenly.
 * @param refuses called with each pass before the next one is laid; an answer that is not null ends it
 * @throws RangeError if there would be over a thousand passes, or the tool cannot stand where the first one would
 *   take no more than the bite.
 */
export function layOut<Refusal>(
  where: string,
  motion: Motion,
  task: Task,
  refuses: (pass: LaidPass) => Refusal | null,
): LaidPass[] | { readonly refused: Refusal } {
  const { nothing, bite } = task;
  const passes: LaidPass[] = [];
  let left = task.metal;
  let short = Number.POSITIVE_INFINITY;
  while (short > 0) {
    const from = area(left) <= nothing ? 0 : Math.min(short, motion.touch(left));
    const next = nextStand(where, from, task);
    const first = made(motion, left, from, Math.min(next, markUnder(motion.furthest, task.mark)));
    if (first.short < next) checkFirst(where, first, bite);
    const pass = keepingSome(motion, task, left, first);
    short = pass.short;
    left = subtract(left, [discOf(pass.stand)]);
    if (short > 0 && area(pass.removed) <= nothing) continue;
    const refused = refuses(pass);
    if (refused !== null) return { refused };
    passes.push(pass);
  }
  return passes;
}

/** How often the last of the metal is halved, to part it between two passes; a few times are enough. */
const HALVINGS = 40;

/**
 * A pass that leaves something for the final one. Where it would take the last of the metal, that is taken from the
 * final place instead, or if that is too deep a bite, as much of it that the rest is not.
 */
function keepingSome(motion: Motion, { bite, nothing, mark }: Task, metal: Region, pass: LaidPass): LaidPass {
  const whole = area(metal);
  const isLast = (one: LaidPass) => whole - area(one.removed) <= nothing;
  if (pass.short === 0 || !isLast(pass)) return pass;
  const from = pass.short + pass.step;
  const final = made(motion, metal, from, 0);
  let one = pass;
  for (let k = 0; k < HALVINGS && (final.bite?.size ?? 0) > bite; k++) {
    const short = markOver(from - one.step / 2, mark);
    // Between two marks nothing can be parted: what is left then is a last pass that only sizes.
    if (short >= from) return one;
    one = made(motion, metal, from, short);
    if (!isLast(one)) return one;
  }
  return final;
}

function nextStand(where: string, from: number, { bite, finish, mark }: Task): number {
  const target = from > finish ? finish : 0;
  const count = Math.max(1, Math.ceil((from - target) / bite - COUNT_SLACK));
  if (count > MOST_PASSES) {
    throw new RangeError(
      `${where}: the bite is ${shownNumber(bite)}, which makes ${count} passes; ${MOST_PASSES} need one of ` +
        `${shownNumber((from - target) / MOST_PASSES)}`,
    );
  }
  const even = count === 1 ? target : from - (from - target) / count;
  const next = markOver(even, mark);
  // From between two marks the next one is nearer than a graduation, which is no more than the bite.
  return next < from || from === 0 ? next : mark * (Math.ceil(from / mark - COUNT_SLACK) - 1);
}

/** The nearest mark that is no nearer to the last pass. */
export function markOver(short: number, mark: number): number {
  return mark === 0 ? short : mark * Math.ceil(short / mark - COUNT_SLACK);
}

/** The nearest mark that is no further from the last pass. */
export function markUnder(short: number, mark: number): number {
  return mark === 0 || !Number.isFinite(short) ? short : mark * Math.floor(short / mark + COUNT_SLACK);
}

function made(motion: Motion, metal: Region, from: number, short: number): LaidPass {
  const stand = motion.stand(short);
  const removed = intersect([metal, discOf(stand)]);
  return { short, stand, step: from - short, removed, bite: largestIn(removed, stand.center, stand.radius) };
}

/** A tool that cannot be as small as the first pass asks for must not bite deeper for it. */
function checkFirst(where: string, { stand, bite }: LaidPass, most: number): void {
  const size = bite?.size ?? 0;
  if (size <= most * (1 + COUNT_SLACK)) return;
  throw new RangeError(
    `${where}: at its smallest, radius ${shownNumber(stand.radius)}, the tool would bite ${shownNumber(size)} deep, ` +
      `over ${shownNumber(most)}; rough a hole of radius ${shownNumber(stand.radius - most)} first`,
  );
}
