import type { Aim } from '../aim/aim.js';
import type { Method, PlannedCut } from '../feature/cut-plan.js';
import type { Patch } from '../feature/features.js';
import { methodsOf, SMALL_DRAWER } from '../feature/methods.js';
import { estimateOf } from './estimate.js';
import { bitesFirst } from './first-bite.js';
import { likelyOrders, ordersTried, safestOrders } from './order.js';
import { type Outcome, timeOf } from './outcome.js';
import type { Unmakable } from './unmakable.js';

/** One way to make all that is in a group of patches. */
export interface Choice {
  readonly cuts: readonly PlannedCut[];
  /** In the orders with the fewest dangers, quickest first; null where dangers and time are estimates yet. */
  readonly orders: readonly Outcome[] | null;
  /** Whether all of its orders have been tried. */
  readonly isTriedOut: boolean;
  readonly dangers: number;
  /** Cuts that push the part off a stop. */
  readonly pushes: number;
  /** Cutting alone, in minutes. */
  readonly time: number;
  readonly tools: ReadonlySet<string>;
}

/** So many ways to put the methods of a group's features together are looked at. */
const MOST_COMBINED = 60;

/** Of so many orders all are examined beforehand; of more, those that matter when they do. */
const MOST_EXAMINED = 300;

/** The ways to make a group of patches, the safest and then the quickest first: of a small drawer all of them examined. */
export function choicesOf(aim: Aim, group: readonly Patch[], unmakable: Unmakable): Choice[] {
  const isAlone = group.length === 1;
  const methods = group.map((patch) => patchMethods(aim, patch, isAlone));
  const drafts = combined(methods.length === 1 ? methods : methods.map((all) => bestFirst(aim, all))).map(
    (cuts) => draftOf(aim, cuts),
  );
  const tried = drafts.reduce((sum, { cuts }) => sum + ordersTried(cuts), 0);
  const isSmall = aim.drawer.length <= SMALL_DRAWER && tried <= MOST_EXAMINED;
  return inOrder(isSmall ? drafts.flatMap((draft) => triedOut(aim, draft, unmakable) ?? []) : drafts);
}

/** More passes than these along one radius nobody makes by hand, and to look at each would take minutes. */
const MOST_PASSES = 100;

/**
 * All ways to make a patch by itself, whichever way it is seen.
 * @param isAlone whether nothing else is cut near it
 */
function patchMethods(aim: Aim, { recipes }: Patch, isAlone: boolean): Method[] {
  return recipes.flatMap((features) => {
    const isOnlyOne = isAlone && features.length === 1;
    const methods = features.map((feature) =>
      methodsOf(aim, feature).filter(
        (method) => (method.passes ?? 1) <= MOST_PASSES && (!isOnlyOne || bitesFirst(aim, method)),
      ),
    );
    const sorted = methods.length === 1 ? methods : methods.map((all) => bestFirst(aim, all));
    return combined(sorted).map((cuts) => ({ cuts }));
  });
}

/** Choices, the safest and then the quickest first. */
export function inOrder(choices: readonly Choice[]): Choice[] {
  return [...choices].sort((a, b) => a.dangers - b.dangers || a.pushes - b.pushes || a.time - b.time);
}

/** More orders than this are not all examined at once: only a few, and the rest where the choice is taken. */
const MOST_AT_ONCE = 24;

/** A choice as it comes out in its orders, or in some of them where there are many; null if its cuts cannot be made in any. */
export function settled(aim: Aim, choice: Choice, unmakable: Unmakable): Choice | null {
  if (choice.orders !== null) return choice;
  if (ordersTried(choice.cuts) <= MOST_AT_ONCE) return triedOut(aim, choice, unmakable);
  return inOrders(aim, choice, likelyOrders(aim, choice.cuts, unmakable), false);
}

/**
 * A choice as it comes out in the best of all its orders; null if its cuts cannot be made in any.
 * @param tick called before each order that is examined
 */
export function triedOut(aim: Aim, choice: Choice, unmakable: Unmakable, tick?: () => void): Choice | null {
  if (choice.isTriedOut) return choice;
  return inOrders(aim, choice, safestOrders(aim, choice.cuts, unmakable, tick), true);
}

function inOrders(aim: Aim, choice: Choice, orders: readonly Outcome[], isTriedOut: boolean): Choice | null {
  const [best] = orders;
  if (best === undefined) return null;
  return {
    ...choice,
    orders,
    isTriedOut,
    dangers: best.dangers.length,
    pushes: best.pushes,
    time: timeOf(aim, { minutes: best.minutes, toolChanges: 0, turnings: 0 }),
  };
}

function draftOf(aim: Aim, cuts: readonly PlannedCut[]): Choice {
  return {
    cuts,
    orders: null,
    isTriedOut: false,
    pushes: 0,
    ...estimateOf(aim, cuts),
    tools: new Set(cuts.map(({ tool }) => tool.id)),
  };
}

/** The methods of a feature, those that are likely to be the safest and quickest first. */
function bestFirst(aim: Aim, methods: readonly Method[]): Method[] {
  return inOrder(methods.map(({ cuts }) => draftOf(aim, cuts)));
}

/** One method of each feature: all ways to choose them, or as many as there is time for, the best ones first. */
function combined(methods: readonly (readonly Method[])[]): PlannedCut[][] {
  let all: PlannedCut[][] = [[]];
  methods.forEach((own, k) => {
    const left = methods.length - k;
    const room =
      left === methods.length && left === 1 ? own.length : (MOST_COMBINED / all.length) ** (1 / left);
    const taken = own.slice(0, Math.max(1, Math.floor(room)));
    all = all.flatMap((cuts) => taken.map((method) => [...cuts, ...method.cuts]));
  });
  return all;
}
