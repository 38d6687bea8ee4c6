import type { Side } from '../cut/cut.js';
import { choices } from '../document/described.js';
import type { JobIssue } from '../document/errors.js';
import type { AlongDocument } from '../document/schema.js';
import type { Edge } from '../geometry/edge.js';
import { edgeLength } from '../geometry/measure.js';
import { samePoint } from '../geometry/point.js';
import { shownNumber } from '../geometry/shown.js';
import type { AlongPlan } from '../job/plan.js';
import { bad, good, pointOf, type Read } from '../job/read-edges.js';
import { plainReason } from '../job/reason.js';
import { centerPathAlong, centerPathOn, edgesOfPass } from '../path/path.js';
import type { Milling } from '../path/path-curve.js';
import { type OutlinePlace, placeNear } from '../path/path-stretch.js';
import { loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';
import { whatFits } from './room-inside.js';

/** A path that follows the outline: where the tool's centre goes in the metal, and how it came about. */
export interface ReadAlong {
  readonly edges: readonly Edge[];
  readonly plan: AlongPlan;
}

/**
 * The path of a swept cut that follows the outline of the part, its leads included.
 * @param path JSON Pointer to it
 */
export function readAlong(
  given: AlongDocument,
  outline: Region,
  { diameter, from }: { readonly diameter: number; readonly from: Side },
  path: string,
): Read<ReadAlong> {
  const issues = contradictions(given, outline, path);
  if (issues.length > 0) return { ok: false, issues };
  const { side, allowance = 0, milling = 'conventional' } = given;
  const lead = given.lead ?? (side === 'outside' ? 'largest' : 'none');
  const options = { side, radius: diameter / 2, allowance, milling: fromAbove(milling, from), lead };
  const read =
    given.from !== undefined && given.to !== undefined
      ? stretchOf(given.from, given.to, outline, path)
      : good(null);
  if (!read.ok) return read;
  const stretch = read.value;
  const loops = stretch === null ? wanted(given.loop, outline) : [];
  try {
    const passes =
      stretch === null
        ? centerPathOn(outline, { ...options, start: given.start && pointOf(given.start) }, (edge) =>
            loops.includes(loopOf(edge)),
          ).passes
        : centerPathAlong(outline, stretch, options);
    if (passes.length === 0) {
      return bad(path, `follows ${loops.join(', ')}, which a tool ${diameter} across touches nowhere`);
    }
    const edges = passes.flatMap(edgesOfPass).map(({ source: _, ...edge }) => edge as Edge);
    return good({ edges, plan: { side, milling, allowance, stretch, loops, passes } });
  } catch (error) {
    const isLead = error instanceof Error && error.name === 'LeadError';
    const reason = plainReason(error);
    if (isLead) return bad(`${path}/lead`, reason);
    // A tool that fits nowhere inside may do so only for what it is to leave.
    if (side !== 'inside' || !/fits nowhere/.test(reason)) return bad(path, reason);
    const where = given.allowance === undefined ? path : `${path}/allowance`;
    return bad(where, `${reason}; ${whatFits(outline, diameter / 2)}`);
  }
}

/** The way of milling that a cut from below is as seen from above, where its spindle turns the other way. */
function fromAbove(milling: Milling, from: Side): Milling {
  if (from === 'top') return milling;
  return milling === 'climb' ? 'conventional' : 'climb';
}

/** Names of all loops of an outline: `outline`, `hole:0`. */
export function loopNames(outline: Region): string[] {
  const names = loopsOf(outline).map((loop) => loopOf(loop[0] as Edge));
  return [...new Set(names)];
}

/** The loop that an edge with a source belongs to. */
export function loopOf({ source = '' }: Edge): string {
  return source.slice(0, source.lastIndexOf(':'));
}

function wanted(loop: string | undefined, outline: Region): string[] {
  return loop === 'all' ? loopNames(outline) : [loop ?? 'outline'];
}

function contradictions(given: AlongDocument, outline: Region, path: string): JobIssue[] {
  const say = (key: string, message: string): JobIssue[] => [{ path: `${path}/${key}`, message }];
  const { from, to, loop, start } = given;
  if (from === undefined && to === undefined) {
    const names = [...loopNames(outline), 'all'];
    if (loop === undefined || names.includes(loop)) return [];
    return say('loop', `must be ${choices(names)}; it is "${loop}"`);
  }
  return [
    ...(from === undefined ? say('from', 'is missing; a stretch has "from" and "to"') : []),
    ...(to === undefined ? say('to', 'is missing; a stretch has "from" and "to"') : []),
    ...(loop === undefined ? [] : say('loop', 'stands beside "from" and "to", which name a loop already')),
    ...(start === undefined ? [] : say('start', 'stands beside "from", which is where a stretch begins')),
  ];
}

type PlaceDocument = NonNullable<AlongDocument['from']>;

function stretchOf(
  from: PlaceDocument,
  to: PlaceDocument,
  outline: Region,
  path: string,
): Read<NonNullable<AlongPlan['stretch']>> {
  const start = readOutlinePlace(from, outline, `${path}/from`);
  const end = readOutlinePlace(to, outline, `${path}/to`);
  if (start.ok && end.ok) return good({ from: start.value, to: end.value });
  return { ok: false, issues: [start, end].flatMap((read) => (read.ok ? [] : read.issues)) };
}

function readOutlinePlace(given: PlaceDocument, outline: Region, path: string): Read<OutlinePlace> {
  if (!('edge' in given)) return good(placeNear(outline, pointOf(given)));
  const { edge: name, end = 'start', distance = 0 } = given;
  const pieces = piecesOf(outline, name);
  if (pieces.length === 0) {
    return bad(`${path}/edge`, `is ${name}; the outline has no edge of that name`);
  }
  const whole = pieces.reduce((sum, { edge }) => sum + edgeLength(edge), 0);
  if (distance > whole) {
    return bad(`${path}/distance`, `is ${distance}; ${name} is only ${shownNumber(whole)} long`);
  }
  let rest = end === 'start' ? distance : whole - distance;
  for (const [k, { edge, part, hole, index }] of pieces.entries()) {
    const length = edgeLength(edge);
    if (rest <= length || k === pieces.length - 1) {
      return good({ part, hole, edge: index, share: Math.min(1, rest / length) });
    }
    rest -= length;
  }
  return bad(path, 'is no place on the outline');
}

interface Piece {
  readonly edge: Edge;
  readonly part: number;
  readonly hole: number | null;
  readonly index: number;
}

/** The pieces of one name, in the order in which their loop runs. */
function piecesOf(outline: Region, name: string): Piece[] {
  const all = outline.flatMap(({ outer, holes }, part) =>
    [outer, ...holes].flatMap((loop, k) =>
      loop.map((edge, index): Piece => ({ edge, part, hole: k === 0 ? null : k - 1, index })),
    ),
  );
  const own = all.filter(({ edge }) => edge.source === name);
  const first = own.findIndex(({ edge }) => !own.some((before) => samePoint(before.edge.b, edge.a)));
  return first <= 0 ? own : [...own.slice(first), ...own.slice(0, first)];
}
