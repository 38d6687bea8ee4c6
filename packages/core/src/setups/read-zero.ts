import type { Link } from '../datum/chain.js';
import type { AxisZero } from '../datum/setup.js';
import { described } from '../document/described.js';
import type { JobIssue } from '../document/errors.js';
import type { ActionDocument } from '../document/schema.js';
import { bad, good, type Read } from '../job/read-edges.js';
import { leverOf } from './contact.js';
import { inTurn } from './done.js';
import { borne, measured } from './zero-continued.js';
import { type Doing, keyOf, moved, set, wordsOf, type ZeroTask } from './zero-doing.js';
import { dialled, touched } from './zero-started.js';

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

function repeatedNames(links: readonly Link[], path: string): JobIssue[] {
  return links.flatMap(({ name, action }, i): JobIssue[] => {
    const first = name === null ? undefined : links.slice(0, i).find((link) => link.name === name);
    if (first === undefined) return [];
    const message = `is ${described(name)} like that of action ${first.action + 1}; one thing is in a chain once only`;
    return [{ path: `${path}/${action}/name`, message }];
  });
}
