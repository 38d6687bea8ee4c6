import type { Link } from '../datum/chain.js';
import type { LengthUnit } from '../datum/length-unit.js';
import type { AxisZero } from '../datum/setup.js';
import { described } from '../document/described.js';
import type { HeightActionDocument } from '../document/schema.js';
import { bad, good, type Read } from '../job/read-edges.js';
import { type Done, inTurn, withMove, withSet } from './done.js';

/** What the actions in Z are read against. */
export interface HeightTask {
  readonly thickness: number;
  /** Parallels that the part lies on, with the height of each over the face that the part lies on. */
  readonly parallels: readonly { readonly id: string; readonly height: number }[];
  /** Of lengths that state none. */
  readonly units: LengthUnit;
  /** What the readout or the quill shows, and whether it grows upwards. */
  readonly shows: LengthUnit;
  readonly sense: 1 | -1;
}

/** Something level: its name, and its height over the face that the part lies on. */
interface Level {
  readonly words: string;
  readonly at: number;
}

/** Heights have no other axis to lie along. */
const NOWHERE = { middle: 0, half: 0, lever: 0 };

interface Doing extends Done {
  readonly level: Level;
}

type Action<K extends string> = Extract<HeightActionDocument, { readonly [key in K]: unknown }>;

/**
 * The zero in Z that actions come to: the end of the tool comes down on a face, or on a feeler that lies on it.
 * @param path JSON Pointer to the list of actions
 */
export function readHeight(
  list: readonly HeightActionDocument[],
  path: string,
  task: HeightTask,
): Read<AxisZero> {
  const done = inTurn<HeightActionDocument, Doing>(list, path, 'tool', (action, k, doing) =>
    doing === null ? begun(action, k, `${path}/${k}`, task) : gone(action, k, `${path}/${k}`, task, doing),
  );
  if (!done.ok) return done;
  const { level, links } = done.value;
  return good({ place: level.words, at: level.at, links, contact: NOWHERE });
}

function begun(action: HeightActionDocument, k: number, at: string, task: HeightTask): Read<Doing> {
  if (!('touch' in action)) {
    const key = 'measured' in action ? 'measured' : 'move' in action ? 'move' : 'set';
    return bad(`${at}/${key}`, 'comes first, but nothing is touched yet: begin with "touch"');
  }
  const level = levelOf(action.touch, task);
  if (typeof level === 'string') return bad(`${at}/touch`, level);
  const feeler = action.feeler ?? 0;
  const link: Link = {
    kind: 'touch',
    action: k,
    name: action.name ?? null,
    of: level.words,
    side: null,
    length: action.feeler ?? null,
    // The end of the tool stands over the feeler: the reading over what lies under it is less, or more on a quill.
    by: 0 - task.sense * feeler,
    units: action.units ?? task.units,
    way: task.sense > 0 ? -1 : 1,
    tolerance: action.tolerance ?? null,
  };
  return good(set({ level, links: [link], set: 0, moved: null }, k, action.reads ?? 0, task));
}

function gone(
  action: HeightActionDocument,
  k: number,
  at: string,
  task: HeightTask,
  doing: Doing,
): Read<Doing> {
  if ('touch' in action) {
    return bad(
      `${at}/touch`,
      `starts anew, but ${described(doing.level.words)} has been come to already; an axis starts once: take one of them out, or give the length between as "measured"`,
    );
  }
  if ('measured' in action) return measured(action, k, at, task, doing);
  if ('set' in action) return good(set(doing, k, action.set, task));
  const { move, name = null, tolerance = null } = action;
  return good(withMove(doing, k, move, { name, tolerance, units: task.shows }));
}

function measured(
  action: Action<'measured'>,
  k: number,
  at: string,
  task: HeightTask,
  doing: Doing,
): Read<Doing> {
  const [from, to] = [levelOf(action.from, task), levelOf(action.to, task)];
  if (typeof from === 'string') return bad(`${at}/from`, from);
  if (typeof to === 'string') return bad(`${at}/to`, to);
  if (from.at !== doing.level.at) {
    const swap = to.at === doing.level.at ? '; swap "from" and "to"' : '';
    return bad(
      `${at}/from`,
      `is ${described(action.from)}, but what the actions before come to is ${described(doing.level.words)}${swap}`,
    );
  }
  if (from.at === to.at) {
    return bad(
      `${at}/to`,
      `is ${described(action.to)}, which lies as high as ${described(action.from)}; there is nothing to measure between`,
    );
  }
  const way = to.at > from.at === task.sense > 0 ? 1 : -1;
  const link: Link = {
    kind: 'measured',
    action: k,
    name: action.name ?? null,
    of: to.words,
    side: null,
    length: action.measured,
    by: way * action.measured,
    units: action.units ?? task.units,
    way,
    tolerance: action.tolerance ?? null,
  };
  return good({ ...doing, level: to, links: [...doing.links, link] });
}

function set(doing: Doing, k: number, to: number, task: HeightTask): Doing {
  return withSet(doing, k, to, doing.level.words, task.shows);
}

function levelOf(name: string, { thickness, parallels }: HeightTask): Level | string {
  if (name === 'top') return { words: 'top', at: thickness };
  if (name === 'bottom') return { words: 'bottom', at: 0 };
  const parallel = parallels.find(({ id }) => id === name);
  if (parallel !== undefined) return { words: name, at: parallel.height };
  const known = ['top', 'bottom', ...parallels.map(({ id }) => id)].map(described).join(', ');
  return `is ${described(name)}, which is no level face; in z there are ${known}`;
}
