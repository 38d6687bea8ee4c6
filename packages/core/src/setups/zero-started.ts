import type { Link } from '../datum/chain.js';
import { along } from '../datum/lie.js';
import { described } from '../document/described.js';
import { shownPoint } from '../geometry/shown.js';
import { bad, good, pointOf, type Read } from '../job/read-edges.js';
import { type ContactSpan, contactOf } from './contact.js';
import { type Face, faceOf, lookOf, sideOf } from './faces.js';
import { middleNamed } from './middle.js';
import {
  type Action,
  type Doing,
  moved,
  ofReached,
  ownOf,
  type Reached,
  set,
  stopName,
  wordsOf,
  type ZeroTask,
} from './zero-doing.js';

/* The actions by which an axis starts: they bring the spindle to a stop, a face, a middle or a mark. */

export function touched(action: Action<'touch'>, k: number, at: string, task: ZeroTask): Read<Doing> {
  const { touch, tip, tool, reads = 0, then } = action;
  const reached = whatIsTouched(touch, task);
  if (typeof reached === 'string') return bad(`${at}/touch`, reached);
  if (tip !== undefined && tool !== undefined) {
    return bad(`${at}/tool`, 'stands beside "tip"; either the tip or the tool itself touches');
  }
  const length = tip ?? tool;
  if (length === undefined) {
    return bad(
      `${at}/tip`,
      `is missing: half of its diameter lies between the spindle and ${wordsOf(reached)}; give "tip", or "tool" where the tool itself touches`,
    );
  }
  const outward = reached.kind === 'stop' ? reached.outward : (reached as { face: Face }).face.outward;
  const link: Link = {
    ...ownOf(action, task),
    kind: 'touch',
    action: k,
    name: action.name ?? (reached.kind === 'stop' ? stopName(reached.stop.id) : null),
    of: ofReached(reached),
    side: sideOf(task.part.axis, outward),
    length,
    // The spindle stands outside of the face: the reading over the face lies inwards.
    by: (-outward * length) / 2,
    way: outward > 0 ? -1 : 1,
  };
  const contact = contactOf(reached.kind === 'face' ? reached.face : null, action.at, `${at}/at`, task);
  if (!contact.ok) return contact;
  const doing = set({ reached, links: [link], set: 0, moved: null, contact: contact.value }, k, reads, task);
  if (then === undefined) return good(doing);
  const half = (-outward * length) / 2;
  return good(set(moved(doing, k, half, task, { tolerance: undefined, units: action.units }), k, 0, task));
}

function whatIsTouched(name: string, task: ZeroTask): Reached | string {
  const stop = task.stops.find(({ id }) => id === name);
  if (stop !== undefined) {
    const { axis, outward } = lookOf(stop.face);
    if (axis !== task.part.axis)
      return `is stop ${name}, on which the ${stop.face} of the part bears: it is touched in ${axis}, not in ${task.part.axis}`;
    return { kind: 'stop', stop, outward: outward > 0 ? -1 : 1 };
  }
  const face = faceOf(name, task.part);
  if (typeof face !== 'string') return { kind: 'face', face };
  const ids = task.stops.map(({ id }) => described(id));
  return ids.length === 0 ? face : `${face}; the setup has the stops ${ids.join(', ')}`;
}

export function dialled(action: Action<'dial in'>, k: number, at: string, task: ZeroTask): Read<Doing> {
  const what = action['dial in'];
  const place =
    typeof what === 'string' ? middleNamed(what, task.part.outline, task.part.names) : pointOf(what);
  if (typeof place === 'string') return bad(`${at}/dial in`, place);
  const words = typeof what === 'string' ? `middle of ${what}` : shownPoint(pointOf(what));
  const reached: Reached = { kind: 'middle', words, at: along(place, task.part.direction) };
  const contact: ContactSpan = { middle: along(place, task.part.across), half: 0 };
  const link: Link = {
    ...ownOf(action, task),
    kind: 'dial in',
    action: k,
    of: words,
    side: null,
    length: null,
    by: 0,
    way: 1,
  };
  return good(set({ reached, links: [link], set: 0, moved: null, contact }, k, action.reads ?? 0, task));
}
