import type { Link, SideName } from '../datum/chain.js';
import type { LengthUnit } from '../datum/length-unit.js';
import { along } from '../datum/lie.js';
import type { AxisZero, Stop } from '../datum/setup.js';
import { described } from '../document/described.js';
import type { JobIssue } from '../document/errors.js';
import type { ActionDocument } from '../document/schema.js';
import { shownPoint } from '../geometry/shown.js';
import { bad, good, pointOf, type Read } from '../job/read-edges.js';
import { contactOf, leverOf, type Place } from './contact.js';
import { type Done, inTurn, withMove, withSet } from './done.js';
import { type AxisPart, type Face, faceOf, lookOf, sideOf } from './faces.js';
import { middleOf } from './middle.js';

/** What the actions of an axis are read against. */
export interface ZeroTask {
  readonly part: AxisPart;
  readonly stops: readonly Stop[];
  /** Of lengths that state none. */
  readonly units: LengthUnit;
  /** What the readout shows. */
  readonly shows: LengthUnit;
}

/** What the actions have come to so far: a stop, a face of the part, or a middle or mark, which looks nowhere. */
type Reached =
  | { readonly kind: 'stop'; readonly stop: Stop; readonly outward: 1 | -1 }
  | { readonly kind: 'face'; readonly face: Face }
  | { readonly kind: 'middle'; readonly words: string; readonly at: number };

interface Doing extends Done {
  readonly reached: Reached;
  /** Where along the other axis the part is touched or bears; null while only a stop is touched. */
  readonly contact: Place | null;
}

type Action<K extends string> = Extract<ActionDocument, { readonly [key in K]: unknown }>;

/**
 * The zero that actions come to, with the signs that follow from which way faces look.
 *
 * Source: half the tip lies between the spindle and what it touches,
 * http://clough42.com/2017/11/30/making-split-cylinder-edge-finding-tool; two faces that bear on each other look at each
 * other.
 * @param path JSON Pointer to the list of actions
 */
export function readZero(list: readonly ActionDocument[], path: string, task: ZeroTask): Read<AxisZero> {
  const done = inTurn<ActionDocument, Doing>(list, path, 'spindle', (action, k, doing) =>
    doing === null ? begun(action, k, path, task) : gone(action, k, path, task, doing),
  );
  if (!done.ok) return done;
  const doing = done.value;
  const repeated = repeatedNames(doing.links, path);
  if (repeated.length > 0) return { ok: false, issues: repeated };
  const { reached, links } = doing;
  if (reached.kind === 'stop') {
    const { id, face } = reached.stop;
    return bad(
      path,
      `ends at stop ${id}, and no face of the part bears on it; add { "bears": ${described(face)}, "on": ${described(id)} }`,
    );
  }
  const [place, at] =
    reached.kind === 'face' ? [reached.face.words, reached.face.at] : [reached.words, reached.at];
  const contact = { middle: 0, half: 0, ...doing.contact, lever: leverOf(links, task.units) };
  return good({ place, at: at + 0, links, contact });
}

/** The first action: it brings the spindle to something. */
function begun(action: ActionDocument, k: number, path: string, task: ZeroTask): Read<Doing> {
  if ('touch' in action) return touched(action, k, `${path}/${k}`, task);
  if ('dial in' in action) return dialled(action, k, `${path}/${k}`, task);
  const key = keyOf(action);
  const after = key === 'bears' ? '; the stop is touched before the part bears on it' : '';
  return bad(
    `${path}/${k}/${key}`,
    `comes first, but nothing is touched yet: begin with "touch" or "dial in"${after}`,
  );
}

/** An action after the first. */
function gone(action: ActionDocument, k: number, path: string, task: ZeroTask, doing: Doing): Read<Doing> {
  const at = `${path}/${k}`;
  if ('touch' in action || 'dial in' in action) {
    return bad(
      `${at}/${keyOf(action)}`,
      `starts anew, but ${wordsOf(doing.reached)} has been come to already; an axis starts once: take one of them out, or give the length between as "measured"`,
    );
  }
  if ('bears' in action) return borne(action, k, at, task, doing);
  if ('measured' in action) return measured(action, k, at, task, doing);
  if ('move' in action) return good(moved(doing, k, action.move, task, action));
  return good(set(doing, k, action.set, task));
}

function touched(action: Action<'touch'>, k: number, at: string, task: ZeroTask): Read<Doing> {
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

function dialled(action: Action<'dial in'>, k: number, at: string, task: ZeroTask): Read<Doing> {
  const what = action['dial in'];
  const place = typeof what === 'string' ? middleOf(what, task.part.outline, task.part.names) : pointOf(what);
  if (typeof place === 'string') return bad(`${at}/dial in`, place);
  const words = typeof what === 'string' ? `middle of ${what}` : shownPoint(pointOf(what));
  const reached: Reached = { kind: 'middle', words, at: along(place, task.part.direction) };
  const contact: Place = { middle: along(place, task.part.across), half: 0 };
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

function borne(action: Action<'bears'>, k: number, at: string, task: ZeroTask, doing: Doing): Read<Doing> {
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

function measured(
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

/** The spindle goes on by a length: what was reached lies as much less beyond it. */
function moved(
  doing: Doing,
  k: number,
  by: number,
  task: ZeroTask,
  given: {
    readonly tolerance?: number | undefined;
    readonly name?: string | undefined;
    readonly units?: LengthUnit | undefined;
  },
): Doing {
  return withMove(doing, k, by, {
    name: given.name ?? null,
    tolerance: given.tolerance ?? null,
    // A move of its own is read off the readout; half a tip has the unit of the tip.
    units: 'units' in given ? (given.units ?? task.units) : task.shows,
  });
}

function set(doing: Doing, k: number, to: number, task: ZeroTask): Doing {
  return withSet(doing, k, to, ofReached(doing.reached), task.shows);
}

function ownOf(
  given: {
    readonly name?: string | undefined;
    readonly tolerance?: number | undefined;
    readonly units?: LengthUnit | undefined;
  },
  { units }: ZeroTask,
  holder?: LengthUnit,
): Pick<Link, 'name' | 'tolerance' | 'units'> {
  return {
    name: given.name ?? null,
    tolerance: given.tolerance ?? null,
    units: given.units ?? holder ?? units,
  };
}

/** A touch without a name of its own is that of its stop, wherever the stop is touched. */
function stopName(id: string): string {
  return `stop:${id}`;
}

function ofReached(reached: Reached): string {
  if (reached.kind === 'stop') return `stop:${reached.stop.id}`;
  return reached.kind === 'face' ? reached.face.words : reached.words;
}

function wordsOf(reached: Reached): string {
  if (reached.kind === 'stop') return `stop ${reached.stop.id}`;
  return reached.kind === 'face' ? described(reached.face.words) : `the ${reached.words}`;
}

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

function keyOf(action: ActionDocument): string {
  return ['touch', 'bears', 'measured', 'dial in', 'move', 'set'].find((key) => key in action) ?? '';
}

function repeatedNames(links: readonly Link[], path: string): JobIssue[] {
  return links.flatMap(({ name, action }, i): JobIssue[] => {
    const first = name === null ? undefined : links.slice(0, i).find((link) => link.name === name);
    if (first === undefined) return [];
    const message = `is ${described(name)} like that of action ${first.action + 1}; one thing is in a chain once only`;
    return [{ path: `${path}/${action}/name`, message }];
  });
}
