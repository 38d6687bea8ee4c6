import type { Aim } from '../aim/aim.js';
import type { PlannedCut } from '../feature/cut-plan.js';
import { changesIn, compareOutcomes, type Outcome, outcomeOf, timeOf } from './outcome.js';
import type { Unmakable } from './unmakable.js';

/** Up to so many cuts that have to do with each other all orders are tried. */
export const MOST_TRIED = 6;

/** Of more cuts so many orders are tried, each a step away from the best so far. */
const STEPS_TRIED = 40;

/** So many of them where there are others to choose from: enough to know which are worth the rest. */
const STEPS_LIKELY = 12;

/** So many orders of equal danger are kept, to choose from for few changes of tool. */
const EQUALS_KEPT = 12;

/** How many orders are looked at for some cuts at most. */
export function ordersTried(cuts: readonly PlannedCut[]): number {
  return cuts.length <= MOST_TRIED ? ordersOf(cuts).length : STEPS_TRIED;
}

/** All orders in which each feature's cuts come by their stages. */
export function ordersOf(cuts: readonly PlannedCut[]): PlannedCut[][] {
  if (cuts.length === 0) return [[]];
  return cuts.flatMap((first, k) => {
    const others = cuts.filter((_, n) => n !== k);
    if (!others.every((other) => mayPrecede(first, other))) return [];
    return ordersOf(others).map((order) => [first, ...order]);
  });
}

/** Whether one cut may come before another: what goes half way from each side has its stages on each. */
export function mayPrecede(one: PlannedCut, other: PlannedCut): boolean {
  if (one.feature !== other.feature || one.stage <= other.stage) return true;
  const isHalf = ({ document }: PlannedCut) => document.depth !== undefined;
  return one.side !== other.side && isHalf(one) && isHalf(other);
}

/**
 * The orders of some cuts with the fewest dangers, quickest first; none if the cuts cannot be made in any order that is
 * tried. Up to `MOST_TRIED` cuts every order is examined until some without any danger are known, of more those that come of moving one cut at a time.
 * @param unmakable what is known of the cuts in other orders
 * @param tick called before each that is examined
 */
export function safestOrders(
  aim: Aim,
  cuts: readonly PlannedCut[],
  unmakable: Unmakable,
  tick: () => void = () => {},
): Outcome[] {
  return cuts.length <= MOST_TRIED
    ? safestOfAll(aim, cuts, unmakable, tick)
    : safestBySteps(aim, cuts, STEPS_TRIED, unmakable);
}

/**
 * A safe order of some cuts that comes of a few steps, or else the first in which they can be made; none if there is none
 * such.
 */
export function likelyOrders(aim: Aim, cuts: readonly PlannedCut[], unmakable: Unmakable): Outcome[] {
  const likely = safestBySteps(aim, cuts, STEPS_LIKELY, unmakable);
  if (likely.length > 0 || cuts.length > MOST_TRIED) return likely;
  for (const order of ordersOf(cuts)) {
    const outcome = outcomeOf(aim, order, undefined, unmakable);
    if (outcome !== null) return [outcome];
  }
  return [];
}

function safestOfAll(
  aim: Aim,
  cuts: readonly PlannedCut[],
  unmakable: Unmakable,
  tick: () => void,
): Outcome[] {
  const orders = ordersOf(cuts).map((order) => ({
    order,
    changes: timeOf(aim, { minutes: null, ...changesIn(order) }),
  }));
  orders.sort((a, b) => a.changes - b.changes);
  const all: Outcome[] = [];
  let harmless = 0;
  for (const { order } of orders) {
    tick();
    const outcome = outcomeOf(aim, order, undefined, unmakable);
    if (outcome === null) continue;
    all.push(outcome);
    if (outcome.dangers.length === 0 && outcome.pushes === 0) harmless++;
    if (harmless === EQUALS_KEPT) break;
  }
  all.sort((a, b) => compareOutcomes(aim, a, b));
  const [best] = all;
  return all
    .filter(({ dangers, pushes }) => dangers.length === best?.dangers.length && pushes === best.pushes)
    .slice(0, EQUALS_KEPT);
}

