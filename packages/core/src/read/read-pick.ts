import { choices } from '../document/described.js';
import { distance, type Point } from '../geometry/point.js';
import { shownNumber, shownPoint } from '../geometry/shown.js';
import type { CenterPlan } from '../job/plan.js';
import { bad, good, pointOf, type Read } from '../job/read-edges.js';

/** One place that a placement allows. */
export interface Answer {
  readonly name: string;
  readonly center: Point;
  /** Whether it is meant rather than others that are not. */
  readonly isLikely: boolean;
}

/** All places that a placement allows. */
export interface Answers {
  readonly form: CenterPlan['form'];
  readonly about: readonly string[];
  readonly all: readonly Answer[];
}

/** Places whose distances differ by less than this share of them are equally near. */
const AS_NEAR = 1e-9;

/** The answer that a job means: the only likely one, the one that it names, or the one nearest to its place. */
export function chosen(
  { all }: Answers,
  {
    pick,
    near,
  }: { readonly pick?: string | undefined; readonly near?: readonly [number, number] | undefined },
  path: string,
  diameter: number,
): Read<Answer> {
  if (pick !== undefined && near !== undefined) {
    return bad(`${path}/near`, 'stands beside "pick"; give one of the two');
  }
  if (pick !== undefined) return namedAnswer(all, pick, path);
  if (near !== undefined) return nearestAnswer(all, pointOf(near), path, diameter);
  const likely = all.filter(({ isLikely }) => isLikely);
  const open = likely.length > 0 ? likely : all;
  const [first] = open;
  if (first !== undefined && open.length === 1) return good(first);
  return bad(
    path,
    `has ${open.length} answers: ${listed(open)}; name one by "pick", or give a place "near" it`,
  );
}

function namedAnswer(all: readonly Answer[], pick: string, path: string): Read<Answer> {
  const answer = all.find(({ name }) => name === pick);
  if (answer !== undefined) return good(answer);
  const [first] = all;
  if (all.length === 1 && first !== undefined) {
    const message = `names an answer where there is one only, with its centre at ${shownPoint(first.center)}; leave it out`;
    return bad(`${path}/pick`, message);
  }
  return bad(`${path}/pick`, `must be ${choices(all.map(({ name }) => name))}; it is "${pick}"`);
}

function nearestAnswer(all: readonly Answer[], near: Point, path: string, diameter: number): Read<Answer> {
  const sorted = [...all].sort((p, q) => distance(p.center, near) - distance(q.center, near));
  const [first, second] = sorted as [Answer, Answer | undefined];
  const off = distance(first.center, near);
  if (off > diameter) {
    return bad(
      `${path}/near`,
      `is ${shownNumber(off)} from the nearest answer, ${listed([first])}, and so further off than the cut is wide, ${shownNumber(diameter)}; give a place nearer to the centre that is meant`,
    );
  }
  if (second === undefined) return good(first);
  const gap = distance(second.center, near) - distance(first.center, near);
  if (gap > AS_NEAR * distance(second.center, near)) return good(first);
  return bad(`${path}/near`, `is as near to ${listed([first, second])}; move it, or name one by "pick"`);
}

function listed(answers: readonly Answer[]): string {
  const words = answers.map(({ name, center }) => `"${name}" with its centre at ${shownPoint(center)}`);
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
