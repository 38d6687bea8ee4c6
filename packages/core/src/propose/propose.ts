/*
 * Room: from an aim to jobs: which cuts, in which order, in which setups.
 * In: an aim.
 * Out: ways, each an ordinary job with its figures, best first; refusals with their reasons.
 */

import type { Aim } from '../aim/aim.js';
import type { JobDocument } from '../document/schema.js';
import type { Patch } from '../feature/features.js';
import { patchesOf } from '../feature/features.js';
import { partOf, type Tick, ticking, type Watch } from '../geometry/watch.js';
import { toolDocument } from '../read/read-drawer.js';
import type { Report } from '../report/report-schema.js';
import { type Choice, choicesOf, inOrder, settled, triedOut } from './choices.js';
import { comparePlans, type Plan, planOf, plansOf } from './choose.js';
import { clustersOf } from './clusters.js';
import { laidOut } from './lies.js';
import { MOST_TRIED, ordersTried, safestOrders } from './order.js';
import { compareOutcomes, isFinished, type Outcome, outcomeOf } from './outcome.js';
import { type Refusal, refusalsOf } from './refusals.js';
import { tolerancesOf, type WayRow, wayRowOf } from './row.js';
import { Unmakable } from './unmakable.js';

/** One way to make a part: an ordinary job, and its outcome. */
export interface ProposedWay {
  readonly job: JobDocument;
  readonly report: Report;
  readonly row: WayRow;
}

/** The proposed ways, best first; or the places that no tool of the drawer can make. */
export interface Proposal {
  /** None where there are refusals. */
  readonly ways: readonly ProposedWay[];
  readonly refusals: readonly Refusal[];
}

/**
 * Finds ways to make a finished part out of a blank with the tools of a drawer, each an ordinary job: which tool
 * roughs and which finishes each hole and each hollow arc, where, in which order and passes. Those with the fewest
 * dangers come first, and of these the quickest, changes of tool and turnings of the part included; each has a
 * different set of tools. The order of cuts is chosen by examining the part on the way. Where no tool can make some
 * place, all such places are listed, and nothing is proposed.
 *
 * Source: definition; docs/from-drawing-to-steps.md says which choices are examined in full and which are not.
 * @param watch receives the progress; aborting its signal ends the call with that reason
 */
export function propose(aim: Aim, watch?: Watch): Proposal {
  const tick = ticking(watch);
  tick(0);
  const groups = clustersOf(aim, patchesOf(aim));
  const unmakable = new Unmakable();
  const { plans, unmade } = settledPlans(
    aim,
    groups.map((group, k) => {
      tick((0.2 * k) / groups.length);
      return choicesOf(aim, group, unmakable);
    }),
    unmakable,
    partOf(tick, 0.2, 0.8),
  );
  if (unmade.size > 0) {
    return refused(
      aim,
      groups.flatMap((group, k) => (unmade.has(k) ? refusable(aim, group) : [])),
    );
  }
  const outcomes = plans.flatMap((plan, k) => {
    tick(0.8 + (0.2 * k) / plans.length);
    const outcome = examined(aim, plan, unmakable);
    return outcome === null ? [] : laidOut(aim, outcome);
  });
  tick(1);
  if (outcomes.length === 0) return refused(aim, groups.flat());
  outcomes.sort((a, b) => compareOutcomes(aim, a, b));
  return { ways: outcomes.slice(0, aim.ways).map((outcome) => wayOf(aim, outcome)), refusals: [] };
}

function refused(aim: Aim, patches: readonly Patch[]): Proposal {
  return { ways: [], refusals: patches.flatMap((patch) => refusalsOf(aim, patch)) };
}

/** The patches of a group that have no method of their own; all of them where only together they cannot be made. */
function refusable(aim: Aim, group: readonly Patch[]): readonly Patch[] {
  const bare = group.filter((patch) => {
    const unmakable = new Unmakable();
    return choicesOf(aim, [patch], unmakable).every((choice) => settled(aim, choice, unmakable) === null);
  });
  return bare.length > 0 ? bare : group;
}

/** So often plans are settled for the sake of others than the best. */
const ROUNDS = 1;

/** After so many rounds only what has been examined is looked at, where that makes the part. */
const MOST_ROUNDS = 16;

/** Of plans besides the best one so many orders are all tried; those with more are not told. */
const MOST_BESIDES = 120;

