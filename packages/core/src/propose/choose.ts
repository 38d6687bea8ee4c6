import type { Aim } from '../aim/aim.js';
import { TOOL_KINDS, type ToolKind } from '../cutting/tool.js';
import type { DrawerTool } from '../document/schema-drawer.js';
import type { PlannedCut } from '../feature/cut-plan.js';
import type { Choice } from './choices.js';
import { MOST_TRIED, merged } from './order.js';
import { changesIn, timeOf } from './outcome.js';

/** One choice of each group, woven into one order. */
export interface Plan {
  readonly choices: readonly Choice[];
  readonly order: readonly PlannedCut[];
  readonly dangers: number;
  readonly pushes: number;
  /** Cutting and changes, in minutes. */
  readonly time: number;
  /** ids of its tools, in order of name. */
  readonly tools: string;
}

/** Up to so many ways to choose are all looked at. */
const MOST_CHOSEN = 3000;

/** The better of two plans comes first: fewer dangers, then fewer pushes off a stop, then less time. */
export function comparePlans(a: Plan, b: Plan): number {
  return (
    a.dangers - b.dangers ||
    a.pushes - b.pushes ||
    a.time - b.time ||
    a.order.length - b.order.length ||
    (a.tools < b.tools ? -1 : 1)
  );
}

/**
 * The best plan, and others to choose from, best first: the best of each set of kinds of tool, then of each set of tools,
 * as many as the aim asks for. All ways to choose are looked at where there are few; else those that come of the best by
 * leaving out or bringing in one tool at a time, and by leaving out kinds of tool.
 */
export function plansOf(aim: Aim, groups: readonly (readonly Choice[])[]): Plan[] {
  const count = groups.reduce((product, { length }) => product * length, 1);
  const plans = count <= MOST_CHOSEN ? allPlans(aim, groups) : plansBySteps(aim, groups);
  plans.sort(comparePlans);
  const ofKinds = firstOfEach(plans, kindsOf);
  const others = firstOfEach(plans, ({ tools }) => tools).filter((plan) => !ofKinds.includes(plan));
  return [...ofKinds, ...others].slice(0, aim.ways).sort(comparePlans);
}

function firstOfEach(plans: readonly Plan[], nameOf: (plan: Plan) => string): Plan[] {
  const found = new Map<string, Plan>();
  for (const plan of plans) if (!found.has(nameOf(plan))) found.set(nameOf(plan), plan);
  return [...found.values()];
}

function kindsOf({ order }: Plan): string {
  return [...new Set(order.map(({ tool }) => tool.kind))].sort().join();
}

function allPlans(aim: Aim, groups: readonly (readonly Choice[])[]): Plan[] {
  let chosen: Choice[][] = [[]];
  for (const group of groups) chosen = chosen.flatMap((before) => group.map((choice) => [...before, choice]));
  return chosen.map((choices) => planOf(aim, choices));
}

/** The best plan without each set of kinds, and with each kind wherever it can be, and with one tool more or fewer left out, as long as that is better. */
function plansBySteps(aim: Aim, groups: readonly (readonly Choice[])[]): Plan[] {
  const tools = [...new Set(groups.flatMap((group) => group.flatMap((choice) => [...choice.tools])))];
  const found: Plan[] = [];
  const planWithout = (left: ReadonlySet<string>): Plan | null => {
    const chosen = groups.map((group) =>
      group.find((choice) => ![...choice.tools].some((tool) => left.has(tool))),
    );
    if (chosen.some((choice) => choice === undefined)) return null;
    const plan = planOf(aim, chosen as Choice[]);
    found.push(plan);
    return plan;
  };
  for (const kinds of subsets(TOOL_KINDS))
    planWithout(new Set(tools.filter((tool) => kinds.includes(kindOf(aim, tool)))));
  for (const kind of TOOL_KINDS) {
    const isOfKind = ({ cuts }: Choice) => cuts.some(({ tool }) => tool.kind === kind);
    found.push(
      planOf(
        aim,
        groups.map((group) => (group.find(isOfKind) ?? group[0]) as Choice),
      ),
    );
  }
  let left: ReadonlySet<string> = new Set();
  let best = planWithout(left);
  for (let improved = true; improved; ) {
    improved = false;
    for (const tool of tools) {
      const other = new Set(left);
      if (!other.delete(tool)) other.add(tool);
      const plan = planWithout(other);
      if (plan === null || (best !== null && comparePlans(plan, best) >= 0)) continue;
      best = plan;
      left = other;
      improved = true;
    }
  }
  return found;
}

function kindOf({ drawer }: Aim, id: string): ToolKind {
  return (drawer.find((tool) => tool.id === id) as DrawerTool).kind;
}

function subsets<T>(all: readonly T[]): T[][] {
  const [first, ...rest] = all;
  if (first === undefined) return [[]];
  return subsets(rest).flatMap((set) => [set, [first, ...set]]);
}

/** One choice of each group as a plan. */
export function planOf(aim: Aim, choices: readonly Choice[]): Plan {
  const order = quickestOrder(aim, choices);
  const minutes = choices.reduce((sum, { time }) => sum + time, 0);
  return {
    choices,
    order,
    dangers: choices.reduce((sum, { dangers }) => sum + dangers, 0),
    pushes: choices.reduce((sum, { pushes }) => sum + pushes, 0),
    time: minutes + timeOf(aim, { minutes: null, ...changesIn(order) }),
    tools: [...new Set(order.map(({ tool }) => tool.id))].sort().join('\n'),
  };
}

/** The safest orders of several groups woven into one with few changes: of few cuts the one with the fewest. */
function quickestOrder(aim: Aim, choices: readonly Choice[]): readonly PlannedCut[] {
  const count = choices.reduce((sum, { cuts }) => sum + cuts.length, 0);
  const costOf = (order: readonly PlannedCut[]) => timeOf(aim, { minutes: null, ...changesIn(order) });
  const variants = variantsOf(choices);
  const orders = count <= MOST_TRIED ? variants.flatMap(interleavings) : variants.map(merged);
  return orders.reduce((best, order) => (costOf(order) < costOf(best) ? order : best));
}

type Chains = readonly (readonly PlannedCut[])[];

/** So many ways to take one of the equally safe orders of each group are looked at. */
const MOST_VARIANTS = 64;

function variantsOf(choices: readonly Choice[]): Chains[] {
  let all: Chains[] = [[]];
  for (const { orders, cuts } of choices) {
    const known = orders?.map(({ order }) => order) ?? [cuts];
    const own = all.length * known.length <= MOST_VARIANTS ? known : known.slice(0, 1);
    all = all.flatMap((before) => own.map((order) => [...before, order]));
  }
  return all;
}

/** All orders that keep each of some chains. */
function interleavings(chains: Chains): PlannedCut[][] {
  const open = chains.filter(({ length }) => length > 0);
  if (open.length === 0) return [[]];
  return open.flatMap((chain) => {
    const [first, ...rest] = chain as [PlannedCut, ...PlannedCut[]];
    return interleavings(open.map((other) => (other === chain ? rest : other))).map((order) => [
      first,
      ...order,
    ]);
  });
}
