import type { Aim } from '../aim/aim.js';
import type { PlannedCut } from '../feature/cut-plan.js';
import type { Report } from '../report/report-schema.js';
import { type Layout, QUARTERS, type Quarter, setupsOf } from './layout.js';
import { mayPrecede } from './order.js';
import { compareOutcomes, type Outcome, outcomeOf } from './outcome.js';
import { cutsAgainstStops } from './pushes.js';

/** By cut: how far the part is turned for it. */
type Turns = ReadonlyMap<string, Quarter>;

/**
 * A way in its setups, where the aim says with which tip a zero is found: with the part as it lies for its side, and, where
 * some of its cuts would go against a stop and would not if it lay turned, with the part turned as seldom as keeps them
 * off. The way itself where the aim names no tip.
 */
export function laidOut(aim: Aim, outcome: Outcome): Outcome[] {
  if (aim.tip === null) return [outcome];
  const { order } = outcome;
  const plain = arranged(aim, order, new Map());
  if (plain === null) return [];
  const turns = turnsOf(aim, order, plain.report);
  if (turns === null) return [plain];
  // One turning for all of them, or as often as the order has it: whatever is safer, then quicker.
  const others = [order, ...gatherings(order, turns)].flatMap((one) => arranged(aim, one, turns) ?? []);
  others.sort((a, b) => compareOutcomes(aim, a, b));
  return [plain, ...others.slice(0, 1)];
}

/** How the part is turned for each cut so that none goes against a stop that need not; null where turning helps none. */
function turnsOf(aim: Aim, order: readonly PlannedCut[], report: Report): Turns | null {
  const against = new Map(QUARTERS.map((turn) => [turn, cutsAgainstStops(aim, report, turn)]));
  const isClear = (id: string, turn: Quarter) => against.get(turn)?.has(id) === false;
  const helped = order.some(({ id }) => !isClear(id, 0) && QUARTERS.some((turn) => isClear(id, turn)));
  if (!helped) return null;
  const turns = new Map<string, Quarter>();
  for (const side of ['top', 'bottom'] as const) {
    const own = order.filter((cut) => cut.side === side);
    const wanted = own.filter(({ id }) => QUARTERS.some((turn) => isClear(id, turn)));
    const lies = LIES.find((some) => wanted.every(({ id }) => some.some((turn) => isClear(id, turn))));
    for (const { id } of own) turns.set(id, lies?.find((turn) => isClear(id, turn)) ?? lies?.[0] ?? 0);
  }
  return turns;
}

/** Sets of turns from which the first that serves is taken: half turns before quarters, which change what bears, then the fewest. */
const LIES: readonly (readonly Quarter[])[] = subsets(QUARTERS)
  .filter(({ length }) => length > 0)
  .sort((a, b) => quartersIn(a) - quartersIn(b) || a.length - b.length);

function quartersIn(turns: readonly Quarter[]): number {
  return turns.filter((turn) => turn % 180 !== 0).length;
}

function subsets<T>([first, ...rest]: readonly T[]): T[][] {
  if (first === undefined) return [[]];
  const others = subsets(rest);
  return [...others.map((some) => [first, ...some]), ...others];
}

/** What comes of an order whose cuts lie as they must, some of them turned. */
function arranged(aim: Aim, order: readonly PlannedCut[], turns: Turns): Outcome | null {
  const lays: Layout[] = [];
  for (const { id, side } of order) {
    const turn = turns.get(id) ?? 0;
    const last = lays.at(-1);
    if (last?.side === side && last.turn === turn) last.cuts.push(id);
    else lays.push({ side, turn, cuts: [id] });
  }
  return outcomeOf(aim, order, setupsOf(aim, lays));
}

/** Orders with the cuts of one lie together, as far as those of one side go on in their order: each lie first or last. */
function gatherings(order: readonly PlannedCut[], turns: Turns): PlannedCut[][] {
  const used = QUARTERS.filter((turn) => order.some(({ id }) => turns.get(id) === turn));
  const sides = [...new Set(order.map(({ side }) => side))];
  return [used, used.toReversed()]
    .map((lies) =>
      sides.flatMap((side) =>
        lies.flatMap((turn) => order.filter((cut) => cut.side === side && turns.get(cut.id) === turn)),
      ),
    )
    .filter(isInStages);
}

function isInStages(order: readonly PlannedCut[]): boolean {
  return order.every((one, k) => order.slice(k + 1).every((other) => mayPrecede(one, other)));
}
