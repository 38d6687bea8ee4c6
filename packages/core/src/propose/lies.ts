import type { Aim } from '../aim/aim.js';
import type { PlannedCut } from '../feature/cut-plan.js';
import { type Layout, setupsOf } from './layout.js';
import { compareOutcomes, type Outcome, outcomeOf } from './outcome.js';
import { cutsAgainstStops } from './pushes.js';

/**
 * A way in its setups, where the aim says with which tip a zero is found: with the part as it lies for its side, and, where
 * some of its cuts would go against a stop and would not if it lay turned round, with these turned round too. The way
 * itself where the aim names no tip.
 */
export function laidOut(aim: Aim, outcome: Outcome): Outcome[] {
  if (aim.tip === null) return [outcome];
  const { order } = outcome;
  const plain = arranged(aim, order, new Set());
  if (plain === null) return [];
  const pushed = cutsAgainstStops(aim, plain.report, false);
  const turned = cutsAgainstStops(aim, plain.report, true);
  const round = new Set([...pushed].filter((id) => !turned.has(id)));
  if (round.size === 0) return [plain];
  // One turning for all of them, or as often as the order has it: whatever is safer, then quicker.
  const others = [order, gathered(order, round, false), gathered(order, round, true)].flatMap(
    (one) => arranged(aim, one, round) ?? [],
  );
  others.sort((a, b) => compareOutcomes(aim, a, b));
  return [plain, ...others.slice(0, 1)];
}

/** What comes of an order whose cuts lie as they must, some of them turned round. */
function arranged(aim: Aim, order: readonly PlannedCut[], round: ReadonlySet<string>): Outcome | null {
  const lays: Layout[] = [];
  for (const { id, side } of order) {
    const isRound = round.has(id);
    const last = lays.at(-1);
    if (last?.side === side && last.isRound === isRound) last.cuts.push(id);
    else lays.push({ side, isRound, cuts: [id] });
  }
  const setups = setupsOf(aim, lays);
  return outcomeOf(aim, order, setups);
}

/** Cuts of one lie together, as far as those of one side go on in their order. */
function gathered(
  order: readonly PlannedCut[],
  round: ReadonlySet<string>,
  isFirst: boolean,
): readonly PlannedCut[] {
  const isOf = (side: PlannedCut['side'], isRound: boolean) =>
    order.filter((cut) => cut.side === side && round.has(cut.id) === isRound);
  const sides = [...new Set(order.map(({ side }) => side))];
  return sides.flatMap((side) => [...isOf(side, isFirst), ...isOf(side, !isFirst)]);
}
