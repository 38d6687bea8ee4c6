import {
  isList,
  isObject,
  type Json,
  type JsonObject,
  type Path,
  valueAt,
  withoutMember,
  withValue,
} from './json.js';

/** Where the members of a list are named by their ids; `*` stands for every member of a list. */
const NAMED_IN: Readonly<Record<string, readonly Path[]>> = {
  cuts: [
    ['setups', '*', 'cuts', '*'],
    ['tools', '*', 'cuts', '*'],
    ['repeat', '*', 'cuts', '*'],
  ],
  setups: [['keepOut', '*', 'setup']],
  drawer: [['cuts', '*', 'tool']],
};

/** Where the stops of a setup are named, within the setup. */
const STOPS_IN: readonly Path[] = ['x', 'y'].flatMap((axis) => [
  ['zero', axis, '*', 'touch'],
  ['zero', axis, '*', 'on'],
]);

function placesOf(list: Path): readonly Path[] {
  const [first, setup, last] = list;
  if (list.length === 1) return Object.hasOwn(NAMED_IN, String(first)) ? (NAMED_IN[String(first)] ?? []) : [];
  const isStops = list.length === 3 && first === 'setups' && last === 'stops';
  return isStops ? STOPS_IN.map((path) => ['setups', setup as number, ...path]) : [];
}

/** Whether others may name the members of a list at a path by their ids. */
export function isNamed(list: Path): boolean {
  return placesOf(list).length > 0;
}

/** The name of a copy: that of its cut with a number behind. */
const COPY = / [1-9]\d*$/;

/** Whether a text names a member by its id, or a copy of it; numbers stand behind the names of cuts alone. */
function isNameOf(name: Json | undefined, id: string, list: Path): boolean {
  if (name === id) return true;
  return list[0] === 'cuts' && typeof name === 'string' && COPY.test(name) && name.replace(COPY, '') === id;
}

/**
 * Every place of a job that names a member of a list by its id, or a copy of it. None for a member without an id, or with that of one
 * before it: what names it then means the other one.
 */
export function namesOf(job: Json, list: Path, index: number): readonly Path[] {
  const members = valueAt(job, list);
  const id = valueAt(job, [...list, index, 'id']);
  if (!isNamed(list) || !isList(members) || typeof id !== 'string') return [];
  if (members.findIndex((member) => valueAt(member, ['id']) === id) !== index) return [];
  return placesOf(list)
    .flatMap((pattern) => matching(job, pattern))
    .filter((path) => isNameOf(valueAt(job, path), id, list) && !isOther(members, valueAt(job, path), id));
}

/** Whether a name with a number behind is the id of another member, and no copy. */
function isOther(members: readonly Json[], name: Json | undefined, id: string): boolean {
  return name !== id && members.some((member) => valueAt(member, ['id']) === name);
}

/** The job in which a member has another id, and so has every place that names it; copies keep their numbers. */
export function renamed(job: Json, path: Path, names: readonly Path[], id: Json | undefined): Json {
  const old = valueAt(job, path);
  return names.reduce(
    (next, name) => {
      const written = valueAt(job, name);
      const number = typeof written === 'string' && written !== old ? (COPY.exec(written)?.[0] ?? '') : '';
      return withValue(next, name, number === '' || typeof id !== 'string' ? (id ?? '') : `${id}${number}`);
    },
    withValue(job, path, id),
  );
}

/**
 * The job without a member of a list, and without it in the lists that name it. What belongs to it alone stays, and is
 * a fault until it is told where else it belongs.
 */
export function withoutNamed(job: Json, list: Path, index: number): Json {
  const inLists = namesOf(job, list, index).filter((path) => typeof path.at(-1) === 'number');
  // From the last to the first, so that places in one list keep their numbers.
  return [...[...inLists].reverse(), [...list, index]].reduce<Json>((next, path) => {
    const place = path.at(-1);
    return typeof place === 'number' ? withoutMember(next, path.slice(0, -1), place) : next;
  }, job);
}

function matching(root: Json, pattern: Path): readonly Path[] {
  const [step, ...rest] = pattern;
  if (step === undefined) return [[]];
  const held: JsonObject | readonly Json[] | null = isObject(root) || isList(root) ? root : null;
  if (held === null) return [];
  const steps = step !== '*' ? [step] : isList(held) ? held.map((_, k) => k) : [];
  return steps.flatMap((one) => {
    const inner = valueAt(held, [one]);
    return inner === undefined ? [] : matching(inner, rest).map((path) => [one, ...path]);
  });
}