/** Whether there is nothing to choose any more in the order of a plan: each choice is examined, or has one order only. */
function isSettled({ choices }: Plan): boolean {
  return choices.every(({ orders, cuts }) => orders !== null || ordersTried(cuts) === 1);
}

/** A way besides the best that is likely to take this many times as long is not worth a look. */
const FAR_SLOWER = 8;

interface Settled {
  readonly plans: readonly Plan[];
  /** Numbers of groups of which no choice can be made. */
  readonly unmade: ReadonlySet<number>;
}

/**
 * The best plans, of choices that have been examined: where the best ones hold some that are only estimated, these are
 * examined and the plans made again. After some rounds only the best one counts; of the others those stay whose order is settled.
 */
function settledPlans(
  aim: Aim,
  drafts: readonly (readonly Choice[])[],
  unmakable: Unmakable,
  tick: Tick,
): Settled {
  let groups = drafts;
  for (let round = 1; ; round++) {
    const unmade = new Set(groups.flatMap(({ length }, k) => (length === 0 ? [k] : [])));
    if (unmade.size > 0) return { plans: [], unmade };
    const plans = plansOf(aim, round <= MOST_ROUNDS ? groups : examinedOnly(groups));
    const asked = new Set(
      plans.slice(0, round <= ROUNDS ? plans.length : 1).flatMap(({ choices }, n) =>
        // With one order a choice comes to light when the plan is examined.
        n === 0 ? choices : choices.filter(({ cuts }) => ordersTried(cuts) > 1),
      ),
    );
    const open = [...asked].filter(({ orders }) => orders === null);
    if (open.length === 0) {
      const most = FAR_SLOWER * (plans[0]?.time ?? 0);
      const settledOnes = plans.filter((plan, n) => n === 0 || (isSettled(plan) && plan.time <= most));
      return { plans: inAllOrders(aim, settledOnes, unmakable, () => tick(1 - 2 ** -round)), unmade };
    }
    const known = new Map(
      open.map((choice, k) => {
        // Nobody knows how many rounds there will be: each takes half of what is left.
        tick(1 - (1 - k / open.length / 2) / 2 ** (round - 1));
        return [choice, settled(aim, choice, unmakable)];
      }),
    );
    groups = groups.map((group) =>
      group.some((choice) => known.has(choice))
        ? inOrder(group.flatMap((choice) => (known.has(choice) ? (known.get(choice) ?? []) : choice)))
        : group,
    );
  }
}

/** The choices of each group that have been examined; all of a group where it has none. */
function examinedOnly(groups: readonly (readonly Choice[])[]): (readonly Choice[])[] {
  return groups.map((group) => {
    const known = group.filter(({ orders }) => orders !== null);
    return known.length > 0 ? known : group;
  });
}

/** Plans, best first, with each choice in the best of all its orders; without those for which that would take long. */
function inAllOrders(aim: Aim, plans: readonly Plan[], unmakable: Unmakable, tick: () => void): Plan[] {
  const known = new Map<Choice, Choice>();
  const all = plans.flatMap((plan, n) => {
    const open = plan.choices.filter(
      (choice) => !choice.isTriedOut && !known.has(choice) && ordersTried(choice.cuts) > 1,
    );
    const orders = open.reduce((sum, { cuts }) => sum + ordersTried(cuts), 0);
    if (n > 0 && orders > MOST_BESIDES) return [];
    for (const choice of open) known.set(choice, triedOut(aim, choice, unmakable, tick) ?? choice);
    return planOf(
      aim,
      plan.choices.map((choice) => known.get(choice) ?? choice),
    );
  });
  return all.sort(comparePlans);
}

/** What really comes of a plan; null if that is not the finished part. */
function examined(aim: Aim, plan: Plan, unmakable: Unmakable): Outcome | null {
  const planned = outcomeOf(aim, plan.order);
  const isWorse = planned === null || planned.dangers.length > plan.dangers;
  const outcome =
    isWorse && plan.order.length <= MOST_TRIED
      ? (safestOrders(aim, plan.order, unmakable)[0] ?? null)
      : planned;
  return outcome !== null && isFinished(aim, outcome.report) ? outcome : null;
}

function wayOf(aim: Aim, { job, report, pushes: off }: Outcome): ProposedWay {
  const tolerances = tolerancesOf({ tools: aim.drawer.map((tool) => toolDocument(tool, [])) });
  const { toolChange, turning, stops } = aim;
  const pushes = stops.length === 0 ? null : off;
  return {
    job,
    report,
    row: wayRowOf(report, { toolChange, turning, tolerances, pushes }),
  };
}