function safestBySteps(aim: Aim, cuts: readonly PlannedCut[], most: number, unmakable: Unmakable): Outcome[] {
  let best = outcomeOf(aim, byTool(cuts), undefined, unmakable);
  let tried = 1;
  for (let improved = true; improved && tried < most; ) {
    improved = false;
    const order: readonly PlannedCut[] = best?.order ?? byTool(cuts);
    for (let k = 1; k < order.length && tried < most; k++) {
      if (best !== null && best.dangers.length === 0 && best.pushes === 0) return [best];
      const [one, other] = [order[k - 1], order[k]] as [PlannedCut, PlannedCut];
      if (!mayPrecede(other, one)) continue;
      const swapped = [...order.slice(0, k - 1), other, one, ...order.slice(k + 1)];
      tried++;
      const found = outcomeOf(aim, swapped, undefined, unmakable);
      if (found === null || (best !== null && !isSafer(found, best))) continue;
      best = found;
      improved = true;
      break;
    }
  }
  return best === null ? [] : [best];
}

function isSafer(one: Outcome, other: Outcome): boolean {
  return (one.dangers.length - other.dangers.length || one.pushes - other.pushes) < 0;
}

/** Cuts side by side, stage by stage, tool by tool. */
export function byTool(cuts: readonly PlannedCut[]): PlannedCut[] {
  return merged(cuts.map((cut) => [cut]).reduce<PlannedCut[][]>(gathered, []));
}

/** Chains of cuts, one a feature, in their stages. */
function gathered(chains: PlannedCut[][], [cut]: readonly PlannedCut[]): PlannedCut[][] {
  if (cut === undefined) return chains;
  const chain = chains.find(([first]) => first?.feature === cut.feature);
  if (chain === undefined) return [...chains, [cut]];
  chain.push(cut);
  chain.sort((a, b) => a.stage - b.stage);
  return chains;
}

/**
 * Chains woven into one order that keeps each, with few turnings and changes of tool: the tool in the spindle goes on
 * where it can; else the next is one that all chains still to come are ready for.
 */
export function merged(chains: readonly (readonly PlannedCut[])[]): PlannedCut[] {
  const at = chains.map(() => 0);
  const order: PlannedCut[] = [];
  const next = () =>
    chains.flatMap((chain, k) => (at[k] === chain.length ? [] : [{ k, cut: headOf(chain, at[k]) }]));
  for (let ready = next(); ready.length > 0; ready = next()) {
    const last = order.at(-1);
    const costs = ready.map(({ cut }) => [
      last === undefined || last.side === cut.side ? 0 : 1,
      last === undefined || last.tool === cut.tool ? 0 : 1,
      waiting(chains, at, cut),
    ]);
    const chosen = costs.reduce((best, cost, k) => (isLess(cost, costs[best] as number[]) ? k : best), 0);
    const { k, cut } = ready[chosen] as (typeof ready)[number];
    order.push(cut);
    at[k] = (at[k] as number) + 1;
  }
  return order;
}

function headOf(chain: readonly PlannedCut[], k: number | undefined): PlannedCut {
  return chain[k ?? 0] as PlannedCut;
}

/** In how many chains the same tool and side come later, behind something else. */
function waiting(chains: readonly (readonly PlannedCut[])[], at: readonly number[], cut: PlannedCut): number {
  return chains.filter((chain, k) => {
    const rest = chain.slice(at[k]);
    const place = rest.findIndex(({ tool, side }) => tool === cut.tool && side === cut.side);
    return place > 0;
  }).length;
}

function isLess(a: readonly number[], b: readonly number[]): boolean {
  const k = a.findIndex((value, n) => value !== b[n]);
  return k >= 0 && (a[k] as number) < (b[k] as number);
}
