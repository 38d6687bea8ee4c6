import type { Link, SideName } from '../datum/chain.js';
import { described } from '../document/described.js';
import { bad, good, type Read } from '../job/read-edges.js';
import { contactOf } from './contact.js';
import { type Face, faceOf, sideOf } from './faces.js';
import { type Action, type Doing, ownOf, wordsOf, type ZeroTask } from './zero-doing.js';

/* The actions that lead from a stop to the part, and from one of its faces to another. */

export function borne(
  action: Action<'bears'>,
  k: number,
  at: string,
  task: ZeroTask,
  doing: Doing,
): Read<Doing> {
  const { bears, on } = action;
  const stop = task.stops.find(({ id }) => id === on);
  if (stop === undefined) {
    const ids = task.stops.map(({ id }) => described(id)).join(', ');
    return bad(
      `${at}/on`,
      `is ${described(on)}, but the setup has ${ids === '' ? 'no stops; list it under "stops" with the face that bears on it' : `no such stop; it has ${ids}`}`,
    );
  }
  const { reached } = doing;
  if (reached.kind !== 'stop' || reached.stop.id !== on) {
    return bad(
      `${at}/on`,
      `is ${described(on)}, but what is touched is ${wordsOf(reached)}; touch stop ${on} first`,
    );
  }
  const face = faceOf(bears, task.part);
  if (typeof face === 'string') return bad(`${at}/bears`, face);
  const { outward } = reached;
  if (face.outward === outward) {
    return bad(
      `${at}/bears`,
      `is ${described(bears)}, which looks ${wayOf(task, face.outward)} like stop ${on} itself: the two cannot bear on each other. ${sideWords(stop.face)} bears on that stop`,
    );
  }
  const { block } = action;
  const list = block === undefined ? [] : typeof block === 'number' ? [block] : block;
  const blocks = list.map((one): Link => {
    const given = typeof one === 'number' ? {} : one;
    const length = typeof one === 'number' ? one : 'block' in one ? one.block : one.measured;
    return {
      ...ownOf(given, task, action.units),
      kind: typeof one !== 'number' && 'measured' in one ? 'measured' : 'block',
      action: k,
      of: null,
      side: null,
      length,
      by: outward * length,
      way: outward,
    };
  });
  const link: Link = {
    ...ownOf(action, task),
    kind: 'bears',
    action: k,
    of: face.words,
    side: null,
    length: null,
    by: 0,
    way: outward,
  };
  const contact = contactOf(face, action.at, `${at}/at`, task);
  if (!contact.ok) return contact;
  return good({
    ...doing,
    reached: { kind: 'face', face },
    links: [...doing.links, ...blocks, link],
    contact: contact.value,
  });
}

export function measured(
  action: Action<'measured'>,
  k: number,
  at: string,
  task: ZeroTask,
  doing: Doing,
): Read<Doing> {
  const [from, to] = [faceOf(action.from, task.part), faceOf(action.to, task.part)];
  if (typeof from === 'string') return bad(`${at}/from`, from);
  if (typeof to === 'string') return bad(`${at}/to`, to);
  const { reached } = doing;
  if (reached.kind !== 'face' || !isSame(reached.face, from)) {
    const swap = reached.kind === 'face' && isSame(reached.face, to) ? '; swap "from" and "to"' : '';
    return bad(
      `${at}/from`,
      `is ${described(action.from)}, but what the actions before come to is ${wordsOf(reached)}${swap}`,
    );
  }
  if (from.at === to.at) {
    return bad(
      `${at}/to`,
      `is ${described(action.to)}, which lies as far as ${described(action.from)}; there is nothing to measure between`,
    );
  }
  const way = to.at > from.at ? 1 : -1;
  const link: Link = {
    ...ownOf(action, task),
    kind: 'measured',
    action: k,
    of: to.words,
    side: null,
    length: action.measured,
    by: way * action.measured,
    way,
  };
  return good({ ...doing, reached: { kind: 'face', face: to }, links: [...doing.links, link] });
}

/** Faces of other names that lie in one plane and look the same way are one to measure from. */
function isSame(a: Face, b: Face): boolean {
  return a.outward === b.outward && Math.abs(a.at - b.at) <= SAME * (1 + Math.abs(a.at));
}

/** What rounding of sums leaves between two faces in one plane. */
const SAME = 1e-9;

function wayOf({ part }: ZeroTask, outward: 1 | -1): string {
  const words: Readonly<Record<SideName, string>> = {
    left: 'to the left',
    right: 'to the right',
    front: 'towards you',
    back: 'away from you',
  };
  return words[sideOf(part.axis, outward)];
}

function sideWords(side: SideName): string {
  return side === 'left' || side === 'right' ? `A ${side} end` : `The ${side}`;
}
